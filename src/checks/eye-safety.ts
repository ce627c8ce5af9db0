/** How strong are the beams, and does each end in something opaque? None of this can be accepted away. */
import type { Finding } from '../findings.js';
import type { Beam } from '../kit/types.js';
import { estimateEmission, hazardDistance } from '../optics/safety-emission.js';
import { classLimits, exposureTime, VISIBLE, warns } from '../optics/safety-limits.js';
import { apply } from '../solid/matrix.js';
import type { Vec3 } from '../solid/mesh.js';
import type { Check, ShapeContext } from './context.js';
import { figure, say } from './say.js';
import type { Scene } from './scene.js';
import { along, boxDistance, frameAlong, minus, unit } from './vectors.js';

/** Rays about the middle one, on the rim of the free way. */
const RIM = 8;

/** How far past a beam's end its stop is looked for [mm]. */
const BEHIND = 60;

const CODES = [
  'eye-safety/class',
  'eye-safety/too-strong',
  'eye-safety/not-estimated',
  'eye-safety/unseen',
  'eye-safety/no-stop',
] as const;

export const eyeSafety: Check<ShapeContext> = {
  name: 'eye safety',
  codes: CODES,
  run: (context) => [...strength(context), ...context.kit.beams.flatMap((beam) => stops(context.scene, beam))],
};

/**
 * What is an error and what a warning.
 *
 * Error, which no flag takes away: light that a bare eye may get is above class 3R by estimate. Class 3B asks for interlocks, a key
 * and trained people, which an open panel does not have; the remedy is less drive, or another emitter.
 *
 * Below 500 nm no class is estimated: a warning to treat the light as class 3B, as its maker may have measured a class that can't
 * be worked out here. The limit against heat holds there as well, though, so what exceeds class 3R by heat alone is an error.
 *
 * Infrared that keeps class 3R is a warning: nothing makes the eye turn away. What a lens gathers from several beams is stated with
 * its class and stops nothing: beams end inside the panel, 2 m short of where a telescope would look into them.
 */
function strength({ spec, kit }: ShapeContext): Finding[] {
  const part = spec.emitters.part;
  const nm = part.wavelengthNm.value;
  const answer = classLimits(nm);
  const about = { subject: spec.emitters.name, unit: 'mW', remedies: ['emitters.part'] } as const;
  const source = {
    powerMw: part.powerMw.value,
    diameter: part.beamDiameter.value,
    divergenceMrad: part.divergenceMrad.value,
  };
  const rows = (['column', 'row'] as const).map((line) =>
    kit.beams.filter((beam) => beam.line === line).map(({ from }) => from[line === 'column' ? 0 : 1]),
  );
  const { alone, eye, lens } = estimateEmission(source, rows, answer.estimated ? answer.limits : HEAT_ALONE);
  const measured = eye.powerMw;
  const stated =
    `One beam is stated as ${figure(source.powerMw)} mW at ${figure(nm)} nm` +
    (alone.powerMw < 0.99 * source.powerMw ? `, of which ${figure(alone.powerMw)} mW enter an eye 100 mm off` : '');
  const limit = (answer.estimated ? answer.limits : HEAT_ALONE).class3R;
  if (eye.class === '3B' || eye.class === '4')
    return [
      say({
        ...about,
        code: 'eye-safety/too-strong',
        severity: 'error',
        measured,
        limit,
        message:
          `${stated}${eye.beams > 1 ? `, and ${eye.beams} beams reach one eye` : ''}: by its figures class ${eye.class}` +
          `${answer.estimated ? '' : ' at least, by the limit against heat alone'} (class 3R ends at ${figure(limit)} mW). An open panel must not be built with it. ` +
          `Drive the emitter at less, measure it and state that as \`power_mw\` in \`emitters.part\`, or choose another; dimming by pulses does not count. ${ESTIMATE}`,
      }),
    ];
  if (!answer.estimated)
    return [
      say({
        ...about,
        code: 'eye-safety/not-estimated',
        severity: 'warning',
        measured,
        message: `${stated}. No class is estimated: ${answer.why}. Treat every beam as class 3B, closed in and interlocked, until a qualified laser safety person has measured and classed it.`,
      }),
    ];
  const time = exposureTime(nm);
  const far = hazardDistance(source, { wavelengthNm: nm, time });
  return [
    ...(warns(nm) ? [] : [unseen(about, nm)]),
    say({
      ...about,
      code: 'eye-safety/class',
      severity: 'note',
      measured,
      limit: answer.limits.class1,
      message:
        `${stated}, by its figures class ${eye.class} (class 1 ends at ${figure(answer.limits.class1)} mW, class 3R at ${figure(limit)} mW); ` +
        `${lens.beams} parallel ${lens.beams > 1 ? 'beams' : 'beam'} through a 50 mm lens ${lens.beams > 1 ? 'are' : 'is'} ${figure(lens.powerMw)} mW, class ${lens.class}. ` +
        `${far > 0 ? `A beam that gets out exceeds what an eye may get in ${figure(time)} s as far as ${figure(far)} m off. ` : ''}` +
        'A label is no class: measure each emitter at its peak, assume 3R or higher until then. Pulsed or dimmed drive counts at its peak. ' +
        ESTIMATE,
    }),
  ];
}

/**
 * The limits against heat alone, which hold below 500 nm too. Source: IEC 60825-1:2014 as restated publicly; class 3R of visible
 * light ends at 5 mW from 400 nm on.
 */
const HEAT_ALONE = { class1: 0.39, class2: 1, class3R: 5, class3B: 500 } as const;

const ESTIMATE = 'This is an estimate, no classification; local law and a qualified laser safety person decide.';

const unseen = (about: { readonly subject: string; readonly remedies: readonly string[] }, nm: number): Finding =>
  say({
    code: 'eye-safety/unseen',
    severity: 'warning',
    subject: about.subject,
    measured: nm,
    limit: VISIBLE.to,
    unit: 'nm',
    message: `Light of ${figure(nm)} nm can't be seen: the eye neither blinks nor turns away, so class 2 does not exist there and nobody notices a beam that has gone astray. Find and follow it with a viewing card, never by eye.`,
    remedies: about.remedies,
  });

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
