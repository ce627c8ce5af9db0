/**
 * The kernel on manifold-3d: the only file, with `manifold-profiles.ts` and `manifold-narrow.ts`, that knows it.
 *
 * What it guards against (all observed with 3.5.4): NaN gives an empty solid that reports no error; an empty cutter
 * subtracts nothing in silence; `simplify`, `setTolerance` and a mesh read back in can change the shape, so none of them
 * is used; handles are not collected, so solids live in a scope.
 */
import Module, { type CrossSection, type Manifold, type ManifoldToplevel } from 'manifold-3d';
import { provenCuts } from './cut-proof.js';
import type { MeasuringKernel, Solid } from './kernel.js';
import { narrowPlaces } from './manifold-narrow.js';
import { manifoldProfiles } from './manifold-profiles.js';
import type { Box, Matrix, Mesh, Outlines, Vec3 } from './mesh.js';
import { requireFinite, requireOutlines, requirePositive, requireRigid, toGrid } from './numbers.js';
import { signedArea } from './outlines.js';
import type { Profiles } from './profiles.js';

/** A cutter must take at least this much [mm³]. */
const LEAST_CUT = 1e-6;

/** Largest relative difference between the area drawn and the area enclosed: rounding, not a crossing. */
const CROSSING = 1e-7;

/** How often each original extrusion or revolution is used in a solid. */
type Origins = ReadonlyMap<number, number>;

interface Held {
  readonly handle: Manifold;
  readonly origins: Origins;
  readonly empty: boolean;
  box: Box | null;
}

/** @returns the kernel on a fresh instance of the library */
export async function loadManifoldKernel(): Promise<MeasuringKernel> {
  return (await loadManifold()).kernel;
}

/** @returns the kernel and the 2D operations on one fresh instance of the library */
export async function loadManifold(): Promise<{ readonly kernel: MeasuringKernel; readonly profiles: Profiles }> {
  const library = await Module();
  library.setup();
  const profiles = manifoldProfiles(library);
  return { kernel: manifoldKernel(library, profiles), profiles };
}

function manifoldKernel(library: ManifoldToplevel, profiles: Profiles): MeasuringKernel {
  const { Manifold, CrossSection } = library;
  let arena: Manifold[] = [];

  const held = (solid: Solid) => solid as unknown as Held;

  const keep = (made: Held): Solid => {
    arena.push(made.handle);
    return made as unknown as Solid;
  };

  // The library puts work off until it is asked. Asked at once, a solid that is used twice is worked out once.
  const hold = (what: string, handle: Manifold, origins: Origins): Solid => {
    const solid = keep({ handle, origins, empty: handle.isEmpty(), box: null });
    const status = handle.status();
    if (status !== 'NoError') throw new Error(`${what}: the solid is not valid (${status})`);
    return solid;
  };

  const original = (what: string, outlines: Outlines, make: (section: CrossSection) => Manifold): Solid => {
    const section = new CrossSection(outlines as [number, number][][], 'Positive');
    try {
      const area = section.area();
      if (!(area > 0))
        throw new RangeError(
          `${what}: the outlines enclose no area (outer ones run counter-clockwise, holes clockwise)`,
        );
      // The library makes the best of outlines that cross, in silence; the areas tell.
      const drawn = outlines.reduce((sum, outline) => sum + signedArea(outline), 0);
      if (!(Math.abs(drawn - area) <= CROSSING * area))
        throw new RangeError(
          `${what}: the outlines cross or overlap, or a hole does not run clockwise (${drawn} mm² drawn, ${area} enclosed)`,
        );
      const handle = make(section);
      return hold(what, handle, new Map([[handle.originalID(), 1]]));
    } finally {
      section.delete();
    }
  };

  const boxOf = (solid: Held): Box => {
    solid.box ??= solid.handle.boundingBox();
    return solid.box;
  };

  const overlapOf = (a: Held, b: Held): number => {
    if (distance(boxOf(a), boxOf(b)) > 0) return 0;
    const common = a.handle.intersect(b.handle);
    const volume = common.volume();
    common.delete();
    return volume;
  };

  return {
    extrude(outlines, height) {
      requireOutlines('extrude', outlines);
      requirePositive('extrude: the height', height);
      return original('extrude', outlines, (section) => Manifold.extrude(section, toGrid(height)));
    },

    revolve(outlines, segments) {
      requireOutlines('revolve', outlines);
      if (!(Number.isInteger(segments) && segments >= 3))
        throw new RangeError(`revolve: segments must be a whole number from 3, got ${segments}`);
      for (const outline of outlines)
        for (const [x] of outline) if (x < 0) throw new RangeError(`revolve: the radius ${x} is below 0`);
      return original('revolve', outlines, (section) => Manifold.revolve(section, segments));
    },

    move(solid, matrix) {
      requireRigid('move', matrix);
      // A rigid move keeps a solid valid; put off, several in a row are one.
      const { handle, origins, empty } = held(solid);
      return keep({ handle: handle.transform(columnMajor(matrix)), origins, empty, box: null });
    },

    union(solids) {
      if (solids.length === 0) throw new RangeError('union: nothing to unite');
      const all = solids.map(held);
      all.forEach((one, i) => {
        if (one.empty) throw new RangeError(`union: solid ${i} is empty`);
      });
      return all.length === 1
        ? solids[0]!
        : hold('union', Manifold.union(all.map((one) => one.handle)), countOrigins(all));
    },

    subtract(body, cutters) {
      if (cutters.length === 0) throw new RangeError('subtract: no cutter given');
      const from = held(body);
      const all = cutters.map(held);
      const result = Manifold.difference([from.handle, ...all.map((one) => one.handle)]);
      const origins = countOrigins([from, ...all]);
      const solid = hold('subtract', result, origins);

      // Each use of an original is a run of the mesh of its own: an original with as many proven runs as uses has them
      // all proven. What this leaves open is measured.
      const ids = new Set(all.flatMap((cutter) => [...cutter.origins.keys()]));
      const proven = provenCuts(result.getMesh(), from.handle.getMesh(), ids);
      all.forEach((cutter, i) => {
        for (const id of cutter.origins.keys()) if ((proven.get(id) ?? 0) >= origins.get(id)!) return;
        if (!(overlapOf(from, cutter) > LEAST_CUT)) {
          const { min, max } = boxOf(cutter);
          throw new RangeError(`subtract: cutter ${i} takes nothing away (its box is ${min} to ${max})`);
        }
      });
      return solid;
    },

    intersect(a, b) {
      return hold('intersect', held(a).handle.intersect(held(b).handle), countOrigins([held(a), held(b)]));
    },

    mesh(solid) {
      return meshOf(held(solid).handle);
    },

    volume: (solid) => held(solid).handle.volume(),
    box: (solid) => boxOf(held(solid)),
    genus: (solid) => held(solid).handle.genus(),
    triangleCount: (solid) => held(solid).handle.numTri(),
    overlap: (a, b) => overlapOf(held(a), held(b)),

    gap(a, b, search) {
      requirePositive('gap: the search length', search);
      // The library's cost grows with the search length, so boxes first.
      if (distance(boxOf(held(a)), boxOf(held(b))) >= search) return search;
      return held(a).handle.minGap(held(b).handle, search);
    },

    hull(solids) {
      if (solids.length === 0) throw new RangeError('hull: nothing given');
      const solid = Manifold.hull(solids.map((one) => held(one).handle));
      return hold('hull', solid, new Map([[solid.originalID(), 1]]));
    },

    rayHit(solid, from, to) {
      requireFinite('rayHit: a coordinate', [...from, ...to]);
      return firstHit(held(solid).handle, boxOf(held(solid)), from, to);
    },

    section(solid, z, window) {
      requireFinite('section: the height', [z]);
      const made = [held(solid).handle.slice(z)];
      try {
        if (window) {
          requireOutlines('section: the window', window);
          made.push(new CrossSection(window as [number, number][][], 'Positive'));
          made.push(made[0]!.intersect(made[1]!));
        }
        return made.at(-1)!.toPolygons();
      } finally {
        for (const one of made) one.delete();
      }
    },

    narrow(solid, z, limits) {
      requireFinite('narrow: the height', [z]);
      for (const [name, width] of Object.entries(limits)) requirePositive(`narrow: ${name}`, width);
      const cut = held(solid).handle.slice(z);
      try {
        return narrowPlaces(library, cut, limits);
      } finally {
        cut.delete();
      }
    },

    plane: profiles,

    scope(fn) {
      const outer = arena;
      arena = [];
      try {
        const result = fn();
        const kept = new Set(result.keep.map((solid) => held(solid).handle));
        for (const handle of arena) if (kept.has(handle)) outer.push(handle);
        arena = arena.filter((handle) => !kept.has(handle));
        return result.value;
      } finally {
        for (const handle of arena) handle.delete();
        arena = outer;
      }
    },
  };
}

function countOrigins(solids: readonly Held[]): Origins {
  const count = new Map<number, number>();
  for (const { origins } of solids) for (const [id, n] of origins) count.set(id, (count.get(id) ?? 0) + n);
  return count;
}

/** Distance between two boxes; 0 when they touch or overlap. */
function distance(a: Box, b: Box): number {
  const d = [0, 1, 2].map((i) => Math.max(0, a.min[i]! - b.max[i]!, b.min[i]! - a.max[i]!));
  return Math.hypot(...d);
}

type Sixteen = Parameters<Manifold['transform']>[0];

/** Where axes stay axes, places stay on the grid. */
function columnMajor(m: Matrix): Sixteen {
  const straight = [0, 1, 2, 4, 5, 6, 8, 9, 10].every((i) => m[i] === 0 || Math.abs(m[i]!) === 1);
  const at = (i: number) => (straight && i % 4 === 3 ? toGrid(m[i]!) : m[i]!);
  return [0, 1, 2, 3].flatMap((c) => [0, 1, 2, 3].map((r) => at(4 * r + c))) as Sixteen;
}

function meshOf(handle: Manifold): Mesh {
  const { vertProperties, triVerts, mergeFromVert, mergeToVert } = handle.getMesh();
  const triangles = new Uint32Array(triVerts);
  if (mergeFromVert.length > 0) {
    const to = new Map(Array.from(mergeFromVert, (from, i) => [from, mergeToVert[i]!]));
    triangles.forEach((v, i) => {
      triangles[i] = to.get(v) ?? v;
    });
  }
  return { positions: new Float32Array(vertProperties), triangles };
}

/** The ray is carried on through the solid's box: a first hit on a face's back tells that it began inside. */
function firstHit(handle: Manifold, box: Box, from: Vec3, to: Vec3): Vec3 | null {
  const along: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const length = Math.hypot(...along);
  if (length === 0) throw new RangeError('rayHit: the segment has no length');
  const reach =
    length + Math.hypot(...[0, 1, 2].map((i) => Math.max(box.max[i]! - from[i]!, from[i]! - box.min[i]!, 0)));
  const end = from.map((c, i) => c + (along[i]! * reach) / length) as [number, number, number];
  let first: { readonly at: number; readonly leaving: boolean } | null = null;
  for (const hit of handle.rayCast([...from], end)) {
    const at = hit.distance * reach;
    const facing = hit.normal[0] * along[0] + hit.normal[1] * along[1] + hit.normal[2] * along[2];
    if (first === null || at < first.at) first = { at, leaving: facing > 0 };
  }
  if (first === null) return null;
  if (first.leaving) return from;
  if (first.at > length) return null;
  const share = first.at / length;
  return [from[0] + along[0] * share, from[1] + along[1] * share, from[2] + along[2] * share];
}
