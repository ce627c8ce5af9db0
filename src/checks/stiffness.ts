/**
 * By how much do the rails and the mount's base give, and where does the beam go then?
 *
 * A rail's sag shifts its beams, its twist tilts them. What is there when the kit is aligned (weight, warp, the screw's own
 * force) is taken out by aligning and has to leave the tilt enough room; a hand that presses comes later and must not lose
 * the beam.
 */
import type { Finding } from '../findings.js';
import { ALIGNED_SHARE } from '../layout/mount-ask.js';
import { bowSlope, endForce, evenLoad, midForce, midTwist } from '../mechanics/beam.js';
import { deg } from '../units.js';
import type { Check, CheckContext } from './context.js';
import type { RailFigures } from './figures.js';
import { figure, say } from './say.js';

/** A hand that leans on the bezel at mid-span [N]. */
const PRESS = 20;

export const stiffness: Check<Pick<CheckContext, 'spec' | 'frameFigures' | 'leaf' | 'leafFigures'>> = {
  name: 'stiffness',
  codes: ['rail/weight', 'rail/warp', 'rail/press', 'rail/alignment', 'mount/base-arm'],
  run({ spec, frameFigures, leaf, leafFigures }) {
    const { baseArm, rails, tolerance } = frameFigures;
    const findings: Finding[] = [];
    const { sag } = endForce({ force: leafFigures.force.level, length: baseArm.length, stiffness: baseArm.bending });
    // The pad sinks under the screw, so the arm follows by this angle.
    const baseAngle = sag / leaf.lever;
    const longest = Math.max(...rails.map((rail) => rail.reach));
    findings.push(
      say({
        code: 'mount/base-arm',
        severity: 'note',
        subject: 'tilt mount',
        measured: deg(baseAngle),
        limit: ALIGNED_SHARE * deg(leaf.tilt),
        unit: '°',
        message: `The screw's ${figure(leafFigures.force.level)} N sinks the mount's base by ${figure(sag)} mm: ${aim(baseAngle, baseAngle * longest)}; aligned away.`,
        remedies: [],
      }),
    );

    for (const rail of rails) {
      const weight = underWeight(rail);
      const press = underPress(rail);
      const warp = bowSlope(spec.printer.machine.warpPer100.value, 100, rail.piece);
      const about = { subject: rail.name, unit: '°', remedies: ['frame.wall', 'grid.pitch', 'printer'] } as const;
      const room = ALIGNED_SHARE * leaf.tilt;
      findings.push(
        say({
          ...about,
          code: 'rail/weight',
          severity: 'note',
          measured: deg(weight.twist),
          limit: deg(room),
          message: `${rail.name} sags by ${figure(weight.sag)} mm under its weight: ${aim(weight.twist, weight.sag + weight.twist * rail.reach)}; aligned away.`,
        }),
        say({
          ...about,
          code: 'rail/warp',
          severity: 'note',
          measured: deg(warp),
          limit: deg(room),
          message: `If all of this printer's warp over ${figure(rail.piece)} mm turned the mounts of ${rail.name}: ${aim(warp, warp * rail.reach)}; aligned away.`,
        }),
      );
      const aligned = weight.twist + warp + baseAngle;
      if (!(aligned <= room))
        findings.push(
          say({
            ...about,
            code: 'rail/alignment',
            severity: 'error',
            remedies: ['aim.tilt', ...about.remedies],
            measured: deg(aligned),
            limit: deg(room),
            message: `Weight, warp and the screw's own force turn the mounts of ${rail.name} by ${figure(deg(aligned))}°; half of the tilt, ${figure(deg(room))}°, may go there: a tilt of ${figure(Math.ceil(10 * (deg(aligned) / ALIGNED_SHARE)) / 10)}° leaves that room.`,
          }),
        );
      const shift = press.sag + press.twist * rail.reach;
      findings.push(
        say({
          ...about,
          code: 'rail/press',
          severity: shift <= tolerance ? 'note' : 'warning',
          measured: shift,
          limit: tolerance,
          unit: 'mm',
          message: `${PRESS} N at the middle of ${rail.name} bend it by ${figure(press.sag)} mm: ${aim(press.twist, shift)}; ${figure(tolerance)} mm keep the beam in its receiver.`,
        }),
      );
    }
    return findings;
  },
};

interface Give {
  readonly sag: number;
  readonly twist: number;
}

/** An even torque turns the middle by half of what the same torque does there at once. */
function underWeight({ span, ends, bending, torsion, weight, weightLever }: RailFigures): Give {
  const torque = (weight * span * weightLever) / 2;
  return {
    sag: evenLoad({ load: weight, length: span, stiffness: bending, ends }).sag,
    twist: torque > 0 ? midTwist({ torque, length: span, stiffness: torsion }) : 0,
  };
}

function underPress({ span, ends, bending, torsion, pressLever }: RailFigures): Give {
  return {
    sag: midForce({ force: PRESS, length: span, stiffness: bending, ends }).sag,
    twist: pressLever > 0 ? midTwist({ torque: PRESS * pressLever, length: span, stiffness: torsion }) : 0,
  };
}

const aim = (angle: number, shift: number) => `${figure(deg(angle))}° and ${figure(shift)} mm at the receiver`;
