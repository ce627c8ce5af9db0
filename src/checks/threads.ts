/** Does every screw hold: long enough in its nut or pilot, not bottoming, of a length that is sold? */
import { threads as THREADS } from '../components/index.js';
import type { Thread } from '../components/types.js';
import type { Finding } from '../findings.js';
import { POSES, type Pose, type Screw } from '../kit/types.js';
import { leastFormedEngagement } from '../mechanics/thread.js';
import { apply, applyDirection, invertRigid } from '../solid/matrix.js';
import type { Vec3 } from '../solid/mesh.js';
import type { Check, ShapeContext } from './context.js';
import { SHARED } from './limits.js';
import { figure, say } from './say.js';
import { type Body, carried, type Scene, type Standing } from './scene.js';
import { along, dot, minus, unit } from './vectors.js';

/** Least free depth past a tip: half a pitch of the largest thread, so that the screw clamps before it bottoms [mm]. */
const TIP_ROOM = 0.3;

/** A tip that is meant to bear stands at most this far off what it bears on [mm]. */
const BEARS = 0.15;

/** Declared lengths may differ from the solids by this [mm]. */
const OFF = 0.1;

const CODES = [
  'thread/short-of-nut',
  'thread/formed-short',
  'thread/not-as-drawn',
  'thread/bottoms',
  'thread/tip-floats',
  'thread/not-stocked',
] as const;

export const threads: Check<ShapeContext> = {
  name: 'threads',
  codes: CODES,
  run: ({ scene, kit, spec }) =>
    kit.screws.flatMap((screw) => checkScrew(scene, { screw, growth: spec.printer.machine.holeGrowth.value })),
};

function checkScrew(
  scene: Scene,
  { screw, growth }: { readonly screw: Screw /** Of vertical holes. */; readonly growth: number },
): Finding[] {
  const findings: Finding[] = [];
  const body = scene.byName.get(screw.placement)!;
  const thread = THREADS[screw.size];
  const fault = (
    code: (typeof CODES)[number],
    rest: { readonly measured: number; readonly limit: number; readonly message: string },
  ) =>
    findings.push(
      say({ code, severity: 'error', subject: screw.placement, unit: 'mm', remedies: ['screws'], ...rest }),
    );

  if (screw.into.kind === 'nut') {
    const { beyond, nut } = screw.into;
    const measured = Math.min(...POSES.map((pose) => beyondNut({ screw, body, nut: scene.byName.get(nut)! }, pose)));
    const pitch = thread.pitch.value;
    if (Math.min(beyond, measured) < pitch - 1e-3)
      fault('thread/short-of-nut', {
        measured: Math.min(beyond, measured),
        limit: pitch,
        message: `${screw.placement} passes ${nut} by ${figure(Math.min(beyond, measured))} mm; the whole nut and one pitch, ${figure(pitch)} mm, should hold.`,
      });
    if (Math.abs(beyond - measured) > OFF)
      fault('thread/not-as-drawn', {
        measured,
        limit: beyond,
        message: `${screw.placement} is said to pass ${nut} by ${figure(beyond)} mm; its solid passes by ${figure(measured)} mm.`,
      });
  } else {
    const { engaged, part } = screw.into;
    const least = leastFormedEngagement(thread.diameter.value);
    if (engaged < least - 1e-3)
      fault('thread/formed-short', {
        measured: engaged,
        limit: least,
        message: `${screw.placement} has ${figure(engaged)} mm of thread in ${part}; 1.5 diameters are ${figure(least)} mm.`,
      });
    const held = scene.byName.get(part)!;
    const former = standsInPrint(held, screw) ? asDrawn(scene, { screw, body, growth }) : body.at.level;
    const measured = scene.sharedReach(held.at.level, former, screw.direction);
    if (Math.abs(measured - engaged) > OFF)
      fault('thread/not-as-drawn', {
        measured,
        limit: engaged,
        message: `${screw.placement} is said to have ${figure(engaged)} mm of thread in ${part}; the solids share ${figure(measured)} mm.`,
      });
  }

  if (screw.tipRoom !== null && screw.tipRoom < TIP_ROOM - 1e-3)
    fault('thread/bottoms', {
      measured: screw.tipRoom,
      limit: TIP_ROOM,
      message: `${screw.placement} has ${figure(screw.tipRoom)} mm before its tip; ${TIP_ROOM} mm keep it from bottoming.`,
    });
  else findings.push(...atTheTip(scene, { screw, body, thread }));

  const order = body.part.order;
  const lengths = order ? stockOf(order.standard, thread) : undefined;
  if (!lengths?.includes(screw.lengthMm) || order?.lengthMm !== screw.lengthMm || order.size !== screw.size)
    findings.push(
      say({
        code: 'thread/not-stocked',
        severity: 'error',
        subject: screw.placement,
        measured: screw.lengthMm,
        unit: 'mm',
        message: `${screw.placement} is ${screw.size} × ${figure(screw.lengthMm)}, ordered as ${order ? `${order.standard} ${order.size} × ${order.lengthMm}` : 'nothing'}; stocked are ${lengths?.join(', ') ?? 'no lengths of that standard'} mm.`,
        remedies: ['screws'],
      }),
    );
  return findings;
}

/** A part's file has z up as it prints: does the screw go in along it? */
function standsInPrint({ at: { level } }: Body, { direction }: Screw): boolean {
  return Math.abs(applyDirection(invertRigid(level.matrix), direction)[2]) > 0.99;
}

/**
 * A vertical hole is drawn wider by what the printer closes it: its thread is formed by a screw that is as much thicker. The
 * bar runs from under the head (a sunk head's face) to the tip.
 */
function asDrawn(
  scene: Scene,
  { screw, body, growth }: { readonly screw: Screw; readonly body: Body; readonly growth: number },
): Standing {
  const { head, direction, lengthMm, size } = screw;
  const tip = farthest(body.at.level, direction) - dot(head, direction);
  return scene.bar(along(head, direction, tip - lengthMm), direction, {
    diameter: THREADS[size].diameter.value + growth,
    length: lengthMm,
  });
}

/** What the solids say: nothing in the way of a tip that must stay free, something under a tip that must bear. */
function atTheTip(
  scene: Scene,
  { screw, body, thread }: { readonly screw: Screw; readonly body: Body; readonly thread: Thread },
): Finding[] {
  const about = { severity: 'error', subject: screw.placement, unit: 'mm', remedies: ['screws'] } as const;
  // From the head's middle to the tip's, as far as the solid reaches along the screw.
  const length = farthest(body.at.level, screw.direction) - dot(screw.head, screw.direction);
  const tip = along(screw.head, screw.direction, length);
  const ahead = along(tip, screw.direction, 1);
  const reach = screw.tipRoom === null ? BEARS : TIP_ROOM;
  for (const pose of POSES) {
    const from = carried(body, pose, tip);
    const way = unit(minus(carried(body, pose, ahead), from));
    // Thinner than any pilot, so that a pilot's wall is not taken for its ground.
    const probe = scene.bar(along(from, way, 0.01), way, {
      diameter: 0.6 * thread.diameter.value,
      length: reach - 0.02,
    });
    const met = scene.bodies.find((other) => other !== body && scene.overlap(other.at[pose], probe) > SHARED);
    if (screw.tipRoom !== null && met)
      return [
        say({
          ...about,
          code: 'thread/bottoms',
          limit: TIP_ROOM,
          message: `${screw.placement} meets ${met.name} less than ${TIP_ROOM} mm past its tip.`,
        }),
      ];
    if (screw.tipRoom === null && !met)
      return [
        say({
          ...about,
          code: 'thread/tip-floats',
          limit: BEARS,
          message: `The tip of ${screw.placement} is meant to bear, but with the beam ${pose} nothing stands within ${BEARS} mm of it.`,
        }),
      ];
  }
  return [];
}

/** Lengths stocked of a standard; undefined for one that is not known here. */
function stockOf(standard: string, thread: Thread): readonly number[] | undefined {
  const digits = standard.replace(/\D/g, '');
  if (digits === '4762') return thread.capLengths.value;
  if (digits === '10642') return thread.sunkLengths.value;
  if (digits === '4026') return thread.setLengths.value;
  return undefined;
}

/** How far the screw's solid passes the nut's at a pose [mm]. */
function beyondNut(
  { screw, body, nut }: { readonly screw: Screw; readonly body: Body; readonly nut: Body },
  pose: Pose,
): number {
  const from = carried(body, pose, screw.head);
  const way = unit(minus(carried(body, pose, along(screw.head, screw.direction, 1)), from));
  return farthest(body.at[pose], way) - farthest(nut.at[pose], way);
}

/** How far the solid reaches along a direction, from the assembly's origin [mm]. */
function farthest({ shape, matrix }: Standing, direction: Vec3): number {
  const { positions } = shape.tree().mesh;
  let most = -Infinity;
  for (let v = 0; v < positions.length; v += 3)
    most = Math.max(most, dot(apply(matrix, [positions[v]!, positions[v + 1]!, positions[v + 2]!]), direction));
  return most;
}
