/** Triangles of all items in the assembly's coordinates, less what a cut takes away. */
import { cross } from './vectors.mjs';

/**
 * @param {readonly import('./picture.mjs').Item[]} items
 * @param {import('./picture.mjs').Cut | null} cut
 * @returns corners (nine numbers a triangle), the item each triangle belongs to, unit normals, and the items
 */
export function place(items, cut) {
  const capacity = items.reduce((sum, { soup }) => sum + soup.length / 9, 0) * (cut ? 2 : 1);
  const corners = new Float64Array(9 * capacity);
  const owner = new Uint16Array(capacity);
  let count = 0;
  items.forEach(({ soup, matrix }, item) => {
    for (let t = 0; t < soup.length; t += 9) {
      const points = [0, 3, 6].map((o) => moved(matrix, soup, t + o));
      const kept = cut ? clip(points, cut) : points;
      for (let i = 2; i < kept.length; i++) {
        corners.set([...kept[0], ...kept[i - 1], ...kept[i]], 9 * count);
        owner[count++] = item;
      }
    }
  });
  return {
    corners: corners.subarray(0, 9 * count),
    owner: owner.subarray(0, count),
    normals: normalsOf(corners, count),
    items,
  };
}

function moved(m, soup, o) {
  const [x, y, z] = [soup[o], soup[o + 1], soup[o + 2]];
  if (!m) return [x, y, z];
  return [
    m[0] * x + m[1] * y + m[2] * z + m[3],
    m[4] * x + m[5] * y + m[6] * z + m[7],
    m[8] * x + m[9] * y + m[10] * z + m[11],
  ];
}

/** What of a triangle stays: a polygon of up to four corners, in the same sense. */
function clip(points, { axis, away, at }) {
  const sign = away === '<' ? -1 : 1;
  const out = [];
  points.forEach((p, i) => {
    const q = points[(i + 1) % 3];
    const [dp, dq] = [sign * (p[axis] - at), sign * (q[axis] - at)];
    if (dp <= 0) out.push(p);
    if (dp < 0 !== dq < 0 && dp !== dq) {
      const s = dp / (dp - dq);
      if (s > 0 && s < 1) out.push(p.map((c, j) => c + s * (q[j] - c)));
    }
  });
  return out;
}

function normalsOf(c, count) {
  const normals = new Float32Array(3 * count);
  for (let t = 0, i = 0; t < count; t++, i += 9) {
    const n = cross(
      [c[i + 3] - c[i], c[i + 4] - c[i + 1], c[i + 5] - c[i + 2]],
      [c[i + 6] - c[i], c[i + 7] - c[i + 1], c[i + 8] - c[i + 2]],
    );
    const l = Math.hypot(...n) || 1;
    normals.set([n[0] / l, n[1] / l, n[2] / l], 3 * t);
  }
  return normals;
}
