/** Where a mesh hangs: its undersides that are flatter than the printer can print, and points from which it grows into the air. */
import { disjointSets } from '../../solid/disjoint-sets.js';
import type { Box, Mesh, Outlines, Vec2, Vec3 } from '../../solid/mesh.js';

export interface Underside {
  readonly box: Box;
  /** Free edges: without any it is a pocket's ceiling, with a wall all around it. */
  readonly free: readonly Box[];
  /** Length of its whole rim, as seen from above [mm]. */
  readonly around: () => number;
  /** Its rim as seen from above, where it is one ring or several that don't touch; null otherwise. */
  readonly rim: () => Outlines | null;
  /** As seen from below [mm²]; 0 for a point. */
  readonly area: number;
}

/** Facets of rounded and rotated shapes are a little off [rad]. */
const SLACK = 0.5 * (Math.PI / 180);

/** Flat, but for single precision [mm]. */
const FLAT = 1e-5;

/**
 * @param overhang - largest angle from the vertical [rad] @param above - what lies lower lies on the bed [mm]
 * @returns undersides beyond that angle, each as one with all that touch it
 */
export function undersides(
  mesh: Mesh,
  { overhang, above }: { readonly overhang: number; readonly above: number },
): readonly Underside[] {
  const { positions: p, triangles } = mesh;
  const steepest = -Math.sin(Math.min(overhang + SLACK, Math.PI / 2 - 1e-3));
  const vertices = p.length / 3;
  // Of each vertex: does something lower join it, is it the corner of an underside?
  const lower = new Uint8Array(vertices);
  const under = new Uint8Array(vertices);
  const steep: number[] = [];
  const areas: number[] = [];
  const onSteep = new Uint8Array(vertices);
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i]!;
    const b = triangles[i + 1]!;
    const c = triangles[i + 2]!;
    const za = p[3 * a + 2]!;
    const zb = p[3 * b + 2]!;
    const zc = p[3 * c + 2]!;
    const least = Math.min(za, zb, zc);
    const most = Math.max(za, zb, zc);
    if (za > least) lower[a] = 1;
    if (zb > least) lower[b] = 1;
    if (zc > least) lower[c] = 1;
    if (most <= above) continue;
    const ux = p[3 * b]! - p[3 * a]!;
    const uy = p[3 * b + 1]! - p[3 * a + 1]!;
    const uz = zb - za;
    const vx = p[3 * c]! - p[3 * a]!;
    const vy = p[3 * c + 1]! - p[3 * a + 1]!;
    const vz = zc - za;
    const nz = ux * vy - uy * vx;
    // A flat sliver may be turned over by rounding: it belongs to the ceiling that it lies in.
    const sliver =
      most - least < FLAT && Math.abs(nz) < FLAT * (Math.abs(ux) + Math.abs(uy) + Math.abs(vx) + Math.abs(vy));
    if (!sliver) {
      if (nz >= 0) continue;
      const length = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, nz);
      if (nz > -1e-3 * length) continue;
      under[a] = under[b] = under[c] = 1;
      if (nz >= steepest * length) continue;
    }
    steep.push(i);
    areas.push(-nz / 2);
    onSteep[a] = onSteep[b] = onSteep[c] = 1;
  }
  return [...joined(mesh, { steep, areas, onSteep }), ...points(mesh, { lower, under, onSteep, above })];
}

interface Growing {
  readonly min: [number, number, number];
  readonly max: [number, number, number];
}

/** Steep facets that touch are one underside; its rim is looked at from the facets beyond it. */
function joined(
  { positions: p, triangles }: Mesh,
  {
    steep,
    areas,
    onSteep,
  }: { readonly steep: readonly number[]; readonly areas: readonly number[]; readonly onSteep: Uint8Array },
): readonly Underside[] {
  if (steep.length === 0) return [];
  const vertices = p.length / 3;
  const { join, root } = disjointSets(vertices);
  const isSteep = new Uint8Array(triangles.length / 3);
  // Each side of a steep facet by its two ends, with the facet; sides between two steep ones go out again.
  const rim = new Map<number, number>();
  for (const i of steep) {
    isSteep[i / 3] = 1;
    for (let k = 0; k < 3; k++) {
      const from = triangles[i + k]!;
      const to = triangles[i + (k === 2 ? 0 : k + 1)]!;
      join(from, to);
      if (!rim.delete(to * vertices + from)) rim.set(from * vertices + to, i);
    }
  }
  const regions = new Map<number, { box: Growing; area: number; free: Box[] }>();
  steep.forEach((i, n) => {
    const key = root(triangles[i]!);
    let region = regions.get(key);
    if (!region) {
      const at = corner(p, triangles[i]!);
      region = { box: { min: [...at], max: [...at] }, area: 0, free: [] };
      regions.set(key, region);
    }
    region.area += areas[n]!;
    const { min, max } = region.box;
    for (let k = 0; k < 3; k++)
      for (let j = 0; j < 3; j++) {
        const c = p[3 * triangles[i + k]! + j]!;
        if (c < min[j]!) min[j] = c;
        if (c > max[j]!) max[j] = c;
      }
  });
  // A sliver beside the rim tells nothing: it is taken in, and what lies beyond it is looked at.
  for (let taken = true; taken; ) {
    taken = false;
    for (let i = 0; i < triangles.length; i += 3) {
      if (isSteep[i / 3]) continue;
      for (let k = 0; k < 3; k++) {
        const from = triangles[i + k]!;
        if (!onSteep[from]) continue;
        const to = triangles[i + (k === 2 ? 0 : k + 1)]!;
        if (!onSteep[to]) continue;
        const facet = rim.get(to * vertices + from);
        if (facet === undefined) continue;
        const over = triangles[i + (k === 0 ? 2 : k - 1)]!;
        // Beyond the side the surface goes on below the facet (a wall beside the room beneath), or above it (a free edge).
        if (height(p, triangles, { facet, over }) > 1e-4) continue;
        if (!isSliver(p, [from, to, over])) {
          regions.get(root(from))!.free.push(boxOf([corner(p, from), corner(p, to)]));
          continue;
        }
        isSteep[i / 3] = 1;
        onSteep[over] = 1;
        join(over, from);
        rim.delete(to * vertices + from);
        for (const [a, b] of [
          [over, from],
          [to, over],
        ] as const)
          if (!rim.delete(b * vertices + a)) rim.set(a * vertices + b, facet);
        taken = true;
        break;
      }
    }
  }
  let sides: Map<number, [number, number][]> | null = null;
  const sidesOf = (key: number) => {
    if (!sides) {
      sides = new Map([...regions.keys()].map((region) => [region, []]));
      for (const side of rim.keys()) {
        const from = Math.floor(side / vertices);
        sides.get(root(from))!.push([from, side % vertices]);
      }
    }
    return sides.get(key)!;
  };
  return [...regions]
    .filter(([, { area }]) => area > FLAT)
    .map(([key, { box, area, free }]) => ({
      box,
      area,
      free,
      around: () =>
        sidesOf(key).reduce((sum, [a, b]) => sum + Math.hypot(p[3 * b]! - p[3 * a]!, p[3 * b + 1]! - p[3 * a + 1]!), 0),
      rim: () => {
        return rings(sidesOf(key), (v) => [p[3 * v]!, p[3 * v + 1]!]);
      },
    }));
}

/** Sides put end to end and turned about: facets that look down run clockwise as seen from above. */
function rings(sides: readonly (readonly [number, number])[], at: (vertex: number) => Vec2): Outlines | null {
  const next = new Map(sides);
  if (next.size !== sides.length) return null;
  const found: Vec2[][] = [];
  for (const [start] of sides) {
    const ring: Vec2[] = [];
    for (let v: number | undefined = start; v !== undefined && next.has(v); ) {
      ring.push(at(v));
      const to: number = next.get(v)!;
      next.delete(v);
      v = to;
    }
    if (ring.length > 0) found.push(ring.reverse());
  }
  return found;
}

/** Do three vertices lie on one line, but for rounding? */
function isSliver(p: Float32Array, of: readonly [number, number, number]): boolean {
  const [a, b, c] = of.map((v) => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!]) as [number[], number[], number[]];
  const longest = Math.max(
    ...[
      [a, b],
      [b, c],
      [c, a],
    ].map(([s, t]) => Math.hypot(...s!.map((x, i) => x - t![i]!))),
  );
  const [u, v] = [b.map((x, i) => x - a[i]!), c.map((x, i) => x - a[i]!)];
  const across = Math.hypot(
    u[1]! * v[2]! - u[2]! * v[1]!,
    u[2]! * v[0]! - u[0]! * v[2]!,
    u[0]! * v[1]! - u[1]! * v[0]!,
  );
  return across <= 1e-4 * longest;
}

const corner = (p: Float32Array, v: number): Vec3 => [p[3 * v]!, p[3 * v + 1]!, p[3 * v + 2]!];

function boxOf(points: readonly Vec3[]): Box {
  const bound = (pick: (...values: number[]) => number) =>
    [0, 1, 2].map((k) => pick(...points.map((point) => point[k]!))) as unknown as Vec3;
  return { min: bound(Math.min), max: bound(Math.max) };
}

/** Height of a vertex over a facet, outward [mm]. */
function height(
  p: Float32Array,
  t: Uint32Array,
  { facet, over }: { readonly facet: number; readonly over: number },
): number {
  const a = 3 * t[facet]!;
  const b = 3 * t[facet + 1]!;
  const c = 3 * t[facet + 2]!;
  const ux = p[b]! - p[a]!;
  const uy = p[b + 1]! - p[a + 1]!;
  const uz = p[b + 2]! - p[a + 2]!;
  const vx = p[c]! - p[a]!;
  const vy = p[c + 1]! - p[a + 1]!;
  const vz = p[c + 2]! - p[a + 2]!;
  const v = 3 * over;
  if (Math.max(Math.abs(uz), Math.abs(vz)) < FLAT) return p[a + 2]! - p[v + 2]!;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  return ((p[v]! - p[a]!) * nx + (p[v + 1]! - p[a + 1]!) * ny + (p[v + 2]! - p[a + 2]!) * nz) / Math.hypot(nx, ny, nz);
}

/** Lowest points of undersides that are no flat ones: edges and tips that begin in the air. */
function points(
  { positions: p }: Mesh,
  {
    lower,
    under,
    onSteep,
    above,
  }: { readonly lower: Uint8Array; readonly under: Uint8Array; readonly onSteep: Uint8Array; readonly above: number },
): readonly Underside[] {
  const found: Underside[] = [];
  for (let v = 0; v < under.length; v++) {
    if (!under[v] || lower[v] || onSteep[v] || p[3 * v + 2]! <= above) continue;
    const at = corner(p, v);
    found.push({ box: { min: at, max: at }, free: [{ min: at, max: at }], area: 0, around: () => 0, rim: () => null });
  }
  return found;
}
