/** The aim's budget: what is off, what cures it, and how likely every line can be brought onto its receiver. rad and mm. */
import { threads } from '../../components/index.js';
import { bowSlope } from '../../mechanics/beam.js';
import { type ScrewStep, screwStep } from '../../optics/aim.js';
import { offsetFor } from '../../optics/aperture.js';
import { coneRadius } from '../../optics/beam.js';
import { toBuy } from '../../optics/chance.js';
import { leanedChance } from '../../optics/wedge.js';
import type { Spec } from '../../spec/spec.js';
import { rad } from '../../units.js';
import { longestPiece } from '../mount-ask.js';
import type { LineWay } from './lines.js';

/** Share of the centred light that must be left for a beam to count as arrived. Source: common practice. */
export const ARRIVED = 0.5;

/** What decides the aim, so that each can be changed to see what it is worth. */
export interface AimInputs {
  /** Rayleigh parameter of the boresight error, and the lean given to every barrel on purpose. */
  readonly boresight: number;
  readonly wedge: number;
  readonly mountError: number;
  /** Tilt either way, and how much of it warp takes at the worst mount. */
  readonly tilt: number;
  readonly warp: number;
  /** Of the receivers, either way [mm]. */
  readonly slide: number;
  /** Radius about the detector's middle in which the beam has arrived, by line [mm]. */
  readonly tolerance: readonly [number, number];
}

export interface LineChance extends LineWay {
  readonly tolerance: number;
  /** That one channel, and that all of them, can be aligned. */
  readonly chance: number;
  readonly all: number;
  readonly step: ScrewStep;
}

export interface AimFigures {
  readonly inputs: AimInputs;
  readonly lines: readonly [LineChance, LineChance];
  /** Every line with exactly as many emitters as lines. */
  readonly all: number;
  readonly needed: number;
  /** Emitters to buy for the confidence wanted; null when no number helps. */
  readonly buy: number | null;
}

/** @returns the figures of a preset as it stands; the tolerance is where half of the centred light is left on the detector */
export function aimInputs(
  spec: Spec,
  { ways, tilt, slide }: { readonly ways: readonly [LineWay, LineWay]; readonly tilt: number; readonly slide: number },
): AimInputs {
  const { emitters, receivers, printer, aim } = spec;
  const piece = Math.min(longestPiece(spec), Math.max(...ways.map(({ distance }) => distance)));
  const bow = printer.machine.warpPer100.value;
  // A lens behind a narrower tube takes what the tube lets through.
  const radius = Math.min(receivers.part.detectorRadius.value, receivers.part.apertureDiameter.value / 2);
  const tolerance = ways.map(({ distance }) => {
    const w = coneRadius(
      { diameter: emitters.part.beamDiameter.value, divergenceMrad: emitters.part.divergenceMrad.value },
      distance,
    );
    return offsetFor(ARRIVED, { radius, w });
  });
  return {
    boresight: rad(emitters.part.boresightSigmaDeg.value),
    wedge: rad(aim.wedgeDeg ?? 0),
    mountError: rad(aim.mountErrorDeg),
    tilt,
    warp: bow > 0 ? Math.min(tilt, bowSlope(bow, 100, piece)) : 0,
    slide,
    tolerance: [tolerance[0]!, tolerance[1]!],
  };
}

/** What the screw reaches at the mount that warp turns most, as if it all went one way: least and greatest tilt. */
export const tiltRange = ({ warp, tilt }: Pick<AimInputs, 'warp' | 'tilt'>) => [warp - tilt, warp + tilt] as const;

/**
 * One channel of a line, in angles about the axis of tilt: a barrel's error and lean act from the beam's exit, all else from that axis,
 * so that they are less by distance over lever.
 */
export function channelOf(way: LineWay, inputs: Omit<AimInputs, 'tolerance'> & { readonly tolerance: number }) {
  return {
    sigma: (inputs.boresight * way.distance) / way.lever,
    wedge: (inputs.wedge * way.distance) / way.lever,
    mounting: { yaw: inputs.mountError, tilt: inputs.mountError },
    reach: {
      tilt: tiltRange(inputs),
      tolerance: inputs.tolerance / way.lever,
      slide: inputs.slide / way.lever,
    },
  };
}

/** @returns the budget */
export function aimFigures(
  spec: Spec,
  {
    ways,
    inputs,
    points = 6,
  }: { readonly ways: readonly [LineWay, LineWay]; readonly inputs: AimInputs; readonly points?: 16 | 6 },
): AimFigures {
  const thread = threads[spec.screws.adjust];
  const lines = ways.map((way, i): LineChance => {
    const tolerance = inputs.tolerance[i]!;
    const { sigma, wedge, mounting, reach } = channelOf(way, { ...inputs, tolerance });
    const chance = leanedChance({ sigma, wedge }, { ...mounting, points }, reach);
    return {
      ...way,
      tolerance,
      chance,
      all: chance ** way.count,
      step: screwStep({ pitch: thread.pitch.value, arm: way.arm, distance: way.lever }),
    };
  });
  const [columns, rows] = [lines[0]!, lines[1]!];
  const needed = columns.count + rows.count;
  const chance = Math.min(columns.chance, rows.chance);
  return {
    inputs,
    lines: [columns, rows],
    all: columns.all * rows.all,
    needed,
    buy: toBuy(needed, { chance, confidence: spec.aim.confidence }),
  };
}
