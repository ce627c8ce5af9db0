/** How the receivers are read: keys of a preset's `scan`, their limits and defaults. Times in µs. */
import type { Spec } from './spec.js';

type Scan = Spec['scan'];

/** The defaults and why they are what they are, by path. */
export const SCAN_DEFAULTS = {
  'scan.channels': { value: 8, why: 'the multiplexer every drawer has; 16 where a board carries more lines' },
  'scan.address': { value: 'shared', why: 'one set of address lines for all multiplexers: they are read side by side' },
  'scan.spare_pins': { value: 0, why: 'none counted on; each may save a multiplexer' },
  'scan.address_us': { value: 1, why: 'common practice: setting three or four output pins' },
  'scan.settle_us': {
    value: 10,
    why: '10 kΩ with 140 pF of wire and inputs, to one step of 10 bits: R C ln 2^10 = 9.7 µs (Analog Devices AN-1024)',
  },
  'scan.read_us': { value: 12, why: 'common practice: one conversion of 10 bits on a small controller' },
  'scan.light_us': {
    value: 0,
    why: 'emitters are always lit; 100 to 300 where they are lit line by line (from memory)',
  },
  'scan.debounce': { value: 3, why: 'three equal scans in a row: one bad reading changes nothing' },
  'scan.pull_up_ohm': { value: 10_000, why: 'common practice for phototransistors' },
  'scan.supply_v': { value: 5, why: 'what the barrels run on' },
  'scan.lit_level': {
    value: 'low',
    why: 'a phototransistor with a pull-up pulls its output low while lit: dark reads high',
  },
} as const satisfies Record<string, { value: string | number; why: string }>;

type Path = keyof typeof SCAN_DEFAULTS;

/**
 * @param given - the preset's `scan`, as the schema accepts it
 * @param or - what was given, or the default, which it notes down; called in the order of the defaults
 */
export function fillScan(
  given: { readonly [key: string]: string | number | undefined } | undefined,
  or: (given: string | number | undefined, path: Path) => string | number,
): Scan {
  const at = (path: Path) => or(given?.[path.slice('scan.'.length)], path);
  const number = (path: Path) => Number(at(path));
  return {
    channels: number('scan.channels') === 16 ? 16 : 8,
    address: at('scan.address') === 'single' ? 'single' : 'shared',
    sparePins: number('scan.spare_pins'),
    addressUs: number('scan.address_us'),
    settleUs: number('scan.settle_us'),
    readUs: number('scan.read_us'),
    lightUs: number('scan.light_us'),
    debounce: number('scan.debounce'),
    pullUpOhm: number('scan.pull_up_ohm'),
    supplyV: number('scan.supply_v'),
    litLevel: at('scan.lit_level') === 'high' ? 'high' : 'low',
  };
}

/** @returns the scan under the preset's own keys */
export const scanKeys = (scan: Scan): Readonly<Record<string, string | number>> => ({
  channels: scan.channels,
  address: scan.address,
  spare_pins: scan.sparePins,
  address_us: scan.addressUs,
  settle_us: scan.settleUs,
  read_us: scan.readUs,
  light_us: scan.lightUs,
  debounce: scan.debounce,
  pull_up_ohm: scan.pullUpOhm,
  supply_v: scan.supplyV,
  lit_level: scan.litLevel,
});
