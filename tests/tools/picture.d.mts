type Vec3 = readonly [number, number, number];

export interface Item {
  /** Nine numbers a triangle. */
  readonly soup: Float32Array;
  readonly matrix?: readonly number[];
  readonly colour: Vec3;
}

/** Takes away what lies below or above a coordinate. */
export interface Cut {
  readonly axis: 0 | 1 | 2;
  readonly away: '<' | '>';
  readonly at: number;
}

export interface View {
  readonly toEye?: Vec3;
  readonly size?: readonly [number, number];
  readonly cut?: Cut | null;
  readonly focus?: readonly Item[];
  readonly centre?: Vec3 | null;
  readonly zoom?: number;
}

export const VIEWS: Readonly<Record<string, Vec3>>;
export function picture(
  items: readonly Item[],
  view?: View,
): { readonly width: number; readonly height: number; readonly rgb: Uint8Array };
