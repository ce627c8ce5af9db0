/** Can the key stand on every screw's head when the screw is to be turned? */
import type { Finding } from '../findings.js';
import type { Pose, Screw } from '../kit/types.js';
import { POSES } from '../kit/types.js';
import { apply, applyDirection, invertRigid, multiply } from '../solid/matrix.js';
import type { Vec3 } from '../solid/mesh.js';
import { walkAssembly } from './assembly-order.js';
import type { Check, ShapeContext } from './context.js';
import { SHARED } from './limits.js';
import { figure, say } from './say.js';
import type { Body } from './scene.js';
import { along } from './vectors.js';

export const toolAccess: Check<ShapeContext> = {
  name: 'tool access',
  codes: ['tool/blocked'],
  run({ scene, kit }) {
    // What stands about a screw when it has just been put in; the first of all stands alone.
    const there = new Map<string, readonly Body[]>(
      walkAssembly(scene, kit.assembly).arrivals.map(({ body, there, group }) => [body.name, [...there, ...group]]),
    );
    const findings: Finding[] = [];
    for (const screw of kit.screws) {
      const body = scene.byName.get(screw.placement)!;
      const covered = screw.tool.when === 'covers on';
      const others = (
        covered ? scene.bodies.filter((other) => !other.placement.afterAlignment) : (there.get(body.name) ?? [])
      ).filter((other) => other !== body);
      const poses: readonly Pose[] = covered ? POSES : ['level'];
      const keys = poses.map((pose) => {
        const { from, out } = headAt(body, screw, pose);
        return { pose, key: scene.bar(from, out, { diameter: screw.tool.diameter, length: screw.tool.reach }) };
      });
      for (const other of others) {
        const volumes = keys.map(({ pose, key }) => ({ pose, volume: scene.overlap(other.at[pose], key) }));
        const worst = volumes.reduce((p, q) => (q.volume > p.volume ? q : p));
        if (worst.volume <= SHARED) continue;
        const when = covered ? `with the covers on and the beam ${worst.pose}` : 'when it is put in';
        findings.push(
          say({
            code: 'tool/blocked',
            severity: 'error',
            subject: screw.placement,
            measured: worst.volume,
            limit: SHARED,
            unit: 'mm³',
            message: `${other.name} takes ${figure(worst.volume)} mm³ of the room that the ${screw.tool.name} needs on ${screw.placement} ${when}.`,
            remedies: ['screws', 'frame', 'grid.pitch'],
          }),
        );
      }
    }
    return findings;
  },
};

/** Middle of the head's face, a hundredth off it, and the way out, at a pose. */
function headAt(body: Body, { head, direction }: Screw, pose: Pose): { readonly from: Vec3; readonly out: Vec3 } {
  const ride = multiply(body.at[pose].matrix, invertRigid(body.at.level.matrix));
  const way = applyDirection(ride, direction);
  const out: Vec3 = [-way[0], -way[1], -way[2]];
  return { from: along(apply(ride, head), out, 0.01), out };
}
