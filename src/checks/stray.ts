/**
 * Does every beam end in something opaque: before it is aimed, wherever its errors and the screw can send it, with the hood on; and
 * once it is aimed? None of this can be accepted away.
 */
import type { Finding } from '../findings.js';
import type { Beam } from '../kit/types.js';
import { aimedError, strayError, strayRadius } from '../layout/light/stray.js';
import { type AimError, landing, type Patch, uncovered } from '../optics/safety-cone.js';
import { deg } from '../units.js';
import type { Check, CheckContext } from './context.js';
import { figure, say } from './say.js';
import type { Body } from './scene.js';
import { minus, unit } from './vectors.js';

/** What stands over the rails' tops at the receivers' side. */
const HOOD = /-hood-\d+$/;
/** Below the covers' tops the kit is closed all round: field wall, deck, rails, posts and covers. */
const CLOSED = /-(?:cover|rail)(?:-\d+)?$|-post$/;
const DEEP = 1e6;

export const stray: Check<Pick<CheckContext, 'light' | 'spec' | 'kit' | 'scene'>> = {
  name: 'stray beams',
  codes: ['eye-safety/stray-before', 'eye-safety/stray-after'],
  run({ kit, light, spec, scene }) {
    const before = strayError(light.aim.inputs);
    const bodies = scene.bodies.filter(({ part }) => part.kind === 'printed');
    return kit.beams.flatMap((beam) => {
      const line = light.aim.lines[beam.line === 'column' ? 0 : 1];
      return [
        ...asked(beam, bodies, {
          code: 'eye-safety/stray-before',
          error: before,
          stops: (name) => HOOD.test(name) || CLOSED.test(name),
          when: 'Before it is aimed, with the hood on,',
          remedies: ['aim.tilt', 'emitters.part', 'grid.pitch'],
        }),
        ...asked(beam, bodies, {
          code: 'eye-safety/stray-after',
          error: aimedError(line.tolerance, line.distance),
          stops: (name) => CLOSED.test(name),
          when: 'Once it is aimed, the hood off,',
          remedies: ['emitters.part', 'receivers.part', 'beam.height'],
        }),
      ];
    });

    interface Question {
      readonly code: 'eye-safety/stray-before' | 'eye-safety/stray-after';
      readonly error: AimError;
      readonly stops: (name: string) => boolean;
      readonly when: string;
      readonly remedies: readonly string[];
    }

    function asked(beam: Beam, all: readonly Body[], { code, error, stops, when, remedies }: Question): Finding[] {
      const side = far(beam);
      const opaque = all.filter(({ name }) => stops(name) && side.holds(name));
      const wall = Math.max(...opaque.map((body) => side.depth(body)));
      const distance = opaque.length === 0 ? line(beam) : wall;
      const radius = strayRadius(spec, distance);
      if (radius === null) return [];
      const patch = landing(error, { distance, radius });
      const open =
        patch === null
          ? null
          : uncovered(
              patch,
              opaque.map((body) => side.patch(body)),
            );
      if (open !== null && open.length === 0) return [];
      const over = open === null ? DEEP : Math.max(...open.map((piece) => piece.top - piece.bottom));
      return [
        say({
          code,
          severity: 'error',
          subject: beam.name,
          measured: open === null ? 90 : over,
          limit: 0,
          unit: open === null ? '°' : 'mm',
          message:
            open === null
              ? `${when} beam ${beam.name} can leave the kit at any height: its errors come to ${figure(deg(error.tilt[1] + error.boresight))}°.`
              : `${when} beam ${beam.name} can land on ${open.length} place${open.length === 1 ? '' : 's'} at the far side that nothing opaque covers, up to ${figure(over)} mm high.`,
          remedies: [...remedies],
        }),
      ];
    }
  },
};

const line = ({ from, to }: Beam) => Math.hypot(...minus(to, from));

/** The far side as the beam sees it: u across, v up from the beam, depth along it. */
function far({ from, to, line: kind }: Beam) {
  const way = unit(minus(to, from));
  const along = kind === 'column' ? 1 : 0;
  const across = 1 - along;
  const forward = way[along]! > 0;
  const side = kind === 'column' ? (forward ? 'far' : 'near') : forward ? 'right' : 'left';
  return {
    holds: (name: string) => name.includes(side),
    /** To its face away from the emitter. */
    depth: ({ at: { level } }: Body) =>
      forward ? level.box.max[along]! - from[along]! : from[along]! - level.box.min[along]!,
    patch: ({ name, at: { level } }: Body): Patch => ({
      left: level.box.min[across]! - from[across]!,
      right: level.box.max[across]! - from[across]!,
      bottom: HOOD.test(name) ? level.box.min[2] - from[2] : -DEEP,
      top: level.box.max[2] - from[2],
    }),
  };
}
