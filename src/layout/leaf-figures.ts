/** How a leaf behaves over its travel, by the closed forms: linear beam theory, with end corrections where they were fitted. */
import type { Plastic } from '../materials/plastic.js';
import { curvedFactor, rootFactor } from '../mechanics/concentration.js';
import { forceLeft, setAfter, YEAR_HOURS } from '../mechanics/creep.js';
import { endCorrection, UNCORRECTED } from '../mechanics/end-correction.js';
import { barInertia, firstFrequency } from '../mechanics/frequency.js';
import { leafInertia } from '../mechanics/leaf.js';
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
  /** The end corrections apply to this leaf; false: beam theory alone. */
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

/**
 * Length, centre and spread of a leaf's centreline along the beam: straight legs and half circles, in closed form.
 *
 * @returns length [mm]; centre u [mm], negative to the rear; spread: ∫ (u − centre)² ds [mm³]
 */
export function lineFigures({
  layout,
  legs,
  length,
  legPitch,
}: Pick<LeafBody, 'layout' | 'legs' | 'length' | 'legPitch'>) {
  if (layout === 'upright') return { length, centre: 0, spread: 0 };
  const leg = layout === 'notch' ? 2 * length : length;
  const r = legPitch / 2;
  const rear = Math.ceil((legs - 1) / 2);
  const front = legs - 1 - rear;
  const total = legs * leg + Math.PI * r * (rear + front);
  const centre = (-(legs * leg ** 2) / 2 - rear * r * (Math.PI * leg + 2 * r) + front * 2 * r ** 2) / total;
  // A half circle's own ∫ (r cos φ)² ds is π r³ / 2, its first moment 2 r².
  const arc = (from: number) => (Math.PI * r ** 3) / 2 + 4 * r ** 2 * Math.abs(from) + Math.PI * r * from ** 2;
  const straight = ((-centre) ** 3 + (leg + centre) ** 3) / 3;
  return { length: total, centre, spread: legs * straight + rear * arc(leg + centre) + front * arc(-centre) };
}

/**
 * Stiffness and strain of a leaf bent by a force at its screw.
 *
 * A straight leaf within the fitted range is corrected; a fold is the beam along its true path; a notch is Paros and
 * Weisbord's. Along the path the curvature is flex · (u − u_screw) / (lever · length). At a turn's inner face the strain is
 * that of a curved bar.
 *
 * @throws {RangeError} on dimensions that are not finite and > 0
 * Source: Castigliano's theorem; Winkler–Bach; this project's fits (`end-correction.ts`, `concentration.ts`).
 */
export function leafBending(body: LeafBody, plastic: Plastic): Bending {
  const { layout, legs, thickness, width, fillet, lever, legPitch } = body;
  const modulus = plastic.modulus.value;
  const line = lineFigures(body);
  if (layout === 'notch') {
    const notch = { radius: body.length, thickness, width };
    const stiffness = notchStiffness(notch, modulus);
    const strain = notchStrain(notch, 1);
    return { stiffness, screwStiffness: stiffness / lever ** 2, strain, stress: modulus * strain, corrected: false };
  }
  const end =
    layout === 'folded'
      ? UNCORRECTED
      : endCorrection({
          layout,
          leaf: { length: body.length, width, thickness },
          fillet,
          poisson: plastic.poisson.value,
        });
  const length = line.length + end.length;
  const stiffness = (end.plate * modulus * leafInertia(body)) / length;
  const even = layout === 'upright';
  // ∫ (u − centre)² ds of a straight leaf grows with its corrected length.
  const spread = legs === 1 && !even ? length ** 3 / 12 : line.spread;
  const screwStiffness = stiffness / (lever ** 2 + spread / length);
  const surface = thickness / 2 / length;
  const momentAt = (u: number) => (even ? 1 : (lever + u - line.centre) / lever);
  const root = surface * momentAt(0);
  const kt = rootFactor(even ? 'upright' : 'in-line', thickness, fillet);
  let turn = 0;
  if (legs > 1) {
    const rear = momentAt(-body.length);
    const front = legs > 2 ? momentAt(legPitch / 2) : 0;
    turn = surface * Math.max(rear, front) * curvedFactor(legPitch / 2, thickness);
  }
  return {
    stiffness,
    screwStiffness,
    strain: Math.max(root, turn),
    stress: modulus * end.plate * Math.max(root * kt, turn),
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
