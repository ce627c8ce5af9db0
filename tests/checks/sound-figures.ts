/** Invented figures of a plastic, a leaf and a frame that pass every check. */
import { ambients } from '../../src/ambients/index.js';
import type { FrameFigures } from '../../src/checks/figures.js';
import { barrel6x12 } from '../../src/components/emitter-barrel-6x12.js';
import { threeLeg } from '../../src/components/receiver-three-leg.js';
import type { LeafFigures } from '../../src/layout/leaf-figures.js';
import type { LineChance } from '../../src/layout/light/aim.js';
import type { LightBudget } from '../../src/layout/light/budget.js';
import type { FingerFigures } from '../../src/layout/light/finger.js';
import type { ThermalFigures } from '../../src/layout/thermal.js';
import type { LeafDesign } from '../../src/layout/types.js';
import type { Plastic } from '../../src/materials/plastic.js';
import { hitChance, hitKey } from '../../src/optics/finger-hit.js';
import { bed220 } from '../../src/printers/bed-220.js';
import type { Spec } from '../../src/spec/spec.js';
import { rad } from '../../src/units.js';

const datum = (value: number) => ({ value, source: 'invented for this test' });

export const plastic: Plastic = {
  title: 'test plastic',
  modulus: datum(1900),
  poisson: datum(0.38),
  strength: datum(45),
  acrossLayers: datum(0.3),
  yieldStrain: datum(0.035),
  shortTermStrain: datum(0.015),
  sustainedStrain: datum(0.007),
  creepA: datum(0.12),
  creepN: datum(0.22),
  softensC: datum(78),
  expansion: datum(60e-6),
  densityGcm3: datum(1.25),
  friction: datum(0.27),
};

export const spec: Spec = {
  name: 'test',
  title: 'Test',
  grid: { columns: [22, 22, 26], rows: [20, 20], labels: null },
  beam: { height: 5 },
  emitters: { name: 'barrel-6x12', part: barrel6x12, columnsFrom: 'far', rowsFrom: 'left' },
  receivers: {
    name: 'three-leg',
    part: {
      ...threeLeg,
      apertureDiameter: { value: 3, source: 'invented for this test' },
      apertureDepth: { value: 12, source: 'invented for this test' },
    },
  },
  aim: { tiltDeg: undefined, wedgeDeg: undefined, mountErrorDeg: 0.5, confidence: 0.95 },
  finger: { least: 12, most: 20 },
  surroundings: { coldest: 15, warmest: 35 },
  light: { name: 'lamps', ambient: ambients.lamps },
  leaf: { layout: undefined, legs: undefined, length: undefined, thickness: undefined, width: undefined },
  material: { name: 'test plastic', plastic },
  printer: { name: 'bed-220', machine: bed220 },
  screws: { adjust: 'M2.5', clamp: 'M2.5', fix: 'M3' },
  frame: { wall: undefined, deck: undefined, margin: undefined },
  supply: { gauge: 26, logicMa: 100, batteryMah: undefined, batteryV: undefined },
  scan: {
    channels: 8,
    address: 'shared',
    sparePins: 0,
    addressUs: 1,
    settleUs: 10,
    readUs: 12,
    lightUs: 0,
    debounce: 3,
    pullUpOhm: 10_000,
    supplyV: 5,
    litLevel: 'low',
  },
  bay: undefined,
  chosen: [],
};

export const leaf: LeafDesign = {
  layout: 'folded',
  legs: 3,
  length: 9,
  thickness: 1.26,
  width: 11.5,
  legPitch: 3.2,
  fillet: 0.9,
  lever: 18,
  chinLever: 7,
  preload: rad(1.4),
  tilt: rad(2.8),
  bias: rad(4.2),
  stopMargin: rad(1.6),
  stopLatest: rad(3.2),
};

export const leafFigures: LeafFigures = {
  stiffness: 90,
  screwStiffness: 0.27,
  turnPerAdvance: 0.054,
  strain: 0.0051,
  peakStress: 13,
  safety: 3.46,
  stopStrain: 0.0083,
  stopStress: 21,
  preloadNeeded: rad(1.2),
  force: { highest: 3.4, level: 5.2, lowest: 7.1 },
  preloadMoment: { now: 61, afterYear: 34, shock: 29 },
  setAfterYear: rad(0.9),
  backOff: rad(5.7),
  frequency: 44,
  corrected: true,
};

export const frameFigures: FrameFigures = {
  rails: [
    {
      name: 'far rail',
      span: 180,
      ends: 'supported',
      bending: 2.6e7,
      torsion: 1.9e7,
      weight: 0.011,
      weightLever: 4,
      pressLever: 12,
      piece: 90,
      reach: 150,
    },
  ],
  baseArm: { length: 14, bending: 1900 * 207 },
  tolerance: 1.2,
  needs: [{ what: 'tilt mounts', least: 15.4, remedies: ['emitters.part'] }],
};

const line = (name: 'column' | 'row', count: number): LineChance => ({
  line: name,
  count,
  distance: 150,
  toField: 6,
  lever: 160,
  arm: 16,
  pitch: 24,
  tolerance: 0.7,
  chance: 0.99,
  all: 0.99 ** count,
  step: { angle: rad(1.6), perTurn: 4.5, perDegree: 0.0125 },
});

/** A narrow and a broad finger that reach so far, at a pitch of 24; touches scatter by 2. */
export function fingers(narrow: number | null, broad: number, pitch = 24): FingerFigures {
  const one = (breadth: number, reach: number | null) => ({
    breadth,
    atBeam: breadth - 1,
    reach,
    hit: reach === null ? { aimed: 0, double: 0, wrong: 0, none: 1 } : hitChance({ pitch, reach, scatter: 2 }),
  });
  const both = [one(12, narrow), one(20, broad)];
  const axis = (name: 'x' | 'y') => ({ axis: name, pitch, scatter: 2, overlap: 0.5, fingers: both, advice: null });
  return {
    axes: [axis('x'), axis('y')],
    keys: both.map(({ breadth, hit }) => ({ breadth, hit: hitKey(hit, hit) })),
  };
}

export const light: LightBudget = {
  aim: {
    inputs: {
      boresight: rad(1),
      wedge: rad(0),
      mountError: rad(0.5),
      tilt: rad(3),
      warp: rad(0.4),
      slide: 1.5,
      tolerance: [0.7, 0.7],
    },
    lines: [line('column', 3), line('row', 2)],
    all: 0.99 ** 5,
    needed: 5,
    buy: 6,
  },
  levers: [{ path: 'aim.mount_error', change: 'truer mounts', all: 0.99 }],
  exit: [12, 17],
  finger: fingers(5.4, 8.1),
  signal: {
    pullUp: { least: 0, most: Infinity },
    detector: { radius: 0.5, sensitivity: 0.2, filterFromNm: 0 },
    response: 0.6,
    levels: { lit: 0.35, dark: 0.15 },
    ambient: { diffuse: 0.003, direct: 0 },
    rejection: 65,
    cutOff: rad(9.5),
    lines: [
      { line: 'column', w: 1.1, lit: 260, toTake: 0.9994, staysLit: 1.9 },
      { line: 'row', w: 1.1, lit: 260, toTake: 0.9994, staysLit: 1.9 },
    ],
  },
};

export const thermal: ThermalFigures = {
  coldest: 15,
  warmest: 35,
  step: 15,
  drift: rad(0.03),
  shift: 0.09,
  stiffness: 0.95,
  left: 0.53,
  leftWarm: 0.5,
};
