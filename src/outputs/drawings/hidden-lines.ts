/** Hidden lines that say something: those on a line already drawn, visible or hidden, and mere specks are left out. */
import type { Segment } from './segment.js';
import type { ViewRaster } from './view-raster.js';

/** A shorter piece is a speck, or one of a curve's [samples]. */
const SPECK = 3;
/** A shorter one is a point [samples]. */
const POINT = 0.5;
/** Of a curve's short pieces, middles closer than half of this are the same point [mm]. */
const SAME = 0.05;
/** A drawn line is marked so often a sample, so that it has few gaps. */
const STEPS = 1;

export function hiddenLines(
  behind: readonly Segment[],
  seen: readonly Segment[],
  { scale, size, sampleAt }: Pick<ViewRaster, 'scale' | 'size' | 'sampleAt'>,
): readonly Segment[] {
  const [width] = size;
  const drawn = new Uint8Array(size[0] * size[1]);
  const mark = ([[ax, ay], [bx, by]]: Segment, around: number) => {
    const steps = Math.max(1, Math.ceil(length(ax, ay, bx, by) * scale * STEPS));
    for (let i = 0; i <= steps; i++) {
      const at = sampleAt(ax + (i / steps) * (bx - ax), ay + (i / steps) * (by - ay));
      if (at < 0) continue;
      for (let row = at - around * width; row <= at + around * width; row += width)
        for (let one = row - around; one <= row + around; one++) if (one >= 0 && one < drawn.length) drawn[one] = 1;
    }
  };
  for (const one of seen) mark(one, 1);
  const known = new Set<number>();
  const out: Segment[] = [];
  const long: { readonly one: Segment; readonly samples: number }[] = [];
  const short: Segment[] = [];
  for (const one of behind) {
    const samples = length(one[0][0], one[0][1], one[1][0], one[1][1]) * scale;
    if (samples >= SPECK) long.push({ one, samples });
    else if (samples > POINT) short.push(one);
  }
  // The longest first: what lies on them is then left out.
  for (const { one, samples } of long.sort((a, b) => b.samples - a.samples)) {
    const pieces = free(one, samples);
    out.push(...pieces);
    for (const piece of pieces) mark(piece, 0);
  }
  // Curves: the same piece once, and not where it would fall on a drawn line.
  for (const one of short) {
    if (isDrawn(one, 0.5)) continue;
    const key = middleKey(one);
    if (known.has(key)) continue;
    known.add(key);
    out.push(one);
  }
  return out;

  function isDrawn([[ax, ay], [bx, by]]: Segment, s: number): boolean {
    const at = sampleAt(ax + s * (bx - ax), ay + s * (by - ay));
    return at >= 0 && drawn[at] === 1;
  }

  /** What of a segment no line covers. */
  function free(segment: Segment, samples: number): Segment[] {
    const [[ax, ay], [bx, by]] = segment;
    const steps = Math.ceil(samples / 1.5);
    const pieces: Segment[] = [];
    let from = -1;
    for (let i = 0; i <= steps; i++) {
      const open = i < steps && !isDrawn(segment, (i + 0.5) / steps);
      if (open && from < 0) from = i;
      if (open || from < 0) continue;
      if (1.5 * (i - from) >= SPECK)
        pieces.push([
          [ax + (from / steps) * (bx - ax), ay + (from / steps) * (by - ay)],
          [ax + (i / steps) * (bx - ax), ay + (i / steps) * (by - ay)],
        ]);
      from = -1;
    }
    return pieces;
  }
}

const length = (ax: number, ay: number, bx: number, by: number): number =>
  Math.sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay));

/** Two short pieces of one view with the same middle are the same piece, whichever way they run. */
const middleKey = ([[ax, ay], [bx, by]]: Segment): number =>
  Math.round((ax + bx) / SAME) * 2 ** 26 + Math.round((ay + by) / SAME);
