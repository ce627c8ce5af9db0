/** The few figures from which a preset starts: from flags, or from answers. */
import type { NewPreset } from '../spec/write-preset.js';
import { UsageError } from './exit.js';

export interface NewFlags {
  readonly title?: string | undefined;
  readonly rows?: string | undefined;
  readonly columns?: string | undefined;
  readonly pitch?: string | undefined;
  readonly emitter?: string | undefined;
  readonly receiver?: string | undefined;
  readonly material?: string | undefined;
  readonly printer?: string | undefined;
}

/** Asks one question; an empty answer takes what is offered. */
export type Ask = (question: string) => Promise<string>;

/** What the preset's reader would say of a preset with these figures: one sentence, or null when all is well. */
export type Judge = (preset: NewPreset) => string | null;

/** @returns lines along one axis: a number of them, or the cells' sizes [mm] @throws {UsageError} */
export function parseAxis(name: string, text: string): number | readonly number[] {
  const cells = text.split(/[\s,]+/).filter((cell) => cell !== '');
  const numbers = cells.map((cell) => parseNumber(name, cell));
  if (numbers.length === 0) throw new UsageError(`${name}: a number is wanted`);
  return numbers.length === 1 && !text.includes(',') ? numbers[0]! : numbers;
}

/** @returns one pitch for both axes, or one each: `22`, or `22,20` for x and y [mm] @throws {UsageError} */
export function parsePitch(text: string): NewPreset['pitch'] {
  const [x, y, ...more] = text
    .split(/[\s,]+/)
    .filter((part) => part !== '')
    .map((part) => parseNumber('pitch', part));
  if (x === undefined || more.length > 0)
    throw new UsageError(`pitch: one number is wanted, or two for x and y, not "${text}"`);
  return y === undefined ? x : { x, y };
}

function parseNumber(name: string, text: string): number {
  const value = Number(text);
  if (!/^[+-]?[\d.]/.test(text) || !Number.isFinite(value)) throw new UsageError(`${name}: "${text}" is no number`);
  return value;
}

/** @throws {UsageError} naming every flag that is missing */
export function fromFlags(title: string, { rows, columns, pitch, ...flags }: NewFlags): NewPreset {
  const missing = Object.entries({ rows, columns, pitch }).filter(([, value]) => value === undefined);
  if (rows === undefined || columns === undefined || pitch === undefined) {
    throw new UsageError(
      `these flags are wanted where nobody can be asked: ${missing.map(([name]) => `--${name}`).join(', ')}`,
    );
  }
  return preset(title, {
    ...flags,
    rows: parseAxis('rows', rows),
    columns: parseAxis('columns', columns),
    pitch: parsePitch(pitch),
  });
}

/** Asks for what the flags leave open; asks again until the answer can be used. */
export async function fromAnswers(
  title: string,
  flags: NewFlags,
  { ask, judge, tell }: { readonly ask: Ask; readonly judge: Judge; readonly tell: (line: string) => void },
): Promise<NewPreset> {
  const answer = async <T>(
    given: string | undefined,
    question: string,
    {
      offer,
      parse,
      fits,
    }: { readonly offer: string; readonly parse: (text: string) => T; readonly fits: (value: T) => string | null },
  ): Promise<T> => {
    if (given !== undefined) return parse(given);
    for (;;) {
      const text = (await ask(`${question} [${offer}]: `)).trim() || offer;
      try {
        const value = parse(text);
        const problem = fits(value);
        if (problem === null) return value;
        tell(`  ${problem}`);
      } catch (error) {
        if (!(error instanceof UsageError)) throw error;
        tell(`  ${error.message}`);
      }
    }
  };
  // Each answer is judged in a preset that is sound in everything else.
  const sound = { title: 'x', rows: 1, columns: 1, pitch: 22 } as const;
  const named = await answer(flags.title, 'Title', {
    offer: title,
    parse: (text) => text,
    fits: (value) => judge({ ...sound, title: value }),
  });
  const rows = await answer(flags.rows, 'Rows, or the depth of each in mm from the near side (24,24,30)', {
    offer: '4',
    parse: (text) => parseAxis('rows', text),
    fits: (value) => judge({ ...sound, rows: value }),
  });
  const columns = await answer(flags.columns, 'Columns, or the width of each in mm from the left', {
    offer: '6',
    parse: (text) => parseAxis('columns', text),
    fits: (value) => judge({ ...sound, columns: value }),
  });
  const pitch = await answer(flags.pitch, 'Pitch in mm, or two for x and y (22,20)', {
    offer: '22',
    parse: parsePitch,
    fits: (value) => judge({ ...sound, rows, columns, pitch: value }),
  });
  return preset(named, { ...flags, rows, columns, pitch });
}

function preset(
  title: string,
  {
    rows,
    columns,
    pitch,
    emitter,
    receiver,
    material,
    printer,
    ...rest
  }: Omit<NewFlags, 'rows' | 'columns' | 'pitch'> & Pick<NewPreset, 'rows' | 'columns' | 'pitch'>,
): NewPreset {
  const named = Object.entries({ emitter, receiver, material, printer }).filter(([, value]) => value !== undefined);
  return { title: rest.title ?? title, rows, columns, pitch, ...Object.fromEntries(named) };
}
