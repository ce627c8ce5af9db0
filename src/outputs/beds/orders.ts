/** In which order pieces go onto beds: large ones first, by several measures, then by those measures blurred. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

interface Sized {
  readonly width: number;
  readonly depth: number;
}

type Order = (a: Sized, b: Sized) => number;
const area = ({ width, depth }: Sized) => width * depth;
const long = ({ width, depth }: Sized) => Math.max(width, depth);
const short = ({ width, depth }: Sized) => Math.min(width, depth);

export const ORDERS: readonly Order[] = [
  (a, b) => long(b) - long(a) || short(b) - short(a),
  (a, b) => area(b) - area(a),
  (a, b) => short(b) - short(a) || long(b) - long(a),
  (a, b) => b.width + b.depth - (a.width + a.depth),
];

/** Any will do, if it is always the same: same pieces, same beds. */
const SEED = 1;
/** Largest share by which a piece counts as more than it is: half is enough to mix neighbours, not large with small. */
const BLUR = 0.5;

/** @returns the pieces in so many further orders: by length and by the root of the area in turn, two of each, blurred */
export function shuffled<T extends Sized>(pieces: readonly T[], count: number): readonly (readonly T[])[] {
  const random = xoroshiro128plus(SEED);
  return Array.from({ length: count }, (_, i) => {
    const measure = i % 4 < 2 ? long : (piece: Sized) => Math.sqrt(area(piece));
    return pieces
      .map((piece) => ({ piece, rank: measure(piece) * (1 + BLUR * uniformFloat64(random)) }))
      .sort((a, b) => b.rank - a.rank)
      .map(({ piece }) => piece);
  });
}
