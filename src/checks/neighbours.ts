/** Does a receiver see light that is meant for its neighbour, or that the deck mirrors? */
import type { Finding } from '../findings.js';
import { bounceAngle, ledNeighbour, radiiApart } from '../optics/crosstalk.js';
import { deg, type Rad } from '../units.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

/** A neighbour's light may be so much of a receiver's own. Source: common practice. */
const SHARE = 1e-2;
/** Wider than this a source is a lamp that every receiver sees, not a beam that one may stand beside [mrad, full angle]. */
const LAMP = 100;
/** Half angle at half of the middle's intensity over the half angle at 1/e²: √(ln 2 / 2). */
const HALF_ANGLE = Math.sqrt(Math.LN2 / 2);

export const neighbours: Check<Pick<CheckContext, 'light' | 'spec'>> = {
  name: 'neighbours',
  codes: ['light/crosstalk', 'light/bounce'],
  run({ light, spec }) {
    const findings: Finding[] = [];
    const { divergenceMrad } = spec.emitters.part;
    const radius = light.signal.detector.radius;
    light.aim.lines.forEach((line, i) => {
      if (!(line.pitch < Infinity)) return;
      const subject = `${line.line}s`;
      if (divergenceMrad.value > LAMP) {
        const share = ledNeighbour({
          halfAngle: (HALF_ANGLE * divergenceMrad.value) / 2000,
          pitch: line.pitch,
          distance: line.distance,
        });
        if (share > SHARE)
          findings.push(
            say({
              code: 'light/crosstalk',
              severity: 'warning',
              subject,
              measured: 100 * share,
              limit: 100 * SHARE,
              unit: '%',
              message: `An emitter this wide gives its neighbour’s receiver, ${figure(line.pitch)} mm beside its own, ${figure(100 * share)} % as much light: light the ${subject} one at a time, and read each while it alone is lit.`,
              remedies: ['scan.light_us', 'emitters.part'],
            }),
          );
        return;
      }
      const w = light.signal.lines[i]!.w;
      const needed = radiiApart(SHARE) * w + line.tolerance + radius + light.aim.inputs.slide;
      if (line.pitch < needed)
        findings.push(
          say({
            code: 'light/crosstalk',
            severity: 'warning',
            subject,
            measured: line.pitch,
            limit: needed,
            unit: 'mm',
            message: `A beam ${figure(w)} mm in radius where it arrives lights its neighbour’s receiver, ${figure(line.pitch)} mm off, by more than 1 %: ${figure(needed)} mm are needed.`,
            remedies: ['grid.pitch', 'emitters.part', 'scan.light_us'],
          }),
        );
    });
    const bounces = light.aim.lines.map(({ distance }) => bounceAngle(spec.beam.height, distance));
    const least = Math.min(...bounces) as Rad;
    if (least < light.signal.cutOff)
      findings.push(
        say({
          code: 'light/bounce',
          severity: 'note',
          subject: 'deck',
          measured: deg(least),
          limit: deg(light.signal.cutOff),
          unit: '°',
          message: `Light mirrored half way in the deck comes in at ${figure(deg(least))}°; the tubes see up to ${figure(deg(light.signal.cutOff))}°: print the deck matt and dark, or lay felt on it.`,
          remedies: [],
        }),
      );
    return findings;
  },
};
