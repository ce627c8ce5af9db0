/** The project's own figures for a case: the nonlinear solver under the same dead force, and the closed forms. */
import { correctionOf, leafBending, peakFactorsOf } from '../../.build/layout/leaf-figures.js';
import { solveLeafPath } from '../../.build/mechanics/nonlinear/leaf-path.js';
import { along } from '../../.build/mechanics/path.js';

/** Elements per leg and per half circle: converged far below the tolerances. */
const MESH = { straight: 8, halfCircle: 8 };

/**
 * @param {object} task - a case; `ends`: its own end corrections, where it is not drawn as the mounts are
 * @returns the arm's turn by solver, by the solver without corrections, and by closed form [rad]; stress on the two faces in the middle
 * of the first leg, largest stress at a root and at a turn with their factors [MPa]; whether the leaf lies in the fitted range
 */
export function ownFigures({ leaf, path, arm, plastic, force, screw, origin, middle, ends }) {
  const { length, thickness, width } = leaf;
  const figures = { modulus: { value: plastic.modulus }, poisson: { value: plastic.poisson } };
  const bending = leafBending(leaf, figures);
  const peaks = peakFactorsOf(leaf, figures);
  const correction = ends ?? correctionOf(leaf, figures);
  const at = screw.map((value, axis) => value - origin[axis]);
  const solve = (how) =>
    solveLeafPath({
      beam: {
        path,
        thickness,
        width,
        modulus: plastic.modulus,
        poisson: plastic.poisson,
        ...(how && { correction: how }),
        ...(arm && { arm }),
        mesh: MESH,
      },
      load: { at, force: [0, force] },
      steps: [{}],
      stations: true,
    })[0];
  const state = solve(correction);
  const { stations } = state;
  const half = between(stations, length / 2);
  const centre = along(path[0], length / 2);
  const left = [-Math.sin(path[0].heading), Math.cos(path[0].heading)];
  const faces = middle.map((face) => {
    const off = face.reduce((sum, value, axis) => sum + (value - origin[axis] - centre[axis]) * left[axis], 0);
    return off > 0 ? half.left : half.right;
  });
  const larger = (list) => Math.max(0, ...list.flatMap(({ left: a, right: b }) => [Math.abs(a), Math.abs(b)]));
  const turns = peaks.turns.map((factor, turn) => factor * larger(stations.filter((_, i) => arcOf(i, path) === turn)));
  return {
    angle: Math.abs(state.screwFlex),
    bareAngle: Math.abs(solve(undefined).screwFlex),
    closedAngle: (force * leaf.lever) / bending.stiffness,
    middle: faces,
    root: peaks.root * larger([stations[0], stations.at(-1)]),
    turn: Math.max(0, ...turns),
    valid: correction.valid,
  };
}

/** Surface stress after the length s of a straight leg, linear from station to station. */
function between(stations, s) {
  const after = stations.findIndex((station) => station.s > s);
  const [a, b] = [stations[after - 1], stations[after]];
  const share = (s - a.s) / (b.s - a.s);
  return { left: a.left + share * (b.left - a.left), right: a.right + share * (b.right - a.right) };
}

/** Three stations an element, so many elements a stretch. @returns which arc of the path a station lies on; −1: none */
function arcOf(i, path) {
  let element = Math.floor(i / 3);
  let arcs = 0;
  for (const { curvature } of path) {
    const count = curvature === 0 ? MESH.straight : MESH.halfCircle;
    if (element < count) return curvature === 0 ? -1 : arcs;
    element -= count;
    if (curvature !== 0) arcs++;
  }
  return -1;
}
