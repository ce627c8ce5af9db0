/** What lies in a mount's seat: the emitter's own body, or a printed sleeve around one that is too short, or has a flange. mm. */
import { threads } from '../components/index.js';
import type { Solved, Spec } from '../spec/spec.js';
import { deg, type Rad, rad } from '../units.js';
import { side, upTenth } from './fits.js';
import { CLOSE_WALL, COLLAR, COLLAR_AIR, THIN_WALL } from './mount-sizes.js';

/** A figure turned about the seat's axis, its bore about the beam's; lengths along the beam from the emitter's front. */
export interface SleeveLayout {
  /** How far the bore leans to the side of the collar's mark, which is up in the aligned kit: about the emitter's front, on the axis. */
  readonly lean: Rad;
  /** From the sleeve's foremost point to the emitter's front: the sleeve's face is square to the beam. */
  readonly setBack: number;
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
  const lean = rad(spec.aim.wedgeDeg ?? 0);
  const holdsItself = length.value >= LEAST_BODY && !flanged;
  if (holdsItself && lean === 0) return { diameter: diameter.value, length: length.value, sleeve: null };
  const bore = diameter.value / 2 + side(spec, 'press');
  const flange = flanged ? { radius: flangeDiameter.value / 2, length: flangeLength?.value ?? FLANGE } : null;
  const rearBore = flange === null ? bore : flange.radius + side(spec, 'free');
  // What has its wires on it already ends inside the collar's rear face, with all of its rim.
  const behind = holdsItself ? (diameter.value / 2) * Math.sin(lean) : JOINT;
  const toFront = upTenth(
    Math.max(clampSeat(spec) + COLLAR.length + COLLAR_AIR, length.value * Math.cos(lean) + behind),
  );
  // The bore runs out of the middle toward the rear: its wall is thinnest where the collar begins, which strengthens what is behind.
  const aside = (toFront - COLLAR.length) * Math.tan(lean);
  const outer = upTenth(2 * (rearBore / Math.cos(lean) + aside + CLOSE_WALL));
  const setBack = (outer / 2) * Math.tan(lean);
  return {
    diameter: outer,
    length: toFront + setBack,
    sleeve: {
      lean,
      setBack,
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
  const leans = sleeve.lean > 0 ? `bored askew by ${Number(deg(sleeve.lean).toFixed(2))}°, on purpose` : null;
  const holds = short
    ? `a body ${part.length.value} mm long is too short for seat and collar, which hold ${LEAST_BODY} and more`
    : sleeve.flange !== null
      ? 'a body with a flange does not lie in the seat’s V'
      : null;
  return [
    {
      path: 'emitters.sleeve',
      value: diameter,
      why: `a printed sleeve Ø${diameter} × ${upTenth(length)} with its collar: ${[holds, leans].filter((why) => why !== null).join('; ')}`,
    },
  ];
}
