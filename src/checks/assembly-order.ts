/** Walks the assembly step by step: what moves, where to, and what already stands there. */
import type { Finding } from '../findings.js';
import type { Move, Step } from '../kit/types.js';
import { applyDirection } from '../solid/matrix.js';
import type { Vec3 } from '../solid/mesh.js';
import { say } from './say.js';
import type { Body, Scene } from './scene.js';
import type { Leg } from './sweep.js';
import { along } from './vectors.js';

/** One placement, or a sub-assembly built on it, comes to its place. */
export interface Arrival {
  readonly step: Step;
  readonly body: Body;
  /** Everything that moves with it, itself included. */
  readonly group: readonly Body[];
  /** Everything that already hangs together where it goes. */
  readonly there: readonly Body[];
  /** Empty for the first of all. */
  readonly legs: readonly Leg[];
}

export interface Walk {
  readonly arrivals: readonly Arrival[];
  /** What is wrong with the order itself. */
  readonly findings: readonly Finding[];
}

export const ORDER_CODES = [
  'assembly/missing',
  'assembly/twice',
  'assembly/no-move',
  'assembly/stray-move',
  'assembly/frame',
] as const;

/**
 * A placement starts by itself on the bench. Its moves, in the axes of their frame, bring it (and what was built on it) to
 * the frame's sub-assembly, or to the kit when the frame is null; the first placement of the first step is the kit's first.
 */
export function walkAssembly(scene: Scene, steps: readonly Step[]): Walk {
  const findings: Finding[] = [];
  const wrong = (code: (typeof ORDER_CODES)[number], subject: string, message: string) =>
    findings.push(say({ code, severity: 'error', subject, message, remedies: [] }));

  const stepsOf = new Map<string, number>();
  for (const step of steps)
    for (const name of [...step.joins, ...step.hardware]) stepsOf.set(name, (stepsOf.get(name) ?? 0) + 1);
  for (const { name } of scene.bodies) {
    const times = stepsOf.get(name) ?? 0;
    if (times === 0) wrong('assembly/missing', name, `${name} is placed, but no step of the assembly brings it.`);
    if (times > 1) wrong('assembly/twice', name, `${name} is brought ${times} times in the assembly; once is right.`);
  }

  const firstName = [...(steps[0]?.joins ?? []), ...(steps[0]?.hardware ?? [])][0];
  const KIT: { readonly members: Body[] } = { members: [] };
  const clusters = new Map(scene.bodies.map((body) => [body.name, { members: [body] }]));
  const join = (body: Body, to: { readonly members: Body[] }) => {
    for (const member of clusters.get(body.name)!.members) {
      to.members.push(member);
      clusters.set(member.name, to);
    }
  };

  const arrivals: Arrival[] = [];
  const brought = new Set<string>();
  for (const step of steps) {
    const own = [...step.joins, ...step.hardware];
    for (const name of own) brought.add(name);
    if (own.includes(firstName ?? '') && step === steps[0]) {
      const body = scene.byName.get(firstName!);
      if (body) {
        join(body, KIT);
        arrivals.push({ step, body, group: [body], there: [], legs: [] });
      }
    }
    for (const [name, its] of byPlacement(step.moves)) {
      const body = scene.byName.get(name);
      if (!body || !brought.has(name)) {
        wrong('assembly/stray-move', name, `Step ${step.step} moves ${name}, which no step has brought yet.`);
        continue;
      }
      const { inFrameOf } = its[0]!;
      const target = inFrameOf === null ? null : scene.byName.get(inFrameOf);
      const where = inFrameOf ?? 'the kit';
      if (target === undefined || (target && !brought.has(target.name))) {
        wrong('assembly/frame', name, `Step ${step.step} moves ${name} toward ${where}, which is not there yet.`);
        continue;
      }
      if (its.some((move) => move.inFrameOf !== inFrameOf)) {
        wrong(
          'assembly/frame',
          name,
          `Step ${step.step} moves ${name} in two frames; one move ends where the next starts.`,
        );
        continue;
      }
      const from = clusters.get(name)!;
      const to = target ? clusters.get(target.name)! : KIT;
      if (from === to) {
        wrong('assembly/frame', name, `Step ${step.step} moves ${name} toward ${where}, but it is already part of it.`);
        continue;
      }
      arrivals.push({ step, body, group: [...from.members], there: [...to.members], legs: legsOf(its, target) });
      join(body, to);
    }
  }
  for (const body of scene.bodies)
    if (brought.has(body.name) && clusters.get(body.name) !== KIT && !arrivals.some((a) => a.body === body))
      wrong('assembly/no-move', body.name, `No move brings ${body.name} to its place.`);
  return { arrivals, findings };
}

function byPlacement(moves: readonly Move[]): ReadonlyMap<string, readonly Move[]> {
  const groups = new Map<string, Move[]>();
  for (const move of moves) {
    const group = groups.get(move.placement);
    if (group) group.push(move);
    else groups.set(move.placement, [move]);
  }
  return groups;
}

/** Legs in the assembly's axes, each ending where the next starts, the last where the placement stands. */
function legsOf(moves: readonly Move[], frame: Body | null): Leg[] {
  const legs: Leg[] = [];
  let offset: Vec3 = [0, 0, 0];
  for (const { direction, travel } of [...moves].reverse()) {
    const way = frame ? applyDirection(frame.placement.matrix, direction) : direction;
    legs.unshift({ direction: way, travel, offset });
    offset = along(offset, way, -travel);
  }
  return legs;
}
