/** Can every beam be brought onto its receiver, and finely enough? */
import type { Finding } from '../findings.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

/** One channel in two must come right, or the mount is no cure; one in ten may be exchanged without a word. */
const HOPELESS = 0.5;
const USUAL = 0.9;

/** The finest turn of a key by hand [°]. Source: common practice, no source. */
const FINEST = 5;

export const aim: Check<Pick<CheckContext, 'light' | 'spec'>> = {
  name: 'aim',
  codes: ['aim/chance', 'aim/resolution'],
  run({ light: { aim: found, levers }, spec }) {
    const findings: Finding[] = [];
    const worst = found.lines[0].chance < found.lines[1].chance ? found.lines[0] : found.lines[1];
    const percent = 100 * worst.chance;
    findings.push(
      say({
        code: 'aim/chance',
        severity: worst.chance < HOPELESS ? 'error' : worst.chance < USUAL ? 'warning' : 'note',
        subject: `${worst.line}s`,
        measured: percent,
        limit: 100 * (worst.chance < HOPELESS ? HOPELESS : USUAL),
        unit: '%',
        message:
          `A ${worst.line}’s beam can be brought onto its receiver ${figure(worst.distance)} mm off with a chance of ${figure(percent)} %, ` +
          `all ${found.needed} lines with as many emitters with ${figure(100 * found.all)} %. ` +
          (found.buy === null
            ? 'No number of emitters makes up for that.'
            : `${found.buy} emitters are enough with a chance of ${figure(100 * spec.aim.confidence)} %.`),
        remedies: worst.chance < USUAL ? levers.slice(0, 3).map(({ path }) => path) : [],
      }),
    );
    for (const { line, step, tolerance, lever } of found.lines) {
      const shift = FINEST * step.perDegree;
      if (!(shift > tolerance)) continue;
      findings.push(
        say({
          code: 'aim/resolution',
          severity: 'warning',
          subject: `${line}s`,
          measured: shift,
          limit: tolerance,
          unit: 'mm',
          message: `${FINEST}° of the ${spec.screws.adjust} screw, about the finest a hand turns, move the spot of a ${line} ${figure(lever)} mm off by ${figure(shift)} mm; within ${figure(tolerance)} mm it counts as arrived.`,
          remedies: ['screws.adjust', 'receivers.part', 'leaf.length'],
        }),
      );
    }
    return findings;
  },
};
