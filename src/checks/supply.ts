/** Do the emitters get their voltage at the end of their wires, and does a battery carry the panel for a while? */
import type { Finding } from '../findings.js';
import { longestToEmitter } from '../kit/wire-lengths.js';
import { supplyFigures } from '../layout/supply.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

/** Of an emitter's voltage, what its wires may take. Source: common practice. */
const MOST_DROP = 0.05;
/** A battery that lasts less is no supply [h]. Source: common practice. */
const LEAST_HOURS = 1;

export const supply: Check<Pick<CheckContext, 'kit' | 'spec'>> = {
  name: 'supply',
  codes: ['supply/low', 'supply/drop', 'supply/battery', 'supply/current'],
  run({ kit, spec }) {
    const { voltageV } = spec.emitters.part;
    const { supplyV } = spec.scan;
    const longest = longestToEmitter(kit);
    const figures = supplyFigures(spec, longest);
    const findings: Finding[] = [];
    if (supplyV < voltageV.value - 1e-9)
      findings.push(
        say({
          code: 'supply/low',
          severity: 'warning',
          subject: spec.emitters.name,
          measured: supplyV,
          limit: voltageV.value,
          unit: 'V',
          message: `The supply gives ${figure(supplyV)} V, the emitters take ${figure(voltageV.value)} V: give them a supply of their own, or raise this one.`,
          remedies: ['scan.supply_v', 'emitters.part'],
        }),
      );
    const most = MOST_DROP * voltageV.value;
    if (figures.drop > most)
      findings.push(
        say({
          code: 'supply/drop',
          severity: 'warning',
          subject: spec.emitters.name,
          measured: figures.drop,
          limit: most,
          unit: 'V',
          message: `Wires of gauge ${spec.supply.gauge}, ${figure(longest)} mm there and as much back, take ${figure(figures.drop)} V from an emitter; ${figure(most)} V are a twentieth of what it needs.`,
          remedies: ['supply.gauge'],
        }),
      );
    if (figures.hours !== null && figures.hours < LEAST_HOURS)
      findings.push(
        say({
          code: 'supply/battery',
          severity: 'warning',
          subject: 'battery',
          measured: figures.hours,
          limit: LEAST_HOURS,
          unit: 'h',
          message: `The battery lasts ${figure(figures.hours)} h at ${figure(1000 * figures.all)} mA: take a larger one, or light the lines one at a time.`,
          remedies: ['supply.battery_mah', 'scan.light_us', 'emitters.part'],
        }),
      );
    findings.push(
      say({
        code: 'supply/current',
        severity: 'note',
        subject: 'panel',
        measured: 1000 * figures.all,
        unit: 'mA',
        message: `The panel draws ${figure(1000 * figures.all)} mA at ${figure(supplyV)} V: emitters ${figure(1000 * figures.emitters)}, pull-ups ${figure(1000 * figures.receivers)}, logic ${figure(1000 * figures.logic)}. One capacitor of ${figure(1e6 * figures.capacitor)} µF carries the step when they are switched on${figures.resistor > 0 ? `; each emitter needs ${Math.ceil(figures.resistor)} Ω in front of it` : ''}${figures.hours === null ? '' : `; the battery lasts about ${figure(figures.hours)} h`}.`,
        remedies: [],
      }),
    );
    return findings;
  },
};
