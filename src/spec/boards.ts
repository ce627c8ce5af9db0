/** The boards that a preset asks for: keys of its `boards`, their defaults. mm. */
import type { Spec } from './spec.js';

export type BoardsSpec = NonNullable<Spec['boards']>;

/** The defaults and why they are what they are, by path; they count only where the preset has `boards` at all. */
export const BOARD_DEFAULTS = {
  'boards.receivers': { value: true, why: 'a carrier behind the sockets: receivers are plugged, not wired one by one' },
  'boards.emitters': { value: false, why: 'emitters come with wires: they need no board' },
  'boards.panel.x': { value: 100, why: 'the size up to which board makers charge least; common practice, no source' },
  'boards.panel.y': { value: 100, why: 'the size up to which board makers charge least; common practice, no source' },
  'boards.thickness': { value: 1.6, why: 'the common board; common practice, no source' },
} as const satisfies Record<string, { value: boolean | number; why: string }>;

export interface BoardsGiven {
  readonly receivers?: boolean | undefined;
  readonly emitters?: boolean | undefined;
  readonly panel?: { readonly x?: number | undefined; readonly y?: number | undefined } | undefined;
  readonly thickness?: number | undefined;
}

/**
 * @param given - the preset's `boards`, as the schema accepts it; undefined: none are asked for
 * @param note - is told each default that is taken
 * @returns undefined where no board is wanted
 */
export function fillBoards(
  given: BoardsGiven | undefined,
  note: (path: string, value: number | string, why: string) => void,
): BoardsSpec | undefined {
  if (given === undefined) return undefined;
  const or = <T extends boolean | number>(value: T | undefined, path: keyof typeof BOARD_DEFAULTS): T => {
    if (value !== undefined) return value;
    const { value: usual, why } = BOARD_DEFAULTS[path];
    note(path, typeof usual === 'boolean' ? (usual ? 'yes' : 'no') : usual, why);
    return usual as unknown as T;
  };
  const receivers = or(given.receivers, 'boards.receivers');
  const emitters = or(given.emitters, 'boards.emitters');
  if (!receivers && !emitters) return undefined;
  return {
    receivers,
    emitters,
    panel: { x: or(given.panel?.x, 'boards.panel.x'), y: or(given.panel?.y, 'boards.panel.y') },
    thickness: or(given.thickness, 'boards.thickness'),
  };
}
