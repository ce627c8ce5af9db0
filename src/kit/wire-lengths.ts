/** How long wires have to be: along their rail to the nearer corner, where they leave, and a length to solder by. mm. */
import type { Vec3 } from '../solid/mesh.js';
import type { Kit } from './types.js';

/** At each end, to strip, solder and lead on. Source: common practice. */
export const OVER = 150;

export interface WireRun {
  /** Its beam, `column-3`. */
  readonly beam: string;
  readonly line: 'column' | 'row';
  readonly end: 'emitter' | 'receiver';
  readonly length: number;
}

/** @returns for each beam the way of its emitter's wires and of its receiver's; none where the kit has no corners */
export function wireRuns({ beams, placements }: Pick<Kit, 'beams' | 'placements'>): readonly WireRun[] {
  const posts = placements
    .filter(({ name }) => name.endsWith('-post'))
    .map(({ matrix }): Vec3 => [matrix[3]!, matrix[7]!, matrix[11]!]);
  if (posts.length === 0) return [];
  // Wires keep to the walls: the way is along the sides, not across.
  const way = (at: Vec3) => Math.min(...posts.map((post) => Math.abs(post[0] - at[0]) + Math.abs(post[1] - at[1])));
  return (['emitter', 'receiver'] as const).flatMap((end) =>
    beams.map(({ name, line, from, to }) => ({
      beam: name,
      line,
      end,
      length: way(end === 'emitter' ? from : to) + 2 * OVER,
    })),
  );
}

/** @returns a length as it is cut: up to a whole centimetre [mm] */
export const cutLength = (length: number): number => Math.ceil(length / 10) * 10;

/** @returns the longest way of an emitter's wires; 0 where there are none [mm] */
export const longestToEmitter = (kit: Pick<Kit, 'beams' | 'placements'>): number =>
  Math.max(0, ...wireRuns(kit).flatMap(({ end, length }) => (end === 'emitter' ? [length] : [])));

export interface WireLength {
  readonly id: string;
  readonly what: string;
  readonly number: number;
  /** Of the longest: all of a side are cut alike. */
  readonly length: number;
}

const WHAT = {
  emitter: 'pair of wires to an emitter of a',
  receiver: 'wires to a receiver of a',
} as const;

/** @returns for each side: what, how many, how long */
export function wireLengths(kit: Pick<Kit, 'beams' | 'placements'>): readonly WireLength[] {
  const runs = wireRuns(kit);
  return (['emitter', 'receiver'] as const).flatMap((end) =>
    (['column', 'row'] as const).flatMap((line) => {
      const own = runs.filter((run) => run.end === end && run.line === line);
      if (own.length === 0) return [];
      return [
        {
          id: `wires-${end}-${line}`,
          what: `${WHAT[end]} ${line}`,
          number: own.length,
          length: Math.max(...own.map(({ length }) => length)),
        },
      ];
    }),
  );
}
