/**
 * Facets without area, which the serializer leaves where it splits an edge at a vertex that lies on it: each is a vertex on
 * the longest side of the facet. Turning that side over gives the neighbour's corner to both halves: same shape, no sliver.
 */

type Point = readonly [number, number, number];
type Facet = [Point, Point, Point];

const HEAD = 84;
const FACET = 50;
/** A facet less high than this over its longest side is a line [mm]. */
const LEAST_HEIGHT = 1e-6;
/** Turning one side over can make the neighbour a sliver in turn; a chain is followed so far. */
const PASSES = 20;

/** @returns the same bytes where there is no such facet; otherwise a copy in which they are turned over, as far as they can be */
export function withoutSlivers(bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  const facets = Array.from({ length: count }, (_, t): Facet => {
    const corner = (c: number): Point => {
      const at = HEAD + FACET * t + 12 + 12 * c;
      return [view.getFloat32(at, true), view.getFloat32(at + 4, true), view.getFloat32(at + 8, true)];
    };
    return [corner(0), corner(1), corner(2)];
  });
  if (!facets.some((facet) => longestSide(facet).sliver)) return bytes;

  const key = (a: Point, b: Point) => `${a.join()}/${b.join()}`;
  const sides = new Map<string, number>();
  const sidesOf = (t: number) => facets[t]!.map((a, i) => key(a, facets[t]![(i + 1) % 3]!));
  const enter = (t: number) => {
    for (const one of sidesOf(t)) sides.set(one, t);
  };
  const leave = (t: number) => {
    for (const one of sidesOf(t)) sides.delete(one);
  };
  for (let t = 0; t < count; t++) enter(t);
  for (let pass = 0; pass < PASSES; pass++) {
    const slivers = facets.flatMap((facet, t) => (longestSide(facet).sliver ? [t] : []));
    if (slivers.length === 0) break;
    for (const t of slivers) {
      const { sliver, from, to, middle } = longestSide(facets[t]!);
      const other = sliver ? sides.get(key(to, from)) : undefined;
      if (other === undefined || other === t) continue;
      const opposite = facets[other]!.find((p) => p.join() !== from.join() && p.join() !== to.join())!;
      // The new side must not exist yet: a third face would meet there.
      if (sides.has(key(middle, opposite)) || sides.has(key(opposite, middle))) continue;
      leave(t);
      leave(other);
      facets[t] = [from, opposite, middle];
      facets[other] = [opposite, to, middle];
      enter(t);
      enter(other);
    }
  }
  return written(bytes, facets);
}

/** The longest side from corner to corner, and the corner off it; a sliver when that lies on the side. */
function longestSide(facet: Facet): { sliver: boolean; from: Point; to: Point; middle: Point } {
  const lengths = facet.map((a, i) => distance(a, facet[(i + 1) % 3]!));
  const i = lengths.indexOf(Math.max(...lengths));
  const [from, to, middle] = [facet[i]!, facet[(i + 1) % 3]!, facet[(i + 2) % 3]!];
  return { sliver: Math.hypot(...normal([from, to, middle])) / lengths[i]! < LEAST_HEIGHT, from, to, middle };
}

function written(bytes: Uint8Array, facets: readonly Facet[]): Uint8Array {
  const out = bytes.slice();
  const view = new DataView(out.buffer, out.byteOffset, out.byteLength);
  facets.forEach((facet, t) => {
    const n = normal(facet);
    const length = Math.hypot(...n) || 1;
    [n.map((v) => v / length), ...facet].flat().forEach((value, i) => {
      view.setFloat32(HEAD + FACET * t + 4 * i, value, true);
    });
  });
  return out;
}

const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

function normal([a, b, c]: Facet): [number, number, number] {
  const [e, f] = [b, c].map((p) => [p[0] - a[0], p[1] - a[1], p[2] - a[2]]) as [number[], number[]];
  return [e[1]! * f[2]! - e[2]! * f[1]!, e[2]! * f[0]! - e[0]! * f[2]!, e[0]! * f[1]! - e[1]! * f[0]!];
}
