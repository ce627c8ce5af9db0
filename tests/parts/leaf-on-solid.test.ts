/** The leaf as it stands in the mount's solid, read from sections, against the design that was solved. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { LeafDesign } from '../../src/layout/types.js';
import type { Solid } from '../../src/solid/kernel.js';
import type { Outlines, Vec2 } from '../../src/solid/mesh.js';
import { type Drawn, draw, openWorkshop, shipped, type Workshop } from '../kit/make.js';

const NAMES = ['greenhouse-bench', 'glaze-selector', 'tight-cue-strip'];
let shop: Workshop;
const drawn = new Map<string, Drawn>();
beforeAll(async () => {
  shop = await openWorkshop();
  for (const name of NAMES) drawn.set(name, draw(shop, shipped(name)));
}, 120_000);

/** Where a line u = at (axis 0) or w = at (axis 1) crosses the outlines, ascending. */
function crossings(outlines: Outlines, axis: 0 | 1, at: number): number[] {
  const other = (1 - axis) as 0 | 1;
  return outlines
    .flatMap((points) =>
      points.flatMap((p, i) => {
        const q = points[(i + 1) % points.length]!;
        if (p[axis] < at === q[axis] < at) return [];
        return [p[other] + ((at - p[axis]) / (q[axis] - p[axis])) * (q[other] - p[other])];
      }),
    )
    .sort((a, b) => a - b);
}

/** Profile beside the nut pockets' side, and in the middle, where the screws are. */
const profile = (solid: Solid) => shop.kernel.section(solid, 0.4);
const middle = (solid: Solid, width: number) => shop.kernel.section(solid, width / 2);

/** Faces of material on a plumb line that lie about a leg's middle. */
function leg(outlines: Outlines, u: number, w: number): [number, number] {
  const all = crossings(outlines, 0, u);
  const above = all.findIndex((one) => one > w);
  return [all[above - 1]!, all[above]!];
}

/** Distance of a two-leg fold's centroid behind its root, by hand: legs L at L / 2, a half circle of radius r at L + 2 r / π. */
function centroid({ length: L, legPitch }: LeafDesign): number {
  const r = legPitch / 2;
  return (2 * L * (L / 2) + Math.PI * r * (L + (2 * r) / Math.PI)) / (2 * L + Math.PI * r);
}

describe.each(NAMES)('%s', (name) => {
  const read = () => {
    const { kit, layout } = drawn.get(name)!;
    const { mount, spec } = layout;
    const part = kit.parts.get('tilt-mount')!;
    const [u, w] = mount.origin;
    return { mount, spec, part, leaf: mount.leaf, u, w, rest: profile(part.solid) };
  };

  test('it has two legs: what is measured below holds for them', () => {
    expect(read().leaf).toMatchObject({ layout: 'folded', legs: 2 });
  });

  test('each leg is as thick as solved, all along, and they stand a pitch apart', () => {
    const { leaf, u, w, rest } = read();
    for (const part of [0.35, 0.5, 0.65, 0.95]) {
      const at = u - part * leaf.length;
      const [a, b] = leg(rest, at, w);
      const [c, d] = leg(rest, at, w + leaf.legPitch);
      expect(b - a).toBeCloseTo(leaf.thickness, 3);
      expect(d - c).toBeCloseTo(leaf.thickness, 3);
      expect((c + d - a - b) / 2).toBeCloseTo(leaf.legPitch, 3);
    }
  });

  test('the turn is a half circle: it ends r + t / 2 behind the legs, and is as thick at its crown', () => {
    const { leaf, mount, u, w, rest } = read();
    const r = leaf.legPitch / 2;
    const crown = crossings(rest, 1, w + r).filter((at) => at < u - leaf.length && at > mount.base.rearFrom + 0.01);
    // Chords of .004 off the circle.
    expect(crown).toHaveLength(2);
    expect(crown[0]).toBeCloseTo(u - leaf.length - r - leaf.thickness / 2, 2);
    expect(crown[1]).toBeCloseTo(u - leaf.length - r + leaf.thickness / 2, 2);
  });

  test('the fillet at both roots has the radius that was solved', () => {
    const { leaf, u, w, rest } = read();
    const r = leaf.fillet;
    for (const share of [0.25, 0.5, 0.75]) {
      // A quarter circle tangent to leaf and block: half the root's height at a distance x from the block.
      const x = share * r;
      const half = leaf.thickness / 2 + r - Math.sqrt(r ** 2 - (r - x) ** 2);
      for (const at of [w, w + leaf.legPitch]) {
        const [a, b] = leg(rest, u - x, at);
        // Six chords a quarter: r (1 − cos 7.5°) = .009 r off.
        expect(Math.abs(at - a - half)).toBeLessThan(0.015);
        expect(Math.abs(b - at - half)).toBeLessThan(0.015);
      }
    }
  });

  test('the lever runs from the fold’s centroid to the middle of the screw’s hole', () => {
    const { mount, leaf, part, u } = read();
    const level = middle(part.posed!.level, mount.width);
    // Halfway through the arm's wall above the nut.
    const across = crossings(level, 1, mount.arm.neckTop - 0.5).filter((at) => at < mount.base.rearFrom);
    const hole = across.slice(1, 3) as [number, number];
    expect(hole[1] - hole[0]).toBeCloseTo(2.9, 1); // ISO 273, M2.5, medium
    const screw = (hole[0] + hole[1]) / 2;
    // The arm is drawn level, the fold at rest: its own bend moves the end by hundredths.
    expect(u - centroid(leaf) - screw).toBeCloseTo(leaf.lever, 1);
  });

  test('the arm leans by the bias as printed, stands level at level, and turns by the tilt either way', () => {
    const { mount, leaf, part } = read();
    const slope = (solid: Solid, about: number) => {
      // The seat's top, a quarter and three quarters of the way back from its front; leaned it stands further back.
      const back = Math.sin(about) * (mount.seat.top - mount.origin[1]);
      const top = (u: number) => Math.max(...crossings(profile(solid), 0, u - back));
      const [front, rear] = [-mount.seat.length * 0.25, -mount.seat.length * 0.75];
      return Math.atan2(top(front) - top(rear), front - rear);
    };
    expect(slope(part.solid, leaf.bias)).toBeCloseTo(leaf.bias, 4);
    expect(slope(part.posed!.level, 0)).toBeCloseTo(0, 6);
    expect(slope(part.posed!.highest, leaf.tilt)).toBeCloseTo(leaf.tilt, 4);
    expect(slope(part.posed!.lowest, -leaf.tilt)).toBeCloseTo(-leaf.tilt, 4);
  });

  test('at the lowest beam the chin is still off the post, by the stop’s margin at its lever and no less than a gap prints', () => {
    const { mount, leaf, spec, part } = read();
    const all = crossings(profile(part.posed!.lowest), 0, -0.02);
    const post = all.findLast((w) => w < mount.post.top + 0.01)!;
    const chin = all.find((w) => w > post + 1e-6)!;
    expect(post).toBeCloseTo(mount.post.top, 4);
    expect(chin - post).toBeGreaterThan(spec.printer.machine.gapTolerance.value);
    // The foot is drawn in tenths, upward.
    expect(chin - post).toBeGreaterThan(leaf.stopMargin * leaf.chinLever - 0.02);
    expect(chin - post).toBeLessThan(leaf.stopMargin * leaf.chinLever + 0.15);
  });

  test('one outline at every pose: nothing joins arm and base but the leaf', () => {
    const { part } = read();
    for (const [pose, solid] of [['as printed', part.solid] as const, ...Object.entries(part.posed!)])
      expect(profile(solid), pose).toHaveLength(1);
  });

  test('slots of the profile are open by at least a printed gap, as printed by two lines and more', () => {
    const { part, spec } = read();
    const { gapTolerance, lineWidth } = spec.printer.machine;
    expect(narrowest(profile(part.solid))).toBeGreaterThan(2 * lineWidth.value - 0.01);
    for (const solid of Object.values(part.posed!))
      expect(narrowest(profile(solid))).toBeGreaterThan(gapTolerance.value);
  });
});

/** Narrowest slot: from points along the outline outward to a face that looks back. */
function narrowest(outlines: Outlines): number {
  const edges = outlines.flatMap((points) =>
    points.flatMap((a, i) => {
      const b = points[(i + 1) % points.length]!;
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      // Outer outlines run counter-clockwise: outward is to the right.
      return length < 1e-6 ? [] : [{ a, b, length, out: [(b[1] - a[1]) / length, (a[0] - b[0]) / length] as Vec2 }];
    }),
  );
  let least = Infinity;
  for (const edge of edges)
    for (let k = 0; k < Math.ceil(edge.length / 0.25); k++) {
      const share = (k + 0.5) / Math.ceil(edge.length / 0.25);
      const p = [0, 1].map((i) => edge.a[i]! + share * (edge.b[i]! - edge.a[i]!)) as [number, number];
      let nearest = { far: Infinity, facing: 0 };
      for (const other of edges) {
        if (other === edge) continue;
        const [ex, ey] = [other.b[0] - other.a[0], other.b[1] - other.a[1]];
        const det = edge.out[0] * ey - edge.out[1] * ex;
        if (Math.abs(det) < 1e-12) continue;
        const [qx, qy] = [other.a[0] - p[0], other.a[1] - p[1]];
        const far = (qx * ey - qy * ex) / det;
        const on = (qx * edge.out[1] - qy * edge.out[0]) / det;
        if (far > 1e-6 && on >= 0 && on <= 1 && far < nearest.far)
          nearest = { far, facing: edge.out[0] * other.out[0] + edge.out[1] * other.out[1] };
      }
      if (nearest.facing < -0.8) least = Math.min(least, nearest.far);
    }
  return least;
}
