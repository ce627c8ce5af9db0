type Vec3 = readonly [number, number, number];

export interface Item {
  /** Nine numbers a triangle. */
  readonly soup: Float32Array;
  readonly matrix?: readonly number[];
  readonly colour: Vec3;
}

export interface View {
  readonly toEye?: Vec3;
  readonly size?: readonly [number, number];
  readonly section?: { readonly axis: 0 | 1 | 2; readonly at: number } | null;
  readonly focus?: readonly Item[];
}

export const VIEWS: Readonly<Record<string, Vec3>>;
export function picture(
  items: readonly Item[],
  view?: View,
): { readonly width: number; readonly height: number; readonly rgb: Uint8Array };
