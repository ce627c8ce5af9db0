/** Does every printed part fit the printer? */
import type { Finding } from '../findings.js';
import { usableBed } from '../printers/usable-bed.js';
import type { Check, ShapeContext } from './context.js';
import { figure, say } from './say.js';

/** A part lies on the bed, and within its sides, to within this: meshes are float32 [mm]. */
export const ON_BED = 1e-3;

export const bed: Check<ShapeContext> = {
  name: 'bed',
  codes: ['bed/too-large', 'bed/too-high', 'bed/not-on-it'],
  run({ kit, kernel, spec }) {
    const findings: Finding[] = [];
    const { machine } = spec.printer;
    const room = [...usableBed(machine)].sort((a, b) => b - a);
    for (const part of kit.parts.values()) {
      if (part.kind !== 'printed') continue;
      const { min, max } = kernel.box(part.solid);
      const size = [0, 1, 2].map((k) => max[k]! - min[k]!);
      // A quarter turn is free: longer side to longer side.
      const [long, short] = [Math.max(size[0]!, size[1]!), Math.min(size[0]!, size[1]!)];
      const sides = [
        { what: 'long', is: long, limit: room[0]!, code: 'bed/too-large' },
        { what: 'wide', is: short, limit: room[1]!, code: 'bed/too-large' },
        { what: 'high', is: size[2]!, limit: machine.bedZ.value, code: 'bed/too-high' },
      ];
      for (const { what, is, limit, code } of sides) {
        if (is <= limit + ON_BED) continue;
        findings.push(
          say({
            code,
            severity: 'error',
            subject: part.id,
            measured: is,
            limit,
            unit: 'mm',
            message: `${part.id} is ${figure(is)} mm ${what}, ${figure(is - limit)} mm more than the printer's ${figure(limit)} mm.`,
            remedies: ['printer', 'grid'],
          }),
        );
      }
      if (Math.abs(min[2]) > ON_BED)
        findings.push(
          say({
            code: 'bed/not-on-it',
            severity: 'error',
            subject: part.id,
            measured: min[2],
            limit: 0,
            unit: 'mm',
            message: `${part.id} has its lowest point at z = ${figure(min[2])} mm; a part to print stands on z = 0.`,
            remedies: [],
          }),
        );
    }
    return findings;
  },
};
