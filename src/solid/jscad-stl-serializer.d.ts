declare module '@jscad/stl-serializer/CSGToStlb.js' {
  /** Header, triangle count and triangles of a binary STL, in that order; geometries of triangles only. */
  export function serializeBinary(
    geometries: readonly unknown[],
    options: Readonly<Record<string, never>>,
  ): readonly ArrayBuffer[];
}
