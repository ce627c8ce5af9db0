/** Whose fingers a panel is for, unless the preset says [mm]. */
export const FINGER = { least: 12, most: 20 } as const;
