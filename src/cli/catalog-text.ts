/** The catalogues for the terminal: figures with their units, sources as numbered notes below. */
import { ambients } from '../ambients/index.js';
import { emitters, keys, modules, pins, receivers, threads } from '../components/index.js';
import type { Datum } from '../data.js';
import { plastics } from '../materials/index.js';
import { wrap } from '../outputs/text.js';
import { printers } from '../printers/index.js';
import {
  ambientFigures,
  emitterFigures,
  type Figure,
  plasticFigures,
  presetKey,
  printerFigures,
  receiverFigures,
} from '../spec/figures.js';

type Value = number | string | boolean | readonly Value[] | { readonly [key: string]: Value };
type Entry = Readonly<Record<string, string | Datum<Value>>>;

export const CATALOGS = {
  materials: plastics,
  printers,
  emitters,
  receivers,
  ambients,
  modules,
  threads,
  pins,
  keys,
} as const;
export type Kind = keyof typeof CATALOGS;
export const KINDS = Object.keys(CATALOGS) as readonly Kind[];

/** What the figures are, by catalogue: unit and meaning. Hardware is all lengths. */
const FIGURES: Readonly<Partial<Record<Kind, Readonly<Record<string, Figure>>>>> = {
  materials: plasticFigures,
  printers: printerFigures,
  emitters: emitterFigures,
  receivers: receiverFigures,
  ambients: ambientFigures,
};

/** Units of figures that are no lengths and stand in no table of limits. */
const UNITS: Readonly<Record<string, string>> = {
  massG: 'g',
  heatMw: 'mW',
  cellVoltage: 'V',
  cellCapacityMah: 'mAh',
  cellMostMa: 'mA',
};

/** @returns the names in every catalogue, or in one, with its figures */
export const catalogText = (kind: Kind | undefined, width: number): string =>
  kind === undefined ? KINDS.map((each) => namesText(each, width)).join('\n\n') : figuresText(kind, width);

/** @returns the catalogue as plain data: values and sources */
export const catalogJson = (kind: Kind | undefined): unknown =>
  kind === undefined ? CATALOGS : { [kind]: CATALOGS[kind] };

const entriesOf = (kind: Kind): readonly (readonly [string, Entry])[] =>
  Object.entries(CATALOGS[kind] as unknown as Readonly<Record<string, Entry>>).map(([name, entry]) => [
    name,
    flat(entry),
  ]);

/** A battery's own figures beside those of its outline. */
function flat({ cell, ...entry }: Entry): Entry {
  if (cell === undefined) return entry;
  const figures = Object.entries(cell as unknown as Readonly<Record<string, Datum | boolean>>).map(
    ([key, datum]) =>
      [
        `cell${key.charAt(0).toUpperCase()}${key.slice(1)}`,
        typeof datum === 'object' ? datum : { value: datum ? 'yes' : 'no', source: 'what it is' },
      ] as const,
  );
  return { ...entry, ...Object.fromEntries(figures) };
}

/** Lists with commas, lists of lists with semicolons, what is named with its names. */
function worded(value: Value): string {
  if (typeof value !== 'object') return String(value);
  if (Array.isArray(value)) {
    const items: readonly Value[] = value;
    if (items.length === 0) return 'none';
    return items.map(worded).join(items.some((item) => typeof item === 'object') ? '; ' : ', ');
  }
  return Object.entries(value)
    .map(([key, one]) => `${key} ${worded(one)}`)
    .join(', ');
}

function namesText(kind: Kind, width: number): string {
  const entries = entriesOf(kind);
  const titled = entries.some(([, { title }]) => typeof title === 'string');
  if (!titled) return `${kind}\n  ${wrap(entries.map(([name]) => name).join(', '), { width, indent: '  ' })}`;
  const column = Math.max(...entries.map(([name]) => name.length)) + 4;
  const lines = entries.map(([name, { title }]) => {
    const indent = ' '.repeat(column);
    return `  ${name}`.padEnd(column) + wrap(typeof title === 'string' ? title : '', { width, indent });
  });
  return `${kind}\n${lines.join('\n')}`;
}

function figuresText(kind: Kind, width: number): string {
  const notes = new Map<string, number>();
  const note = (source: string) => {
    if (!notes.has(source)) notes.set(source, notes.size + 1);
    return `[${notes.get(source)}]`;
  };
  const blocks = entriesOf(kind).map(([name, { title, ...figures }]) => {
    const head = typeof title === 'string' ? `${name}: ${title}` : name;
    const lines = Object.entries(figures).map(([key, datum]) =>
      typeof datum === 'string'
        ? `  ${presetKey(key).padEnd(22)} ${datum}`
        : figureLine({ kind, key, datum, note: note(datum.source), width }),
    );
    return [wrap(head, { width, indent: '  ' }), ...lines].join('\n');
  });
  const sources = [...notes].map(
    ([source, number]) => `${`[${number}]`.padEnd(5)}${wrap(source, { width, indent: '     ' })}`,
  );
  return [...blocks, `Sources\n${sources.join('\n')}`].join('\n\n');
}

/** The preset's key, so that it can be copied into one. */
function figureLine({
  kind,
  key,
  datum,
  note,
  width,
}: {
  readonly kind: Kind;
  readonly key: string;
  readonly datum: Datum<Value>;
  readonly note: string;
  readonly width: number;
}): string {
  const { value } = datum;
  const said = worded(value);
  const length = typeof value === 'number' || (typeof value === 'object' && said !== 'none');
  const unit = FIGURES[kind]?.[key]?.unit ?? UNITS[key] ?? (length ? 'mm' : '');
  const indent = ' '.repeat(25);
  return `  ${presetKey(key).padEnd(22)} ${wrap(`${`${said} ${unit}`.trim()} ${note}`, { width, indent })}`;
}
