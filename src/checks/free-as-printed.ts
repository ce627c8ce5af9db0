/**
 * Is a part that bends free to do so as it comes off the bed? Slots that close as printed join what should move: the solid then
 * has more handles than at its poses, where the same slots stand open.
 */
import type { Finding } from '../findings.js';
import { POSES } from '../kit/types.js';
import type { Check, ShapeContext } from './context.js';
import { say } from './say.js';

export const freeAsPrinted: Check<ShapeContext> = {
  name: 'free as printed',
  codes: ['pose/joined'],
  run({ kit, kernel }) {
    const findings: Finding[] = [];
    for (const { id, solid, posed } of kit.parts.values()) {
      if (posed === null) continue;
      const handles = [solid, ...POSES.map((pose) => posed[pose])].map((one) => kernel.genus(one));
      const least = Math.min(...handles);
      const most = Math.max(...handles);
      if (most === least) continue;
      const where = ['as printed', ...POSES.map((pose) => `with the beam ${pose}`)].filter(
        (_, i) => handles[i] === most,
      );
      findings.push(
        say({
          code: 'pose/joined',
          severity: 'error',
          subject: id,
          measured: most,
          limit: least,
          unit: '',
          message: `${id} has ${most} handles ${where.join(' and ')}, but ${least} otherwise: pieces that should move touch there.`,
          remedies: ['leaf.thickness', 'leaf.length', 'leaf.legs', 'aim.tilt'],
        }),
      );
    }
    return findings;
  },
};
