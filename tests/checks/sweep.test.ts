import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { holds } from '../../src/checks/inside.js';
import { certainlyApart } from '../../src/checks/near.js';
import { makeScene, type Standing } from '../../src/checks/scene.js';
import { volumeInTheWay } from '../../src/checks/sweep.js';
import type { Kit } from '../../src/kit/types.js';
import type { MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { invertRigid, multiply, rotation, translation } from '../../src/solid/matrix.js';
import { IDENTITY, type Matrix, type Vec3 } from '../../src/solid/mesh.js';
import { box, cylinder } from '../../src/solid/shapes.js';
import { part, placement } from './sound-kit.js';

let k: MeasuringKernel;
beforeAll(async () => {
  k = await loadManifoldKernel();
});

const stand = (solid: Solid, matrix: Matrix = IDENTITY): Standing => {
  const kit: Kit = {
    parts: new Map([['it', part('it', solid)]]),
    placements: [placement('it', 'it', matrix)],
    beams: [],
    screws: [],
    fits: [],
    assembly: [],
  };
  return makeScene(kit, k).bodies[0]!.at.level;
};
const leg = (direction: Vec3, travel: number, offset: Vec3 = [0, 0, 0]) => ({ direction, travel, offset });

describe('the way of a part', () => {
  test('meets a block by what of it lies in the way', () => {
    // By hand: 5 × 4 of the way, 2 of the block high.
    const way = volumeInTheWay({
      mover: stand(box(k, [0, 0, 0], [5, 4, 3])),
      leg: leg([0, 0, -1], 20),
      still: stand(box(k, [-9, -9, 10], [9, 9, 12])),
    });
    expect(way).toBeCloseTo(40, 6);
  });

  test('ends where the part stands and starts where it comes from', () => {
    const mover = stand(box(k, [0, 0, 0], [5, 4, 3]));
    const below = stand(box(k, [-9, -9, -2], [9, 9, 0]));
    const above = stand(box(k, [-9, -9, 23], [9, 9, 25]));
    expect(volumeInTheWay({ mover, leg: leg([0, 0, -1], 20), still: below })).toBe(0);
    expect(volumeInTheWay({ mover, leg: leg([0, 0, -1], 20), still: above })).toBe(0);
    expect(volumeInTheWay({ mover, leg: leg([0, 0, -1], 21), still: above })).toBeCloseTo(20, 4);
    expect(volumeInTheWay({ mover, leg: leg([0, 0, -1], 20, [0, 0, -1]), still: below })).toBeCloseTo(20, 4);
  });

  test('takes sliding along walls for no collision, and a nut in its slot for free', () => {
    const slot = k.subtract(box(k, [-10, -10, 0], [10, 10, 10]), [box(k, [-3, -3, 2], [11, 3, 6])]);
    const mover = stand(box(k, [-3, -3, 2], [3, 3, 6]));
    expect(volumeInTheWay({ mover, leg: leg([-1, 0, 0], 16), still: stand(slot) })).toBe(0);
    // Turned about so that it would come through the closed end: 7 long, 6 × 4 across.
    expect(volumeInTheWay({ mover, leg: leg([1, 0, 0], 16), still: stand(slot) })).toBeCloseTo(7 * 24, 0);
  });

  test('sees what a hollow part passes through with its rim only', () => {
    const ring = k.subtract(cylinder(k, { from: [0, 0, 0], to: [0, 0, 5], radius: 8, fit: 'pin' }), [
      cylinder(k, { from: [0, 0, -1], to: [0, 0, 6], radius: 6, fit: 'hole' }),
    ]);
    const mover = stand(ring);
    const post = (x: number) => stand(box(k, [x - 0.5, -0.5, 8], [x + 0.5, 0.5, 12]));
    expect(volumeInTheWay({ mover, leg: leg([0, 0, -1], 20), still: post(0) })).toBe(0);
    expect(volumeInTheWay({ mover, leg: leg([0, 0, -1], 20), still: post(7) })).toBeCloseTo(4, 1);
  });

  test('a way all inside one body of material is blocked', () => {
    const mover = stand(box(k, [4, 4, 4], [6, 6, 6]));
    expect(volumeInTheWay({ mover, leg: leg([0, 1, 0], 1), still: stand(box(k, [0, 0, 0], [10, 10, 10])) })).toBe(4);
  });

  test('lies between the kernel on the hulls of slimmer and of fatter parts, in any direction', () => {
    const turn = fc.double({ min: -3, max: 3, noNaN: true });
    const near = fc.double({ min: -8, max: 8, noNaN: true });
    let met = 0;
    fc.assert(
      fc.property(turn, turn, turn, fc.tuple(near, near, near), (a, b, c, at) => {
        const place = multiply(translation(at), rotation('z', a), rotation('x', b));
        const direction: Vec3 = [Math.cos(c) * Math.cos(a), Math.sin(c) * Math.cos(a), Math.sin(a)];
        const [x, y, z] = direction;
        const start = multiply(translation([-9 * x, -9 * y, -9 * z]), place);
        // A mover and a still block, all faces set out by `more`.
        const mover = (more: number) => box(k, [-2 - more, -3 - more, -1.5 - more], [2 + more, 3 + more, 1.5 + more]);
        const block = (more: number) => box(k, [-4 - more, -5 - more, -3 - more], [4 + more, 5 + more, 3 + more]);
        const exact = (more: number) =>
          k.overlap(k.hull([k.move(mover(more), place), k.move(mover(more), start)]), block(more));
        const sampled = volumeInTheWay({
          mover: stand(mover(0), place),
          leg: leg(direction, 9),
          still: stand(block(0)),
        });
        // A ball of a quarter holds a square of four lines a tenth apart.
        expect(sampled).toBeGreaterThanOrEqual(exact(-0.25) - 1e-3);
        expect(sampled).toBeLessThanOrEqual(exact(0.15) + 1e-3);
        if (sampled > 1) met++;
      }),
      { numRuns: 80 },
    );
    expect(met).toBeGreaterThan(20);
  });
});

describe('trees of triangles', () => {
  const place = fc
    .tuple(...[0, 1, 2, 3, 4, 5].map(() => fc.double({ min: -3, max: 3, noNaN: true })))
    .map(([a, b, x, y, z, c]) =>
      multiply(translation([3 * x!, 3 * y!, 3 * z!]), rotation('z', a!), rotation('x', b!), rotation('y', c!)),
    );
  const shapes = () => ({
    frame: k.subtract(box(k, [-5, -5, -5], [5, 5, 5]), [box(k, [-4, -4, -6], [4, 4, 6])]),
    bead: k.union([box(k, [-1, -1, -1], [1, 1, 1]), box(k, [2, 2, 2], [2.5, 2.5, 2.5])]),
  });

  test('what is certainly apart is apart, by the kernel', () => {
    const { frame, bead } = shapes();
    let apart = 0;
    fc.assert(
      fc.property(place, (m) => {
        const sure = certainlyApart({
          a: stand(frame).shape.tree(),
          b: stand(bead).shape.tree(),
          toA: m,
          toB: invertRigid(m),
          limit: 0.3,
        });
        if (!sure) return;
        apart++;
        const moved = k.move(bead, m);
        expect(k.overlap(frame, moved)).toBe(0);
        expect(k.gap(frame, moved, 0.3)).toBeGreaterThanOrEqual(0.3 - 1e-4);
      }),
      { numRuns: 200 },
    );
    expect(apart).toBeGreaterThan(40);
  });

  test('a piece wholly inside is not apart, in the hole it is', () => {
    const block = stand(box(k, [-5, -5, -5], [5, 5, 5])).shape.tree();
    const { frame, bead } = shapes();
    const both = (a: typeof block) =>
      certainlyApart({ a, b: stand(bead).shape.tree(), toA: IDENTITY, toB: IDENTITY, limit: 0.1 });
    expect(both(block)).toBe(false);
    expect(both(stand(frame).shape.tree())).toBe(true);
  });

  test('points inside, in the hole and outside', () => {
    const tree = stand(shapes().frame).shape.tree();
    expect(holds(tree, [4.5, 0.3, 0.2])).toBe(true);
    expect(holds(tree, [0.1, 0.2, 0.3])).toBe(false);
    expect(holds(tree, [0.1, 0.2, 7])).toBe(false);
    fc.assert(
      fc.property(fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -6, max: 6, noNaN: true }))), (p) => {
        const [x, y, z] = p.map(Math.abs) as [number, number, number];
        const edges = [x, y, z].some((c) => Math.abs(c - 4) < 1e-3 || Math.abs(c - 5) < 1e-3);
        if (edges) return;
        expect(holds(tree, p as unknown as Vec3)).toBe(x < 5 && y < 5 && z < 5 && (x > 4 || y > 4));
      }),
      { numRuns: 300 },
    );
  });
});
