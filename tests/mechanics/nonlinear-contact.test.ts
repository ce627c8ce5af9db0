import { describe, expect, test } from 'vitest';
import { frictionAim } from '../../src/mechanics/aim-error.js';
import { foldPath, pathCompliance } from '../../src/mechanics/fold.js';
import {
  BY_ADVANCE,
  BY_ADVANCE_TURN,
  BY_TURN,
  BY_TURN_TURN,
  BY_X,
  BY_X_TURN,
  BY_Y,
  BY_Y_TURN,
  CONTACT_ANSWER,
  type Contact,
  GAP,
  newTouch,
  pinContact,
  SLIDE,
  screwContact,
  touchAt,
  VALUE,
} from '../../src/mechanics/nonlinear/contact.js';
import type { LeafBeam } from '../../src/mechanics/nonlinear/leaf-mesh.js';
import { type LeafPathOptions, solveLeafPath } from '../../src/mechanics/nonlinear/leaf-path.js';
import { pathCentroid } from '../../src/mechanics/path.js';
import { deg, rad } from '../../src/units.js';
import { evenly, off, straight } from './nonlinear-frames.js';

const kinds = (['arm', 'base'] as const).flatMap((screwIn) =>
  (['ball', 'flat'] as const).map((tip) => ({ screwIn, tip })),
);

describe.for(kinds)('screw in the $screwIn with a $tip tip', ({ screwIn, tip }) => {
  const contact = screwContact({ screwIn, tip, at: [7, -2], axis: 1.2, radius: 1.7 });
  const touch = newTouch(contact, [4, 1]);
  const at = (u: number, v: number, turn: number, advance: number) => {
    const answer = new Float64Array(CONTACT_ANSWER);
    touchAt(touch, Float64Array.of(u, v, turn, advance), answer);
    return answer;
  };

  test('touches at rest; advancing by s closes the gap by s', () => {
    expect(at(0, 0, 0, 0)[GAP]).toBeCloseTo(0, 12);
    expect(at(0, 0, 0, 0.3)[GAP]).toBeCloseTo(-0.3, 12);
  });

  test('derivatives, first and second, are the slopes', () => {
    const place = [0.2, -0.4, 0.35, 0.6] as const;
    const step = 1e-5;
    const slope = (axis: number, of: number) => {
      const moved = (by: number) =>
        at(...(place.map((p, i) => (i === axis ? p + by : p)) as [number, number, number, number]));
      return (moved(step)[of]! - moved(-step)[of]!) / (2 * step);
    };
    const have = at(...place);
    for (const of of [GAP, SLIDE]) {
      for (const axis of [0, 1, 2, 3]) expect(slope(axis, of + VALUE)).toBeCloseTo(have[of + BY_X + axis]!, 8);
      for (const [axis, by, second] of [
        [2, BY_X, BY_X_TURN],
        [2, BY_Y, BY_Y_TURN],
        [2, BY_TURN, BY_TURN_TURN],
        [2, BY_ADVANCE, BY_ADVANCE_TURN],
      ] as const)
        expect(slope(axis, of + by)).toBeCloseTo(have[of + second]!, 8);
      // Those that are taken to vanish.
      for (const [axis, by] of [
        [0, BY_X],
        [0, BY_Y],
        [1, BY_Y],
        [3, BY_X],
        [3, BY_Y],
        [3, BY_ADVANCE],
      ] as const)
        expect(slope(axis, of + by)).toBeCloseTo(0, 8);
    }
  });

  test('a ball that rolls on the face does not slide', () => {
    // The arm turns by φ; the ball must come along the face by as much as its rim has turned.
    const turn = 1e-4;
    const answer = at(0, 0, 0, 0);
    const [gu, gv, gt] = [BY_X, BY_Y, BY_TURN].map((i) => answer[GAP + i]!) as [number, number, number];
    const [su, sv, st] = [BY_X, BY_Y, BY_TURN].map((i) => answer[SLIDE + i]!) as [number, number, number];
    // Motion that keeps gap and slide: rolling. Its instant centre is the point of contact.
    const det = gu * sv - gv * su;
    const u = (-gt * sv + gv * st) / det;
    const v = (-gu * st + gt * su) / det;
    const [x, y] = [7 - 4, -2 - 1];
    expect(u * turn - y * turn).toBeCloseTo(0, 12);
    expect(v * turn + x * turn).toBeCloseTo(0, 12);
  });
});

const base = { thickness: 1, width: 12, modulus: 3000, poisson: 0.36, mesh: { straight: 60, halfCircle: 1 } };
const inLine: LeafPathOptions = {
  beam: { ...base, path: [straight([0, 0], 0, 10)], arm: { path: [straight([10, 0], 0, 9)], thickness: 6 } },
  contact: screwContact({ screwIn: 'base', tip: 'ball', at: [19, -3], axis: Math.PI / 2, radius: 1.5 }),
  steps: evenly(1.2, 20).map((advance) => ({ advance })),
};
const upright: LeafPathOptions = {
  ...inLine,
  beam: { ...base, path: [straight([0, 0], Math.PI / 2, 10)], arm: { path: [straight([0, 13], 0, 14)], thickness: 6 } },
  contact: screwContact({ screwIn: 'base', tip: 'ball', at: [14, 10], axis: Math.PI / 2, radius: 1.5 }),
};

// Independent computation for this project with the same theory: E 3000, ν .36, b 12, t 1, l 10, elastic arm 6 × 24, a 14, ball 1.5,
// κ 5/6, 60 elements, 20 steps, screw in the base, travel 1.2. Printed to 7 figures: half a unit of the last one.
describe('contact at 1.2 mm of travel (regression)', () => {
  test.for([
    { row: 'in-line', options: inLine, push: 1.818484, turn: 4.753208, slip: -0.329298 },
    { row: 'upright', options: upright, push: 1.738599, turn: 4.826093, slip: 0.345392 },
  ])('$row: $push N, $turn°, slip $slip', ({ options, push, turn, slip }) => {
    const end = solveLeafPath(options).at(-1)!;
    expect(Math.abs(end.push - push)).toBeLessThan(6e-7);
    expect(Math.abs(deg(end.screwFlex) - turn)).toBeLessThan(6e-7);
    expect(Math.abs(end.slip - slip)).toBeLessThan(6e-7);
  });
});

/** A mount as it is drawn: the screw turns with the arm, drawn tilted by 4°, and its flat tip bears on a pin in the base. */
function mount(legs: number, more: Partial<LeafBeam> = {}): LeafPathOptions {
  const path = foldPath({ legs, length: 9, pitch: 3.2 });
  const [x, y] = pathCentroid(path);
  const contact = pinContact({ pin: [x - 16, y - 5], radius: 1.5, through: [x - 16, y], axis: rad(4) - Math.PI / 2 });
  const beam = {
    path,
    thickness: 1.1,
    width: 11.5,
    modulus: 2300,
    poisson: 0.37,
    mesh: { straight: 2, halfCircle: 2 },
    ...more,
  };
  return { beam, contact, steps: evenly(2, 20).map((advance) => ({ advance })) };
}

describe.for([1, 2, 3])('the mount’s own screw, %i legs', (legs) => {
  test('turning the screw in raises the screw’s end and lowers the beam', () => {
    const states = solveLeafPath(mount(legs));
    for (const [i, { flex, pose, force }] of states.entries()) {
      expect(flex).toBeGreaterThan(i === 0 ? 0 : states[i - 1]!.flex);
      // The base arm lies below, the beam's side at +x: clockwise lowers it.
      expect(pose.angle).toBe(-flex);
      expect(force).toBeGreaterThan(0);
    }
  });

  test('every energy accounted for: the thrust’s work is what the leaf stores', () => {
    const count = 40;
    const states = solveLeafPath({ ...mount(legs), steps: evenly(2, count).map((advance) => ({ advance })) });
    // Simpson's rule: exact to h⁴ on so smooth a curve.
    const work =
      states.reduce((sum, { force }, i) => sum + force * (i === count - 1 ? 1 : i % 2 ? 2 : 4), 0) * (2 / count / 3);
    expect(off(work, states.at(-1)!.energy)).toBeLessThan(1e-7);
  });

  test('with friction the work is stored or turned to heat', () => {
    const count = 400;
    const states = solveLeafPath({
      ...mount(legs),
      friction: 0.3,
      steps: evenly(2, count).map((advance) => ({ advance })),
    });
    const work = states.reduce((sum, { force }, i) => sum + force * (i === count - 1 ? 0.5 : 1), 0) * (2 / count);
    const end = states.at(-1)!;
    expect(end.heat).toBeGreaterThan(1e-3 * end.energy);
    // Steps are finite where sticking gives way to sliding: first order there.
    expect(off(work, end.energy + end.heat)).toBeLessThan(2e-4);
  });

  test('a flex asked for is reached, by the advance that reaches it', () => {
    const states = solveLeafPath(mount(legs));
    const [flex, advance] = [states[13]!.flex, states[13]!.advance];
    const found = solveLeafPath({ ...mount(legs), steps: [{ flex: flex / 2 }, { flex }] }).at(-1)!;
    expect(found.flex).toBeCloseTo(flex, 12);
    expect(found.advance).toBeCloseTo(advance, 9);
    expect(found.force).toBeCloseTo(states[13]!.force, 8);
  });

  test('one step or twenty: no friction, no memory', () => {
    const whole = solveLeafPath({ ...mount(legs), steps: [{ advance: 2 }] })[0]!;
    const last = solveLeafPath(mount(legs)).at(-1)!;
    expect(whole.flex).toBeCloseTo(last.flex, 9);
    expect(whole.maxStrain).toBeCloseTo(last.maxStrain, 10);
  });

  // Dimensional analysis: geometry fixes angle and strain; forces go with E b; all lengths tripled, with E b t⁰ … F ∝ E L².
  test('scaling: modulus and width scale the forces alone, size scales lengths', () => {
    const end = solveLeafPath(mount(legs)).at(-1)!;
    const stout = solveLeafPath(mount(legs, { modulus: 2300 * 1.7, width: 11.5 * 0.8 })).at(-1)!;
    expect(stout.flex).toBeCloseTo(end.flex, 10);
    expect(stout.maxStrain).toBeCloseTo(end.maxStrain, 12);
    expect(off(stout.force, end.force * 1.7 * 0.8)).toBeLessThan(1e-9);
    expect(off(stout.maxStress, end.maxStress * 1.7)).toBeLessThan(1e-9);
    const small = mount(legs);
    const { centre, face, radius } = small.contact!;
    const big: LeafPathOptions = {
      beam: {
        ...small.beam,
        thickness: 3.3,
        width: 34.5,
        path: foldPath({ legs, length: 27, pitch: 9.6 }),
      },
      contact: {
        ...small.contact!,
        centre: [3 * centre[0], 3 * centre[1]],
        face: [3 * face[0], 3 * face[1]],
        radius: 3 * radius,
      },
      steps: evenly(6, 20).map((advance) => ({ advance })),
    };
    const tripled = solveLeafPath(big).at(-1)!;
    expect(tripled.flex).toBeCloseTo(end.flex, 10);
    expect(tripled.maxStrain).toBeCloseTo(end.maxStrain, 10);
    expect(off(tripled.force, 9 * end.force)).toBeLessThan(1e-8);
    expect(off(tripled.slip, 3 * end.slip)).toBeLessThan(1e-6);
  });

  test('seen in a mirror everything is the same', () => {
    const { beam, contact, steps } = mount(legs);
    const flip = ([x, y]: readonly [number, number]): [number, number] => [-x, y];
    const path = beam.path.map(({ start, heading, curvature, length }) => ({
      start: flip(start),
      heading: Math.PI - heading,
      curvature: -curvature,
      length,
    }));
    const other: Contact = {
      ...contact!,
      centre: flip(contact!.centre),
      face: flip(contact!.face),
      normal: flip(contact!.normal),
      axis: flip(contact!.axis),
    };
    const end = solveLeafPath({ beam, contact: contact!, steps, friction: 0.2 }).at(-1)!;
    const seen = solveLeafPath({ beam: { ...beam, path }, contact: other, steps, friction: 0.2 }).at(-1)!;
    expect(seen.flex).toBeCloseTo(end.flex, 11);
    expect(seen.pose.angle).toBeCloseTo(-end.pose.angle, 11);
    expect(seen.slip).toBeCloseTo(-end.slip, 9);
    expect(seen.maxStress).toBeCloseTo(end.maxStress, 8);
  });
});

describe('small flex: the closed forms', () => {
  // Castigliano on the true path with a thin leaf, so that shear, stretching and the turns' own thickness are small (2e-4 together).
  test.for([1, 2, 3])('%i legs: force per advance and turn per advance', (legs) => {
    const options = mount(legs, { thickness: 0.2, shearFactor: Infinity });
    const path = options.beam.path;
    // The pin pushes where it touches, against the tip's normal: up and to the side.
    const { centre, normal } = options.contact!;
    const [nx, ny] = [-normal[0], -normal[1]];
    const at = [centre[0] + 1.5 * nx, centre[1] + 1.5 * ny] as const;
    const c = pathCompliance(path, { width: 11.5, thickness: 0.2, modulus: 2300 }, { at });
    const along = nx * nx * c.xx + 2 * nx * ny * c.xy + ny * ny * c.yy;
    const turn = nx * c.xm + ny * c.ym;
    const advance = 1e-4;
    const [state] = solveLeafPath({ ...options, steps: [{ advance }] });
    expect(off(state!.force, advance / along)).toBeLessThan(1e-3);
    expect(off(state!.pose.angle, (advance * turn) / along)).toBeLessThan(1e-3);
  });

  // Coulomb friction holds the arm off by μF (c_xm − c_ym c_xy / c_yy) either way; the closed form takes the tip's height as held.
  test('friction’s dead band: half the difference between turning in and backing off', () => {
    const path = [straight([0, 0], 0, 10)];
    const thin = { path, thickness: 1, width: 12, modulus: 3000, poisson: 0.36, shearFactor: Infinity };
    // A screw in the base with a point of no radius: the friction acts at the pad.
    const contact = screwContact({ screwIn: 'base', tip: 'ball', at: [19, -3], axis: Math.PI / 2, radius: 0 });
    const advance = 0.05;
    const there = { beam: thin, contact, friction: 0.3, steps: [{ advance }] };
    const [inward] = solveLeafPath(there);
    const back = solveLeafPath({ ...there, steps: [{ advance: advance + 0.05 }, { advance }] }).at(-1)!;
    expect(inward!.rub * back.rub).toBeLessThan(0);
    const force = (inward!.force + back.force) / 2;
    const c = pathCompliance(path, { width: 12, thickness: 1, modulus: 3000 }, { at: [19, -3] });
    const want = frictionAim(c, force, 0.3);
    // Stretching, and 1/6° of flex: 2 %.
    expect(off(Math.abs(inward!.flex - back.flex) / 2, want)).toBeLessThan(0.02);
  });
});

describe('release', () => {
  const options = mount(2);
  // Down at the front: it turns the arm in the sense in which the screw does.
  const load = { at: [6, 4], force: [0, -3] } as const;

  test('backed off past where it touched, the screw leaves its pin and pushes no more', () => {
    const [on, off1, off2, again] = solveLeafPath({
      ...options,
      steps: [{ advance: 0.5 }, { advance: -0.2 }, { advance: -0.7 }, { advance: 0.5 }],
    });
    expect(on!.touching).toBe(true);
    for (const [state, gap] of [
      [off1!, 0.2],
      [off2!, 0.7],
    ] as const) {
      expect(state.touching).toBe(false);
      expect(state.force).toBe(0);
      expect(state.gap).toBeCloseTo(gap, 9);
      expect(state.energy).toBeCloseTo(0, 15);
      expect(state.maxStress).toBeCloseTo(0, 8);
    }
    expect(again!.force).toBeCloseTo(on!.force, 9);
  });

  test('a load that outweighs the preload lifts the screw off, a smaller one takes from its push', () => {
    const steps = evenly(1, 40).map((share) => ({ load: share }));
    const states = solveLeafPath({ ...options, load, steps: [{ advance: 0.6, load: 0 }, ...steps] });
    const lifted = states.findIndex(({ touching }) => !touching);
    expect(lifted).toBeGreaterThan(3);
    expect(states.slice(lifted).every(({ touching, gap }) => !touching && gap >= 0)).toBe(true);
    for (const [i, { push }] of states.slice(1, lifted).entries()) expect(push).toBeLessThan(states[i]!.push);
    // Statics: where the screw does not touch, the leaf is bent by the load alone; before, that would leave it too low.
    const free = solveLeafPath({ beam: options.beam, load, steps });
    for (const [i, { touching, pose }] of states.slice(1).entries()) {
      if (!touching) expect(pose.angle).toBeCloseTo(free[i]!.pose.angle, 9);
      else expect(pose.angle).toBeLessThan(free[i]!.pose.angle);
    }
  });

  test('a flex that only a pull would hold is refused, one without a screw too', () => {
    expect(() => solveLeafPath({ ...options, steps: [{ flex: 0.05 }, { flex: -0.05 }] })).toThrow('pulling');
    expect(() => solveLeafPath({ beam: options.beam, steps: [{ flex: 0.05 }] })).toThrow('without a screw');
    expect(() => solveLeafPath({ ...options, friction: -0.1 })).toThrow('friction');
  });
});

describe('friction’s memory', () => {
  const options = { ...mount(1), friction: 0.3 };
  test('sliding rubs with μ times the push; reversed, it sticks first and then rubs the other way', () => {
    const turns = [...evenly(1.5, 15), 1.499, 1.3, 1].map((advance) => ({ advance }));
    const states = solveLeafPath({ ...options, steps: turns });
    const [deep, stuck, , back] = states.slice(14);
    expect(Math.abs(deep!.rub)).toBeCloseTo(0.3 * deep!.push, 9);
    expect(Math.abs(stuck!.rub)).toBeLessThan(0.3 * stuck!.push);
    expect(back!.rub * deep!.rub).toBeLessThan(0);
    expect(Math.abs(back!.rub)).toBeCloseTo(0.3 * back!.push, 9);
    // No step gives heat back.
    for (const [i, { heat }] of states.slice(1).entries()) expect(heat).toBeGreaterThanOrEqual(states[i]!.heat);
  });
});
