/** Does the panel bear the temperatures around it: plastic, aim, and the push on the screw? */
import type { Finding } from '../findings.js';
import { deg } from '../units.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';

/** Below its heat deflection temperature a loaded plastic creeps fast. Source: common practice, no source. */
const MARGIN = 20;

export const temperature: Check<Pick<CheckContext, 'thermal' | 'light' | 'leaf' | 'leafFigures' | 'spec'>> = {
  name: 'temperature',
  codes: ['temperature/softens', 'temperature/aim', 'temperature/push'],
  run({ thermal, light, leaf, leafFigures, spec }) {
    const findings: Finding[] = [];
    const { plastic } = spec.material;
    const most = plastic.softensC.value - MARGIN;
    if (thermal.warmest > most)
      findings.push(
        say({
          code: 'temperature/softens',
          severity: thermal.warmest >= plastic.softensC.value ? 'error' : 'warning',
          subject: spec.material.name,
          measured: thermal.warmest,
          limit: thermal.warmest >= plastic.softensC.value ? plastic.softensC.value : most,
          unit: '°C',
          message: `${figure(thermal.warmest)} °C around: ${spec.material.name} gives way at ${figure(plastic.softensC.value)} °C, and a spring of it creeps fast from ${figure(most)} °C on.`,
          remedies: ['material', 'surroundings.warmest'],
        }),
      );
    const tolerance = Math.min(...light.signal.lines.map(({ staysLit }) => staysLit));
    findings.push(
      say({
        code: 'temperature/aim',
        severity: thermal.shift > tolerance ? 'warning' : 'note',
        subject: 'tilt mount',
        measured: thermal.shift,
        limit: tolerance,
        unit: 'mm',
        message: `${figure(thermal.step)} K from where it was aligned turn a beam by ${figure(deg(thermal.drift))}°, ${figure(thermal.shift)} mm at the farthest receiver: plastic grows beside the steel screw; ${figure(tolerance)} mm keep it lit.`,
        remedies: thermal.shift > tolerance ? ['surroundings', 'material'] : [],
      }),
    );
    // The moment asked for stays as it is, pull of the wires included; what is left of the push falls with warmth.
    const needed = (deg(leafFigures.preloadNeeded) * thermal.left) / thermal.leftWarm;
    if (!(deg(leaf.preload) >= needed))
      findings.push(
        say({
          code: 'temperature/push',
          severity: 'warning',
          subject: 'leaf',
          measured: deg(leaf.preload),
          limit: needed,
          unit: '°',
          message: `At ${figure(thermal.warmest)} °C the plastic keeps ${figure(100 * thermal.stiffness)} % of its stiffness and creeps faster: after a year there ${figure(100 * thermal.leftWarm)} % of the push are left, ${figure(100 * thermal.left)} % at 23 °C. Then ${figure(needed)}° of flex at the highest beam keep the screw on its pad under shock and with the wires pulling; it has ${figure(deg(leaf.preload))}°.`,
          remedies: ['material', 'surroundings.warmest', 'leaf.thickness', 'leaf.legs'],
        }),
      );
    return findings;
  },
};
