/** The project's own leaf shapes: what the nonlinear solver makes of what is drawn. */
import { describe, expect, test } from 'vitest';
import { correctionOf, leafBending } from '../../src/layout/leaf-figures.js';
import { armMotion, centreOfRotation, type LeafForm, leafPath } from '../../src/layout/leaf-shape.js';
import { plastics } from '../../src/materials/index.js';
import { pinContact } from '../../src/mechanics/nonlinear/contact.js';
import { type LeafPathOptions, solveLeafPath } from '../../src/mechanics/nonlinear/leaf-path.js';
import { notchThickness } from '../../src/mechanics/nonlinear/notch-thickness.js';
import { notchStrain } from '../../src/mechanics/notch.js';
import { type Rad, rad } from '../../src/units.js';
import { evenly, off } from './nonlinear-frames.js';

const inLine: LeafForm = { layout: 'in-line', legs: 1, length: 12.5, thickness: 0.86, legPitch: 0, lever: 16.4 };
const two: LeafForm = { layout: 'folded', legs: 2, length: 7.5, thickness: 1.26, legPitch: 3.2, lever: 18.7 };
const three: LeafForm = { ...two, legs: 3, length: 6.5, legPitch: 2.9 };
const upright: LeafForm = { ...inLine, layout: 'upright', length: 9.5 };
const notch: LeafForm = { ...inLine, layout: 'notch', length: 3.4 };
const forms = { inLine, two, three, upright, notch };
const width = 11.5;
const plastic = plastics.petg;

/** The mount: screw at the lever behind the leaf's centre, upright when the arm is level at `bias`. */
function mount(form: LeafForm, bias: Rad = rad(4)): LeafPathOptions {
  const [u, w] = centreOfRotation(form);
  return {
    beam: {
      path: leafPath(form),
      thickness: form.layout === 'notch' ? notchThickness(form.length, form.thickness) : form.thickness,
      width,
      modulus: plastic.modulus.value,
      poisson: plastic.poisson.value,
      correction: correctionOf({ ...form, width, fillet: 0.5 }, plastic),
    },
    contact: pinContact({
      pin: [u - form.lever, w - 4],
      radius: 1.5,
      through: [u - form.lever, w],
      axis: bias - Math.PI / 2,
    }),
    steps: [],
  };
}

describe.for(Object.entries(forms))('%s', ([, form]) => {
  const body = { ...form, width, fillet: 0.5 };
  const small = 1e-4;

  // Castigliano with the end corrections: bending only. Shear (E/G · t²/l² or so) and, on a fold, the turns' own thickness make the
  // difference: 2 % straight, 7 % on a tight fold, whose turns are stiffer by 1 / (12 e R / t²).
  test('a small flex: thrust and strain as the closed forms have them', () => {
    const [state] = solveLeafPath({ ...mount(form, rad(0)), steps: [{ flex: small }] });
    const closed = leafBending(body, plastic);
    const slack = form.legs > 1 ? 0.07 : 0.02;
    expect(off(state!.force * form.lever, closed.stiffness * small)).toBeLessThan(slack);
    expect(off(state!.maxStrain, closed.strain * small)).toBeLessThan(form.legs > 1 ? 0.03 : 0.06);
  });

  test('turning the screw in lowers the beam, and the arm moves as it is drawn, within .05 mm at 8°', () => {
    const [state] = solveLeafPath({ ...mount(form), steps: [{ flex: rad(8) }] });
    const { pose } = state!;
    const drawn = armMotion(form, rad(0), rad(8));
    expect(pose.angle).toBeCloseTo(drawn.angle, 12);
    // Where it matters: over the leaf, within a few mm of it.
    for (const [u, w] of [
      [0, 5],
      [-12, 5],
    ] as const) {
      const at = (m: { angle: number }, du: number, dw: number) => [
        Math.cos(m.angle) * u - Math.sin(m.angle) * w + du,
        Math.sin(m.angle) * u + Math.cos(m.angle) * w + dw,
      ];
      const [x, y] = at(pose, pose.dx, pose.dy) as [number, number];
      const [x1, y1] = at(drawn, drawn.du, drawn.dw) as [number, number];
      expect(Math.hypot(x - x1, y - y1)).toBeLessThan(0.05);
    }
  });

  test('the fewest elements hold .1 % against a fine mesh in advance, thrust and strain', () => {
    const options = {
      ...mount(form),
      friction: plastic.friction.value,
      steps: evenly(rad(8), 10).map((flex) => ({ flex })),
    };
    const few = solveLeafPath(options);
    const many = solveLeafPath({ ...options, beam: { ...options.beam, mesh: { straight: 48, halfCircle: 24 } } });
    for (const [i, state] of few.entries())
      for (const key of ['advance', 'force', 'maxStrain'] as const)
        expect(off(state[key], many[i]![key]), `${key} ${i}`).toBeLessThan(1e-3);
  });
});

// Paros & Weisbord's stiffness with σ = 6 M / (b t²): nominal, at the thinnest place.
test('a notch is most strained where it is thinnest', () => {
  const [state] = solveLeafPath({ ...mount(notch, rad(0)), steps: [{ flex: rad(1) }], stations: true });
  const worst = state!.stations!.reduce((a, b) => (Math.abs(b.right) > Math.abs(a.right) ? b : a));
  expect(worst.s).toBeCloseTo(notch.length, 1);
  expect(off(state!.maxStrain, notchStrain({ radius: 3.4, thickness: 0.86, width }, rad(1)))).toBeLessThan(0.03);
});

test('a straight leaf needs more force the thicker it is, by the cube', () => {
  const thrust = (thickness: number) =>
    solveLeafPath({ ...mount({ ...two, thickness }), steps: [{ flex: rad(5) }] })[0]!.force;
  // Shear and the turns' thickness take a little off the cube, 1.26/.86 = 1.4651.
  expect(off(thrust(1.26) / thrust(0.86), 1.4651 ** 3)).toBeLessThan(0.05);
});
