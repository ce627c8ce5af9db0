/** Reads what is to be varied: a preset's path, and values as a list, as ranges `from..to/step`, or as both. */
import type { Mistake } from '../errors.js';
import { nodeAt, presetJsonSchema, type SchemaNode } from '../spec/json-schema.js';
import { expected } from '../spec/mistakes.js';
import { clean, list, nearest, quote } from '../spec/words.js';
import { type Axis, VARIED } from './types.js';

/** Most designs in one sweep: a table of more is not read, and takes minutes. */
export const MOST_DESIGNS = 50_000;

/** A path and its values, as written. */
export interface Vary {
  readonly path: string;
  readonly text: string;
}

/** A mistake, with the values as written. */
export interface VaryMistake extends Mistake {
  readonly text?: string;
}

export type VaryResult = { readonly axes: readonly Axis[] } | { readonly mistakes: readonly VaryMistake[] };

/** Values that follow each other evenly. */
interface Run {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

/**
 * @param given - in the order in which they are written; the last varies fastest
 * @returns the axes, or every mistake in them; nothing is expanded before its number is known to be within `MOST_DESIGNS`
 */
export function readVary(given: readonly Vary[]): VaryResult {
  const root = presetJsonSchema();
  const mistakes: VaryMistake[] = [];
  const read = given.map(({ path, text }, index) => {
    const known = VARIED.find((each) => each === path);
    if (known === undefined) mistakes.push({ ...unknownPath(path), text });
    else if (given.findIndex((other) => other.path === path) < index)
      mistakes.push({
        code: 'tune/twice',
        path,
        text,
        message: 'is varied twice',
        hint: 'give all its values in one list',
      });
    else {
      const runs = readValues(text, plainest(nodeAt(root, path.split('.')) ?? {}));
      if (Array.isArray(runs)) return { path: known, runs: runs as readonly (Run | string)[] };
      mistakes.push({ path, text, ...(runs as Omit<Mistake, 'path'>) });
    }
    return undefined;
  });
  const sound = read.filter((axis) => axis !== undefined);
  const number = sound.reduce((product, { runs }) => product * runs.reduce((sum, run) => sum + countOf(run), 0), 1);
  if (number > MOST_DESIGNS) mistakes.push(tooMany(number, sound[0]!.path));
  if (mistakes.length > 0) return { mistakes };
  return { axes: sound.map(({ path, runs }) => ({ path, values: [...new Set(runs.flatMap(expand))] })) };
}

/** @returns the mistake of a sweep with too many designs */
export const tooMany = (number: number, path: string): Mistake => ({
  code: 'tune/too-many',
  path,
  message: `that makes ${grouped(number)} designs, more than the most in one sweep, ${grouped(MOST_DESIGNS)}`,
  hint: 'take larger steps, or vary fewer things at a time',
});

/** 1000000 → `1 000 000`, with no-break spaces. */
export const grouped = (number: number): string =>
  number < 1e15 ? String(Math.round(number)).replace(/\B(?=(\d{3})+$)/g, '\u00a0') : number.toExponential(2);

function unknownPath(path: string): Mistake {
  const near = nearest(path, VARIED);
  // `thickness` is meant for `leaf.thickness`.
  const tail = VARIED.filter((known) => known.endsWith(`.${path}`));
  const meant = tail.length > 0 ? tail : near;
  return {
    code: 'tune/unknown-path',
    path: clean(path),
    message: 'is nothing that can be varied',
    hint: meant.length > 0 ? `did you mean ${list(meant)}?` : `what can be varied: ${list(VARIED, 'and')}`,
  };
}

/** A plastic is varied by name alone. */
const plainest = (node: SchemaNode): SchemaNode => node.anyOf?.find((each) => each.enum) ?? node;

type Wrong = Omit<Mistake, 'path'>;

function readValues(text: string, node: SchemaNode): readonly (Run | string)[] | Wrong {
  const parts = text.split(',').map((part) => part.trim());
  const runs: (Run | string)[] = [];
  for (const part of parts) {
    const run = node.enum ? readName(part, node.enum) : readRun(part, node);
    if (typeof run === 'object' && 'code' in run) return run;
    runs.push(run);
  }
  return runs;
}

function readName(text: string, names: readonly string[]): string | Wrong {
  if (names.includes(text)) return text;
  const near = nearest(text, names);
  return {
    code: 'tune/unknown-name',
    message: text === '' ? 'a value is missing' : `there is no ${quote(text)}`,
    hint: near.length > 0 ? `did you mean ${list(near)}?` : `known: ${list(names, 'and')}`,
  };
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const EXAMPLE = 'write values as 8,10,12 or as a range with its step: 8..12/0.5';

function readRun(text: string, node: SchemaNode): Run | Wrong {
  const range = /^(.*?)\.\.(.*?)(?:\/(.*))?$/.exec(text);
  const words = range ? [range[1]!, range[2]!, ...(range[3] === undefined ? [] : [range[3]])] : [text];
  const numbers = words.map((word) => (NUMBER.test(word.trim()) ? Number(word) : Number.NaN));
  const wrong = words.find((_, i) => !Number.isFinite(numbers[i]));
  if (wrong !== undefined) {
    const message =
      wrong.trim() === ''
        ? text === ''
          ? 'a value is missing'
          : `a number is missing in ${quote(text)}`
        : `${quote(wrong)} is no number`;
    return { code: 'tune/no-number', message, hint: EXAMPLE };
  }
  const [from, to = from, step = range ? undefined : 1] = numbers as [number, number?, number?];
  if (step === undefined) return { code: 'tune/no-step', message: `the range ${text} has no step`, hint: EXAMPLE };
  if (step <= 0) return { code: 'tune/step', message: `the step ${step} is not above zero`, hint: EXAMPLE };
  if (to < from)
    return {
      code: 'tune/backwards',
      message: `the range ${text} is written backwards`,
      hint: `write ${to}..${from}/${step}`,
    };
  const least = node.minimum ?? -Infinity;
  const most = node.maximum ?? Infinity;
  const outside = [from, to].find((value) => value < least || value > most);
  if (outside !== undefined)
    return { code: 'tune/outside', message: `found ${outside}`, hint: `allowed is ${expected(node)}` };
  if (node.type === 'integer' && !(Number.isInteger(from) && Number.isInteger(step)))
    return { code: 'tune/whole', message: `found ${text}`, hint: `allowed is ${expected(node)}` };
  return { from, step, count: Math.floor((to - from) / step + 1e-9) + 1 };
}

const countOf = (run: Run | string) => (typeof run === 'string' ? 1 : run.count);

/** Decimal, so that .1 + .2 comes out as .3. */
const expand = (run: Run | string): readonly (number | string)[] =>
  typeof run === 'string'
    ? [run]
    : Array.from({ length: run.count }, (_, i) => Number((run.from + i * run.step).toFixed(6)));
