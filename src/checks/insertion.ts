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
import type { Body, Scene } from './scene.js';
import { type Leg, legKey, mostSharedOnTheWay, volumeInTheWay, type Way, wayBox, wayBoxOf } from './sweep.js';
import { boxDistance } from './vectors.js';

/** A shared volume followed along the way is sampled to 3 %; where the part stands it is measured exactly elsewhere. */
const SAMPLED = 1.03;

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
        const volume = once(scene, { mover, still, leg }, meant ? mostSharedOnTheWay : volumeInTheWay);
        if (volume <= (meant ? SAMPLED * limit : limit) || found.has(still.name)) continue;
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

/** Measures with `measure` what of like ways has not been measured yet. */
function once(scene: Scene, { mover, still, leg }: Meeting, measure: (way: Way) => number): number {
  const way = { mover: mover.at.level, still: still.at.level, leg };
  const what = `${measure.name} ${legKey(way.mover, leg)}`;
  return scene.alike({ what, a: way.still, b: way.mover, reach: wayBoxOf(way.mover, leg) }, () => measure(way));
}
