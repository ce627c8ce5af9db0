/** Does any part stand inside another, at the lowest, the level and the highest beam? */
import type { Finding } from '../findings.js';
import type { Check, ShapeContext } from './context.js';
import { SHARED } from './limits.js';
import { meantOverlap, nearPairs } from './pairs.js';
import { figure, say } from './say.js';

export const interference: Check<ShapeContext> = {
  name: 'interference',
  codes: ['interference/overlap', 'interference/more-than-meant'],
  run({ scene }) {
    const findings: Finding[] = [];
    for (const { a, b, poses } of nearPairs(scene, 0)) {
      const volumes = poses.map((pose) => ({ pose, volume: scene.overlap(a.at[pose], b.at[pose]) }));
      const worst = volumes.reduce((p, q) => (q.volume > p.volume ? q : p));
      const meant = meantOverlap(a, b);
      const limit = Math.max(SHARED, meant ?? 0);
      if (worst.volume <= limit) continue;
      const when = poses.length > 1 ? ` with the beam ${worst.pose}` : '';
      findings.push(
        say({
          code: meant === null ? 'interference/overlap' : 'interference/more-than-meant',
          severity: 'error',
          subject: `${a.name} / ${b.name}`,
          measured: worst.volume,
          limit,
          unit: 'mm³',
          message: `${a.name} and ${b.name} share ${figure(worst.volume)} mm³${when}; ${figure(limit)} mm³ is allowed.`,
          remedies: ['grid.pitch', 'screws', 'frame', 'leaf'],
        }),
      );
    }
    return findings;
  },
};
