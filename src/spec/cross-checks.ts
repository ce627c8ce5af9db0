/** What no single value shows: labels that fit the grid, figures that fit each other. Each looks only at values that are right by themselves. */
import { ambients } from '../ambients/index.js';
import { emitters, receivers } from '../components/index.js';
import type { Datum } from '../data.js';
import { plastics } from '../materials/index.js';
import { printers } from '../printers/index.js';
import { checkBay } from './bay-checks.js';
import { missingFigures, resolveEntry } from './catalogue.js';
import {
  ambientFigures,
  emitterFigures,
  type Figure,
  plasticFigures,
  presetKey,
  printerFigures,
  receiverFigures,
} from './figures.js';
import { FINGER } from './finger.js';
import { checkLabels } from './label-checks.js';
import { type Unplaced, valueAt } from './mistakes.js';
import { MOST_FIELD, presetSchema } from './schema.js';
import { SURROUNDINGS } from './surroundings.js';
import { dotted, list, type Path } from './words.js';

/** Sizes of the cells along one axis [mm], or undefined where the preset doesn't say them rightly. */
export function cellsOf(data: unknown, axis: 'rows' | 'columns'): readonly number[] | undefined {
  const { shape } = presetSchema.shape.grid;
  const lines = shape[axis].safeParse(valueAt(data, ['grid', axis]));
  if (!lines.success) return undefined;
  if (typeof lines.data === 'object') return lines.data;
  const pitch = pitchOf(data, axis);
  return pitch === undefined ? undefined : new Array<number>(lines.data).fill(pitch);
}

function pitchOf(data: unknown, axis: 'rows' | 'columns'): number | undefined {
  const pitch = presetSchema.shape.grid.shape.pitch.safeParse(valueAt(data, ['grid', 'pitch']));
  if (!pitch.success) return undefined;
  return typeof pitch.data === 'number' ? pitch.data : pitch.data[axis === 'columns' ? 'x' : 'y'];
}

/** @returns every mistake that lies between values */
export function crossCheck(data: unknown): readonly Unplaced[] {
  return [
    ...checkPitch(data),
    ...checkField(data),
    ...checkLabels(data),
    ...checkFinger(data),
    ...checkSurroundings(data),
    ...checkBattery(data),
    ...checkLeaf(data),
    ...checkEntries(data),
    ...checkBay(data),
  ];
}

function checkPitch(data: unknown): Unplaced[] {
  const pitch = presetSchema.shape.grid.shape.pitch.safeParse(valueAt(data, ['grid', 'pitch']));
  if (!pitch.success || typeof pitch.data === 'number') return [];
  return (['columns', 'rows'] as const).flatMap((axis): Unplaced[] => {
    const key = axis === 'columns' ? 'x' : 'y';
    const isCount = typeof valueAt(data, ['grid', axis]) === 'number';
    if (!isCount || pitchOf(data, axis) !== undefined) return [];
    const message = `grid.pitch.${key} is missing: ${axis} are given as a number, so their pitch must be said`;
    return [{ code: 'preset/missing', path: ['grid', 'pitch', key], message, at: 'key' }];
  });
}

function checkField(data: unknown): Unplaced[] {
  return (['rows', 'columns'] as const).flatMap((axis): Unplaced[] => {
    const length = (cellsOf(data, axis) ?? []).reduce((sum, cell) => sum + cell, 0);
    if (length <= MOST_FIELD) return [];
    const message = `the ${axis} come to ${+length.toFixed(3)} mm, more than the most allowed, ${MOST_FIELD} mm`;
    return [
      { code: 'preset/too-large', path: ['grid', axis], message, hint: 'fewer lines, or a smaller pitch', at: 'value' },
    ];
  });
}

function checkFinger(data: unknown): Unplaced[] {
  const [least, most] = (['least', 'most'] as const).map((key) => {
    const given = valueAt(data, ['finger', key]);
    return typeof given === 'number' ? given : undefined;
  });
  const narrowest = least ?? FINGER.least;
  const broadest = most ?? FINGER.most;
  if ((least === undefined && most === undefined) || narrowest <= broadest) return [];
  const key = least === undefined ? 'most' : 'least';
  const message = `the narrowest finger, ${narrowest} mm, is broader than the broadest, ${broadest} mm`;
  return [{ code: 'preset/conflict', path: ['finger', key], message, at: 'value' }];
}

function checkSurroundings(data: unknown): Unplaced[] {
  const [given, most] = (['coldest', 'warmest'] as const).map((key) => {
    const value = valueAt(data, ['surroundings', key]);
    return typeof value === 'number' ? value : undefined;
  });
  if (given === undefined && most === undefined) return [];
  const coldest = given ?? SURROUNDINGS.coldest;
  const warmest = most ?? SURROUNDINGS.warmest;
  if (coldest <= warmest) return [];
  const key = given === undefined ? 'warmest' : 'coldest';
  const message = `the coldest, ${coldest} °C${given === undefined ? ' unless the preset says' : ''}, is warmer than the warmest, ${warmest} °C${most === undefined ? ' unless the preset says' : ''}`;
  return [{ code: 'preset/conflict', path: ['surroundings', key], message, at: 'value' }];
}

/** Capacity without voltage says nothing, and the other way about. */
function checkBattery(data: unknown): Unplaced[] {
  const keys = ['battery_mah', 'battery_v'] as const;
  const given = keys.filter((key) => valueAt(data, ['supply', key]) !== undefined);
  if (given.length !== 1) return [];
  const other = keys.find((key) => key !== given[0])!;
  const message = `supply.${other} is missing: a battery is stated by its capacity and its mean voltage`;
  return [{ code: 'preset/missing', path: ['supply', other], message, at: 'key' }];
}

function checkLeaf(data: unknown): Unplaced[] {
  const layout = valueAt(data, ['leaf', 'layout']);
  const legs = valueAt(data, ['leaf', 'legs']);
  if (typeof legs !== 'number' || typeof layout !== 'string') return [];
  const folded = layout === 'folded';
  if (folded ? legs >= 2 : legs === 1) return [];
  const isLayout = presetSchema.shape.leaf.unwrap().shape.layout.safeParse(layout).success;
  if (!isLayout) return [];
  const message = folded
    ? `found ${legs}: a folded leaf has 2 or 3 legs`
    : `found ${legs}: only a folded leaf has more legs than 1`;
  return [{ code: 'preset/conflict', path: ['leaf', 'legs'], message, at: 'value' }];
}

/** Pairs of figures of which the first may not exceed the second. */
const ORDERED = {
  emitter: [['beamDiameter', 'diameter']],
  light: [],
  receiver: [
    ['sensorFromTop', 'height'],
    ['legWidth', 'legPitch'],
    ['legWidth', 'depth'],
  ],
  plastic: [
    ['sustainedStrain', 'shortTermStrain'],
    ['shortTermStrain', 'yieldStrain'],
  ],
  printer: [
    ['press', 'snug'],
    ['snug', 'slide'],
    ['slide', 'free'],
    ['layer', 'nozzle'],
  ],
} as const satisfies Record<string, readonly (readonly [string, string])[]>;

function checkEntries(data: unknown): Unplaced[] {
  return [
    ...checkEntry(data, { path: ['emitters', 'part'], what: 'emitter', catalogue: emitters, figures: emitterFigures }),
    ...checkEntry(data, {
      path: ['receivers', 'part'],
      what: 'receiver',
      catalogue: receivers,
      figures: receiverFigures,
    }),
    ...checkEntry(data, { path: ['light', 'ambient'], what: 'light', catalogue: ambients, figures: ambientFigures }),
    ...checkEntry(data, { path: ['material'], what: 'plastic', catalogue: plastics, figures: plasticFigures }),
    ...checkEntry(data, { path: ['printer'], what: 'printer', catalogue: printers, figures: printerFigures }),
  ];
}

interface Checked {
  readonly path: Path;
  readonly what: keyof typeof ORDERED;
  readonly catalogue: Readonly<Record<string, { readonly title: string }>>;
  readonly figures: Readonly<Record<string, Figure>>;
}

function checkEntry(data: unknown, { path, what, catalogue, figures }: Checked): Unplaced[] {
  const entry = valueAt(data, path);
  if (typeof entry !== 'object' || entry === null || Array.isArray(entry)) return [];
  const missing = missingFigures(entry, figures);
  if (missing.length > 0) {
    const message = `without a base every figure is needed; missing: ${list(missing, 'and')}`;
    const hint = `start from one of the catalogue: base: ${Object.keys(catalogue)[0]}`;
    return [{ code: 'preset/incomplete', path, message, hint, at: 'key' }];
  }
  const written = entry as Readonly<Record<string, unknown>>;
  const { base } = written;
  if (base !== undefined && !(typeof base === 'string' && Object.hasOwn(catalogue, base))) return [];
  const within = Object.entries(figures)
    .map(([name, figure]) => [presetKey(name), written[presetKey(name)], figure] as const)
    .filter(([, value, { least, most }]) => typeof value === 'number' && value >= least && value <= most)
    .map(([key, value]) => [key, value]);
  const { value } = resolveEntry(
    { ...Object.fromEntries(within), ...(base !== undefined && { base }) },
    { catalogue, figures, what },
  );
  const resolved = value as unknown as Readonly<Record<string, Datum | undefined>>;
  return ORDERED[what].flatMap(([less, more]): Unplaced[] => {
    const [small, large] = [resolved[less]?.value, resolved[more]?.value];
    if (small === undefined || large === undefined || small <= large) return [];
    const [a, b] = [presetKey(less), presetKey(more)];
    const message = `${a} is ${small}, more than ${b}, which is ${large}`;
    const hint = `${dotted([...path, a])} may be at most ${b}`;
    return [{ code: 'preset/conflict', path: [...path, a in written ? a : b], message, hint, at: 'value' }];
  });
}
