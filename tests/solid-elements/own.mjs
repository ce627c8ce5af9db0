/** The project's own figures for a case: the nonlinear solver under the same dead force, and the closed forms. */
import { leafBending } from '../../.build/layout/leaf-figures.js';
import { rootFactor } from '../../.build/mechanics/concentration.js';
import { endAllowance, endCorrection, UNCORRECTED } from '../../.build/mechanics/end-correction.js';
import { solveLeafPath } from '../../.build/mechanics/nonlinear/leaf-path.js';
import { along } from '../../.build/mechanics/path.js';

/** Elements per leg and per half circle: converged far below the tolerances. */
const MESH = { straight: 8, halfCircle: 8 };

/**
 * @returns the arm's turn by solver and closed form [rad], stress on the two faces in the middle of the first leg, largest stress at
 * a root with its fillet's factor and at a turn's faces [MPa], largest turn over smallest by what beam theory leaves out
 */
export function ownFigures({ leaf, path, arm, plastic, force, screw, origin, middle }) {
  const { layout, legs, length, thickness, width, fillet } = leaf;
  const figures = { modulus: { value: plastic.modulus }, poisson: { value: plastic.poisson } };
  const bending = leafBending(leaf, figures);
  const kt = rootFactor(layout === 'upright' ? 'upright' : 'in-line', thickness, fillet);
  const at = screw.map((value, axis) => value - origin[axis]);
  const [state] = solveLeafPath({
    beam: {
      path,
      thickness,
      width,
      modulus: plastic.modulus,
      poisson: plastic.poisson,
      correction:
        legs > 1
          ? UNCORRECTED
          : endCorrection({ layout, leaf: { length, thickness, width }, fillet, poisson: plastic.poisson }),
      ...(arm && { arm }),
      mesh: MESH,
    },
    load: { at, force: [0, force] },
    rootFactor: kt,
    steps: [{}],
    stations: true,
  });
  const { stations } = state;
  const half = stations.find(({ s }) => Math.abs(s - length / 2) < 1e-6);
  const centre = along(path[0], length / 2);
  const left = [-Math.sin(path[0].heading), Math.cos(path[0].heading)];
  const faces = middle.map((face) => {
    const off = face.reduce((sum, value, axis) => sum + (value - origin[axis] - centre[axis]) * left[axis], 0);
    return off > 0 ? half.left : half.right;
  });
  const larger = (list) => Math.max(0, ...list.flatMap(({ left: a, right: b }) => [Math.abs(a), Math.abs(b)]));
  const turns = stations.filter((_, i) => stationOnArc(i, path));
  return {
    angle: Math.abs(state.screwFlex),
    closedAngle: (force * leaf.lever) / bending.stiffness,
    middle: faces,
    root: kt * larger([stations[0], stations.at(-1)]),
    turn: larger(turns),
  };
}

/** Three stations an element, so many elements a stretch. */
function stationOnArc(i, path) {
  let element = Math.floor(i / 3);
  for (const { curvature } of path) {
    const count = curvature === 0 ? MESH.straight : MESH.halfCircle;
    if (element < count) return curvature !== 0;
    element -= count;
  }
  return false;
}

/**
 * How much softer than the solid a fold may come out while the solver knows no corrections for it: by a plate that is held all
 * along against curling sideways, 1 / (1 − ν²), and by the fillets as they shorten a straight leaf. A bound, not a fit.
 */
export function foldBound({ leaf, path, plastic }) {
  const whole = path.reduce((sum, { length }) => sum + length, 0);
  const shorter = Math.min(0, endAllowance('in-line', leaf.thickness, leaf.fillet));
  return whole / (whole + shorter) / (1 - plastic.poisson ** 2) - 1;
}
