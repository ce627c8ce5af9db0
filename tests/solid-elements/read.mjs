/** What is read off a solved solid: turn of the arm, stress along the faces. */

const NEAR = 1e-4;

/**
 * Rigid motion in the profile's plane that fits the nodes best (least squares).
 *
 * @returns {{ angle: number, moved: (at: readonly [number, number]) => [number, number] }} counter-clockwise [rad]
 */
export function rigidMotion(mesh, state, within) {
  const ids = mesh.nodes.flatMap(({ at }, i) => (within(at) ? [i] : []));
  if (ids.length < 3) throw new Error('too few nodes to read a turn from');
  const mean = (of) => ids.reduce((sum, i) => sum + of(i) / ids.length, 0);
  const from = [0, 1].map((axis) => mean((i) => mesh.nodes[i].at[axis]));
  const by = [0, 1].map((axis) => mean((i) => state.move[i][axis]));
  let [along, across] = [0, 0];
  for (const i of ids) {
    const p = [0, 1].map((axis) => mesh.nodes[i].at[axis] - from[axis]);
    const q = [0, 1].map((axis) => p[axis] + state.move[i][axis] - by[axis]);
    along += p[0] * q[0] + p[1] * q[1];
    across += p[0] * q[1] - p[1] * q[0];
  }
  const angle = Math.atan2(across, along);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const moved = ([x, y]) => {
    const [px, py] = [x - from[0], y - from[1]];
    return [from[0] + by[0] + c * px - s * py, from[1] + by[1] + s * px + c * py];
  };
  return { angle, moved };
}

/** @returns {number} the in-plane principal stress of larger magnitude at a node [MPa] */
export function faceStress([xx, yy, , xy]) {
  const mean = (xx + yy) / 2;
  const radius = Math.hypot((xx - yy) / 2, xy);
  return mean < 0 ? mean - radius : mean + radius;
}

/** @returns {{ middle: number, mean: number }} face stress at a corner of the profile: in the plane of symmetry, and over the width */
export function stressAt(mesh, state, at) {
  const line = mesh.nodes
    .map((node, i) => ({ ...node, stress: faceStress(state.stress[i]) }))
    .filter((node) => Math.hypot(node.at[0] - at[0], node.at[1] - at[1]) < NEAR)
    .sort((a, b) => a.z - b.z);
  if (line.length < 3) throw new Error(`no line of nodes at (${at})`);
  let mean = 0;
  for (let i = 0; i + 2 < line.length; i += 2)
    mean +=
      ((line[i].stress + 4 * line[i + 1].stress + line[i + 2].stress) / 6) *
      ((line[i + 2].z - line[i].z) / line.at(-1).z);
  return { middle: line[0].stress, mean };
}

/** @returns {{ stress: number, at: [number, number], z: number }} largest face stress by magnitude */
export function peakStress(mesh, state, within) {
  let best = { stress: 0, at: [Number.NaN, Number.NaN], z: Number.NaN };
  mesh.nodes.forEach(({ at, z }, i) => {
    if (!within(at)) return;
    const stress = faceStress(state.stress[i]);
    if (Math.abs(stress) > Math.abs(best.stress)) best = { stress, at, z };
  });
  return best;
}
