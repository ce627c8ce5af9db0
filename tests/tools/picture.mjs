/**
 * Shaded pictures of triangles, to judge parts by eye: parallel projection, z-buffer, flat shading, dark lines where the
 * surface has an edge. Closed solids only: where a section plane cuts one, the inside of its far wall is painted as the cut.
 */

/**
 * @typedef {readonly [number, number, number]} Vec3
 * @typedef {{ readonly soup: Float32Array, readonly matrix?: readonly number[], readonly colour: Vec3 }} Item
 *   Nine numbers a triangle; a rigid row-major matrix; red, green and blue from 0 to 255.
 * @typedef {{ readonly axis: 0 | 1 | 2, readonly at: number }} Section
 * @typedef {{ readonly toEye?: Vec3, readonly size?: readonly [number, number], readonly section?: Section | null, readonly focus?: readonly Item[] }} View
 */

/** Directions from the thing to the eye. */
export const VIEWS = {
  'iso-front': [-0.6, -1, 0.8],
  'iso-back': [0.6, 1, 0.8],
  'iso-right': [1, -0.6, 0.8],
  'iso-left': [-1, 0.6, 0.8],
  'iso-below': [-0.6, -1, -0.8],
  'iso-below-back': [0.6, 1, -0.8],
  top: [0, 0, 1],
  below: [0, 0, -1],
  near: [0, -1, 0],
  far: [0, 1, 0],
  left: [-1, 0, 0],
  right: [1, 0, 0],
};

const SAMPLES = 2;
const MARGIN = 0.05;
const BACKGROUND = [250, 250, 248];
/** Surfaces that meet at more than this are told apart by a line: cosine of 20°. */
const CREASE = 0.94;

/**
 * @param {readonly Item[]} items
 * @param {View} view
 * @returns {{ width: number, height: number, rgb: Uint8Array }}
 */
export function picture(items, { toEye = VIEWS['iso-front'], size = [1200, 900], section = null, focus = items } = {}) {
  const [width, height] = size;
  const axes = cameraAxes(toEye);
  const world = place(items, section, axes[2]);
  const frame = fit(focus === items ? world : place(focus, section, axes[2]), axes, size);
  const buffers = rasterize(world, {
    axes,
    frame,
    width: width * SAMPLES,
    height: height * SAMPLES,
    capped: section !== null,
  });
  return { width, height, rgb: shrink(shade(world, buffers, axes, section), width, height) };
}

/** Right, up and towards the eye. */
function cameraAxes(toEye) {
  const z = unit(toEye);
  const up = Math.abs(z[2]) > 0.99 ? [0, 1, 0] : [0, 0, 1];
  const x = unit(cross(up, z));
  return [x, cross(z, x), z];
}

/** All triangles in the assembly's coordinates, those in front of the section plane cut away. */
function place(items, section, toEye) {
  const capacity = items.reduce((sum, { soup }) => sum + soup.length / 9, 0) * (section ? 2 : 1);
  const corners = new Float64Array(9 * capacity);
  const owner = new Uint16Array(capacity);
  let count = 0;
  // The half that hides the cut is taken off.
  const sign = section && toEye[section.axis] < 0 ? -1 : 1;
  items.forEach(({ soup, matrix: m }, item) => {
    for (let t = 0; t < soup.length; t += 9) {
      const points = [0, 3, 6].map((o) => {
        const [x, y, z] = [soup[t + o], soup[t + o + 1], soup[t + o + 2]];
        if (!m) return [x, y, z];
        return [
          m[0] * x + m[1] * y + m[2] * z + m[3],
          m[4] * x + m[5] * y + m[6] * z + m[7],
          m[8] * x + m[9] * y + m[10] * z + m[11],
        ];
      });
      const kept = section ? clip(points, section, sign) : points;
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

function clip(points, { axis, at }, sign) {
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

function fit({ corners }, [x, y], [width, height]) {
  let [l, r, b, t] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < corners.length; i += 3) {
    const u = x[0] * corners[i] + x[1] * corners[i + 1] + x[2] * corners[i + 2];
    const v = y[0] * corners[i] + y[1] * corners[i + 1] + y[2] * corners[i + 2];
    [l, r, b, t] = [Math.min(l, u), Math.max(r, u), Math.min(b, v), Math.max(t, v)];
  }
  if (!(r > l)) throw new Error('nothing to show: every item is hidden or cut away');
  const scale = (1 - 2 * MARGIN) * Math.min(width / (r - l), height / (t - b));
  return { scale: scale * SAMPLES, u: (l + r) / 2, v: (b + t) / 2 };
}

/** For each sample the depth and the triangle seen, −1 where there is none. */
function rasterize({ corners, owner }, { axes: [ax, ay, az], frame, width, height, capped }) {
  const depth = new Float32Array(width * height).fill(-Infinity);
  const seen = new Int32Array(width * height).fill(-1);
  const px = new Float64Array(3);
  const py = new Float64Array(3);
  const pz = new Float64Array(3);
  for (let t = 0; t < owner.length; t++) {
    for (let k = 0; k < 3; k++) {
      const i = 9 * t + 3 * k;
      const [x, y, z] = [corners[i], corners[i + 1], corners[i + 2]];
      px[k] = width / 2 + (ax[0] * x + ax[1] * y + ax[2] * z - frame.u) * frame.scale;
      py[k] = height / 2 - (ay[0] * x + ay[1] * y + ay[2] * z - frame.v) * frame.scale;
      pz[k] = az[0] * x + az[1] * y + az[2] * z;
    }
    const doubled = (px[1] - px[0]) * (py[2] - py[0]) - (px[2] - px[0]) * (py[1] - py[0]);
    // Rows run downward, so a face towards the eye turns the other way about; faces from behind show only in a cut.
    if (doubled === 0 || (doubled > 0 && !capped)) continue;
    const dx = ((pz[1] - pz[0]) * (py[2] - py[0]) - (pz[2] - pz[0]) * (py[1] - py[0])) / doubled;
    const dy = ((pz[2] - pz[0]) * (px[1] - px[0]) - (pz[1] - pz[0]) * (px[2] - px[0])) / doubled;
    const first = Math.max(0, Math.ceil(Math.min(py[0], py[1], py[2]) - 0.5));
    const last = Math.min(height - 1, Math.floor(Math.max(py[0], py[1], py[2]) - 0.5));
    for (let row = first; row <= last; row++) {
      const y = row + 0.5;
      let from = Infinity;
      let to = -Infinity;
      for (let k = 0; k < 3; k++) {
        const j = (k + 1) % 3;
        if (py[k] <= y === py[j] <= y) continue;
        const x = px[k] + ((y - py[k]) * (px[j] - px[k])) / (py[j] - py[k]);
        if (x < from) from = x;
        if (x > to) to = x;
      }
      const end = Math.min(width - 1, Math.ceil(to - 0.5) - 1);
      for (let column = Math.max(0, Math.ceil(from - 0.5)); column <= end; column++) {
        const z = pz[0] + dx * (column + 0.5 - px[0]) + dy * (y - py[0]);
        const at = row * width + column;
        if (z > depth[at]) {
          depth[at] = z;
          seen[at] = t;
        }
      }
    }
  }
  return { depth, seen, width, height, scale: frame.scale };
}

function shade({ normals, owner, items }, { depth, seen, width, height, scale }, [ax, ay, az], section) {
  const light = unit([0, 1, 2].map((i) => az[i] + 0.45 * ay[i] - 0.5 * ax[i]));
  const rgb = new Uint8Array(3 * width * height);
  const towards = (t) => normals[3 * t] * az[0] + normals[3 * t + 1] * az[1] + normals[3 * t + 2] * az[2];
  const isCut = (t) => section !== null && towards(t) < 0;
  const line = (at, to) => {
    const [ta, tb] = [seen[at], seen[to]];
    if (ta === tb) return false;
    if (ta < 0 || tb < 0) return true;
    const [ca, cb] = [isCut(ta), isCut(tb)];
    if (owner[ta] !== owner[tb] || ca !== cb) return true;
    if (ca) return false;
    const dot =
      normals[3 * ta] * normals[3 * tb] +
      normals[3 * ta + 1] * normals[3 * tb + 1] +
      normals[3 * ta + 2] * normals[3 * tb + 2];
    if (dot < CREASE) return true;
    // Parallel surfaces one behind the other: a step larger than the surface's own slope explains.
    const slope = 1 / Math.max(0.05, Math.min(towards(ta), towards(tb)));
    return Math.abs(depth[at] - depth[to]) * scale > 3 * slope;
  };
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const at = row * width + column;
      const t = seen[at];
      const right = column + 1 < width && line(at, at + 1);
      const down = row + 1 < height && line(at, at + width);
      let colour = BACKGROUND;
      let bright = 1;
      if (t >= 0) {
        colour = items[owner[t]].colour;
        if (isCut(t)) bright = (row + column) % (6 * SAMPLES) < SAMPLES ? 0.55 : 0.8;
        else {
          const n = 3 * t;
          const lit = normals[n] * light[0] + normals[n + 1] * light[1] + normals[n + 2] * light[2];
          bright = 0.5 + 0.5 * Math.max(0, lit) + 0.06 * normals[n + 2];
        }
      }
      if (right || down) bright *= t < 0 ? 0.45 : 0.35;
      for (let i = 0; i < 3; i++) rgb[3 * at + i] = Math.max(0, Math.min(255, colour[i] * bright));
    }
  return rgb;
}

function shrink(fine, width, height) {
  const rgb = new Uint8Array(3 * width * height);
  const stride = 3 * width * SAMPLES;
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++)
      for (let i = 0; i < 3; i++) {
        let sum = 0;
        for (let dy = 0; dy < SAMPLES; dy++)
          for (let dx = 0; dx < SAMPLES; dx++)
            sum += fine[(row * SAMPLES + dy) * stride + 3 * (column * SAMPLES + dx) + i];
        rgb[3 * (row * width + column) + i] = Math.round(sum / SAMPLES ** 2);
      }
  return rgb;
}

const cross = (a, b) => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const unit = (a) => {
  const l = Math.hypot(...a);
  return a.map((c) => c / l);
};
