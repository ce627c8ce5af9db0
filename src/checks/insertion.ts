/**
 * Can every part and screw be brought to its place, in the order of the assembly, past what stands there already?
 *
 * Parts move in the shape of the level kit. Pairs that overlap by intent (formed threads, press fits) may do so on the way,
 * up to what they declare.
 */
import type { Finding } from '../findings.js';
import { type Arrival, ORDER_CODES, walkAssembly } from './assembly-order.js';
import type { Check, ShapeContext } from './context.js';
import { SHARED } from './limits.js';
import { meantOverlap } from './pairs.js';
import { figure, say } from './say.js';
import { type Body, boxDistance, relationKey, type Scene } from './scene.js';
import { type Leg, legKey, shifted, shortOf, volumeInTheWay, wayBox } from './sweep.js';

/** Step of the exact look at pairs that overlap by intent [mm]. */
const STEP = 1;

export const insertion: Check<ShapeContext> = {
  name: 'insertion',
  codes: ['insertion/blocked', 'insertion/more-than-meant', ...ORDER_CODES],
  run({ scene, kit }) {
    const { arrivals, findings } = walkAssembly(scene, kit.assembly);
    return [...findings, ...arrivals.flatMap((arrival) => blocked(scene, arrival))];
  },
};

/** @returns one finding for each thing in the way of the arrival */
function blocked(scene: Scene, { step, body, group, there, legs }: Arrival): Finding[] {
  const findings: Finding[] = [];
  const found = new Set<string>();
  for (const leg of legs)
    for (const mover of group) {
      const way = wayBox(mover.at.level, leg);
      for (const still of there) {
        if (boxDistance(way, still.at.level.box) > 0) continue;
        const limit = Math.max(SHARED, meantOverlap(mover, still) ?? 0);
        const meant = limit > SHARED;
        const volume = meant ? mostOnTheWay(scene, { mover, still, leg }) : sweptOnce(scene, { mover, still, leg });
        if (volume <= limit || found.has(still.name)) continue;
        found.add(still.name);
        const what = mover === body ? body.name : `${mover.name}, on its way with ${body.name},`;
        findings.push(
          say({
            code: meant ? 'insertion/more-than-meant' : 'insertion/blocked',
            severity: 'error',
            subject: body.name,
            measured: volume,
            limit,
            unit: 'mm³',
            message: `In step ${step.step}, ${what} runs into ${still.name}: ${figure(volume)} mm³ in the way, ${figure(limit)} mm³ allowed.`,
            remedies: ['screws', 'frame', 'grid.pitch'],
          }),
        );
      }
    }
  return findings;
}

interface Meeting {
  readonly mover: Body;
  readonly still: Body;
  readonly leg: Leg;
}

const sweptOnce = (scene: Scene, { mover, still, leg }: Meeting): number =>
  scene.once(`way ${relationKey(mover.at.level, still.at.level)} ${legKey(mover.at.level, leg)}`, () =>
    volumeInTheWay({ mover: mover.at.level, leg, still: still.at.level }),
  );

/** Largest overlap at any step of the way, the place where the part stands included. */
function mostOnTheWay(scene: Scene, { mover, still, leg }: Meeting): number {
  const steps = Math.max(1, Math.ceil(leg.travel / STEP));
  let most = 0;
  for (let i = 0; i <= steps; i++)
    most = Math.max(
      most,
      scene.overlap(still.at.level, shifted(mover.at.level, shortOf(leg, (leg.travel * i) / steps))),
    );
  return most;
}
