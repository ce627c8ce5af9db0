/** Posts of a piece of rail that hold boards: at both ends of each, and between where it is long; neighbours may share one. mm. */
import type { RailRun, RailSegment } from '../runs.js';
import { guideSpans } from './holes.js';
import { GUIDE } from './sizes.js';
import type { BoardsLayout, Guide } from './types.js';

/** Between the end walls of neighbouring posts: less is closed by one wall. */
const APART = 1;

/** A slot's span along the rail: at a board's first or last end, or between. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly at: 'first' | 'between' | 'last';
}

export function guidesOf(
  { places, boards }: BoardsLayout,
  { run, segment }: { readonly run: RailRun; readonly segment: RailSegment },
): readonly Guide[] {
  const spans = places
    .filter(({ side, from }) => side === run.side && from > segment.from && from < segment.from + segment.length)
    .flatMap(({ from, board }): Span[] => {
      const a = from - segment.from;
      const { length } = boards.find(({ id }) => id === board)!;
      return [
        { from: a - GUIDE.play, to: a + GUIDE.along, at: 'first' },
        ...guideSpans(length).map(([b, c]): Span => ({ from: a + b, to: a + c, at: 'between' })),
        { from: a + length - GUIDE.along, to: a + length + GUIDE.play, at: 'last' },
      ];
    });
  return joined(spans, segment.length).map(({ from, to, walls: [first, last] }) => ({
    from: tidy(from),
    to: tidy(to),
    walls: [tidy(first), tidy(last)],
  }));
}

/** What stands closer than a wall is thick is one post; a board's end that has a post to itself is closed by a wall. */
function joined(spans: readonly Span[], length: number): readonly Guide[] {
  const groups: Span[][] = [];
  for (const span of spans) {
    const last = groups.at(-1);
    if (last && span.from - last.at(-1)!.to < GUIDE.cheek) last.push(span);
    else groups.push([span]);
  }
  const ends = groups.map((group) => ({ from: Math.max(0, group[0]!.from), to: Math.min(length, group.at(-1)!.to) }));
  return groups.map((group, i): Guide => {
    const { from, to } = ends[i]!;
    const before = i === 0 ? from : from - ends[i - 1]!.to;
    const after = (i === groups.length - 1 ? length : ends[i + 1]!.from) - to;
    // Walls of neighbours that would all but touch are one, and belong to the first.
    const one = (gap: number, inner: boolean) => inner && gap < 2 * GUIDE.cheek + APART;
    const first = group[0]!.at === 'first' && before >= GUIDE.cheek && !one(before, i > 0);
    const last = group.at(-1)!.at === 'last' && after >= GUIDE.cheek;
    return {
      from,
      to,
      walls: [first ? GUIDE.cheek : 0, last ? (one(after, i < groups.length - 1) ? after : GUIDE.cheek) : 0],
    };
  });
}

const tidy = (value: number): number => Math.round(value * 1000) / 1000;
