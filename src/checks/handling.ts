/** Can what is turned by a key without being a screw (the collar on a barrel) be turned with the covers on, at every tilt? */
import type { Finding } from '../findings.js';
import { POSES } from '../kit/types.js';
import { apply, applyDirection } from '../solid/matrix.js';
import type { Check, ShapeContext } from './context.js';
import { SHARED } from './limits.js';
import { figure, say } from './say.js';
import { boxDistance } from './vectors.js';

export const handling: Check<ShapeContext> = {
  name: 'handling',
  codes: ['handling/blocked'],
  run({ scene, kit }) {
    const findings: Finding[] = [];
    const others = scene.bodies.filter(({ placement }) => !placement.afterAlignment);
    for (const { what, placement, tool, diameter, reach, stands } of kit.handling ?? []) {
      const body = scene.byName.get(placement)!;
      // What is turned goes with the key: its own notch is not looked at.
      const around = others.filter((other) => other !== body);
      for (const pose of POSES) {
        const { matrix } = body.at[pose];
        const keys = stands.map(({ from, out }) =>
          scene.bar(apply(matrix, from), applyDirection(matrix, out), { diameter, length: reach }),
        );
        for (const other of around) {
          const near = keys.filter((key) => boxDistance(key.box, other.at[pose].box) <= 0);
          const volume = Math.max(0, ...near.map((key) => scene.overlap(other.at[pose], key)));
          if (volume <= SHARED) continue;
          findings.push(
            say({
              code: 'handling/blocked',
              severity: 'error',
              subject: placement,
              measured: volume,
              limit: SHARED,
              unit: 'mm³',
              message: `${other.name} takes ${figure(volume)} mm³ of the room that the ${tool} needs for ${what} with the covers on and the beam ${pose}.`,
              remedies: ['grid.pitch', 'emitters.part', 'frame'],
            }),
          );
        }
      }
    }
    return findings;
  },
};
