/** Every hole of a board, from its beams' places along it. */
import type { Spec } from '../../spec/spec.js';
import { supplyFigures } from '../supply.js';
import type { BoardPlane } from './room.js';
import { mountDrill } from './room.js';
import {
  EDGE_WEB,
  GUIDE,
  legDrill,
  MOUNT_RING,
  PAD_DRILL,
  PAD_ROWS,
  RASTER,
  RESISTOR_DRILL,
  RESISTOR_ROW,
  RESISTOR_SPANS,
} from './sizes.js';
import type { BoardHole, HoleUse, SocketStrip } from './types.js';

export interface HoleOptions {
  readonly plane: BoardPlane;
  readonly length: number;
  readonly beams: readonly number[];
  /** Half of the least distance between beams, and from an end to the next beam. */
  readonly room: number;
  readonly slide: number;
  /** Wires go on to a next piece. */
  readonly chained: boolean;
}

/** Between the wire holes of an emitter, half. */
const WIRE_HALF = RASTER / 2;
/** Strain relief stands this far above its wire's hole. */
const RELIEF_UP = 3;

/** Half of what a beam needs along a board: no neighbour, no end nearer. */
export function placeHalf(spec: Spec, kind: 'receiver' | 'emitter', slide: number): number {
  const resistor = RESISTOR_SPANS.at(-1)! / 2 + RESISTOR_DRILL / 2 + EDGE_WEB;
  if (kind === 'emitter') return Math.max(resistor, reliefAt(spec) + reliefDrill(spec) / 2 + EDGE_WEB);
  const { legs, legPitch } = spec.receivers.part;
  const row = ((legs.value - 1) * legPitch.value) / 2 + legDrill(legPitch.value) / 2;
  return Math.max(resistor, slide + row + EDGE_WEB);
}

/** @returns the holes of a receiver carrier, and its socket strips */
export function carrierHoles(
  spec: Spec,
  options: HoleOptions,
): { readonly holes: readonly BoardHole[]; readonly strips: readonly SocketStrip[] } {
  const { beams, plane, slide } = options;
  const { legs, legPitch } = spec.receivers.part;
  const drill = legDrill(legPitch.value);
  const strips = beams.flatMap((x) =>
    [-1, 0, 1].map((row) => ({
      x: x + row * slide,
      y: plane.legs + row * RASTER,
      holes: legs.value,
      pitch: legPitch.value,
      drill,
    })),
  );
  const sockets = strips.flatMap((strip, i) =>
    socketHoles(strip).map((x, leg) =>
      hole({ x, y: strip.y, d: drill, use: 'leg', label: `line ${Math.floor(i / 3) + 1}, leg ${leg + 1}` }),
    ),
  );
  const pullUps = pairs(options, 'pull-up', (n) => ['supply', `line ${n}`]);
  const lines = beams.map((_, i) => `line ${i + 1}`);
  return {
    holes: tidied([...sockets, ...pullUps, ...pads(options, ['supply', 'ground', ...lines]), ...mounting(options)]),
    strips,
  };
}

/** @returns the holes of an emitter supply board */
export function supplyHoles(spec: Spec, options: HoleOptions): readonly BoardHole[] {
  const { beams, plane } = options;
  const oneByOne = spec.scan.lightUs > 0;
  const ohm = supplyFigures(spec, 0).resistor;
  const wires = beams.flatMap((x, i) => {
    const y = plane.legs - RASTER;
    const minus = oneByOne ? `line ${i + 1}` : 'ground';
    return ([-1, 1] as const).flatMap((at) => [
      hole({ x: x + at * WIRE_HALF, y, d: PAD_DRILL, use: 'wire', label: at < 0 ? `plus ${i + 1}` : minus }),
      hole({
        x: x + at * reliefAt(spec),
        y: y + RELIEF_UP,
        d: reliefDrill(spec),
        use: 'relief',
        label: `strain relief ${i + 1}`,
      }),
    ]);
  });
  const value = ohm > 0 ? `${Math.ceil(ohm)} Ω` : 'a bridge';
  const resistors = pairs(options, 'resistor', (n) => [`supply (${value})`, `plus ${n}`]);
  const ends = oneByOne ? ['supply', ...beams.map((_, i) => `line ${i + 1}`)] : ['supply', 'ground'];
  return tidied([...wires, ...resistors, ...pads(options, ends), ...mounting(options)]);
}

/** A wire passes with its insulation; the pair's bundle is two of them side by side. */
const reliefDrill = (spec: Spec): number => Math.ceil(5 * (spec.emitters.part.wireDiameter.value / 2) + 1.5) / 5;
const reliefAt = (spec: Spec): number => Math.max(WIRE_HALF, reliefDrill(spec) / 2 + EDGE_WEB / 2);

const UNPLATED: readonly HoleUse[] = ['mounting', 'relief'];

const hole = ({ use, ...rest }: Pick<BoardHole, 'x' | 'y' | 'd' | 'use' | 'label'>): BoardHole => ({
  ...rest,
  use,
  plated: !UNPLATED.includes(use),
  ring: use === 'mounting' ? MOUNT_RING : EDGE_WEB,
});

const socketHoles = ({ x, holes, pitch }: SocketStrip): number[] =>
  Array.from({ length: holes }, (_, i) => x + (i - (holes - 1) / 2) * pitch);

/** Two holes at each beam for a lying resistor, or a standing one where beams are close. */
function pairs({ beams, room }: HoleOptions, use: HoleUse, labels: (n: number) => readonly [string, string]) {
  const fits = (span: number) => span / 2 + RESISTOR_DRILL / 2 + EDGE_WEB <= room + 1e-9;
  const span = RESISTOR_SPANS.find(fits) ?? RESISTOR_SPANS.at(-1)!;
  return beams.flatMap((x, i) =>
    [-span / 2, span / 2].map((off, k) =>
      hole({ x: x + off, y: RESISTOR_ROW, d: RESISTOR_DRILL, use, label: labels(i + 1)[k]! }),
    ),
  );
}

/** Two rows from the left end inward; where the board is one of several the same from the right, if both have room. */
function pads({ length, chained }: HoleOptions, labels: readonly string[]): BoardHole[] {
  const first = GUIDE.along + EDGE_WEB + PAD_DRILL / 2;
  const inner = guideSpans(length);
  const columns: number[] = [];
  for (let x = first; columns.length < Math.ceil(labels.length / 2); x += RASTER)
    if (!inner.some(([from, to]) => x + PAD_DRILL / 2 > from - EDGE_WEB && x - PAD_DRILL / 2 < to + EDGE_WEB))
      columns.push(x);
  const end = (mirror: boolean) =>
    labels.map((label, i) => {
      const x = columns[Math.floor(i / 2)]!;
      return hole({ x: mirror ? length - x : x, y: PAD_ROWS[i % 2]!, d: PAD_DRILL, use: 'pad', label });
    });
  const both = 2 * columns.at(-1)! + RASTER <= length + 1e-9;
  return [...end(false), ...(chained && both ? end(true) : [])];
}

/** One near each end; one in the middle of a board that is too short for two. */
function mounting({ length, plane }: HoleOptions): BoardHole[] {
  const reach = mountDrill() / 2 + MOUNT_RING;
  const at = 4 * reach <= length ? [reach, length - reach] : [length / 2];
  return at.map((x) => hole({ x, y: plane.mounts, d: mountDrill(), use: 'mounting', label: 'M2.5' }));
}

/** Between its ends a long board is held too: spans along it that guides take. */
export function guideSpans(length: number): readonly (readonly [number, number])[] {
  const count = Math.ceil(length / GUIDE.every) - 1;
  return Array.from({ length: Math.max(0, count) }, (_, i) => {
    const at = ((i + 1) * length) / (count + 1);
    return [at - GUIDE.along, at + GUIDE.along] as const;
  });
}

/** Thousandths: what a drill table shows. */
const tidied = (holes: readonly BoardHole[]): BoardHole[] =>
  holes.map((one) => ({ ...one, x: Math.round(one.x * 1000) / 1000, y: Math.round(one.y * 1000) / 1000 }));
