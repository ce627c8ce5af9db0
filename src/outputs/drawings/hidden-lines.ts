/** Hidden lines that say something: those on a line already drawn, visible or hidden, and mere specks are left out. */
import type { Segment } from './line-view.js';
import type { ViewRaster } from './view-raster.js';

/** A shorter piece is a speck, or one of a curve's [samples]. */
const SPECK = 3;
/** Of a curve's short pieces, ends closer than this are the same point [mm]. */
const SAME = 0.05;

export function hiddenLines(
  behind: readonly Segment[],
  seen: readonly Segment[],
  { scale, size, sampleAt }: Pick<ViewRaster, 'scale' | 'size' | 'sampleAt'>,
): readonly Segment[] {
  const [width] = size;
  const drawn = new Uint8Array(size[0] * size[1]);
  const mark = ([[ax, ay], [bx, by]]: Segment, around: number) => {
    const steps = Math.max(1, Math.ceil(Math.hypot(bx - ax, by - ay) * scale * 2));
    for (let i = 0; i <= steps; i++) {
      const at = sampleAt(ax + (i / steps) * (bx - ax), ay + (i / steps) * (by - ay));
      if (at < 0) continue;
      for (let dy = -around; dy <= around; dy++)
        for (let dx = -around; dx <= around; dx++) {
          const one = at + dy * width + dx;
          if (one >= 0 && one < drawn.length) drawn[one] = 1;
        }
    }
  };
  for (const one of seen) mark(one, 1);
  const ends = new Set<string>();
  const out: Segment[] = [];
  for (const one of behind.toSorted((a, b) => length(b) - length(a))) {
    const samples = length(one) * scale;
    if (samples < SPECK) {
      // Curves: the same piece once, and not where it would fall on a drawn line.
      const key = [one[0], one[1]].map(([x, y]) => `${Math.round(x / SAME)} ${Math.round(y / SAME)}`).toSorted();
      if (ends.has(key.join()) || isDrawn(one, 0.5)) continue;
      ends.add(key.join());
      out.push(one);
      continue;
    }
    const pieces = free(one, samples);
    out.push(...pieces);
    for (const piece of pieces) mark(piece, 0);
  }
  return out;

  function isDrawn([[ax, ay], [bx, by]]: Segment, s: number): boolean {
    const at = sampleAt(ax + s * (bx - ax), ay + s * (by - ay));
    return at >= 0 && drawn[at] === 1;
  }

  /** What of a segment no line covers. */
  function free(segment: Segment, samples: number): Segment[] {
    const [[ax, ay], [bx, by]] = segment;
    const steps = Math.ceil(samples);
    const pieces: Segment[] = [];
    let from = -1;
    for (let i = 0; i <= steps; i++) {
      const open = i < steps && !isDrawn(segment, (i + 0.5) / steps);
      if (open && from < 0) from = i;
      if (open || from < 0) continue;
      if (i - from >= SPECK)
        pieces.push([
          [ax + (from / steps) * (bx - ax), ay + (from / steps) * (by - ay)],
          [ax + (i / steps) * (bx - ax), ay + (i / steps) * (by - ay)],
        ]);
      from = -1;
    }
    return pieces;
  }
}

const length = ([[ax, ay], [bx, by]]: Segment): number => Math.hypot(bx - ax, by - ay);
