/**
 * Is a part that bends free to do so, as it comes off the bed and at every pose? Slots that close as printed join what should move.
 *
 * Two ways to see it: a slice across the spring must let arm and base fall apart; and joined twice, the solid has more handles than where
 * its slots stand open.
 */
import type { Finding } from '../findings.js';
import { type Part, POSES } from '../kit/types.js';
import type { MeasuringKernel, Solid } from '../solid/kernel.js';
import { shellCount } from '../solid/mesh-measures.js';
import type { Check, ShapeContext } from './context.js';
import { say } from './say.js';

const REMEDIES = ['leaf.thickness', 'leaf.length', 'leaf.legs', 'aim.tilt'] as const;

export const freeAsPrinted: Check<ShapeContext> = {
  name: 'free as printed',
  codes: ['pose/joined'],
  run: ({ kit, kernel }) =>
    [...kit.parts.values()].flatMap((part) => [...inPieces(part, kernel), ...handles(part, kernel)]),
};

const when = (pose: (typeof POSES)[number] | null) => (pose === null ? 'as printed' : `with the beam ${pose}`);

/** Cut through its spring a part is two pieces, or something else holds them together. */
function inPieces({ id, solid, posed, springCut }: Part, kernel: MeasuringKernel): Finding[] {
  if (posed === null || springCut === undefined) return [];
  const states: readonly (readonly [string, Solid, Solid])[] = [
    [when(null), solid, springCut.printed],
    ...POSES.map((pose) => [when(pose), posed[pose], springCut.posed[pose]] as const),
  ];
  const joined = kernel.scope(() => ({
    keep: [],
    value: states.filter(([, whole, cut]) => shellCount(kernel.mesh(kernel.subtract(whole, [cut]))) !== 2),
  }));
  if (joined.length === 0) return [];
  return [
    say({
      code: 'pose/joined',
      severity: 'error',
      subject: id,
      measured: 1,
      limit: 2,
      unit: 'pieces',
      message: `Cut through its spring, ${id} does not fall into arm and base ${joined.map(([name]) => name).join(' and ')}: pieces that should move touch there.`,
      remedies: [...REMEDIES],
    }),
  ];
}

function handles({ id, solid, posed }: Part, kernel: MeasuringKernel): Finding[] {
  if (posed === null) return [];
  const counts = [solid, ...POSES.map((pose) => posed[pose])].map((one) => kernel.genus(one));
  const least = Math.min(...counts);
  const most = Math.max(...counts);
  if (most === least) return [];
  const where = [null, ...POSES].filter((_, i) => counts[i] === most).map(when);
  return [
    say({
      code: 'pose/joined',
      severity: 'error',
      subject: id,
      measured: most,
      limit: least,
      unit: '',
      message: `${id} has ${most} handles ${where.join(' and ')}, but ${least} otherwise: pieces that should move touch there.`,
      remedies: [...REMEDIES],
    }),
  ];
}
