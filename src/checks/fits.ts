/** Is each declared fit drawn at the printer's clearance, and is it really there between the two solids? */
import type { Finding } from '../findings.js';
import type { Fit } from '../kit/types.js';
import type { Box, Vec3 } from '../solid/mesh.js';
import type { Check, ShapeContext } from './context.js';
import { DRAWN, SHARED } from './limits.js';
import { meantOverlap, meantToTouch } from './pairs.js';
import { figure, say } from './say.js';
import type { Body, Scene } from './scene.js';
import { shifted } from './sweep.js';
import { along } from './vectors.js';

/** How far the drawn gap may be off the class's [mm]; of the free class more is no fault. */
const OFF = 0.01;

/** Fits are looked for within this [mm]. */
const SEARCH = 1;

export const fits: Check<ShapeContext> = {
  name: 'fits',
  codes: ['fit/tight', 'fit/loose', 'fit/not-as-drawn'],
  run({ scene, kit }) {
    const findings: Finding[] = [];
    for (const fit of kit.fits) {
      const subject = `${fit.a} / ${fit.b}`;
      const about = { severity: 'error', subject, limit: fit.wanted, unit: 'mm', remedies: ['printer'] } as const;
      const wants = `a ${fit.fitClass} fit wants ${figure(fit.wanted)} mm a side on this printer`;
      if (fit.drawn < fit.wanted - OFF)
        findings.push(
          say({
            ...about,
            code: 'fit/tight',
            measured: fit.drawn,
            message: `${fit.what} is drawn with ${figure(fit.drawn)} mm a side; ${wants}.`,
          }),
        );
      if (fit.drawn > fit.wanted + OFF && fit.fitClass !== 'free')
        findings.push(
          say({
            ...about,
            code: 'fit/loose',
            measured: fit.drawn,
            message: `${fit.what} is drawn with ${figure(fit.drawn)} mm a side; ${wants}.`,
          }),
        );

      const [a, b] = [scene.byName.get(fit.a)!, scene.byName.get(fit.b)!];
      const measured = measuredGap(scene, { a, b, fit });
      if (measured !== null)
        findings.push(
          say({
            ...about,
            code: 'fit/not-as-drawn',
            measured: Number.isNaN(measured) ? null : measured,
            limit: fit.drawn,
            message: Number.isNaN(measured)
              ? `${fit.what}: shifted either way along no axis is ${fit.b} free by ${figure(fit.drawn)} mm and stopped just beyond, as it is drawn.`
              : `${fit.what} measures ${figure(measured)} mm a side between the solids; it is drawn with ${figure(fit.drawn)} mm.`,
          }),
        );
    }
    return findings;
  },
};

/**
 * @returns null where the solids stand as drawn; the gap measured where they don't; NaN where they touch elsewhere and
 * shifting finds no axis with that play
 */
function measuredGap(scene: Scene, { a, b, fit }: { a: Body; b: Body; fit: Fit }): number | null {
  const [p, q] = [a.at.level, b.at.level];
  if (!meantToTouch(a, b) && meantOverlap(a, b) === null) {
    const gap = scene.gap(p, q, Math.max(SEARCH, 2 * fit.drawn));
    return Math.abs(gap - fit.drawn) <= DRAWN ? null : gap;
  }
  const beyond = fit.drawn + 3 * DRAWN;
  const reach: Box = {
    min: along(q.shape.box.min, [1, 1, 1], -beyond),
    max: along(q.shape.box.max, [1, 1, 1], beyond),
  };
  return scene.alike({ what: `play ${fit.drawn}`, a: p, b: q, reach }, () => {
    const free = Math.max(0, fit.drawn - DRAWN);
    const stopped = fit.drawn + 2 * DRAWN;
    // Where they overlap by intent, play shows as a further overlap.
    const still = scene.overlap(p, q) + SHARED;
    const sharedAt = (axis: Vec3, by: number) => scene.overlap(p, shifted(q, along([0, 0, 0], axis, by)));
    const hasPlay = AXES.some((k) => {
      const axis: Vec3 = [q.matrix[k]!, q.matrix[4 + k]!, q.matrix[8 + k]!];
      return (
        [1, -1].every((way) => sharedAt(axis, way * free) <= still) &&
        [1, -1].every((way) => sharedAt(axis, way * stopped) > still)
      );
    });
    return hasPlay ? null : Number.NaN;
  });
}

const AXES = [0, 1, 2] as const;
