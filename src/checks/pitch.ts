/** Do neighbours along a rail have room beside each other? */
import type { Finding } from '../findings.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

export const pitch: Check<Pick<CheckContext, 'spec' | 'frameFigures'>> = {
  name: 'pitch',
  codes: ['pitch/too-small'],
  run({ spec, frameFigures }) {
    const findings: Finding[] = [];
    for (const [line, cells] of [
      ['columns', spec.grid.columns],
      ['rows', spec.grid.rows],
    ] as const)
      for (const { what, least, remedies } of frameFigures.needs) {
        const apart = cells.slice(1).map((cell, i) => (cell + cells[i]!) / 2);
        const closest = Math.min(...apart);
        if (apart.length === 0 || closest >= least - 1e-6) continue;
        const at = apart.indexOf(closest);
        findings.push(
          say({
            code: 'pitch/too-small',
            severity: 'error',
            subject: `${line} ${at} and ${at + 1}`,
            measured: closest,
            limit: least,
            unit: 'mm',
            message: `Beams of ${line} ${at} and ${at + 1} are ${figure(closest)} mm apart; ${what} need ${figure(least)} mm.`,
            remedies: ['grid.pitch', ...remedies],
          }),
        );
      }
    return findings;
  },
};
