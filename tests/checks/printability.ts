/** A kit of one printed part, for the checks of printability. */
import type { Check, CheckContext } from '../../src/checks/context.js';
import type { Finding } from '../../src/findings.js';
import type { Kit, Part } from '../../src/kit/types.js';
import type { Printer } from '../../src/printers/printer.js';
import type { MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { spec } from './sound-figures.js';
import { contextOf, part } from './sound-kit.js';

type Figures = Partial<Record<Exclude<keyof Printer, 'title'>, number>>;

/** The test printer (line .45, layer .2, 45°, bridges of 10) with other figures. */
export const printerWith = (figures: Figures): Printer => ({
  ...spec.printer.machine,
  ...Object.fromEntries(Object.entries(figures).map(([key, value]) => [key, { value, source: 'invented' }])),
});

export function ask(
  check: Check,
  kernel: MeasuringKernel,
  of: Part | Solid,
  figures: Figures = {},
): readonly Finding[] {
  const one = 'solid' in of ? of : part('block', of);
  const kit: Kit = {
    parts: new Map([[one.id, one]]),
    placements: [],
    beams: [],
    screws: [],
    fits: [],
    assembly: [],
  };
  const more: Partial<CheckContext> = {
    spec: { ...spec, printer: { name: 'test', machine: printerWith(figures) } },
  };
  return check.run(contextOf(kernel, kit, more));
}
