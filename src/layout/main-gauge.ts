/** How thick the few wires have to be that carry what the whole panel draws. */
import { gaugeDiameter, wireResistance } from '../electrics/copper.js';
import type { Spec } from '../spec/spec.js';
import { CONVERTER, SAG, supplyFigures, WARM } from './supply.js';

/** The thickest that still goes into small terminals. Source: common practice. */
const THICKEST = 14;

/**
 * American wire gauge of the wires to and from the source: as the other wires, or the thinnest even gauge on which a pair of them
 * loses no more than the sag allowed of the lower of the two voltages.
 *
 * @param length - of one of the pair [mm]
 */
export function mainGauge(spec: Spec, length: number): number {
  const { scan, supply } = spec;
  const { all } = supplyFigures(spec, 0);
  const drawn =
    supply.batteryV === undefined ? all : Math.max(all, (all * scan.supplyV) / (supply.batteryV * CONVERTER));
  const most = SAG * Math.min(scan.supplyV, supply.batteryV ?? scan.supplyV);
  const drop = (gauge: number) =>
    drawn * wireResistance({ length: 2 * length, diameter: gaugeDiameter(gauge), celsius: WARM });
  let gauge = supply.gauge;
  while (gauge > THICKEST && drop(gauge) > most) gauge = 2 * Math.ceil(gauge / 2) - 2;
  return gauge;
}
