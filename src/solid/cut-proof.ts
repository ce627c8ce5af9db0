/** Cheap evidence that a cutter has cut, read from the mesh of the result; without it the overlap has to be measured. */

/** What is read of a mesh: runs of triangles, one run for each use of an original solid. */
export interface Runs {
  readonly vertProperties: Float32Array;
  readonly triVerts: Uint32Array;
  /** First triangle corner of each run, and one past the last. */
  readonly runIndex: Uint32Array;
  /** Original of each run; a run may be without triangles. */
  readonly runOriginalID: Uint32Array;
}

/** Well above the rounding of a float32 coordinate, well below any feature [mm]. */
const OFF_PLANE = 1e-3;
const SAMPLES = 12;

/**
 * A point of the result's surface that lies on none of the body's planes is inside the body; if it came with a cutter,
 * that cutter has taken what lies on its own side of it. A face that merely touches lies on one of the body's planes.
 * @param ids - the cutters' originals
 * @returns for each of them, how many of its uses are proven to have cut
 */
export function provenCuts(result: Runs, body: Runs, ids: ReadonlySet<number>): ReadonlyMap<number, number> {
  const planes = planesOf(body);
  const proven = new Map<number, number>();
  result.runOriginalID.forEach((id, run) => {
    if (!ids.has(id)) return;
    const first = result.runIndex[run]! / 3;
    const count = result.runIndex[run + 1]! / 3 - first;
    const step = Math.max(1, Math.floor(count / SAMPLES));
    for (let t = first; t < first + count; t += step) {
      if (onPlane(planes, centre(result, t))) continue;
      proven.set(id, (proven.get(id) ?? 0) + 1);
      return;
    }
  });
  return proven;
}

type Point = readonly [number, number, number];

/** Normal and distance from the origin, four numbers a triangle. */
function planesOf({ vertProperties: p, triVerts }: Runs): Float64Array {
  const planes = new Float64Array((triVerts.length / 3) * 4);
  let length = 0;
  for (let i = 0; i < triVerts.length; i += 3) {
    const [a, b, c] = [3 * triVerts[i]!, 3 * triVerts[i + 1]!, 3 * triVerts[i + 2]!];
    const [ux, uy, uz] = [p[b]! - p[a]!, p[b + 1]! - p[a + 1]!, p[b + 2]! - p[a + 2]!];
    const [vx, vy, vz] = [p[c]! - p[a]!, p[c + 1]! - p[a + 1]!, p[c + 2]! - p[a + 2]!];
    const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const l = Math.sqrt(x * x + y * y + z * z);
    if (l === 0) continue;
    planes[length++] = x / l;
    planes[length++] = y / l;
    planes[length++] = z / l;
    planes[length++] = (x * p[a]! + y * p[a + 1]! + z * p[a + 2]!) / l;
  }
  return planes.subarray(0, length);
}

function onPlane(planes: Float64Array, [x, y, z]: Point): boolean {
  for (let i = 0; i < planes.length; i += 4)
    if (Math.abs(planes[i]! * x + planes[i + 1]! * y + planes[i + 2]! * z - planes[i + 3]!) < OFF_PLANE) return true;
  return false;
}

function centre(mesh: Runs, triangle: number): Point {
  const [a, b, c] = [corner(mesh, 3 * triangle), corner(mesh, 3 * triangle + 1), corner(mesh, 3 * triangle + 2)];
  return [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3];
}

function corner({ vertProperties, triVerts }: Runs, i: number): Point {
  const v = 3 * triVerts[i]!;
  return [vertProperties[v]!, vertProperties[v + 1]!, vertProperties[v + 2]!];
}
