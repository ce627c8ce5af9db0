/** How a leaf behaves over its travel, by the closed forms: linear beam theory with the corrections of its ends. */
import type { Plastic } from '../materials/plastic.js';
import { curvedFactor, midWidthFactor, rootFactor } from '../mechanics/concentration.js';
import { forceLeft, setAfter, YEAR_HOURS } from '../mechanics/creep.js';
import { type EndCorrection, endCorrection, UNCORRECTED } from '../mechanics/end-correction.js';
import { barInertia, firstFrequency } from '../mechanics/frequency.js';
import { leafInertia } from '../mechanics/leaf.js';
import type { PeakFactors } from '../mechanics/nonlinear/leaf-stress.js';
import { notchStiffness, notchStrain } from '../mechanics/notch.js';
import { preloadFlex, shockMoment } from '../mechanics/preload.js';
import type { Rad } from '../units.js';
import type { LeafDemands, LeafDesign } from './types.js';

/** rad, N, N·mm, MPa, Hz; strains as fractions. */
export interface LeafFigures {
  /** K, moment per turn of the arm [N·mm/rad], and force per advance at the screw [N/mm]. */
  readonly stiffness: number;
  readonly screwStiffness: number;
  /** Turn of the arm per mm of screw advance [rad/mm]: times the thread's pitch, the turn per revolution. */
  readonly turnPerAdvance: number;
  /** Largest strain with the beam at its lowest: held for years at the worst. A turn's inner face counts in full, a root without its fillet. */
  readonly strain: number;
  /** Largest stress there, the fillet's factor included, and the strength over it. */
  readonly peakStress: number;
  readonly safety: number;
  /** The same when the stop touches at its latest. */
  readonly stopStrain: number;
  readonly stopStress: number;
  /** Flex that shock and wires ask for at the highest beam after a year there, so that the screw stays on its pad. */
  readonly preloadNeeded: Rad;
  /** Moment on the screw's pad at the highest beam: now, after a year there, and what the shock takes away. */
  readonly preloadMoment: { readonly now: number; readonly afterYear: number; readonly shock: number };
  /** Screw force with the beam at its highest, level and lowest. */
  readonly force: { readonly highest: number; readonly level: number; readonly lowest: number };
  /** Set of a leaf held at its lowest for a year, and how far the screw can then be backed off before it leaves its pad. */
  readonly setAfterYear: Rad;
  readonly backOff: Rad;
  /** First frequency with the moving mass, arm free of the screw: the lower bound. */
  readonly frequency: number;
  /** The leaf lies within the range in which its corrections were fitted; false: carried on from there, or none (notch). */
  readonly corrected: boolean;
}

/** What of a leaf decides how it bends. */
export type LeafBody = Pick<
  LeafDesign,
  'layout' | 'legs' | 'length' | 'thickness' | 'width' | 'legPitch' | 'fillet' | 'lever'
>;

/** How a leaf bends, per radian of flex. */
export interface Bending {
  readonly stiffness: number;
  readonly screwStiffness: number;
  /** Strain and stress per radian [1/rad], [MPa/rad]. */
  readonly strain: number;
  readonly stress: number;
  readonly corrected: boolean;
}

/** What of a leaf's form decides its centreline. */
type Line = Pick<LeafBody, 'layout' | 'legs' | 'length' | 'legPitch'>;

/**
 * Length, centre and spread of a leaf's centreline along the beam: straight legs and half circles, in closed form.
 *
 * @param extra - carried on straight by so much at either root [mm]; below 0: cut short
 * @returns length [mm]; centre u [mm], negative to the rear; spread: ∫ (u − centre)² ds [mm³]
 */
export function lineFigures({ layout, legs, length, legPitch }: Line, extra = 0) {
  if (layout === 'upright') return { length: length + 2 * extra, centre: 0, spread: 0 };
  const leg = layout === 'notch' ? 2 * length : length;
  const r = legPitch / 2;
  const rear = Math.ceil((legs - 1) / 2);
  const front = legs - 1 - rear;
  const total = legs * leg + Math.PI * r * (rear + front) + 2 * extra;
  // Both roots of an even number of legs lie at u = 0; with an odd number one lies at u = −leg.
  const ends = legs % 2 === 0 ? [extra / 2, extra / 2] : [extra / 2, -leg - extra / 2];
  const moment =
    -(legs * leg ** 2) / 2 - rear * r * (Math.PI * leg + 2 * r) + front * 2 * r ** 2 + extra * (ends[0]! + ends[1]!);
  const centre = moment / total;
  // A half circle's own ∫ (r cos φ)² ds is π r³ / 2, its first moment 2 r².
  const arc = (from: number) => (Math.PI * r ** 3) / 2 + 4 * r ** 2 * Math.abs(from) + Math.PI * r * from ** 2;
  const straight = ((-centre) ** 3 + (leg + centre) ** 3) / 3;
  const carried = ends.reduce((sum, end) => sum + extra * (end - centre) ** 2 + extra ** 3 / 12, 0);
  return { length: total, centre, spread: legs * straight + rear * arc(leg + centre) + front * arc(-centre) + carried };
}

/** The corrections of a leaf as drawn; a notch, whose thickness changes, has none. */
export function correctionOf(body: Omit<LeafBody, 'lever'>, plastic: Plastic): EndCorrection {
  const { layout } = body;
  if (layout === 'notch') return UNCORRECTED;
  return endCorrection({ ...body, layout, developed: lineFigures(body).length }, plastic.poisson.value);
}

/** Peak over the beam's stress at a leaf's roots and in each of its turns; none for a notch, whose formula knows its own. */
export function peakFactorsOf(body: LeafBody, plastic: Plastic): PeakFactors {
  const { layout, legs, thickness, fillet, lever } = body;
  if (layout === 'notch') return { root: 1, turns: [] };
  const { plate } = correctionOf(body, plastic);
  const poisson = plastic.poisson.value;
  const arm = layout === 'upright' ? Infinity : lever - lineFigures(body).centre;
  return {
    root: rootFactor({ thickness, fillet, arm, poisson, plate }),
    // The first turn, and every other, lies at the rear: toward the screw, so that it bends most where it begins.
    turns: Array.from({ length: legs - 1 }, (_, i) =>
      midWidthFactor(poisson, plate, i % 2 === 0 ? 'beside a leg' : 'held'),
    ),
  };
}

/**
 * Stiffness and strain of a leaf bent by a force at its screw.
 *
 * Straight or folded it is the beam along its true path, carried on by half its end correction at either root; a notch is Paros
 * and Weisbord's. Along the path the curvature is flex · (u − u_screw) / (arm · length), the arm from the screw to the centre of the
 * path so carried on. At a turn's inner face the strain is that of a curved bar.
 *
 * @throws {RangeError} on dimensions that are not finite and > 0
 * Source: Castigliano's theorem; Winkler–Bach; this project's fits (`end-correction.ts`, `concentration.ts`).
 */
export function leafBending(body: LeafBody, plastic: Plastic): Bending {
  const { layout, legs, thickness, width, lever, legPitch } = body;
  const modulus = plastic.modulus.value;
  if (layout === 'notch') {
    const notch = { radius: body.length, thickness, width };
    const stiffness = notchStiffness(notch, modulus);
    const strain = notchStrain(notch, 1);
    return { stiffness, screwStiffness: stiffness / lever ** 2, strain, stress: modulus * strain, corrected: false };
  }
  const end = correctionOf(body, plastic);
  const drawn = lineFigures(body);
  const { length, centre, spread } = lineFigures(body, end.length / 2);
  const arm = lever + centre - drawn.centre;
  const section = end.plate * modulus * leafInertia(body);
  const surface = thickness / 2 / length;
  const momentAt = (u: number) => (layout === 'upright' ? 1 : (lever + u - drawn.centre) / arm);
  const root = surface * momentAt(0);
  const inner = legs > 1 ? surface * curvedFactor(legPitch / 2, thickness) : 0;
  const turns = [momentAt(-body.length), momentAt(legPitch / 2)].slice(0, legs - 1).map((moment) => inner * moment);
  const peaks = peakFactorsOf(body, plastic);
  return {
    // The screw's moment about the centre as drawn, by which its force is told.
    stiffness: (section / length) * (lever / arm),
    screwStiffness: section / (length * arm ** 2 + spread),
    strain: Math.max(root, ...turns),
    stress: modulus * end.plate * Math.max(root * peaks.root, ...turns.map((turn, i) => turn * peaks.turns[i]!)),
    corrected: end.valid,
  };
}

/** Findley's law of a plastic. */
export const findleyOf = ({ creepA, creepN }: Plastic) => ({ a: creepA.value, n: creepN.value });

/** The moment that the shock takes off the screw [N·mm]. */
export const shockOf = ({ shockG, movingMass, massLever }: LeafDemands): number =>
  shockMoment(shockG, movingMass, massLever);

/** The moment that the preload must still have after a year [N·mm]: against the shock, or against what pulls at the wires. */
export const momentNeeded = (demands: LeafDemands, lever: number): number =>
  Math.max(shockOf(demands), (demands.pushLeast ?? 0) * lever);

/**
 * Everything the checks and the report say of a solved leaf.
 *
 * The moving arm counts as a bar as long as the mount up to its screw. Creep: Findley, held a year at one angle.
 *
 * @throws {RangeError} on dimensions that are not finite and > 0
 */
export function leafFigures(design: LeafDesign, demands: LeafDemands, plastic: Plastic): LeafFigures {
  const bending = leafBending(design, plastic);
  return figuresOf(
    {
      ...bending,
      // Under F at the screw the arm turns by F a / K and the screw advances by F / k.
      turnPerAdvance: (design.lever * bending.screwStiffness) / bending.stiffness,
      at: (flex) => ({
        force: (bending.stiffness * flex) / design.lever,
        strain: bending.strain * flex,
        stress: bending.stress * flex,
      }),
    },
    { design, demands, plastic },
  );
}

/** A leaf's behaviour, whichever theory it comes from. */
export interface Bent extends Pick<LeafFigures, 'stiffness' | 'screwStiffness' | 'turnPerAdvance' | 'corrected'> {
  /** Screw force [N], largest strain, and largest stress with the fillets' factor [MPa], at a flex from rest. */
  readonly at: (flex: Rad) => { readonly force: number; readonly strain: number; readonly stress: number };
}

/** What follows from a leaf's behaviour: strength, preload, creep, frequency. */
export function figuresOf(
  { stiffness, screwStiffness, turnPerAdvance, corrected, at }: Bent,
  {
    design,
    demands,
    plastic,
  }: { readonly design: LeafDesign; readonly demands: LeafDemands; readonly plastic: Plastic },
): LeafFigures {
  const { preload, tilt, bias, stopLatest, lever } = design;
  const lowest = (preload + 2 * tilt) as Rad;
  const [low, stop] = [at(lowest), at((lowest + stopLatest) as Rad)];
  const findley = findleyOf(plastic);
  const left = forceLeft(findley, YEAR_HOURS);
  const shock = shockOf(demands);
  const set = setAfter(findley, YEAR_HOURS, lowest);
  const inertia = barInertia(demands.movingMass, demands.massLever, demands.screwAt);
  return {
    stiffness,
    screwStiffness,
    turnPerAdvance,
    strain: low.strain,
    peakStress: low.stress,
    safety: plastic.strength.value / low.stress,
    stopStrain: stop.strain,
    stopStress: stop.stress,
    preloadNeeded: preloadFlex(momentNeeded(demands, lever), stiffness, left) as Rad,
    preloadMoment: { now: stiffness * preload, afterYear: stiffness * preload * left, shock },
    force: { highest: at(preload).force, level: at(bias).force, lowest: low.force },
    setAfterYear: set as Rad,
    backOff: Math.max(0, lowest - set - shock / stiffness) as Rad,
    frequency: firstFrequency(stiffness, inertia),
    corrected,
  };
}
