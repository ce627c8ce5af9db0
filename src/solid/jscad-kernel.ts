/**
 * The same kernel by @jscad/modeling's own booleans: the measure that the other one is compared with. It draws the same
 * volumes, slowly, and leaves seams where a long edge meets several short ones: its meshes are not for printing.
 */
import { booleans, extrusions, geometries, measurements, modifiers, transforms } from './jscad.js';
import type { Kernel, Solid } from './kernel.js';
import type { Mesh, Outlines } from './mesh.js';
import { requireOutlines, requirePositive, requireRigid } from './numbers.js';

type Geom3 = ReturnType<typeof geometries.geom3.create>;

/** Whether each single cutter cuts is not looked at, only whether all of them together do: that would be half the time. */
export function jscadKernel(): Kernel {
  return {
    extrude(outlines, height) {
      requireOutlines('extrude', outlines);
      requirePositive('extrude: the height', height);
      return hold(extrusions.extrudeLinear({ height }, figure(outlines)));
    },
    revolve(outlines, segments) {
      requireOutlines('revolve', outlines);
      return hold(extrusions.extrudeRotate({ segments }, figure(outlines)));
    },
    move(solid, matrix) {
      requireRigid('move', matrix);
      const m = [0, 1, 2, 3].flatMap((c) => [0, 1, 2, 3].map((r) => matrix[4 * r + c]!));
      return hold(transforms.transform(m as Parameters<typeof transforms.transform>[0], held(solid)) as Geom3);
    },
    union(solids) {
      if (solids.length === 0) throw new RangeError('union: nothing to unite');
      return hold(booleans.union(solids.map(held)) as Geom3);
    },
    subtract(body, cutters) {
      if (cutters.length === 0) throw new RangeError('subtract: no cutter given');
      const rest = booleans.subtract([held(body), ...cutters.map(held)]) as Geom3;
      if (!(measurements.measureVolume(rest) < measurements.measureVolume(held(body))))
        throw new RangeError('subtract: the cutters take nothing away');
      return hold(rest);
    },
    intersect: (a, b) => hold(booleans.intersect(held(a), held(b)) as Geom3),
    mesh: (solid) => meshOf(held(solid)),
  };
}

// Its types declare a default export that the package doesn't have.
type Generalize = (options: { readonly snap: boolean; readonly triangulate: boolean }, geometry: Geom3) => Geom3;
const generalize = modifiers.generalize as unknown as Generalize;

const held = (solid: Solid) => solid as unknown as Geom3;
const hold = (geometry: Geom3) => geometry as unknown as Solid;

function figure(outlines: Outlines) {
  const sides = outlines.flatMap((outline) =>
    outline.map(([x, y], i): [[number, number], [number, number]] => {
      const [u, v] = outline[(i + 1) % outline.length]!;
      return [
        [x, y],
        [u, v],
      ];
    }),
  );
  return geometries.geom2.create(sides);
}

function meshOf(geometry: Geom3): Mesh {
  const triangulated = generalize({ snap: true, triangulate: true }, geometry);
  const positions: number[] = [];
  const triangles: number[] = [];
  const seen = new Map<string, number>();
  for (const { vertices } of geometries.geom3.toPolygons(triangulated))
    for (const [x, y, z] of vertices) {
      const key = `${Math.fround(x + 0)},${Math.fround(y + 0)},${Math.fround(z + 0)}`;
      let vertex = seen.get(key);
      if (vertex === undefined) {
        vertex = positions.length / 3;
        seen.set(key, vertex);
        positions.push(x, y, z);
      }
      triangles.push(vertex);
    }
  return { positions: Float32Array.from(positions), triangles: Uint32Array.from(triangles) };
}
