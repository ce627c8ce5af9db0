/** How long wires have to be: along their rail to the nearer corner, where they leave, and a length to solder by. mm. */
import type { Vec3 } from '../solid/mesh.js';
import { isSwitchedAt } from './board-wires.js';
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

/** What the lengths of wires are taken from. */
export type Wired = Pick<Kit, 'beams' | 'placements' | 'wiresEnd' | 'bay' | 'boards'>;

/**
 * The one place where a wire's length comes from: along the walls to the corner that makes its way shortest, out there, and on to
 * where wires end; at both ends what is needed to solder.
 *
 * @param from - in the assembly; null: a wire that stays where wires end
 * @param posts - corners at which wires may leave
 * @param end - where wires end; left out: beyond the corner, within what is over and the cable that they go on in
 * @returns [mm]
 */
export function routeLength(
  from: Vec3 | null,
  {
    posts,
    end,
    cable = 0,
  }: { readonly posts: readonly Vec3[]; readonly end?: Vec3 | undefined; readonly cable?: number },
): number {
  if (from === null) return 2 * OVER;
  // Wires keep to the walls: the way is along the sides, not across.
  const along = (a: Vec3, b: Vec3) => Math.abs(a[0] - b[0]) + Math.abs(a[1] - b[1]);
  const ways = posts.map((post) => along(from, post) + (end === undefined ? 0 : along(post, end)));
  // Along one rail there is no corner between.
  const rail = railOf(from, posts);
  const same = end !== undefined && rail !== null && rail === railOf(end, posts);
  return Math.min(...ways, same ? along(from, end) : Infinity) + cable + 2 * OVER;
}

/** Past which of the field's edges a point lies; posts stand at the field's corners. */
function railOf([x, y]: Vec3, posts: readonly Vec3[]): string | null {
  const [xs, ys] = [posts.map((p) => p[0]), posts.map((p) => p[1])];
  if (y > Math.max(...ys)) return 'far';
  if (y < Math.min(...ys)) return 'near';
  if (x > Math.max(...xs)) return 'right';
  return x < Math.min(...xs) ? 'left' : null;
}

/** @returns for each beam the way of its emitter's wires and of its receiver's; none where the kit has no corners */
export function wireRuns({ beams, placements, wiresEnd: end, bay }: Wired): readonly WireRun[] {
  const posts = placements
    .filter(({ name }) => name.endsWith('-post'))
    .map(({ matrix }): Vec3 => [matrix[3]!, matrix[7]!, matrix[11]!]);
  if (posts.length === 0) return [];
  return (['emitter', 'receiver'] as const).flatMap((side) =>
    beams.map(({ name, line, from, to }) => ({
      beam: name,
      line,
      end: side,
      length: routeLength(side === 'emitter' ? from : to, { posts, end, cable: bay?.cable ?? 0 }),
    })),
  );
}

/** @returns a length as it is cut: up to a whole centimetre [mm] */
export const cutLength = (length: number): number => Math.ceil(length / 10) * 10;

/** @returns the longest way of an emitter's wires; 0 where there are none [mm] */
export const longestToEmitter = (kit: Wired): number =>
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

interface Numbered {
  readonly end: WireRun['end'];
  readonly line: WireRun['line'];
  readonly lines: number;
  readonly boards: readonly Parameters<typeof isSwitchedAt>[0][];
}

/** Without boards a bundle for each line. With them a pair for each board, and one wire besides for each line that is read or switched. */
function numbered({ end, line, lines, boards }: Numbered): Pick<WireLength, 'what' | 'number'> {
  if (boards.length === 0) return { what: `${WHAT[end]} ${line}`, number: lines };
  if (end === 'receiver') return { what: `wire to a carrier of ${line}s`, number: lines + 2 * boards.length };
  return boards.some(isSwitchedAt)
    ? { what: `wire to a supply board of ${line}s`, number: lines + boards.length }
    : { what: `pair of wires to a supply board of ${line}s`, number: boards.length };
}

/** The boards that serve the lines of one direction at one end, once for each place. */
const boardsWith = ({ boards }: Wired, { end, line }: { readonly end: WireRun['end']; readonly line: string }) =>
  (boards?.places ?? [])
    .filter(({ beams }) => beams[0]!.startsWith(`${line}-`))
    .flatMap(({ board }) => boards!.boards.filter(({ id, kind }) => id === board && kind === end));

/** @returns for each side: what, how many, how long */
export function wireLengths(kit: Wired): readonly WireLength[] {
  const runs = wireRuns(kit);
  return (['emitter', 'receiver'] as const).flatMap((end) =>
    (['column', 'row'] as const).flatMap((line) => {
      const own = runs.filter((run) => run.end === end && run.line === line);
      if (own.length === 0) return [];
      return [
        {
          id: `wires-${end}-${line}`,
          ...numbered({ end, line, lines: own.length, boards: boardsWith(kit, { end, line }) }),
          length: Math.max(...own.map(({ length }) => length)),
        },
      ];
    }),
  );
}
