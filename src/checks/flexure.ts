/** Does the leaf bear its travel for years, stay pushed against its screw, and stop before it yields? */
import type { Finding } from '../findings.js';
import { FORCE_MOST, HOLDS, QUIET, STRESS_SAFETY } from '../layout/leaf-search.js';
import type { LeafDesign } from '../layout/types.js';
import { fittedRange } from '../mechanics/end-correction.js';
import { deg } from '../units.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

const CODES = [
  'flexure/strain-sustained',
  'flexure/stress',
  'flexure/preload',
  'flexure/screw-force',
  'flexure/screw-lock',
  'flexure/stop',
  'flexure/back-off',
  'flexure/frequency',
  'flexure/uncorrected',
] as const;

export type FlexureContext = Pick<CheckContext, 'leaf' | 'leafFigures' | 'spec'>;

export const flexure: Check<FlexureContext> = {
  name: 'flexure',
  codes: CODES,
  run({ leaf, leafFigures, spec }) {
    const { plastic } = spec.material;
    const { strain, stopStrain, stopStress, preloadNeeded, force, backOff, frequency, corrected } = leafFigures;
    const findings: Finding[] = [];
    const add = (
      code: (typeof CODES)[number],
      rest: Pick<Finding, 'measured' | 'limit' | 'unit' | 'message' | 'remedies'> & Partial<Pick<Finding, 'severity'>>,
    ) => findings.push(say({ code, severity: 'error', subject: 'leaf', ...rest }));

    const held = plastic.sustainedStrain.value;
    if (!(strain <= held))
      add('flexure/strain-sustained', {
        measured: 100 * strain,
        limit: 100 * held,
        unit: '%',
        message: `The leaf is strained by ${figure(100 * strain)} % at the lowest beam; ${spec.material.name} holds ${figure(100 * held)} % for years.`,
        remedies: ['leaf.length', 'leaf.legs', 'leaf.thickness', 'aim.tilt', 'material'],
      });
    const allowed = plastic.strength.value / STRESS_SAFETY;
    if (!(stopStress <= allowed))
      add('flexure/stress', {
        measured: stopStress,
        limit: allowed,
        unit: 'MPa',
        message: `The leaf bears ${figure(stopStress)} MPa, its fillets' factor included, when the stop touches at its latest; ${figure(allowed)} MPa is the strength over ${STRESS_SAFETY}.`,
        remedies: ['leaf.length', 'leaf.legs', 'leaf.thickness', 'material'],
      });
    if (!(leaf.preload >= preloadNeeded))
      add('flexure/preload', {
        measured: deg(leaf.preload),
        limit: deg(preloadNeeded),
        unit: '°',
        message: `At the highest beam the leaf is flexed by ${figure(deg(leaf.preload))}°; ${figure(deg(preloadNeeded))}° keep the screw on its pad after a year, under shock and with the wires pulling.`,
        remedies: ['leaf.thickness', 'leaf.legs', 'leaf.length'],
      });
    if (!(force.highest > 0 && force.lowest <= FORCE_MOST))
      add('flexure/screw-force', {
        measured: force.highest > 0 ? force.lowest : force.highest,
        limit: force.highest > 0 ? FORCE_MOST : 0,
        unit: 'N',
        message: `The screw pushes with ${figure(force.highest)} N at the highest and ${figure(force.lowest)} N at the lowest beam; it has to push, and with no more than ${FORCE_MOST} N.`,
        remedies: ['leaf.thickness', 'leaf.length', 'leaf.legs'],
      });
    else if (force.highest < HOLDS)
      add('flexure/screw-lock', {
        severity: 'note',
        measured: force.highest,
        limit: HOLDS,
        unit: 'N',
        message: `The screw pushes with ${figure(force.highest)} N at the highest beam; below ${HOLDS} N lock it with a prevailing-torque nut or a drop of lacquer once aligned.`,
        remedies: [],
      });
    // Strain past the short-term allowance sets; past yield it is gone. The lower of the two counts.
    const most = Math.min(plastic.shortTermStrain.value, plastic.yieldStrain.value);
    if (!(stopStrain <= most))
      add('flexure/stop', {
        measured: 100 * stopStrain,
        limit: 100 * most,
        unit: '%',
        message: `When the stop touches at its latest the leaf is strained by ${figure(100 * stopStrain)} %; ${spec.material.name} takes ${figure(100 * most)} % for a moment.`,
        remedies: ['leaf.length', 'leaf.legs', 'printer', 'material'],
      });
    // Held at its lowest for a year, the leaf keeps a set: beyond this the screw leaves its pad.
    if (!(backOff >= 2 * leaf.tilt))
      add('flexure/back-off', {
        severity: 'note',
        measured: deg(backOff),
        limit: deg(2 * leaf.tilt),
        unit: '°',
        message: `After a year at the lowest beam the screw can be backed off by ${figure(deg(backOff))}° of the ${figure(deg(2 * leaf.tilt))}° of travel before it leaves its pad.`,
        remedies: [],
      });
    if (!(frequency >= QUIET))
      add('flexure/frequency', {
        severity: 'note',
        measured: frequency,
        limit: QUIET,
        unit: 'Hz',
        message: `The arm rings at ${figure(frequency)} Hz or above; below ${QUIET} Hz it may follow knocks on the table.`,
        remedies: ['leaf.thickness', 'leaf.legs'],
      });
    if (!corrected)
      add('flexure/uncorrected', {
        severity: 'note',
        measured: null,
        limit: null,
        unit: '',
        message: uncorrected(leaf),
        remedies: [],
      });
    return findings;
  },
};

/** Why a leaf's figures are less sure than those of the leaves that were held against solid elements. */
function uncorrected({ layout, legs, length, thickness, width }: LeafDesign): string {
  if (layout === 'notch')
    return 'A notch is computed by beam theory along its own thickness: where it is wide for its thinnest place it is up to a sixth stiffer (1/(1 − ν²) of plate theory; not measured).';
  return `A leaf of ${legs} × ${figure(length)} × ${figure(thickness)} × ${figure(width)} mm lies outside the range in which its end corrections were tried (${fittedRange(layout)}): they are carried on from there, and its angle may be off by more than 1 %.`;
}
