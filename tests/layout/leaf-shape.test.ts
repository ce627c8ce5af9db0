import { describe, expect, test } from 'vitest';
import {
  armMotion,
  centreOfRotation,
  type LeafForm,
  leafAtFlex,
  leafLength,
  leafStrip,
} from '../../src/layout/leaf-shape.js';
import type { Vec2 } from '../../src/solid/mesh.js';
import { rad } from '../../src/units.js';

const inLine: LeafForm = { layout: 'in-line', legs: 1, length: 12.5, thickness: 0.86, legPitch: 0, lever: 16.4 };
const two: LeafForm = { layout: 'folded', legs: 2, length: 7.5, thickness: 1.26, legPitch: 3.2, lever: 18.7 };
const three: LeafForm = { ...two, legs: 3, length: 6.5, legPitch: 2.9 };
const upright: LeafForm = { ...inLine, layout: 'upright', length: 9.5 };
const notch: LeafForm = { ...inLine, layout: 'notch', length: 3.4 };
const forms = { inLine, two, three, upright, notch };
const far = 1e9;

const polyline = (points: readonly Vec2[]) =>
  points.slice(1).reduce((sum, [u, w], i) => sum + Math.hypot(u - points[i]![0], w - points[i]![1]), 0);
const area = (p: readonly Vec2[]) =>
  p.reduce((sum, [u, w], i) => sum + u * p[(i + 1) % p.length]![1] - w * p[(i + 1) % p.length]![0], 0) / 2;

describe('rest shape, by hand', () => {
  test.for([
    { row: 'in-line', form: inLine, end: [-12.5, 0], heading: Math.PI },
    { row: 'two legs', form: two, end: [0, 3.2], heading: 0 },
    { row: 'three legs', form: three, end: [-6.5, 5.8], heading: Math.PI },
    { row: 'upright', form: upright, end: [0, 9.5], heading: Math.PI / 2 },
    { row: 'notch', form: notch, end: [-6.8, 0], heading: Math.PI },
  ])('$row ends at $end', ({ form, end, heading }) => {
    const leaf = leafAtFlex(form, rad(0));
    expect(leaf.end.at[0]).toBeCloseTo(end[0]!, 9);
    expect(leaf.end.at[1]).toBeCloseTo(end[1]!, 9);
    expect(Math.cos(leaf.end.direction - heading)).toBeCloseTo(1, 12);
  });

  test('the turn of a two-leg fold stands half a pitch behind the legs', () => {
    const { points } = leafAtFlex(two, rad(0));
    // The vertex nearest to the turn's rearmost point misses it by no more than the chord error.
    expect(Math.min(...points.map(([u]) => u))).toBeCloseTo(-(7.5 + 1.6), 2);
  });

  test.for([
    { row: 'in-line', form: inLine, want: [-6.25, 0], from: 'middle' },
    // Two legs of 7.5 at -3.75, an arc of pi 1.6 whose centroid stands 2 r / pi past the legs (Pappus).
    {
      row: 'two legs',
      form: two,
      want: [-(15 * 3.75 + Math.PI * 1.6 * (7.5 + 3.2 / Math.PI)) / (15 + Math.PI * 1.6), 1.6],
      from: 'lengths times centroids',
    },
    // The two arcs lie on opposite sides: the centroid is the fold's centre of point symmetry.
    { row: 'three legs', form: three, want: [-3.25, 2.9], from: 'point symmetry' },
    { row: 'upright', form: upright, want: [0, 4.75], from: 'middle' },
    { row: 'notch', form: notch, want: [-3.4, 0], from: 'middle' },
  ])('centre of rotation, $row: $want, $from', ({ form, want }) => {
    const [u, w] = centreOfRotation(form);
    expect(u).toBeCloseTo(want[0]!, 9);
    expect(w).toBeCloseTo(want[1]!, 9);
  });

  test('length: legs and half circles', () => {
    expect(leafLength(three)).toBeCloseTo(3 * 6.5 + 2 * Math.PI * 1.45, 9);
  });
});

describe('flexed', () => {
  // Timoshenko & Gere: a cantilever under an end moment is an arc, x/L = sin ω/ω, y/L = (1 − cos ω)/ω; at ω = π/3
  // .82699334 and .47746483. A lever of 10⁹ mm makes the moment even.
  test('even moment bends a straight leaf into the arc of the textbook', () => {
    const { at } = leafAtFlex({ ...inLine, lever: far }, (Math.PI / 3) as ReturnType<typeof rad>).end;
    expect(at[0] / 12.5).toBeCloseTo(-0.82699334, 7);
    expect(at[1] / 12.5).toBeCloseTo(0.47746483, 7);
  });

  test.for(Object.entries(forms))('%s: the end turns by exactly the flex, the length is kept', ([, form]) => {
    for (const flexDeg of [-2.3, 1.7, 9.1]) {
      const { points, end } = leafAtFlex(form, rad(flexDeg));
      const rest = leafAtFlex(form, rad(0)).end.direction;
      expect(end.direction - rest).toBeCloseTo(-rad(flexDeg), 12);
      expect(end.turn).toBeCloseTo(-rad(flexDeg), 12);
      // The last chord's heading is the end's, to half the turn of one step.
      const [a, b] = points.slice(-2) as [Vec2, Vec2];
      const turned = Math.atan2(b[1] - a[1], b[0] - a[0]) - end.direction;
      expect(Math.abs(Math.sin(turned))).toBeLessThan(0.02);
      // Chords are shorter than arcs by κ² s³ / 24 each: under a thousandth of the whole.
      expect(polyline(points) / leafLength(form)).toBeGreaterThan(0.999);
      expect(polyline(points) / leafLength(form)).toBeLessThanOrEqual(1 + 1e-12);
    }
  });

  test('the sense lowers the beam: the arm’s rear goes up, its front down', () => {
    const { angle, du, dw } = armMotion(inLine, rad(0), rad(6));
    const height = (u: number) => Math.sin(angle) * u + dw;
    expect(height(-30)).toBeGreaterThan(1);
    expect(height(10)).toBeLessThan(-1);
    expect(Number.isFinite(du)).toBe(true);
  });

  test.for(Object.entries(forms))('%s: at a tiny flex under an even moment the pivot is the centroid', ([, form]) => {
    const even = { ...form, lever: far };
    const { angle, du, dw } = armMotion(even, rad(0), rad(1e-4));
    // The fixed point of p = R p + d.
    const c = 1 - Math.cos(angle);
    const s = Math.sin(angle);
    const det = c * c + s * s;
    const [u, w] = centreOfRotation(form);
    expect((c * du - s * dw) / det).toBeCloseTo(u, 4);
    expect((s * du + c * dw) / det).toBeCloseTo(w, 4);
  });

  // Gere & Goodno, Mechanics of Materials, cantilever with end force P and end moment M0: deflection P L³/3EI + M0 L²/2EI, slope P L²/2EI + M0 L/EI.
  // A force at a behind the middle gives, at the end, P and M0 = P (a − L/2).
  test('in-line leaf under the screw’s force: end height over slope as beam tables have it', () => {
    const L = 12.5;
    const m0 = 16.4 - L / 2;
    const want = (L ** 3 / 3 + (m0 * L ** 2) / 2) / (L ** 2 / 2 + m0 * L);
    const { end } = leafAtFlex(inLine, rad(1e-3));
    expect(end.at[1] / rad(1e-3)).toBeCloseTo(want, 6);
  });

  test('a two-leg fold bent there and back: the motions undo each other', () => {
    const there = armMotion(two, rad(1.2), rad(7.4));
    const back = armMotion(two, rad(7.4), rad(1.2));
    const c = Math.cos(back.angle);
    const s = Math.sin(back.angle);
    expect(back.angle).toBeCloseTo(-there.angle, 12);
    expect(c * there.du - s * there.dw + back.du).toBeCloseTo(0, 9);
    expect(s * there.du + c * there.dw + back.dw).toBeCloseTo(0, 9);
  });

  test('a three-leg fold is point symmetric: flexed either way by an even moment, the shapes have the same span', () => {
    const span = (flexDeg: number) => {
      const { end, points } = leafAtFlex({ ...three, lever: far }, rad(flexDeg));
      return Math.hypot(end.at[0] - points[0]![0], end.at[1] - points[0]![1]);
    };
    expect(span(8)).toBeCloseTo(span(-8), 6);
    // A two-leg fold is not: closing it is another shape than opening it.
    const ends = [8, -8].map((flexDeg) => leafAtFlex({ ...two, lever: far }, rad(flexDeg)).end.at);
    expect(Math.abs(Math.hypot(...ends[0]!) - Math.hypot(...ends[1]!))).toBeGreaterThan(0.1);
  });
});

describe('strip', () => {
  test.for(Object.entries(forms).filter(([name]) => name !== 'notch'))(
    '%s: counter-clockwise, its area is length times thickness (Pappus)',
    ([, form]) => {
      for (const flexDeg of [0, 7.3]) {
        const want = (leafLength(form) + 0.1) * form.thickness;
        expect(area(leafStrip(form, rad(flexDeg))) / want).toBeCloseTo(1, 2);
      }
    },
  );

  test('notch: the block less two half discs', () => {
    const block = (2 * 3.4 + 0.1) * (0.86 + 2 * 3.4);
    expect(area(leafStrip(notch, rad(0)))).toBeCloseTo(block - Math.PI * 3.4 ** 2, 1);
  });

  test('chords stand off an arc’s face by no more than .005 mm', () => {
    const { points } = leafAtFlex(three, rad(0));
    const outer = 1.45 + three.thickness / 2;
    const onArc = points.filter(([u]) => u > 1e-9);
    const angle = Math.max(
      ...onArc.slice(1).map((p, i) => Math.hypot(p[0] - onArc[i]![0], p[1] - onArc[i]![1]) / 1.45),
    );
    expect(outer * (1 - Math.cos(angle / 2))).toBeLessThanOrEqual(0.005);
  });
});

test.for([
  [{ ...inLine, thickness: Number.NaN }, 'thickness'],
  [{ ...two, legPitch: 1.2 }, 'legPitch'],
  [{ ...inLine, legs: 2 }, 'one leg'],
] as const)('refuses what can’t be drawn: %j', ([form, word]) => {
  expect(() => leafAtFlex(form, rad(1))).toThrow(word);
});
