/** What a preset leaves out and what is not left to the solver: each default with its reason. */
import { ambients } from '../ambients/index.js';
import { emitters, receivers } from '../components/index.js';
import { plastics } from '../materials/index.js';
import { printers } from '../printers/index.js';
import { settleAperture } from './aperture.js';
import { batteryOf, bayOf } from './bay.js';
import { lowestHeight } from './beam-height.js';
import { fillBoards } from './boards.js';
import { type Entry, resolveEntry } from './catalogue.js';
import { cellsOf } from './cross-checks.js';
import { ambientFigures, emitterFigures, plasticFigures, printerFigures, receiverFigures } from './figures.js';
import { FINGER } from './finger.js';
import { fillScan, SCAN_DEFAULTS } from './scan.js';
import type { Preset } from './schema.js';
import type { Solved, Spec } from './spec.js';
import { SURROUNDINGS } from './surroundings.js';

/** The defaults and why they are what they are, by path; the order is the schema's. */
export const DEFAULTS = {
  'emitters.part': { value: 'barrel-6x12', why: 'the common red barrel: cheap, and its beam can be seen in alignment' },
  'emitters.columns_from': { value: 'far', why: 'the rail of the mounts, the taller one, stands away from the hand' },
  'emitters.rows_from': { value: 'left', why: 'a choice: either side serves' },
  'receivers.part': { value: 'three-leg', why: 'cheap, sees 650 nm unless filtered, and fits an aperture tube' },
  'aim.mount_error': {
    value: 0.5,
    why: 'what printed mounts on printed rails usually keep to; common practice, no source: measure yours',
  },
  'aim.confidence': { value: 0.95, why: 'one order of parts is enough for nineteen builders in twenty' },
  'finger.least': { value: FINGER.least, why: 'the breadth of the standard test finger (IEC 61032, probe B)' },
  'finger.most': {
    value: FINGER.most,
    why: 'the broad end of measured fingertips, about 16 to 20 (Dandekar et al. 2003)',
  },
  'light.ambient': { value: 'lamps', why: 'a desk indoors; name the brightest light that the panel must work in' },
  'surroundings.coldest': { value: SURROUNDINGS.coldest, why: 'a lived-in room' },
  'surroundings.warmest': { value: SURROUNDINGS.warmest, why: 'a lived-in room in summer, beside electronics' },
  material: { value: 'petg', why: 'holds the largest strain for years among the plastics every printer prints' },
  printer: { value: 'bed-220', why: 'the most common size of bed' },
  'screws.adjust': { value: 'M2.5', why: 'fine pitch (0.45) that still takes a sturdy key' },
  'screws.clamp': { value: 'M2.5', why: 'its key, 1.3, also fits the notches of the collar that rolls the barrel' },
  'screws.fix': { value: 'M3', why: 'the size every maker has' },
  ...SCAN_DEFAULTS,
  'supply.gauge': { value: 26, why: 'thin enough to lead in a rail, thick enough to strip; common practice' },
  'supply.logic_ma': { value: 100, why: 'a small controller with a radio, on average; common practice: measure yours' },
} as const satisfies Record<string, { value: string | number; why: string }>;

/**
 * @param preset - as the schema and the cross-checks accept it
 * @param name - the preset's file name without ending
 */
export function fillDefaults(preset: Preset, name: string): Spec {
  const chosen: Solved[] = [];
  const or = <K extends keyof typeof DEFAULTS, T>(given: T | undefined, path: K): T | (typeof DEFAULTS)[K]['value'] => {
    if (given !== undefined) return given;
    chosen.push({ path, ...DEFAULTS[path] });
    return DEFAULTS[path].value;
  };
  const { grid, leaf, frame } = preset;
  const title = preset.title?.trim() ?? titleFrom(name);
  if (preset.title === undefined) chosen.push({ path: 'title', value: title, why: "made from the preset's file name" });
  if (grid.labels === undefined)
    chosen.push({ path: 'grid.labels', value: 'none', why: 'none given: the deck shows the key boundaries alone' });

  // One after the other: the order of `chosen` is the order of these lines.
  const emitter = or(preset.emitters?.part as Entry | undefined, 'emitters.part');
  const columnsFrom = or(preset.emitters?.columns_from, 'emitters.columns_from');
  const rowsFrom = or(preset.emitters?.rows_from, 'emitters.rows_from');
  const receiver = or(preset.receivers?.part as Entry | undefined, 'receivers.part');
  const mountErrorDeg = or(preset.aim?.mount_error, 'aim.mount_error');
  const confidence = or(preset.aim?.confidence, 'aim.confidence');
  const least = or(preset.finger?.least, 'finger.least');
  const most = or(preset.finger?.most, 'finger.most');
  const ambient = or(preset.light?.ambient as Entry | undefined, 'light.ambient');
  const coldest = or(preset.surroundings?.coldest, 'surroundings.coldest');
  const warmest = or(preset.surroundings?.warmest, 'surroundings.warmest');
  const material = or(preset.material as Entry | undefined, 'material');
  const printer = or(preset.printer as Entry | undefined, 'printer');
  const adjust = or(preset.screws?.adjust, 'screws.adjust');
  const clamp = or(preset.screws?.clamp, 'screws.clamp');
  const fix = or(preset.screws?.fix, 'screws.fix');
  const scan = fillScan(preset.scan, or);
  const gauge = or(preset.supply?.gauge, 'supply.gauge');
  const logicMa = or(preset.supply?.logic_ma, 'supply.logic_ma');
  const boards = fillBoards(preset.boards, (path, value, why) => chosen.push({ path, value, why }));

  const bay = preset.bay === undefined ? undefined : bayOf(preset.bay);
  const battery = batteryOf(bay);
  const stated = preset.supply?.battery_mah !== undefined;
  if (battery !== null && !stated) {
    const why = 'the battery in the bay';
    chosen.push({ path: 'supply.battery_mah', value: battery.mah, why });
    chosen.push({ path: 'supply.battery_v', value: battery.voltage, why });
  }

  const emits = resolveEntry(emitter, { catalogue: emitters, figures: emitterFigures, what: 'emitter' });
  const receives = resolveEntry(receiver, { catalogue: receivers, figures: receiverFigures, what: 'receiver' });
  const light = resolveEntry(ambient, { catalogue: ambients, figures: ambientFigures, what: 'light' });
  const plastic = resolveEntry(material, { catalogue: plastics, figures: plasticFigures, what: 'plastic' });
  const machine = resolveEntry(printer, { catalogue: printers, figures: printerFigures, what: 'printer' });
  const tube = settleAperture({
    receiver: receives.value,
    ambient: light.value,
    pin: { supply: scan.supplyV, pullUpOhm: scan.pullUpOhm },
  });
  chosen.push(...tube.solved);
  const solvedHeight = (): number => {
    const value = lowestHeight(least, emits.value.beamDiameter.value);
    const why = `the lowest half millimetre at which a round fingertip ${least} mm broad has 98 % of its breadth and the beam clears the deck by its own diameter`;
    chosen.push({ path: 'beam.height', value, why });
    return value;
  };
  return {
    name,
    title,
    grid: {
      columns: cellsOf(preset, 'columns')!,
      rows: cellsOf(preset, 'rows')!,
      labels: grid.labels?.toReversed() ?? null,
      ...(grid.label_sets !== undefined && {
        labelSets: Object.entries(grid.label_sets).map(([set, rows]) => ({ name: set, labels: rows.toReversed() })),
      }),
    },
    beam: { height: preset.beam?.height ?? solvedHeight() },
    emitters: { name: emits.name, part: emits.value, columnsFrom, rowsFrom },
    receivers: {
      name: receives.name,
      part: {
        ...receives.value,
        apertureDiameter: receives.value.apertureDiameter ?? { value: tube.diameter, source: SOLVED },
        apertureDepth: receives.value.apertureDepth ?? { value: tube.depth, source: SOLVED },
      },
    },
    aim: { tiltDeg: preset.aim?.tilt, wedgeDeg: preset.aim?.wedge, mountErrorDeg, confidence },
    finger: { least, most },
    light: { name: light.name, ambient: light.value },
    surroundings: { coldest, warmest },
    leaf: {
      layout: leaf?.layout,
      legs: leaf?.legs,
      length: leaf?.length,
      thickness: leaf?.thickness,
      width: leaf?.width,
    },
    material: { name: plastic.name, plastic: plastic.value },
    printer: { name: machine.name, machine: machine.value },
    screws: { adjust, clamp, fix },
    frame: { wall: frame?.wall, deck: frame?.deck, margin: frame?.margin },
    scan,
    supply: {
      gauge,
      logicMa,
      batteryMah: preset.supply?.battery_mah ?? battery?.mah,
      batteryV: preset.supply?.battery_v ?? battery?.voltage,
    },
    bay,
    ...(boards && { boards }),
    chosen,
  };
}

/** The source of a figure that is worked out; why stands under `solved`. */
const SOLVED = 'solved';

/** `glaze-selector` → `Glaze selector` */
const titleFrom = (name: string) => name.charAt(0).toUpperCase() + name.slice(1).replaceAll('-', ' ');
