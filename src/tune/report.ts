/** A sweep as it is told: its rows, which of them no other beats, which is taken and drawn. */
import type { LeafDesign } from '../layout/types.js';
import type { Spec } from '../spec/spec.js';
import { deg, rad } from '../units.js';
import { best, nearest } from './choose.js';
import { unbeaten } from './pareto.js';
import type { Plan } from './points.js';
import { type Travel, travelOf } from './travel.js';
import { passes, type TunePoint, type TuneRow } from './types.js';

export interface TuneReport {
  readonly spec: Spec;
  readonly plan: Plan;
  readonly rows: readonly TuneRow[];
  /** Numbers of the designs that no other beats. */
  readonly front: ReadonlySet<number>;
  /** The design that the preset gets as it stands, where it is among them. */
  readonly now: TuneRow | undefined;
  /** By rule; undefined where nothing passes. */
  readonly best: TuneRow | undefined;
  /** What is drawn: the one that was picked, else the best, else the nearest miss. */
  readonly shown: TuneRow | undefined;
  readonly travel: Travel | undefined;
}

/** @param pick - number of the design to draw; default: the best */
export function reportOf(
  spec: Spec,
  { plan, rows, pick }: { readonly plan: Plan; readonly rows: readonly TuneRow[]; readonly pick?: number | undefined },
): TuneReport {
  const front = unbeaten(rows);
  const taken = best(rows, front);
  const shown = pick === undefined ? (taken ?? nearest(rows)) : rows.find(({ point }) => point.number === pick);
  const travel = shown?.figures ? travelOf(spec, shown.point) : undefined;
  const leaf = plan.baseline?.mount.leaf;
  const now = rows.find(({ point }) => leaf && isNow(point, { leaf, spec }));
  return { spec, plan, rows, front, now, best: taken, shown, travel };
}

const isNow = (
  { layout, legs, length, thickness, width, material, tiltDeg, adjust }: TunePoint,
  { leaf, spec }: { readonly leaf: LeafDesign; readonly spec: Spec },
): boolean =>
  layout === leaf.layout &&
  legs === leaf.legs &&
  length === leaf.length &&
  thickness === leaf.thickness &&
  (width ?? leaf.width) === leaf.width &&
  (material ?? spec.material.name) === spec.material.name &&
  Math.abs(rad(tiltDeg ?? deg(leaf.tilt)) - leaf.tilt) < 1e-9 &&
  (adjust ?? spec.screws.adjust) === spec.screws.adjust;

export const passing = (rows: readonly TuneRow[]): number => rows.filter(passes).length;
