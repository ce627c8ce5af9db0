/** Does the kit say what it must say, about things that exist? Until it does, nothing else can be checked. */
import type { Finding } from '../findings.js';
import { type Kit, POSES } from '../kit/types.js';
import type { Matrix } from '../solid/mesh.js';
import type { Check } from './context.js';
import { say } from './say.js';

const CODES = ['kit/unknown-name', 'kit/same-name', 'kit/not-rigid', 'kit/missing-pose', 'kit/direction'] as const;

export const declarations: Check<{ readonly kit: Kit }> = {
  name: 'declarations',
  codes: CODES,
  run({ kit }) {
    const findings: Finding[] = [];
    const wrong = (code: (typeof CODES)[number], subject: string, message: string) =>
      findings.push(say({ code, severity: 'error', subject, message, remedies: [] }));

    const names = new Set<string>();
    for (const { name } of kit.placements) {
      if (names.has(name)) wrong('kit/same-name', name, `Two placements are called ${name}.`);
      names.add(name);
    }
    const named = (name: string, by: string) => {
      if (!names.has(name)) wrong('kit/unknown-name', by, `${by} names ${name}, which is not placed.`);
    };

    for (const part of kit.parts.values())
      for (const pose of POSES)
        if (part.posed && !part.posed[pose])
          wrong('kit/missing-pose', part.id, `${part.id} changes its shape with the tilt, but has none for ${pose}.`);
    for (const { name, part, matrix, rides, touches, overlaps } of kit.placements) {
      if (!kit.parts.has(part))
        wrong('kit/unknown-name', name, `${name} places ${part}, which is not a part of the kit.`);
      for (const other of touches) named(other, name);
      for (const other of overlaps) named(other.with, name);
      if (!isRigid(matrix)) wrong('kit/not-rigid', name, `The matrix of ${name} is not rigid with determinant +1.`);
      for (const pose of ['lowest', 'highest'] as const)
        if (rides && !rides[pose])
          wrong('kit/missing-pose', name, `${name} rides on a mount, but has no place for ${pose}.`);
        else if (rides && !isRigid(rides[pose]))
          wrong('kit/not-rigid', name, `The matrix of ${name} at ${pose} is not rigid with determinant +1.`);
    }

    for (const fit of kit.fits) for (const name of [fit.a, fit.b]) named(name, `fit ${fit.what}`);
    for (const { placement, into, direction } of kit.screws) {
      named(placement, `screw ${placement}`);
      named(into.kind === 'nut' ? into.nut : into.part, `screw ${placement}`);
      if (!isUnit(direction))
        wrong('kit/direction', placement, `The direction of screw ${placement} is not a unit vector.`);
    }
    for (const { name, emitter, receiver } of kit.beams)
      for (const end of [emitter, receiver]) named(end, `beam ${name}`);
    for (const { step, joins, hardware, moves } of kit.assembly) {
      for (const name of [...joins, ...hardware]) named(name, `step ${step}`);
      for (const { placement, direction, travel, inFrameOf } of moves) {
        named(placement, `step ${step}`);
        if (inFrameOf !== null) named(inFrameOf, `step ${step}`);
        if (!isUnit(direction) || !(travel > 0 && travel < Infinity))
          wrong(
            'kit/direction',
            placement,
            `Step ${step} moves ${placement} along no unit vector, or by no length above 0.`,
          );
      }
    }
    return findings;
  },
};

const isUnit = (v: readonly number[]) => Math.abs(Math.hypot(...v) - 1) < 1e-6;

/** Rows of unit length, at right angles, right-handed; last row 0 0 0 1. */
function isRigid(m: Matrix): boolean {
  if (m.length !== 16 || !m.every(Number.isFinite)) return false;
  const row = (r: number) => [m[4 * r]!, m[4 * r + 1]!, m[4 * r + 2]!];
  const dot = (a: number[], b: number[]) => a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
  const [x, y, z] = [row(0), row(1), row(2)];
  const near = (value: number, wanted: number) => Math.abs(value - wanted) < 1e-6;
  const determinant =
    x[0]! * (y[1]! * z[2]! - y[2]! * z[1]!) -
    x[1]! * (y[0]! * z[2]! - y[2]! * z[0]!) +
    x[2]! * (y[0]! * z[1]! - y[1]! * z[0]!);
  return (
    [x, y, z].every((v) => near(dot(v, v), 1)) &&
    near(dot(x, y), 0) &&
    near(dot(y, z), 0) &&
    near(dot(x, z), 0) &&
    near(determinant, 1) &&
    m[12] === 0 &&
    m[13] === 0 &&
    m[14] === 0 &&
    m[15] === 1
  );
}
