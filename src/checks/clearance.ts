/** Do parts that are not meant to touch stand far enough apart, at the lowest, the level and the highest beam? */
import type { Finding } from '../findings.js';
import type { Check, ShapeContext } from './context.js';
import { leastGaps, SHARED } from './limits.js';
import { meantOverlap, meantToTouch, nearPairs } from './pairs.js';
import { figure, say } from './say.js';
import { relationKey } from './scene.js';

/** Rounding of single-precision coordinates and facets [mm]. */
const ROUNDING = 2e-3;

export const clearance: Check<ShapeContext> = {
  name: 'clearance',
  codes: ['clearance/gap'],
  run({ scene, kit, spec }) {
    const findings: Finding[] = [];
    const least = leastGaps(spec.printer.machine);
    // Declared fits are measured by their own check.
    const fitted = new Set(kit.fits.flatMap(({ a, b }) => [`${a} / ${b}`, `${b} / ${a}`]));
    for (const { a, b, poses } of nearPairs(scene, least.moving)) {
      if (meantToTouch(a, b) || meantOverlap(a, b) !== null || fitted.has(`${a.name} / ${b.name}`)) continue;
      const relations = new Set(poses.map((pose) => relationKey(a.at[pose], b.at[pose])));
      const limit = relations.size > 1 ? least.moving : least.still;
      const gaps = poses.map((pose) => ({ pose, gap: scene.gap(a.at[pose], b.at[pose], limit) }));
      const worst = gaps.reduce((p, q) => (q.gap < p.gap ? q : p));
      if (worst.gap >= limit - ROUNDING) continue;
      // What overlaps is reported as such.
      if (poses.some((pose) => scene.overlap(a.at[pose], b.at[pose]) > SHARED)) continue;
      const when = relations.size > 1 ? ` with the beam ${worst.pose}` : '';
      findings.push(
        say({
          code: 'clearance/gap',
          severity: 'error',
          subject: `${a.name} / ${b.name}`,
          measured: worst.gap,
          limit,
          unit: 'mm',
          message: `${a.name} and ${b.name} are ${figure(worst.gap)} mm apart${when}; ${figure(limit)} mm keeps them apart as printed.`,
          remedies: ['grid.pitch', 'printer', 'frame'],
        }),
      );
    }
    return findings;
  },
};
