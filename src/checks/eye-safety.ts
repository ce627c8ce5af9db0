/** How strong are the beams, and does each end in something opaque? None of this can be accepted away. */
import type { Finding } from '../findings.js';
import type { Beam } from '../kit/types.js';
import { apply } from '../solid/matrix.js';
import type { Vec3 } from '../solid/mesh.js';
import type { Check, ShapeContext } from './context.js';
import { beamsTogether, classLimits, classOf } from './laser-class.js';
import { figure, say } from './say.js';
import type { Scene } from './scene.js';
import { along, boxDistance, frameAlong, minus, unit } from './vectors.js';

/** Rays about the middle one, on the rim of the free way. */
const RIM = 8;

/** How far past a beam's end its stop is looked for [mm]. */
const BEHIND = 60;

const CODES = ['eye-safety/class', 'eye-safety/too-strong', 'eye-safety/not-estimated', 'eye-safety/no-stop'] as const;

export const eyeSafety: Check<ShapeContext> = {
  name: 'eye safety',
  codes: CODES,
  run: (context) => [...strength(context), ...context.kit.beams.flatMap((beam) => stops(context.scene, beam))],
};

function strength({ spec, kit }: ShapeContext): Finding[] {
  const { powerMw, wavelengthNm } = spec.emitters.part;
  const power = powerMw.value;
  const about = { subject: spec.emitters.name, measured: power, unit: 'mW', remedies: ['emitters.part'] } as const;
  const limits = classLimits(wavelengthNm.value);
  if (limits === null)
    return [
      say({
        ...about,
        code: 'eye-safety/not-estimated',
        severity: 'error',
        message: `At ${figure(wavelengthNm.value)} nm the limits that hold from 500 to 1150 nm do not apply, and no class is estimated: choose another emitter.`,
      }),
    ];
  const pitch = Math.min(...spec.grid.columns, ...spec.grid.rows);
  const lines = (line: Beam['line']) => kit.beams.filter((beam) => beam.line === line).length;
  const together = beamsTogether(pitch, Math.max(1, lines('column'), lines('row')));
  const estimate = classOf(power, limits);
  const strong = estimate === '3B or higher';
  return [
    say({
      ...about,
      code: strong ? 'eye-safety/too-strong' : 'eye-safety/class',
      severity: strong ? 'error' : 'note',
      limit: strong ? limits.class3R : limits.class1,
      message:
        `One beam is stated as ${figure(power)} mW at ${figure(wavelengthNm.value)} nm, by its figures class ${estimate} (class 1 ends at ${figure(limits.class1)} mW, class 3R at ${figure(limits.class3R)} mW); ` +
        `${together} parallel beams through a 50 mm lens are ${figure(together * power)} mW. A label is no class: measure each emitter, assume 3R or higher until then. ` +
        'This is an estimate, no classification; local law and a qualified laser safety person decide.',
    }),
  ];
}

/** Follows the beam's middle and its rim past its end: each ray must meet an opaque printed part. */
function stops(scene: Scene, beam: Beam): Finding[] {
  const way = unit(minus(beam.to, beam.from));
  const place = frameAlong(beam.to, way);
  const rim = Array.from({ length: RIM }, (_, i): Vec3 => {
    const turn = (2 * Math.PI * i) / RIM;
    return [(beam.corridor / 2) * Math.cos(turn), (beam.corridor / 2) * Math.sin(turn), 0];
  });
  const missed = [[0, 0, 0] as Vec3, ...rim].filter((start) => {
    const from = apply(place, start);
    const to = along(from, way, BEHIND);
    const box = { min: lower(from, to), max: upper(from, to) };
    return !scene.bodies.some(
      (body) =>
        body.part.kind === 'printed' &&
        body.name !== beam.emitter &&
        boxDistance(body.at.level.box, box) === 0 &&
        scene.hits(body.at.level, from, to),
    );
  });
  if (missed.length === 0) return [];
  return [
    say({
      code: 'eye-safety/no-stop',
      severity: 'error',
      subject: beam.name,
      measured: missed.length,
      limit: 0,
      unit: 'rays',
      message: `${missed.length} of ${RIM + 1} rays about beam ${beam.name} meet no printed part within ${BEHIND} mm past its end; it has to end in an opaque stop.`,
      remedies: ['receivers.part', 'frame', 'beam.height'],
    }),
  ];
}

const lower = (a: Vec3, b: Vec3): Vec3 => [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])];
const upper = (a: Vec3, b: Vec3): Vec3 => [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])];
