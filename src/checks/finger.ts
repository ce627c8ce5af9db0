/** Does a finger flip the line it is meant for, and only that? */
import type { Finding } from '../findings.js';
import type { FingerOnAxis } from '../layout/light/finger.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

/** One touch in twenty that goes wrong is noticed. Source: common practice, no source. */
const TOO_OFTEN = 0.05;

const LINES = { x: 'columns', y: 'rows' } as const;

export const finger: Check<Pick<CheckContext, 'light'>> = {
  name: 'finger',
  codes: ['finger/unseen', 'finger/missed', 'finger/double', 'finger/keys'],
  run({ light: { finger: found } }) {
    // Where no receiver ever reads dark, the light's own check says so.
    if (found === null) return [];
    const findings = found.axes.flatMap((axis) => onAxis(axis));
    const [narrow, broad] = [found.keys[0]!, found.keys.at(-1)!];
    const advice = found.axes.map(
      ({ axis, advice: pitch }) =>
        `${LINES[axis]} ${pitch === null ? 'at no pitch' : pitch.least === null ? `best at ${figure(pitch.best.pitch)} mm` : `from ${figure(pitch.least.pitch)}, best at ${figure(pitch.best.pitch)} mm`}`,
    );
    findings.push(
      say({
        code: 'finger/keys',
        severity: 'note',
        subject: 'keys',
        measured: 100 * Math.min(narrow.hit.aimed, broad.hit.aimed),
        unit: '%',
        message: `A touch flips only the key it is aimed at with ${figure(100 * narrow.hit.aimed)} % for a finger ${figure(narrow.breadth)} mm broad, ${figure(100 * broad.hit.aimed)} % for one of ${figure(broad.breadth)} mm. Pitches that serve both with 99 % a line: ${advice.join('; ')}.`,
        remedies: [],
      }),
    );
    return findings;

    function onAxis({ axis, fingers, pitch, overlap }: FingerOnAxis): Finding[] {
      const [least, most] = [fingers[0]!, fingers.at(-1)!];
      const subject = LINES[axis];
      if (least.reach === null)
        return [
          say({
            code: 'finger/unseen',
            severity: 'error',
            subject,
            measured: least.atBeam,
            limit: 2 * overlap,
            unit: 'mm',
            message: `A finger ${figure(least.breadth)} mm broad is ${figure(least.atBeam)} mm at the beams and never takes enough light for a receiver to read dark: ${figure(2 * overlap)} mm would.`,
            remedies: ['finger.least', 'beam.height', 'emitters.part', 'receivers.part'],
          }),
        ];
      const wrong: Finding[] = [];
      if (least.hit.none > TOO_OFTEN)
        wrong.push(
          say({
            code: 'finger/missed',
            severity: 'warning',
            subject,
            measured: 100 * least.hit.none,
            limit: 100 * TOO_OFTEN,
            unit: '%',
            message: `A finger ${figure(least.breadth)} mm broad flips a line of the ${subject} within ${figure(least.reach)} mm of it; at a pitch of ${figure(pitch)} mm ${figure(100 * least.hit.none)} % of its touches fall between two.`,
            remedies: ['grid.pitch', 'finger.least', 'beam.height'],
          }),
        );
      const both = most.hit.double + most.hit.wrong;
      if (both > TOO_OFTEN)
        wrong.push(
          say({
            code: 'finger/double',
            severity: 'warning',
            subject,
            measured: 100 * both,
            limit: 100 * TOO_OFTEN,
            unit: '%',
            message: `A finger ${figure(most.breadth)} mm broad flips every line of the ${subject} within ${figure(most.reach ?? 0)} mm; at a pitch of ${figure(pitch)} mm ${figure(100 * both)} % of its touches flip two, or the wrong one.`,
            remedies: ['grid.pitch', 'finger.most', 'beam.height'],
          }),
        );
      return wrong;
    }
  },
};
