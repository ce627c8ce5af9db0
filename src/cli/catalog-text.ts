/** The catalogues for the terminal: figures with their units, sources as numbered notes below. */
import { emitters, keys, pins, receivers, threads } from '../components/index.js';
import type { Datum } from '../data.js';
import { materials } from '../materials/index.js';
import { wrap } from '../outputs/text.js';
import { printers } from '../printers/index.js';

type Value = number | string | boolean | readonly number[];
type Entry = Readonly<Record<string, string | Datum<Value>>>;

export const CATALOGS = { materials, printers, emitters, receivers, threads, pins, keys } as const;
export type Kind = keyof typeof CATALOGS;
export const KINDS = Object.keys(CATALOGS) as readonly Kind[];

/** Units of figures whose name doesn't say: everything else is a length. */
const UNITS: Readonly<Record<string, string>> = {
  modulus: 'MPa',
  strength: 'MPa',
  poisson: '',
  acrossLayers: '',
  yieldStrain: '',
  shortTermStrain: '',
  sustainedStrain: '',
  creepA: '',
  creepN: '',
  friction: '',
  expansion: '1/K',
  legs: '',
};
const ENDINGS: readonly (readonly [RegExp, string])[] = [
  [/Gcm3$/, 'g/cm³'],
  [/Deg$/, '°'],
  [/Mrad$/, 'mrad'],
  [/Mw$/, 'mW'],
  [/Nm$/, 'nm'],
  [/Ma$/, 'mA'],
  [/V$/, 'V'],
  [/G$/, 'g'],
  [/C$/, '°C'],
];

/** @returns the names in every catalogue, or in one, with its figures */
export const catalogText = (kind: Kind | undefined, width: number): string =>
  kind === undefined ? KINDS.map((each) => namesText(each, width)).join('\n\n') : figuresText(kind, width);

/** @returns the catalogue as plain data: values and sources */
export const catalogJson = (kind: Kind | undefined): unknown =>
  kind === undefined ? CATALOGS : { [kind]: CATALOGS[kind] };

const entriesOf = (kind: Kind): readonly (readonly [string, Entry])[] =>
  Object.entries(CATALOGS[kind] as unknown as Readonly<Record<string, Entry>>);

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
      typeof datum === 'string' ? `  ${key.padEnd(20)} ${datum}` : figureLine(key, datum, note(datum.source), width),
    );
    return [wrap(head, { width, indent: '  ' }), ...lines].join('\n');
  });
  const sources = [...notes].map(
    ([source, number]) => `${`[${number}]`.padEnd(5)}${wrap(source, { width, indent: '     ' })}`,
  );
  return [...blocks, `Sources\n${sources.join('\n')}`].join('\n\n');
}

function figureLine(key: string, { value }: Datum<Value>, note: string, width: number): string {
  const said = typeof value === 'object' ? value.join(', ') : String(value);
  const unit = typeof value === 'string' || typeof value === 'boolean' ? '' : unitOf(key);
  const indent = ' '.repeat(23);
  return `  ${key.padEnd(20)} ${wrap(`${`${said} ${unit}`.trim()} ${note}`, { width, indent })}`;
}

function unitOf(key: string): string {
  const known = UNITS[key];
  return known ?? ENDINGS.find(([ending]) => ending.test(key))?.[1] ?? 'mm';
}
