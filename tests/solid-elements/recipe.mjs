/**
 * A straight leaf between two blocks, the simplest solid on which the end corrections can be seen.
 *
 * Leaf 10 long, 1 thick, 12 wide, fillets .5; E 3000, ν .36; a force of 2.6 N across the beam, 14 from the leaf's middle.
 * In line (x along the leaf from its root, y across): base block x −6 to 0, y ±3, held on its back and, behind x = −1, on its top
 * and underside; leaf x 0 to 10 at y = 0; arm block x 10 to 34, y ±3; load on the arm's underside at (19, −3).
 * Upright (y along the leaf from its root): leaf x ±.5, y 0 to 10, its outer face x = −.5 flush with both blocks, fillets on the
 * inner face only; base block x −.5 to 24, y −6 to 0, its underside held; arm block x −.5 to 24, y 10 to 16; load at (14, 10).
 * Square blocks give less than the post and arm of a mount, and the upright leaf has fillets on one face only: both have end
 * corrections of their own, fitted to an earlier 18 solid and 15 plane runs of such blocks: dl = t (.81 − 1.2 ρ − .17 ρ²) and
 * t (1.17 − .92 ρ − .20 ρ²), ρ = r/t, m as in the program.
 * The arm's turn is read on its far face, past the load: the arm's own bending is in it, so the beam model gets the same arm. Mesh: .34 along the leaf, a quarter of the radius in the fillets, 2.5 on the blocks.
 */
import { roundedPolygon, withCorner } from './outline.mjs';

const [LENGTH, THICKNESS, WIDTH, FILLET, LEVER] = [10, 1, 12, 0.5, 14];
const HALF = THICKNESS / 2;
const PLASTIC = { modulus: 3000, poisson: 0.36 };
const FORCE = 2.6;
/** 1 + .148897 / (1 + .78 (10/12)^1.7). */
const PLATE = 1.0947;

const body = (layout) => ({
  layout,
  legs: 1,
  length: LENGTH,
  thickness: THICKNESS,
  width: WIDTH,
  legPitch: 0,
  fillet: FILLET,
  lever: LEVER,
});

const common = { width: WIDTH, plastic: PLASTIC, force: FORCE, turn: () => false };

const sizeFrom = (onLeaf) => (at, edge) => {
  if (edge.centre) return FILLET / 4;
  return onLeaf(at) ? 0.34 : 2.5;
};

export function inLineCase() {
  const middle = [-1, 1].map((sign) => [LENGTH / 2, sign * HALF]);
  const screw = [LENGTH / 2 + LEVER, -3];
  const outline = roundedPolygon([
    { at: [-6, -3] },
    { at: [0, -3] },
    { at: [0, -HALF], round: FILLET },
    { at: [LENGTH, -HALF], round: FILLET },
    { at: [LENGTH, -3] },
    { at: [34, -3] },
    { at: [34, 3] },
    { at: [LENGTH, 3] },
    { at: [LENGTH, HALF], round: FILLET },
    { at: [0, HALF], round: FILLET },
    { at: [0, 3] },
    { at: [-6, 3] },
  ]);
  return {
    ...common,
    leaf: body('in-line'),
    ends: { plate: PLATE, length: 0.1675, valid: true },
    path: [{ start: [0, 0], heading: 0, curvature: 0, length: LENGTH }],
    arm: { path: [{ start: [LENGTH, 0], heading: 0, curvature: 0, length: 9 }], thickness: 6 },
    edges: [screw, ...middle, [-1, -3], [-1, 3]].reduce(withCorner, outline),
    size: sizeFrom(([, y]) => Math.abs(y) < HALF + 1e-6),
    fixed: ([x, y]) => x < -6 + 1e-6 || (x < -1 + 1e-6 && Math.abs(y) > 3 - 1e-6),
    screw,
    origin: [0, 0],
    body: ([x]) => x > 34 - 1e-6,
    middle,
    root: ([x, y]) => x > -1 && x < LENGTH + 1 && Math.abs(y) < 1.2,
    // CalculiX 2.20 on bricks of a gmsh mesh by this recipe, an earlier run for this project: angle [°], faces at mid-leaf, peak [MPa].
    known: { angleDeg: 6.603, middle: [18.26, -18.16], peak: 34.7 },
  };
}

export function uprightCase() {
  const middle = [-1, 1].map((sign) => [sign * HALF, LENGTH / 2]);
  const screw = [LEVER, LENGTH];
  const outline = roundedPolygon([
    { at: [-HALF, -6] },
    { at: [24, -6] },
    { at: [24, 0] },
    { at: [HALF, 0], round: FILLET },
    { at: [HALF, LENGTH], round: FILLET },
    { at: [24, LENGTH] },
    { at: [24, LENGTH + 6] },
    { at: [-HALF, LENGTH + 6] },
  ]);
  return {
    ...common,
    leaf: body('upright'),
    ends: { plate: PLATE, length: 0.66, valid: true },
    path: [{ start: [0, 0], heading: Math.PI / 2, curvature: 0, length: LENGTH }],
    arm: { path: [{ start: [0, LENGTH + 3], heading: 0, curvature: 0, length: LEVER }], thickness: 6 },
    edges: [screw, ...middle, [-HALF, 0], [-HALF, LENGTH]].reduce(withCorner, outline),
    size: sizeFrom(([x, y]) => Math.abs(x) < HALF + 1e-6 && y > -1e-6 && y < LENGTH + 1e-6),
    fixed: ([, y]) => y < -6 + 1e-6,
    screw,
    origin: [0, 0],
    body: ([x, y]) => x > 24 - 1e-6 && y > LENGTH - 1e-6,
    middle,
    root: ([x, y]) => y > -1 && y < LENGTH + 1 && Math.abs(x) < 1.2,
    known: { angleDeg: 6.6166, middle: [-16.77, 17.61], peak: 28.8 },
  };
}
