/** The emitter in its mount, and what rolls it: a collar on the barrel, or a sleeve around an emitter that needs one. */
import { keys } from '../components/index.js';
import { side } from '../layout/fits.js';
import { drawBarrel } from '../parts/bought.js';
import { drawCollar } from '../parts/collar.js';
import { drawSleeve } from '../parts/emitter-sleeve.js';
import { frame, multiply, rotation } from '../solid/matrix.js';
import type { Matrix, Vec3 } from '../solid/mesh.js';
import type { Bench } from './bench.js';
import type { Handling, Placement } from './types.js';

/** The key that fits the collar's notches; with the default screws it is the clamp's too. */
const ROLL_KEY = '1.3';
/** A barrel's z along the beam. */
const alongBeam = (at: Vec3): Matrix => frame([0, 1, 0], [0, 0, 1], [1, 0, 0], at);

export interface BodyPlace {
  /** `column-3`: what the names begin with. */
  readonly stem: string;
  /** The mount's placement. */
  readonly mount: string;
  /** Places of what rides on the arm, from its place at level in the mount's file coordinates. */
  readonly riding: (local: Matrix) => Pick<Placement, 'matrix' | 'rides'>;
}

/** @returns names of the placements */
export function placeBody(
  b: Bench,
  { stem, mount: on, riding }: BodyPlace,
): { readonly barrel: string; readonly collar: string } {
  const { k } = b;
  const { mount, spec } = b.layout;
  const { sleeve } = mount;
  const emitter = spec.emitters.part;
  const mid = mount.width / 2;
  const body = sleeve?.body ?? mount.barrel;
  const volume = Math.PI * body.radius ** 2 * body.length;
  const barrel = b.place({
    name: `${stem}-barrel`,
    part: b.bought(
      {
        id: spec.emitters.name,
        title: emitter.title,
        material: 'as bought',
        densityGcm3: (emitter.massG.value / volume) * 1000,
        order: { standard: '', size: `Ø${emitter.diameter.value}`, lengthMm: emitter.length.value },
      },
      () => drawBarrel(k, mount),
    ),
    ...riding(multiply(alongBeam([mount.barrel.exit, mount.axis, mid]), rotation('y', sleeve?.lean ?? 0))),
    touches: sleeve ? [] : [on],
  });
  const collar = b.place({
    name: `${stem}-collar`,
    part: sleeve
      ? b.printed(
          'emitter-sleeve',
          sleeve.lean > 0 ? 'sleeve with collar, bored askew' : 'sleeve with collar around a short emitter',
          () => drawSleeve(k, { ...mount, sleeve }),
        )
      : b.printed('roll-collar', 'collar for rolling the barrel', () => drawCollar(k, spec, mount)),
    ...riding(alongBeam([mount.collar.front - mount.collar.length, mount.axis, mid])),
    touches: sleeve ? [barrel, on] : [barrel],
  });
  b.fit({
    a: barrel,
    b: collar,
    what: sleeve ? 'the emitter in its sleeve' : 'the collar on the barrel',
    fitClass: 'press',
    drawn: side(spec, 'press'),
  });
  b.handle(rollKey(b, collar));
  return { barrel, collar };
}

/** The key in a notch of the collar, upright and leaned half a notch either way: so it is rolled on by notches. */
function rollKey({ layout: { mount } }: Bench, collar: string): Handling {
  const key = keys[ROLL_KEY];
  const depth = mount.collar.outer - mount.collar.notchDepth;
  const lean = Math.PI / mount.collar.notches;
  // The collar's file has the kit's up along its x.
  const stands = [-lean, 0, lean].map((angle) => {
    const out: Vec3 = [Math.cos(angle), Math.sin(angle), 0];
    return { from: [out[0] * depth, out[1] * depth, mount.collar.length / 2] as Vec3, out };
  });
  return {
    what: 'rolling the barrel by its collar',
    placement: collar,
    tool: `hex key ${ROLL_KEY}`,
    diameter: key.corners.value,
    reach: key.longArm.value - mount.collar.notchDepth,
    stands,
  };
}
