/** How values, names and paths are put into words. Nothing from a preset reaches a terminal without passing here. */
import { distance } from 'fastest-levenshtein';

/** Keys and indices (from 0) from the preset's root. */
export type Path = readonly (string | number)[];

/** Control, direction and invisible characters, line separators and lone surrogates. */
export const UNPRINTABLE =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\uffff]|\p{Surrogate}/gu;

/** @returns the text with every unprintable character written as \uXXXX, at most 300 characters */
export const clean = (text: string) =>
  text.slice(0, 300).replace(UNPRINTABLE, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** @returns a value from a preset, short and harmless to print */
export function show(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (typeof value === 'number') {
    if (Number.isNaN(value)) return '.nan';
    return Number.isFinite(value) ? String(value) : value > 0 ? '.inf' : '-.inf';
  }
  if (typeof value === 'string') return `the text ${quote(value)}`;
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  return typeof value === 'object' ? 'a mapping' : String(value);
}

/** @returns the text in double quotes, cut at 40 characters */
export function quote(text: string): string {
  const short = [...text.slice(0, 80)].slice(0, 40).join('');
  return `"${clean(short.length < text.length ? `${short}…` : short)}"`;
}

/** @returns the dotted path; a key that isn't a plain word is quoted */
export const dotted = (path: Path) =>
  path.map((step) => (/^[\w-]{1,40}$/.test(String(step)) ? step : quote(String(step)))).join('.');

/** @returns `a, b or c` */
export const list = (words: readonly string[], last = 'or') =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;

/**
 * Names that a misspelt one may have meant, nearest first: at most three, none further away than a third of its
 * letters (two for short names), by insertions, deletions and replacements, letter case aside.
 */
export function nearest(name: string, known: readonly string[]): readonly string[] {
  const wanted = name.slice(0, 80).toLowerCase();
  const most = Math.max(2, Math.floor(wanted.length / 3));
  const near = known
    .map((candidate) => ({ candidate, away: distance(wanted, candidate.toLowerCase()) }))
    .filter(({ candidate, away }) => away <= most && away < candidate.length)
    .sort((a, b) => a.away - b.away || (a.candidate < b.candidate ? -1 : 1));
  const best = near[0]?.away ?? 0;
  // The same name in other letter case leaves no doubt.
  return near
    .filter(({ away }) => away <= (best === 0 ? 0 : best + 1))
    .slice(0, 3)
    .map(({ candidate }) => candidate);
}
