/** How long wires have to be: along their rail to the nearer corner, where they leave, and a length to solder by. mm. */
import type { Kit } from '../kit/types.js';
import type { Vec3 } from '../solid/mesh.js';

/** At each end, to strip, solder and lead on. Source: common practice. */
export const OVER = 150;

export interface WireLength {
  readonly id: string;
  readonly what: string;
  readonly number: number;
  /** Of the longest: all of a side are cut alike. */
  readonly length: number;
}

/** @returns for each side: what, how many, how long */
export function wireLengths({ beams, placements }: Pick<Kit, 'beams' | 'placements'>): readonly WireLength[] {
  const posts = placements
    .filter(({ name }) => name.endsWith('-post'))
    .map(({ matrix }): Vec3 => [matrix[3]!, matrix[7]!, matrix[11]!]);
  const sides = [
    { what: 'pair of wires to an emitter of a column', line: 'column', end: 'from' },
    { what: 'pair of wires to an emitter of a row', line: 'row', end: 'from' },
    { what: 'three wires to a receiver of a column', line: 'column', end: 'to' },
    { what: 'three wires to a receiver of a row', line: 'row', end: 'to' },
  ] as const;
  return sides.flatMap(({ what, line, end }) => {
    const own = beams.filter((beam) => beam.line === line);
    if (own.length === 0) return [];
    // Wires keep to the walls: the way is along the sides, not across.
    const ways = own.map((beam) => {
      const at = beam[end];
      return Math.min(Infinity, ...posts.map((post) => Math.abs(post[0] - at[0]) + Math.abs(post[1] - at[1])));
    });
    const longest = Math.max(...ways);
    return Number.isFinite(longest)
      ? [
          {
            id: `wires-${end === 'from' ? 'emitter' : 'receiver'}-${line}`,
            what,
            number: own.length,
            length: longest + 2 * OVER,
          },
        ]
      : [];
  });
}
