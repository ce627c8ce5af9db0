/** Does the leaf still hold when it is printed a little thinner or thicker than drawn? */
import type { LeafFault } from '../layout/leaf-faults.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

const WORDS: Readonly<Record<LeafFault['code'], string>> = {
  strain: 'strain for years at the lowest beam',
  stress: 'stress when the stop touches at its latest',
  stop: 'strain when the stop touches at its latest',
  preload: 'preload after a year',
  force: 'push of the screw',
};

export const printedThickness: Check<Pick<CheckContext, 'leafOff' | 'leaf'>> = {
  name: 'printed thickness',
  codes: ['flexure/printed-thickness'],
  run: ({ leafOff, leaf }) =>
    leafOff.flatMap(({ by, faults }) =>
      faults.map(({ code, measured, limit, unit }) =>
        say({
          code: 'flexure/printed-thickness',
          severity: 'warning',
          subject: 'leaf',
          measured,
          limit,
          unit,
          message: `Printed ${figure(Math.abs(by))} mm ${by < 0 ? 'thinner' : 'thicker'} than its ${figure(leaf.thickness)} mm, the leaf misses its ${WORDS[code]}: ${figure(measured)} ${unit} against ${figure(limit)}. Measure the first one printed.`,
          remedies: ['leaf.thickness', 'leaf.length', 'leaf.legs', 'printer'],
        }),
      ),
    ),
};
