/**
 * Closed outlines for the mesher: straight edges and arcs of at most a quarter turn, counter-clockwise, with a mesh size at
 * each corner. From rounded polygons, or from the section of a drawn part.
 */

/** Nearer to the line between its neighbours than this, a point of a section is no corner [mm]. */
const STRAIGHT = 5e-5;
/** Edges of a drawn arc are alike within this, and turn by no more than this [rad]. */
const ALIKE = 0.03;
const TURN_MOST = 0.4;

/**
 * @typedef {readonly [number, number]} Point
 * @typedef {{ from: Point, to: Point, centre: Point | null }} Edge
 */

/**
 * Polygon whose corners may be rounded: fillets where it turns in, half circles as two corners.
 *
 * @param {readonly { at: Point, round?: number }[]} corners - counter-clockwise; round [mm]
 * @returns {Edge[]}
 */
export function roundedPolygon(corners) {
  const n = corners.length;
  const cut = corners.map(({ at, round = 0 }, i) => {
    const before = unit(minus(corners[(i + n - 1) % n].at, at));
    const after = unit(minus(corners[(i + 1) % n].at, at));
    const half = Math.acos(dot(before, after)) / 2;
    const reach = round / Math.tan(half);
    const inward = unit([before[0] + after[0], before[1] + after[1]]);
    return {
      start: plus(at, before, reach),
      end: plus(at, after, reach),
      centre: round > 0 ? plus(at, inward, round / Math.sin(half)) : null,
    };
  });
  const edges = [];
  cut.forEach(({ start, end, centre }, i) => {
    if (centre) edges.push({ from: start, to: end, centre });
    const next = cut[(i + 1) % n].start;
    if (length(minus(next, end)) > 1e-6) edges.push({ from: end, to: next, centre: null });
  });
  return joined(edges);
}

/**
 * A part's section: points on straight lines dropped, chords of circles made arcs again.
 *
 * @param {readonly Point[]} points - counter-clockwise
 * @returns {Edge[]}
 */
export function sectionOutline(points) {
  const corners = fromSharpest(withoutStraight(points));
  const n = corners.length;
  const at = (i) => corners[i % n];
  const chord = (i) => length(minus(at(i + 1), at(i)));
  const edges = [];
  for (let i = 0; i < n; ) {
    let last = i + 1;
    const turn = turnAt(at(i), at(i + 1), at(i + 2));
    if (Math.abs(turn) < TURN_MOST)
      while (last < n && alike(chord(last), chord(i)) && alike(turnAt(at(last - 1), at(last), at(last + 1)), turn))
        last++;
    if (last - i >= 3) {
      // Regular chords of a circle: its radius from a chord and the angle by which it turns.
      const radius = chord(i) / 2 / Math.sin(Math.abs(turn) / 2);
      const way = unit(minus(at(i + 1), at(i)));
      const off = Math.sign(turn) * radius * Math.cos(turn / 2);
      const middle = plus(at(i), way, chord(i) / 2);
      const centre = [middle[0] - way[1] * off, middle[1] + way[0] * off];
      // Arcs of more than a quarter are cut evenly.
      const parts = Math.ceil(((last - i) * Math.abs(turn)) / (Math.PI / 2) - 0.01);
      for (let k = 0; k < parts; k++) {
        const [a, b] = [k, k + 1].map((j) => i + Math.round((j * (last - i)) / parts));
        edges.push({ from: at(a), to: at(b), centre });
      }
    } else {
      last = i + 1;
      edges.push({ from: at(i), to: at(last), centre: null });
    }
    i = last;
  }
  return joined(edges);
}

/** @returns {Edge[]} the outline with a corner at the point, which lies on a straight edge of it */
export function withCorner(edges, point) {
  for (const [i, { from, to, centre }] of edges.entries()) {
    if (centre) continue;
    const way = minus(to, from);
    const share = dot(minus(point, from), way) / dot(way, way);
    const foot = plus(from, way, share);
    if (length(minus(point, foot)) > 1e-3 || share < -1e-6 || share > 1 + 1e-6) continue;
    if (length(minus(foot, from)) < 1e-3 || length(minus(foot, to)) < 1e-3) return edges;
    return edges.toSpliced(i, 1, { from, to: foot, centre: null }, { from: foot, to, centre: null });
  }
  throw new Error(`no straight edge of the outline runs through (${point})`);
}

/** Corners shared to the last digit. */
const joined = (edges) => edges.map((edge, i) => ({ ...edge, to: edges[(i + 1) % edges.length].from }));

function withoutStraight(points) {
  const kept = [...points];
  for (let i = 0; i < kept.length && kept.length > 3; ) {
    const n = kept.length;
    const [a, b, c] = [kept[(i + n - 1) % n], kept[i], kept[(i + 1) % n]];
    const way = minus(c, a);
    const off = Math.abs(cross(way, minus(b, a))) / (length(way) || 1);
    if (off < STRAIGHT) {
      kept.splice(i, 1);
      i = Math.max(0, i - 1);
    } else i++;
  }
  return kept;
}

function fromSharpest(points) {
  const n = points.length;
  const sharpness = points.map((p, i) => Math.abs(turnAt(points[(i + n - 1) % n], p, points[(i + 1) % n])));
  const first = sharpness.indexOf(Math.max(...sharpness));
  return [...points.slice(first), ...points.slice(0, first)];
}

function turnAt(a, b, c) {
  const [p, q] = [minus(b, a), minus(c, b)];
  return Math.atan2(cross(p, q), dot(p, q));
}

const alike = (a, b) => Math.abs(a - b) <= ALIKE * Math.abs(b);
const minus = (a, b) => [a[0] - b[0], a[1] - b[1]];
const plus = (a, way, by) => [a[0] + way[0] * by, a[1] + way[1] * by];
const dot = (a, b) => a[0] * b[0] + a[1] * b[1];
const cross = (a, b) => a[0] * b[1] - a[1] * b[0];
const length = (a) => Math.hypot(a[0], a[1]);
const unit = (a) => {
  const l = length(a);
  return [a[0] / l, a[1] / l];
};
