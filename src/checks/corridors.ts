/** Is the way of every beam free from its emitter to its receiver's aperture? */
import type { Finding } from '../findings.js';
import type { Check, ShapeContext } from './context.js';
import { SHARED } from './limits.js';
import { figure, say } from './say.js';
import { minus, unit } from './vectors.js';

export const corridors: Check<ShapeContext> = {
  name: 'corridors',
  codes: ['corridor/blocked'],
  run({ scene, kit }) {
    const findings: Finding[] = [];
    for (const beam of kit.beams) {
      const way = minus(beam.to, beam.from);
      const bar = scene.bar(beam.from, unit(way), { diameter: beam.corridor, length: Math.hypot(...way) });
      for (const { name, at } of scene.bodies) {
        if (name === beam.emitter || name === beam.receiver) continue;
        const volume = scene.overlap(at.level, bar);
        if (volume <= SHARED) continue;
        findings.push(
          say({
            code: 'corridor/blocked',
            severity: 'error',
            subject: beam.name,
            measured: volume,
            limit: SHARED,
            unit: 'mm³',
            message: `${name} takes ${figure(volume)} mm³ of the ${figure(beam.corridor)} mm wide way of beam ${beam.name}.`,
            remedies: ['beam.height', 'grid.pitch', 'receivers.part'],
          }),
        );
      }
    }
    return findings;
  },
};
