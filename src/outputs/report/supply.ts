/** Supply and wiring: what is drawn, and where every wire goes. */
import { longestToEmitter } from '../../kit/wire-lengths.js';
import { wiresOf } from '../../kit/wires.js';
import { supplyFigures } from '../../layout/supply.js';
import type { OutputContext } from '../context.js';
import { wiringDiagram } from '../wiring-diagram/diagram.js';
import { table } from './html.js';

/** Two figures are enough: a detector's own are good to a factor of two. */
const ohms = (value: number): string => (Number.isFinite(value) ? String(Number(value.toPrecision(2))) : 'any');

export function supplyHtml(context: OutputContext): string {
  const { kit, spec } = context;
  const longest = longestToEmitter(kit);
  const { emitters, receivers, logic, all, drop, resistor, capacitor, hours, ohmPerM } = supplyFigures(spec, longest);
  const milli = (value: number) => `${(1000 * value).toFixed(1)}`;
  return [
    table(
      `Supply of ${spec.scan.supplyV} V`,
      ['what', 'value', 'unit'],
      [
        ['emitters', milli(emitters), 'mA'],
        ['pull-ups of all receivers', milli(receivers), 'mA'],
        ['logic, as the preset states it', milli(logic), 'mA'],
        ['all', milli(all), 'mA'],
        [`wire of gauge ${spec.supply.gauge}, warm`, ohmPerM.toFixed(3), 'Ω/m'],
        ['lost on the longest emitter wires', milli(drop), 'mV'],
        ['resistor in front of each emitter', resistor > 0 ? String(Math.ceil(resistor)) : 'none', 'Ω'],
        ['pull-up of each receiver, as the preset states it', ohms(spec.scan.pullUpOhm), 'Ω'],
        ['pull-up at least, so that the weakest beam reads lit', ohms(context.light.signal.pullUp.least), 'Ω'],
        ['pull-up at most, so that the light around reads dark', ohms(context.light.signal.pullUp.most), 'Ω'],
        ['one capacitor across the supply', (1e6 * capacitor).toFixed(0), 'µF'],
        ['hours on the battery', hours === null ? 'no battery stated' : hours.toFixed(1), 'h'],
      ],
      { numbers: [1] },
    ),
    '<p>Lithium cells: charge and fuse them as their maker says, never unattended, and keep to local rules; a damaged or swollen cell is waste, not supply.</p>',
    '<h3>Wiring diagram</h3>',
    `<div class="wide" tabindex="0" role="region" aria-label="Wiring diagram; every wire stands in the table below it">${wiringDiagram(spec, { alone: false, boards: kit.boards })}</div>`,
    `<details><summary>Every wire</summary>${table(
      'Wires, as wires.csv lists them',
      ['wire', 'from', 'to', 'gauge', 'length [mm]'],
      wiresOf(context).map(({ id, from, to, gauge, length }) => [id, from, to, gauge, length]),
      { numbers: [3, 4] },
    )}</details>`,
  ].join('\n');
}
