/** What lies in a mount's seat: the emitter's own body, or a printed sleeve around one that is too short, or has a flange. mm. */
import { threads } from '../components/index.js';
import type { Solved, Spec } from '../spec/spec.js';
import { side, upTenth } from './fits.js';
import { CLOSE_WALL, COLLAR, COLLAR_AIR, THIN_WALL } from './mount-sizes.js';

/** Turned figure about the beam's axis; lengths from its front, where the emitter's front lies. */
export interface SleeveLayout {
  /** Radius of the bore that holds the body. */
  readonly bore: number;
  /** Radius of the wider bore behind it, which passes the flange and the wires. */
  readonly rearBore: number;
  /** How far from the front the wider bore narrows by a 45° cone, on whose edge the flange comes to rest; null: one bore. */
  readonly coneFrom: number | null;
  /** The emitter inside: body, and flange at its rear. */
  readonly body: { readonly radius: number; readonly length: number };
  readonly flange: { readonly radius: number; readonly length: number } | null;
}

export interface Carrier {
  readonly diameter: number;
  readonly length: number;
  readonly sleeve: SleeveLayout | null;
}

/** Shortest body that seat and collar hold by itself, with the clamp's screw on it. */
export const LEAST_BODY = 9;
/** Behind a sleeved emitter, for the joint between its leads and the wires. */
const JOINT = 2;

export function carrierOf(spec: Spec): Carrier {
  const { diameter, length, flangeDiameter, flangeLength } = spec.emitters.part;
  const flanged = flangeDiameter !== undefined && flangeDiameter.value > diameter.value;
  if (length.value >= LEAST_BODY && !flanged) return { diameter: diameter.value, length: length.value, sleeve: null };
  const bore = diameter.value / 2 + side(spec, 'press');
  const flange = flanged ? { radius: flangeDiameter.value / 2, length: flangeLength?.value ?? FLANGE } : null;
  const rearBore = flange === null ? bore : flange.radius + side(spec, 'free');
  return {
    diameter: upTenth(2 * (rearBore + CLOSE_WALL)),
    length: upTenth(Math.max(clampSeat(spec) + COLLAR.length + COLLAR_AIR, length.value + JOINT)),
    sleeve: {
      bore,
      rearBore,
      coneFrom: flange === null ? null : length.value - flange.length + (rearBore - flange.radius),
      body: { radius: diameter.value / 2, length: length.value },
      flange,
    },
  };
}

/** A flange's thickness where the part doesn't say (common practice: 1 on LEDs of 3 and 5 mm). */
const FLANGE = 1;

/** Shortest seat: the clamp's nut between two thin walls. */
export const clampSeat = (spec: Spec): number =>
  upTenth(threads[spec.screws.clamp].nutFlats.value + 2 * side(spec, 'slide') + 2 * THIN_WALL);

/** @returns what the kit tells of the sleeve; nothing where there is none */
export function sleeveSolved({ emitters: { part } }: Spec, { diameter, length, sleeve }: Carrier): Solved[] {
  if (sleeve === null) return [];
  const short = part.length.value < LEAST_BODY;
  return [
    {
      path: 'emitters.sleeve',
      value: diameter,
      why: `a printed sleeve Ø${diameter} × ${length} with its collar: ${
        short
          ? `a body ${part.length.value} mm long is too short for seat and collar, which hold ${LEAST_BODY} and more`
          : 'a body with a flange does not lie in the seat’s V'
      }`,
    },
  ];
}
