/** Does a key answer in time, and can keys that are pressed together be told apart? */
import type { Finding } from '../findings.js';
import { layScan } from '../layout/scan.js';
import { fullLayout } from '../optics/keys-layout.js';
import { chanceSameScan } from '../optics/keys-order.js';
import { countPairs } from '../optics/keys-pairs.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

/** Longest wait that still feels like an answer [s]. Source: Miller 1968; Card, Moran & Newell 1983: a tenth of a second, from memory. */
const LATENCY_MOST = 0.1;

/** Two keys meant to go down together do so within about this [s]. Common practice, no source. */
const TOGETHER = 0.03;

export const scan: Check<Pick<CheckContext, 'spec'>> = {
  name: 'scan',
  codes: ['scan/latency', 'scan/together'],
  run({ spec }) {
    const plan = layScan(spec);
    const findings: Finding[] = [];
    if (plan.latency.worst > LATENCY_MOST)
      findings.push(
        say({
          code: 'scan/latency',
          severity: 'warning',
          subject: 'scan',
          measured: 1e3 * plan.latency.worst,
          limit: 1e3 * LATENCY_MOST,
          unit: 'ms',
          message: `A key is known ${figure(1e3 * plan.latency.worst)} ms after its finger at the latest, ${figure(1e3 * plan.latency.mean)} ms on average; beyond ${figure(1e3 * LATENCY_MOST)} ms a panel feels slow. A scan takes ${figure(1e3 * plan.scanTime)} ms.`,
          remedies: ['scan.address', 'scan.light_us', 'scan.debounce', 'scan.settle_us', 'scan.read_us'],
        }),
      );
    const { pairs, strong } = countPairs(fullLayout(spec.grid.rows.length, spec.grid.columns.length));
    if (strong > 0) {
      const chance = chanceSameScan(plan.scanTime, TOGETHER);
      findings.push(
        say({
          code: 'scan/together',
          severity: 'note',
          subject: 'keys',
          measured: (100 * strong) / pairs,
          unit: '%',
          message:
            `Of all pairs of keys ${figure((100 * strong) / pairs)} % darken the same rows and columns as another pair: pressed within one scan of ${figure(1e3 * plan.scanTime)} ms they can't be told apart. ` +
            `Two keys that go down within ${figure(1e3 * TOGETHER)} ms fall into one scan ${figure(100 * chance)} % of the time; otherwise the order in which the lines go dark tells, and the program has to keep it.`,
          remedies: ['scan.address', 'scan.read_us', 'scan.settle_us'],
        }),
      );
    }
    return findings;
  },
};
