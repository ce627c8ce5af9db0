/** With boards, wires start at a board's pads: supply and ground once a board, a line's own wire once a line. */

import type { Wire } from './net.js';
import type { BoardsOfKit } from './types.js';

interface Place {
  readonly placement: string;
  /** The beam whose wires of supply and ground serve its whole board. */
  readonly first: string;
  /** Its number on the board. */
  readonly line: number;
  readonly switched: boolean;
}

/** @param wires - as they are without boards; those that are left keep their numbers */
export function fromBoards(wires: readonly Wire[], boards: BoardsOfKit | undefined): readonly Wire[] {
  if (!boards) return wires;
  const at = placesOf(boards);
  const has = new Set(wires.map(({ name }) => name));
  return wires.flatMap((wire): Wire[] => {
    const end = wire.along === null ? '' : `${wire.along.beam} ${wire.along.end}`;
    const place = at.get(end);
    if (!place) return [wire];
    const { placement, line } = place;
    const what = wire.name.slice(end.length + 1);
    if (isOwn(what, place)) return [{ ...wire, from: `${placement} pad line ${line}` }];
    // The first line's pair, at the pads, supplies the whole board.
    if (line > 1) return [];
    const own = (sign: 'plus' | 'minus', pad: string): Wire => ({
      ...wire,
      name: `${placement} ${sign}`,
      from: `${placement} pad ${pad}`,
      to: `supply ${sign}`,
    });
    if (what === 'plus') return [own('plus', 'supply')];
    // Receivers on two legs take no supply, their pull-ups on the carrier do.
    const supply = has.has(`${end} plus`) ? [] : [{ ...own('plus', 'supply'), id: `${wire.id}a` }];
    return [...supply, own('minus', 'ground')];
  });
}

/**
 * @returns from the name that a line's wire has without boards to the one that serves the line with them: of supply and ground a
 * board has one wire each, which keep the numbers of its first line's
 */
export function servedBy(boards: BoardsOfKit | undefined): (name: string) => string {
  if (!boards) return (name) => name;
  const at = placesOf(boards);
  return (name) => {
    const [beam, kind, what] = name.split(' ', 3);
    const place = at.get(`${beam} ${kind}`);
    return place === undefined || isOwn(what, place) ? name : `${place.first} ${kind} ${what}`;
  };
}

/** Each line has a wire of its own for its signal, and where it is switched. */
const isOwn = (what: string | undefined, { switched }: Place): boolean =>
  what === 'signal' || (what === 'minus' && switched);

const placesOf = (boards: BoardsOfKit): ReadonlyMap<string, Place> =>
  new Map<string, Place>(
    boards.places.flatMap(({ placement, board: id, beams }) => {
      const board = boards.boards.find((one) => one.id === id)!;
      const switched = isSwitchedAt(board);
      return beams.map(
        (beam, i) => [`${beam} ${board.kind}`, { placement, first: beams[0]!, line: i + 1, switched }] as const,
      );
    }),
  );

/** Emitters that are lit one by one share the supply and are switched at their other wire. */
export const isSwitchedAt = ({ holes }: Pick<BoardsOfKit['boards'][number], 'holes'>): boolean =>
  !holes.some(({ use, label }) => use === 'pad' && label === 'ground');
