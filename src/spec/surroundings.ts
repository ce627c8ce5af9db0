/** How cold and how warm the panel gets, unless the preset says [°C]. */
export const SURROUNDINGS = { coldest: 15, warmest: 35 } as const;
