/** What fingers of every breadth do to the lines, by axis. All lengths mm. */
import { breadthAt, overlapFor, reachByLight } from '../../optics/finger-block.js';
import { FINGERS } from '../../optics/finger-data.js';
import { type Hit, hitChance, hitKey, touchScatter } from '../../optics/finger-hit.js';
import { type PitchAnswer, pitchFor } from '../../optics/finger-pitch.js';
import type { Spec } from '../../spec/spec.js';
import type { LineWay } from './lines.js';
import type { SignalFigures } from './signal.js';

export interface FingerOnAxis {
  /** Where the lines stand beside each other: columns along x, rows along y. */
  readonly axis: 'x' | 'y';
  readonly pitch: number;
  readonly scatter: number;
  /** How far a finger's edge must pass a beam's middle. */
  readonly overlap: number;
  /** By finger: the offset to which it flips a line, or null, and what a touch does. */
  readonly fingers: readonly AxisFinger[];
  readonly advice: PitchAnswer | null;
}

export interface AxisFinger {
  readonly breadth: number;
  /** Its breadth at the beams. */
  readonly atBeam: number;
  readonly reach: number | null;
  readonly hit: Hit;
}

export interface FingerFigures {
  readonly axes: readonly [FingerOnAxis, FingerOnAxis];
  /** Both axes together: chance that only the aimed key answers, by finger. */
  readonly keys: readonly { readonly breadth: number; readonly hit: Hit }[];
}

/** Chance of hitting only the aimed line that a pitch is asked for. */
const WANTED = 0.99;
/** Pitches tried for advice. */
const TRIED = { from: 8, to: 60, step: 0.5 } as const;
/** A finger that never flips a line. */
const NEVER: Hit = { aimed: 0, double: 0, wrong: 0, none: 1 };
/** The least that can be asked of a finger, where a receiver is so dim that it reads dark at once. */
const SHADE = 0.01;

/** @returns null where a receiver never reads dark: then no finger counts */
export function fingerFigures(
  spec: Spec,
  { ways, signal }: { readonly ways: readonly [LineWay, LineWay]; readonly signal: SignalFigures },
): FingerFigures | null {
  const breadths = breadthsOf(spec);
  const axes: FingerOnAxis[] = [];
  for (const [i, way] of ways.entries()) {
    const axis = way.line === 'column' ? 'x' : 'y';
    const { toTake, w } = signal.lines[i]!;
    if (toTake === null) return null;
    const share = Math.max(SHADE, toTake);
    const lit = { w, aperture: { radius: signal.detector.radius } };
    const overlap = overlapFor(share, lit);
    const cells = way.line === 'column' ? spec.grid.columns : spec.grid.rows;
    const alone = way.count === 1;
    // A lone line has no neighbours to be mistaken for.
    const pitch = alone ? Math.max(...cells) : way.pitch;
    const scatter = touchScatter(Math.max(...cells), axis);
    const fingers = breadths.map((breadth): AxisFinger => {
      const atBeam = breadthAt(breadth, spec.beam.height);
      const reach = reachByLight(atBeam, share, lit);
      const neighbours = alone ? ([0, 0] as const) : undefined;
      const hit =
        reach === null
          ? NEVER
          : hitChance({ pitch, reach, scatter, ...(neighbours === undefined ? {} : { neighbours }) });
      return { breadth, atBeam, reach, hit };
    });
    const advice = pitchFor({
      axis,
      breadths: [breadths[0]!, breadths.at(-1)!],
      height: spec.beam.height,
      overlap: Math.max(0, overlap),
      ...TRIED,
      wanted: WANTED,
    });
    axes.push({ axis, pitch, scatter, overlap, fingers, advice });
  }
  const [x, y] = [axes[0]!, axes[1]!];
  return {
    axes: [x, y],
    keys: breadths.map((breadth, i) => ({ breadth, hit: hitKey(x.fingers[i]!.hit, y.fingers[i]!.hit) })),
  };
}

/** The preset's ends, and the usual breadths between them. */
function breadthsOf({ finger: { least, most } }: Spec): readonly number[] {
  const between = FINGERS.map(({ value }) => value).filter((value) => value > least && value < most);
  return [...new Set([least, ...between, most])];
}
