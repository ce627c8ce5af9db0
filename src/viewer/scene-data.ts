/** What the page carries for its 3D view: a packed block of meshes, and what stands where. Written by `outputs/report/scene.ts`. */

export interface PartData {
  readonly id: string;
  readonly title: string;
  readonly kind: 'printed' | 'bought';
  readonly material: string;
  readonly massG: number;
  readonly quantity: number;
  readonly file: string;
  /** `#rrggbb` */
  readonly colour: string;
  /** Hidden with the covers: what stands over the rails. */
  readonly cover: boolean;
  /** In the packed block: vertices as three unsigned 16-bit steps from `min`, then triangles as three indices each. */
  readonly at: number;
  readonly vertices: number;
  readonly triangles: number;
  /** 2 or 4 bytes an index. */
  readonly indexBytes: 2 | 4;
  readonly min: readonly [number, number, number];
  /** Length of one step [mm]. */
  readonly step: number;
}

export interface PlacementData {
  readonly name: string;
  /** Index into the parts. */
  readonly part: number;
  /** Rigid, 4 × 4, row major. */
  readonly matrix: readonly number[];
  /** Where it goes when the kit is taken apart [mm]. */
  readonly apart: readonly [number, number, number];
}

export interface BeamData {
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
  readonly diameter: number;
}

export interface SceneData {
  readonly parts: readonly PartData[];
  readonly placements: readonly PlacementData[];
  readonly beams: readonly BeamData[];
  /** Zlib, then base64. */
  readonly meshes: string;
}
