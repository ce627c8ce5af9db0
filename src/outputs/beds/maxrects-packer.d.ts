/** The package's main file is no module for Node, its `.mjs` carries no types: what is used of it. */
declare module 'maxrects-packer/dist/maxrects-packer.mjs' {
  export enum PACKING_LOGIC {
    MAX_AREA = 0,
    MAX_EDGE = 1,
  }
  export interface Rect {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly rot: boolean;
    readonly data: unknown;
  }
  export class MaxRectsPacker {
    constructor(
      width: number,
      height: number,
      padding: number,
      options: {
        readonly smart: boolean;
        readonly pot: boolean;
        readonly square: boolean;
        readonly allowRotation: boolean;
        readonly logic: PACKING_LOGIC;
      },
    );
    add(width: number, height: number, data: unknown): unknown;
    readonly bins: readonly { readonly rects: readonly Rect[] }[];
  }
}
