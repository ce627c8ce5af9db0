/** Which triangle each sample of a picture shows. */
import type { Axes, Fit } from './camera.js';
import type { World } from './place.js';

export interface Buffers {
  readonly depth: Float32Array;
  /** The triangle seen, −1 where there is none. */
  readonly seen: Int32Array;
  readonly width: number;
  readonly height: number;
  readonly scale: number;
}

/**
 * @param fromBehind - faces turned away count too (they show where a cut opens a solid)
 */
export function rasterize(
  { corners, owner }: { readonly corners: World['corners']; readonly owner: { readonly length: number } },
  {
    axes: [ax, ay, az],
    fit: { scale, u, v },
    size: [width, height],
    fromBehind,
  }: {
    readonly axes: Axes;
    readonly fit: Fit;
    readonly size: readonly [number, number];
    readonly fromBehind: boolean;
  },
): Buffers {
  const depth = new Float32Array(width * height).fill(-Infinity);
  const seen = new Int32Array(width * height).fill(-1);
  const px = new Float64Array(3);
  const py = new Float64Array(3);
  const pz = new Float64Array(3);
  for (let t = 0; t < owner.length; t++) {
    for (let k = 0; k < 3; k++) {
      const i = 9 * t + 3 * k;
      const x = corners[i]!;
      const y = corners[i + 1]!;
      const z = corners[i + 2]!;
      px[k] = width / 2 + (ax[0] * x + ax[1] * y + ax[2] * z - u) * scale;
      py[k] = height / 2 - (ay[0] * x + ay[1] * y + ay[2] * z - v) * scale;
      pz[k] = az[0] * x + az[1] * y + az[2] * z;
    }
    const doubled = (px[1]! - px[0]!) * (py[2]! - py[0]!) - (px[2]! - px[0]!) * (py[1]! - py[0]!);
    // Rows run downward, so a face towards the eye turns the other way about.
    if (doubled === 0 || (doubled > 0 && !fromBehind)) continue;
    const dx = ((pz[1]! - pz[0]!) * (py[2]! - py[0]!) - (pz[2]! - pz[0]!) * (py[1]! - py[0]!)) / doubled;
    const dy = ((pz[2]! - pz[0]!) * (px[1]! - px[0]!) - (pz[1]! - pz[0]!) * (px[2]! - px[0]!)) / doubled;
    const first = Math.max(0, Math.ceil(Math.min(py[0]!, py[1]!, py[2]!) - 0.5));
    const last = Math.min(height - 1, Math.floor(Math.max(py[0]!, py[1]!, py[2]!) - 0.5));
    for (let row = first; row <= last; row++) {
      const y = row + 0.5;
      let from = Infinity;
      let to = -Infinity;
      for (let k = 0; k < 3; k++) {
        const j = (k + 1) % 3;
        if (py[k]! <= y === py[j]! <= y) continue;
        const x = px[k]! + ((y - py[k]!) * (px[j]! - px[k]!)) / (py[j]! - py[k]!);
        if (x < from) from = x;
        if (x > to) to = x;
      }
      const end = Math.min(width - 1, Math.ceil(to - 0.5) - 1);
      for (let column = Math.max(0, Math.ceil(from - 0.5)); column <= end; column++) {
        const z = pz[0]! + dx * (column + 0.5 - px[0]!) + dy * (y - py[0]!);
        const at = row * width + column;
        if (z > depth[at]!) {
          depth[at] = z;
          seen[at] = t;
        }
      }
    }
  }
  return { depth, seen, width, height, scale };
}
