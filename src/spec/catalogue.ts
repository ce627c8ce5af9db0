/** Figures by name, by name with changes, or spelled out: what a preset's part, plastic or printer comes to. */
import type { Datum } from '../data.js';
import { presetKey } from './figures.js';

type Titled = { readonly title: string };

/** As a preset writes it. */
export type Entry =
  | string
  | { readonly base?: string | undefined; readonly title?: string | undefined; readonly [figure: string]: unknown };

/** The source of a figure that the preset gives. */
export const FROM_PRESET = 'the preset';

/** @returns the preset's keys of the figures that an entry without `base` leaves out */
export function missingFigures(
  entry: unknown,
  figures: Readonly<Record<string, { readonly open?: boolean }>>,
): readonly string[] {
  if (typeof entry !== 'object' || entry === null || 'base' in entry) return [];
  return Object.entries(figures)
    .filter(([, { open }]) => open !== true)
    .map(([name]) => presetKey(name))
    .filter((key) => !(key in entry));
}

/**
 * @param entry - a name of the catalogue, or a mapping (complete where it has no `base`)
 * @returns the figures with their sources, and a name for files and reports: that of the catalogue, or one marked as the preset's own
 */
export function resolveEntry<T extends Titled>(
  entry: Entry,
  { catalogue, figures, what }: { catalogue: Readonly<Record<string, T>>; figures: object; what: string },
): { readonly name: string; readonly value: T } {
  if (typeof entry === 'string') return { name: entry, value: catalogue[entry]! };
  const base = entry.base === undefined ? undefined : catalogue[entry.base]!;
  const own: Record<string, Datum> = {};
  for (const figure of Object.keys(figures)) {
    const value = entry[presetKey(figure)];
    if (typeof value === 'number') own[figure] = { value, source: FROM_PRESET };
  }
  const changed = Object.keys(own).length > 0;
  const title =
    entry.title ?? (base ? `${base.title}${changed ? ', changed' : ''}` : `${what} of the preset's own figures`);
  const name = entry.base === undefined ? `own-${what}` : `${entry.base}${changed ? '-changed' : ''}`;
  return { name, value: { ...base, ...own, title } as T };
}
