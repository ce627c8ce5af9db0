declare module '@jscad/stl-serializer' {
  /** Header, triangle count and triangles of a binary STL, in that order. */
  const serializer: {
    serialize(options: { readonly binary: true }, ...geometries: readonly unknown[]): readonly ArrayBuffer[];
  };
  export default serializer;
}
