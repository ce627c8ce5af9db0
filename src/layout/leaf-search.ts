/** Tries every leaf that may be drawn within the demands and keeps the best that holds, printed a little thick too if one does. */
import type { Plastic } from '../materials/plastic.js';
import { forceLeft, YEAR_HOURS } from '../mechanics/creep.js';
import { barInertia, firstFrequency } from '../mechanics/frequency.js';
import { printedThickness } from '../mechanics/printed-thickness.js';
import type { LeafLayout } from '../spec/spec.js';
import { deg, type Rad, rad } from '../units.js';
import { type Bending, findleyOf, leafBending, lineFigures, momentNeeded } from './leaf-figures.js';
import type { LeafDemands, LeafDesign } from './types.js';

export interface SearchOptions {
  readonly plastic: Plastic;
  /** Where the screw stands behind the mount's front for a given leaf [mm]; default: where the demands say. */
  readonly screwAt?: (leaf: Pick<LeafDesign, 'layout' | 'legs' | 'length' | 'legPitch' | 'thickness'>) => number;
}

/** Strength over the largest stress. Source: common practice for plastics under steady load. */
export const STRESS_SAFETY = 1.5;
/** More than this bends the nut's pocket and dents the base [N]. Source: estimate for walls of 1.7 mm, common practice. */
export const FORCE_MOST = 25;
/** Below this a screw's friction alone does not hold it [N]. Source: estimate for M2.5 in a plain nut, common practice. */
export const HOLDS = 3;
/** What a leaf's printed thickness may be off [mm]: K is taken for the thin one. Source: common practice. */
export const THICKNESS_ERROR = 0.05;
/** Least gap between legs, and air left when they approach each other [mm]. Source: slots of two lines print open; common practice. */
const GAP_LEAST = 0.8;
const GAP_AIR = 0.4;
/** Arms and post are at least so many leaf thicknesses deep, or they bend with the leaf. Source: common practice. */
const ARM_THICKNESSES = 5;
/** Foot steps and knocks on a table excite up to about this [Hz]. Source: common practice. */
export const QUIET = 40;
/**
 * Arms printed tilted up by more than this [°] no longer go together: found by drawing 726 pinned leaves, of three legs the first
 * touches its arm's foot at 13.6°; of the others none did up to 22°.
 */
const BIAS_MOST = { threeLegs: 13, others: 20 } as const;
const LINES = [2, 3, 4, 5] as const;
const FILLETS = [1, 0.5] as const;
const LENGTH_STEP = 0.5;
const PITCH_STEP = 0.25;
/** Straight leaves outside this range have no fitted corrections [mm]. */
const STRAIGHT: readonly [number, number] = [8, 14];
/** Legs shorter than this [mm], or than five thicknesses, are no beams. */
const LEG_LEAST = 4;
const SLENDER = 5;
/** Preloads are rounded up to a twentieth of a degree. */
const FLEX_STEP = rad(0.05);

/** A leaf that holds. */
export interface Candidate {
  readonly design: LeafDesign;
  /** The demands, with the screw where this leaf puts it. */
  readonly at: LeafDemands;
  readonly frequency: number;
  readonly zone: number;
  /** What it breaks when it is printed thicker by `THICKNESS_ERROR`; printed so much thinner it loses preload, which is chosen for that. */
  readonly thick: readonly Broken[];
}

/** @returns the best leaf that meets the demands, or undefined */
export function searchLeaf(demands: LeafDemands, options: SearchOptions): Candidate | undefined {
  let best: Candidate | undefined;
  for (const body of bodies(demands)) {
    const candidate = judge(body, demands, options);
    if (candidate && (!best || better(candidate, best))) best = candidate;
  }
  return best;
}

function better(a: Candidate, b: Candidate): boolean {
  const sturdy = [a, b].map(({ thick }) => thick.length === 0);
  if (sturdy[0] !== sturdy[1]) return sturdy[0]!;
  const quiet = [a, b].map(({ frequency }) => frequency >= QUIET);
  if (quiet[0] !== quiet[1]) return quiet[0]!;
  if (!quiet[0] && Math.abs(a.frequency - b.frequency) > 1e-9) return a.frequency > b.frequency;
  if (Math.abs(a.zone - b.zone) > 1e-9) return a.zone < b.zone;
  return a.design.fillet > b.design.fillet;
}

type Body = Pick<LeafDesign, 'layout' | 'legs' | 'length' | 'thickness' | 'width' | 'legPitch' | 'fillet'>;

/** Every leaf that may be tried: pinned figures as they are, open ones over their range. */
function* bodies(demands: LeafDemands): Generator<Body> {
  const { lineWidth, layer, width } = demands;
  const thicknesses =
    demands.thickness === undefined
      ? LINES.map((lines) => hundredth(printedThickness(lines, lineWidth, layer)))
      : [demands.thickness];
  for (const { layout, legs } of kinds(demands))
    for (const thickness of thicknesses)
      for (const length of lengths(layout, thickness, demands))
        for (const legPitch of pitches(legs, thickness, demands)) {
          const most = legs > 1 ? (legPitch - thickness) / 2 : Infinity;
          for (const share of FILLETS) {
            const fillet = twentieth(share * thickness);
            if (fillet <= most + 1e-9) yield { layout, legs, length, thickness, width, legPitch, fillet };
          }
        }
}

/** Layouts and numbers of legs that the preset leaves open. */
function kinds({ layout, legs }: LeafDemands): readonly { readonly layout: LeafLayout; readonly legs: number }[] {
  const open: readonly { layout: LeafLayout; legs: number }[] = [
    { layout: 'in-line', legs: 1 },
    { layout: 'folded', legs: 2 },
    { layout: 'folded', legs: 3 },
  ];
  if (layout === 'upright' || layout === 'notch') return legs === undefined || legs === 1 ? [{ layout, legs: 1 }] : [];
  if (legs !== undefined && legs > 3 && layout !== 'in-line') return [{ layout: 'folded', legs }];
  return open.filter(
    (kind) => (layout === undefined || kind.layout === layout) && (legs === undefined || kind.legs === legs),
  );
}

function lengths(layout: LeafLayout, thickness: number, { length, lengthMost }: LeafDemands): readonly number[] {
  if (length !== undefined) return [length];
  const [least, most] = layout === 'folded' || layout === 'notch' ? [legLeast(thickness), lengthMost] : STRAIGHT;
  // A notch's length is its radius: it takes twice that.
  const scale = layout === 'notch' ? 2 : 1;
  return steps(least / scale, Math.min(most, lengthMost) / scale, LENGTH_STEP / scale);
}

const legLeast = (thickness: number) =>
  Math.max(LEG_LEAST, Math.ceil((SLENDER * thickness) / LENGTH_STEP - 1e-9) * LENGTH_STEP);

function pitches(legs: number, thickness: number, { heightMost, legGapLeast }: LeafDemands): readonly number[] {
  if (legs === 1) return [0];
  const gap = Math.max(GAP_LEAST, 2 * twentieth(0.5 * thickness), legGapLeast);
  return steps(twentieth(thickness + gap), (heightMost - thickness) / (legs - 1), PITCH_STEP);
}

/** Height of the leaf's zone [mm]. */
const heightOf = ({ layout, legs, legPitch, thickness, length }: Body): number => {
  if (layout === 'upright') return length;
  return layout === 'notch' ? thickness + 2 * length : (legs - 1) * legPitch + thickness;
};

/** The design of a body that meets every demand, or nothing. */
function judge(body: Body, demands: LeafDemands, options: SearchOptions): Candidate | undefined {
  const at = placed(body, demands, options);
  if (!misfits(body, at).next().done) return undefined;
  const tried = dimension(body, at, options);
  return tried && weaknesses(tried, options).next().done
    ? { ...tried, thick: weaknessesThick(tried, options) }
    : undefined;
}

const placed = (body: Body, demands: LeafDemands, { screwAt }: SearchOptions): LeafDemands =>
  screwAt ? { ...demands, screwAt: screwAt(body) } : demands;

/** A demand that a leaf does not meet. Lengths in mm, strains as fractions, MPa, degrees. */
export interface Broken {
  readonly rule: 'height' | 'length' | 'post' | 'bias' | 'strain' | 'gap' | 'stop' | 'stress';
  readonly measured: number;
  readonly limit: number;
}

/** What of a body has no room. */
function* misfits(body: Body, { heightMost, lengthMost, post }: LeafDemands): Generator<Broken> {
  const height = heightOf(body);
  if (height > heightMost + 1e-9) yield { rule: 'height', measured: height, limit: heightMost };
  const span = spanOf(body);
  if (span > lengthMost + 1e-9) yield { rule: 'length', measured: span, limit: lengthMost };
  const thick = ARM_THICKNESSES * body.thickness;
  if (post < thick - 1e-9) yield { rule: 'post', measured: thick, limit: post };
}

const spanOf = ({ layout, thickness, length }: Body): number =>
  ({ upright: thickness, notch: 2 * length, 'in-line': length, folded: length })[layout];

interface Dimensioned extends Omit<Candidate, 'thick'> {
  readonly bending: Bending;
}

/** Preload, bias and stop for a body, or nothing where the screw would stand before the leaf's end. */
function dimension(body: Body, at: LeafDemands, { plastic }: SearchOptions): Dimensioned | undefined {
  const { layout, legs, length, thickness, legPitch } = body;
  const { post, gapTolerance, tilt } = at;
  const { centre } = lineFigures(body);
  const lever = at.screwAt - post + centre;
  if (!(lever > length / 2)) return undefined;

  const bending = leafBending({ ...body, lever }, plastic);
  const thin = (1 - THICKNESS_ERROR / thickness) ** (layout === 'notch' ? 2.5 : 3);
  const left = forceLeft(findleyOf(plastic), YEAR_HOURS);
  // Printed thin, or in the warmest air for a year: not both at once, each being rare.
  const share = Math.min(thin * left, at.warmLeft ?? left);
  const least = Math.max(momentNeeded(at, lever) / (bending.stiffness * share), gapTolerance / lever);
  const preload = (Math.ceil(least / FLEX_STEP - 1e-9) * FLEX_STEP) as Rad;
  const chinLever = post / 2 - centre;
  // Drawn one tolerance past the lowest beam, the stop touches between there and two tolerances past it.
  const stopMargin = (gapTolerance / chinLever) as Rad;
  const stopLatest = (2 * stopMargin) as Rad;
  const turns = legs > 1 ? (legPitch + thickness) * (legs > 2 ? 1 : 0.5) : 0;
  return {
    at,
    bending,
    design: { ...body, lever, chinLever, preload, tilt, bias: (preload + tilt) as Rad, stopMargin, stopLatest },
    frequency: firstFrequency(bending.stiffness, barInertia(at.movingMass, at.massLever, at.screwAt)),
    zone: (spanOf(body) + turns) * heightOf(body),
  };
}

/** What of a leaf bends too far or bears too much, by the closed forms. */
function* weaknesses({ design, bending }: Dimensioned, { plastic }: SearchOptions): Generator<Broken> {
  const bias = deg(design.bias);
  const biasMost = design.legs > 2 ? BIAS_MOST.threeLegs : BIAS_MOST.others;
  if (bias > biasMost) yield { rule: 'bias', measured: bias, limit: biasMost };
  const lowest = design.preload + 2 * design.tilt;
  const atStop = lowest + design.stopLatest;
  const strain = bending.strain * lowest;
  if (strain > plastic.sustainedStrain.value)
    yield { rule: 'strain', measured: strain, limit: plastic.sustainedStrain.value };
  if (design.legs > 1) {
    const gap = design.legPitch - design.thickness;
    const least = approach(design, atStop) + GAP_AIR;
    if (gap < least - 1e-9) yield { rule: 'gap', measured: gap, limit: least };
  }
  const stop = bending.strain * atStop;
  const most = Math.min(plastic.shortTermStrain.value, plastic.yieldStrain.value);
  if (stop > most) yield { rule: 'stop', measured: stop, limit: most };
  const stress = bending.stress * atStop;
  const allowed = plastic.strength.value / STRESS_SAFETY;
  if (stress > allowed) yield { rule: 'stress', measured: stress, limit: allowed };
}

/** The same of a leaf printed thicker, its screw set to the same angles. The air between its legs is there for that. */
function weaknessesThick(tried: Dimensioned, options: SearchOptions): readonly Broken[] {
  const design = { ...tried.design, thickness: tried.design.thickness + THICKNESS_ERROR };
  const bending = leafBending(design, options.plastic);
  return [...weaknesses({ ...tried, design, bending }, options)].filter(({ rule }) => rule !== 'gap');
}

/** A leaf that may break demands, and those it breaks. */
export interface Nearest extends Candidate {
  readonly broken: readonly Broken[];
}

/**
 * As `searchLeaf`; where no leaf meets the demands, the one that misses them by the least, all misses taken together.
 *
 * @returns undefined where nothing can be drawn at all: no pitch of legs fits, or the screw would stand before the leaf's end
 */
export function nearestLeaf(demands: LeafDemands, options: SearchOptions): Nearest | undefined {
  let best: Nearest | undefined;
  let miss = Infinity;
  for (const body of bodies(demands)) {
    const at = placed(body, demands, options);
    const tried = dimension(body, at, options);
    if (!tried) continue;
    const broken = [...misfits(body, at), ...weaknesses(tried, options)];
    const off = broken.reduce((sum, { measured, limit }) => sum + Math.abs(measured / limit - 1), 0);
    const candidate = { ...tried, broken, thick: broken };
    if (best && (off > miss || (off === miss && !better(candidate, best)))) continue;
    [best, miss] = [candidate, off];
  }
  return best;
}

/**
 * How far neighbouring legs approach each other at a flex [mm]: the first two are a fold of their own, which takes its share of
 * the flex and turns about its own centre; its far end comes down by that arm.
 */
function approach({ layout, legs, length, legPitch }: Body, flex: number): number {
  const pair = lineFigures({ layout, legs: 2, length, legPitch });
  const whole = lineFigures({ layout, legs, length, legPitch });
  return ((flex * pair.length) / whole.length) * -pair.centre;
}

const hundredth = (value: number) => Math.round(value * 100) / 100;
const twentieth = (value: number) => Math.ceil(value * 20 - 1e-9) / 20;

/** from, from + step … up to `to` inclusive. */
export function steps(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.max(0, Math.floor((to - from) / step + 1e-9) + 1) }, (_, i) =>
    hundredth(from + i * step),
  );
}
