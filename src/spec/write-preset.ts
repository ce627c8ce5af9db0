/** The text of a new preset: the few figures that were given, and everything else as a comment with its default. */
import { emitters } from '../components/index.js';
import { lowestHeight } from './beam-height.js';
import { DEFAULTS } from './defaults.js';

/** The figures a preset starts from. Nothing is checked here: `readPreset` reads the result like any other preset. */
export interface NewPreset {
  readonly title: string;
  /** A number of lines, or the cells' sizes [mm]. */
  readonly rows: number | readonly number[];
  readonly columns: number | readonly number[];
  readonly pitch: number | { readonly x: number; readonly y: number };
  /** Names of the catalogue; left out: the default, as a comment. */
  readonly emitter?: string;
  readonly receiver?: string;
  readonly material?: string;
  readonly printer?: string;
  /** Path of the JSON Schema from the preset's folder, for editors that complete presets. */
  readonly schema?: string;
}

/** @returns a commented preset; a key behind # stands at its default, ready to be used */
export function writePreset(preset: NewPreset): string {
  const { title, rows, columns, pitch, emitter, receiver, material, printer, schema } = preset;
  const spacing = typeof pitch === 'number' ? `${pitch}` : `{ x: ${pitch.x}, y: ${pitch.y} }`;
  const lines = [
    ...(schema === undefined ? [] : [`# yaml-language-server: $schema=${schema}`]),
    '# A panel of crossed light beams. Lengths in mm, angles in degrees.',
    '# A line whose # is followed by a key (and not by words) stands at its default: take the # away to change it.',
    `title: ${JSON.stringify(title)}`,
    '',
    'grid:',
    '  # A number of lines, or a list of cell sizes: [34, 22, 22] makes the first key wide.',
    `  rows: ${axis(rows)} # row beams run along x; a list starts at the near side`,
    `  columns: ${axis(columns)} # column beams run along y; a list starts at the left`,
    `  pitch: ${spacing} # between neighbouring beams; { x: 22, y: 20 } for two pitches`,
    '  # labels: a list of rows, the far row first; each a list of texts, left to right.',
    '  # label_sets: { NAME: rows as above } for legends on paper, for another season or user.',
    '',
    '# Beams above the deck.',
    '#beam:',
    `#  height: ${lowestHeight(DEFAULTS['finger.least'].value, emitters[DEFAULTS['emitters.part'].value].beamDiameter.value)} # solved from the narrowest finger and the beam`,
    '',
    ...section('emitters', [
      ['part', emitter, 'emitters.part', 'a name of the catalogue, or { base: NAME, figures to change }'],
      ['columns_from', undefined, 'emitters.columns_from', 'or near'],
      ['rows_from', undefined, 'emitters.rows_from', 'or right'],
    ]),
    '',
    ...section('receivers', [
      ['part', receiver, 'receivers.part', 'a name of the catalogue, or { base: NAME, figures to change }'],
    ]),
    '',
    ...section('aim', [
      [
        'mount_error',
        undefined,
        'aim.mount_error',
        'degrees, standard deviation of a mount as it stands; measure yours',
      ],
      ['confidence', undefined, 'aim.confidence', 'chance that the emitters bought are enough'],
    ]),
    '',
    ...section('finger', [
      ['least', undefined, 'finger.least', 'breadth of the narrowest finger'],
      ['most', undefined, 'finger.most', 'breadth of the broadest'],
    ]),
    '',
    ...section('light', [['ambient', undefined, 'light.ambient', 'or window, or sun: the brightest it must work in']]),
    '',
    ...section('surroundings', [
      ['coldest', undefined, 'surroundings.coldest', '°C'],
      ['warmest', undefined, 'surroundings.warmest', '°C'],
    ]),
    '',
    '# Solved when left out: aim: { tilt, wedge }, leaf: { layout, legs, length, thickness, width }, frame: { wall, deck, margin }.',
    '',
    option('material', material, { path: 'material', note: 'the filament' }),
    option('printer', printer, { path: 'printer', note: 'a size of bed, with its usual clearances; calibrate' }),
    '',
    ...section('screws', [
      ['adjust', undefined, 'screws.adjust', 'turns the tilt'],
      ['clamp', undefined, 'screws.clamp', 'holds the barrel'],
      ['fix', undefined, 'screws.fix', 'holds mounts, sockets and the frame'],
    ]),
    '',
    ...section('scan', [
      ['channels', undefined, 'scan.channels', 'of a multiplexer: 8 or 16'],
      ['address', undefined, 'scan.address', 'of all multiplexers, or single: one at a time'],
      ['spare_pins', undefined, 'scan.spare_pins', 'input pins free for lines'],
      ['address_us', undefined, 'scan.address_us', 'µs to set an address'],
      ['settle_us', undefined, 'scan.settle_us', 'µs to settle after it'],
      ['read_us', undefined, 'scan.read_us', 'µs for one reading'],
      ['light_us', undefined, 'scan.light_us', 'µs to follow the light, where emitters are lit line by line'],
      ['debounce', undefined, 'scan.debounce', 'equal scans in a row that make a change count'],
      ['pull_up_ohm', undefined, 'scan.pull_up_ohm', 'of each receiver'],
      ['supply_v', undefined, 'scan.supply_v', 'of the pull-ups'],
      ['lit_level', undefined, 'scan.lit_level', 'or high: what a receiver reads while lit'],
    ]),
    '',
    ...section('supply', [
      ['gauge', undefined, 'supply.gauge', 'American wire gauge'],
      ['logic_ma', undefined, 'supply.logic_ma', 'controller, radio, display'],
    ]),
    '# A battery: battery_mah and battery_v under supply.',
    '# Boards to order: receivers, emitters, panel and thickness under boards.',
    '# A home for the electronics: bay: { modules: [controller, multiplexer, …] }, named by beamloom catalog modules.',
  ];
  return `${lines.join('\n')}\n`;
}

type Path = keyof typeof DEFAULTS;

const axis = (cells: number | readonly number[]) => (typeof cells === 'number' ? `${cells}` : `[${cells.join(', ')}]`);

/** A mapping: its key is a comment as long as everything in it is. */
function section(
  name: string,
  keys: readonly (readonly [string, string | undefined, Path, string])[],
): readonly string[] {
  const used = keys.some(([, given]) => given !== undefined);
  const lines = keys.map(([key, given, path, note]) => option(`  ${key}`, given, { path, note }));
  return [used ? `${name}:` : `#${name}:`, ...lines];
}

const option = (key: string, given: string | undefined, { path, note }: { path: Path; note: string }) =>
  given === undefined ? `#${key}: ${DEFAULTS[path].value} # ${note}` : `${key}: ${JSON.stringify(given)} # ${note}`;
