/** What the panel draws, and what its wires, battery and capacitor make of it. Currents A, voltages V. */
import { gaugeDiameter, wireResistance } from '../electrics/copper.js';
import { batteryHours, preferredAbove, reservoir, seriesResistor } from '../electrics/supply.js';
import type { Spec } from '../spec/spec.js';
import { layScan } from './scan.js';

/** Of a battery's capacity, what can be used, and what a converter to the supply's voltage leaves of it. Source: common practice. */
const USABLE = 0.8;
export const CONVERTER = 0.85;
/** Until a small converter follows a step of its load [s], and how far the supply may sag meanwhile, as a share. Source: common practice. */
const FOLLOWS = 50e-6;
export const SAG = 0.02;
/** Of copper in a closed rail [°C]. */
export const WARM = 40;

export interface SupplyFigures {
  readonly emitters: number;
  readonly receivers: number;
  readonly logic: number;
  readonly all: number;
  /** Of the thinnest copper that is asked for [Ω/m]. */
  readonly ohmPerM: number;
  /** At the emitter with the longest wires: there and back [V]. */
  readonly drop: number;
  /** In front of each emitter that takes less than the supply gives [Ω]; 0: none. */
  readonly resistor: number;
  /** One for the panel [F]. */
  readonly capacitor: number;
  /** Null without a battery. */
  readonly hours: number | null;
}

/** @param longest - wires of an emitter, one way [mm]; 0 where there are none */
export function supplyFigures(spec: Spec, longest: number): SupplyFigures {
  const { grid, scan, supply } = spec;
  const { part } = spec.emitters;
  const count = grid.columns.length + grid.rows.length;
  const current = part.currentMa.value / 1000;
  // Lit line by line, those draw that are read together: with a shared address one of each multiplexer.
  const emitters = (scan.lightUs > 0 ? layScan(spec).litTogether : count) * current;
  const receivers = (count * scan.supplyV) / scan.pullUpOhm;
  const logic = supply.logicMa / 1000;
  const all = emitters + receivers + logic;
  const diameter = gaugeDiameter(supply.gauge);
  return {
    emitters,
    receivers,
    logic,
    all,
    ohmPerM: wireResistance({ length: 1000, diameter, celsius: WARM }),
    drop: longest > 0 ? current * wireResistance({ length: 2 * longest, diameter, celsius: WARM }) : 0,
    resistor: seriesResistor(scan.supplyV, { voltage: part.voltageV.value, current }),
    capacitor: preferredAbove(reservoir({ step: emitters, time: FOLLOWS, sag: SAG * scan.supplyV })),
    hours:
      supply.batteryMah === undefined || supply.batteryV === undefined
        ? null
        : batteryHours({
            capacity: (supply.batteryMah / 1000) * (supply.batteryV / scan.supplyV) * CONVERTER,
            share: USABLE,
            current: all,
          }),
  };
}
