/** Does every receiver see its beam, and read dark without it, in the light around? */
import type { Finding } from '../findings.js';
import { IN_HAND } from '../layout/light/signal.js';
import { AMBIENT_SHARE } from '../spec/aperture.js';
import { deg } from '../units.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

export const signal: Check<Pick<CheckContext, 'light' | 'spec'>> = {
  name: 'signal',
  codes: ['light/blind', 'light/dim', 'light/signal', 'light/ambient', 'light/sun'],
  run({ light: { signal: found }, spec }) {
    const { levels, lines, ambient, rejection, response, cutOff } = found;
    const nm = spec.emitters.part.wavelengthNm.value;
    const subject = spec.receivers.name;
    if (response === 0)
      return [
        say({
          code: 'light/blind',
          severity: 'error',
          subject,
          measured: nm,
          limit: found.detector.filterFromNm,
          unit: 'nm',
          message: `This receiver sees nothing of ${figure(nm)} nm: ${found.detector.filterFromNm > nm ? `its body blocks what is shorter than ${figure(found.detector.filterFromNm)} nm` : 'silicon does not answer there'}.`,
          remedies: ['receivers.part', 'emitters.part'],
        }),
      ];
    const findings: Finding[] = [];
    const dimmest = lines[0].lit < lines[1].lit ? lines[0] : lines[1];
    const ratio = dimmest.lit / levels.lit;
    findings.push(
      say({
        code: ratio < IN_HAND ? 'light/dim' : 'light/signal',
        severity: ratio < 1 ? 'error' : ratio < IN_HAND ? 'warning' : 'note',
        subject: `${dimmest.line}s`,
        measured: dimmest.lit,
        limit: (ratio < 1 ? 1 : IN_HAND) * levels.lit,
        unit: 'mA',
        message:
          `The beam of a ${dimmest.line} gives its receiver ${figure(dimmest.lit)} mA of light; ${figure(levels.lit)} mA pull its pin low` +
          (ratio >= IN_HAND && dimmest.toTake !== null
            ? `, so it stays lit until ${(100 * dimmest.toTake).toFixed(2)} % of the beam is taken.`
            : '.'),
        remedies: ratio < IN_HAND ? ['emitters.part', 'receivers.part', 'scan.pull_up_ohm'] : [],
      }),
    );
    const most = AMBIENT_SHARE * levels.dark;
    if (ambient.diffuse > most)
      findings.push(
        say({
          code: 'light/ambient',
          severity: ambient.diffuse >= levels.dark ? 'error' : 'warning',
          subject,
          measured: ambient.diffuse,
          limit: ambient.diffuse >= levels.dark ? levels.dark : most,
          unit: 'mA',
          message: `${spec.light.ambient.title}: diffuse light alone makes ${figure(ambient.diffuse)} mA behind a tube that cuts it to 1/${figure(rejection)}; from ${figure(levels.dark)} mA on a receiver never reads dark.`,
          remedies: ['receivers.part.aperture_depth', 'scan.pull_up_ohm', 'receivers.part', 'light.ambient'],
        }),
      );
    if (ambient.direct >= levels.dark)
      findings.push(
        say({
          code: 'light/sun',
          severity: 'warning',
          subject,
          measured: ambient.direct,
          limit: levels.dark,
          unit: 'mA',
          message: `${spec.light.ambient.title}: shining into a tube, within ${figure(deg(cutOff))}° of its axis, it makes ${figure(ambient.direct)} mA, and that receiver never reads dark: no tube helps there. Turn or shade the panel so that low sun comes from the side.`,
          remedies: ['light.ambient', 'emitters.columns_from', 'emitters.rows_from'],
        }),
      );
    return findings;
  },
};
