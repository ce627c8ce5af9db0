/**
 * Contact of a round tip with a flat face in the plane of bending: gap and slide, with their derivatives. One of the two rides
 * on the moving arm, the other on the base; the screw moves whichever it carries along its axis.
 *
 * With C the ball's centre, P a point of the face, n the face's normal toward the ball, t along the face (n turned by 90°
 * counter-clockwise): gap g = (C − P)·n − ρ, place along the face ξ = (C − P)·t, slide σ = ξ + ρ (turn of the face − turn of the
 * ball): a ball that rolls does not slide.
 */

import { requireNotNegative } from '../../positive.js';
import type { Point } from '../path.js';

export interface Contact {
  /** What carries the flat face; the other carries the ball. */
  readonly flatOn: 'arm' | 'base';
  /** What the screw sits in: it moves what is on its own side. */
  readonly screwIn: 'arm' | 'base';
  /** Centre of the round tip or pin and a point of the flat face, both at rest with the screw not advanced [mm]. */
  readonly centre: Point;
  readonly face: Point;
  /** Unit vectors at rest: the face's normal, toward the ball, and the way the screw advances. */
  readonly normal: Point;
  readonly axis: Point;
  /** ρ [mm], 0 or more. */
  readonly radius: number;
}

/**
 * Screw whose tip touches the other side at one point of its axis.
 *
 * @param options - screwIn: what the screw sits in; tip: its own shape, the other side has the other; at: where they touch at rest
 * [mm]; axis: the way the screw advances, heading counter-clockwise from +x [rad]; radius: of whichever is round [mm]
 * @throws {RangeError} unless radius is finite and ≥ 0
 */
export function screwContact(options: {
  readonly screwIn: 'arm' | 'base';
  readonly tip: 'ball' | 'flat';
  readonly at: Point;
  readonly axis: number;
  readonly radius: number;
}): Contact {
  const { screwIn, tip, at, radius } = options;
  requireNotNegative('screwContact', { radius });
  const axis: Point = [Math.cos(options.axis), Math.sin(options.axis)];
  const way = tip === 'flat' ? 1 : -1;
  const other = screwIn === 'arm' ? 'base' : 'arm';
  return {
    screwIn,
    flatOn: tip === 'flat' ? screwIn : other,
    axis,
    normal: [way * axis[0], way * axis[1]],
    face: at,
    centre: [at[0] + way * radius * axis[0], at[1] + way * radius * axis[1]],
    radius,
  };
}

/**
 * Screw in the arm whose flat tip bears on a round pin that lies in the base, not always right under the screw's axis.
 *
 * @param options - pin: its centre, radius: its own [mm]; through: a point of the screw's axis at rest; axis: the way the screw
 * advances at rest, heading counter-clockwise from +x [rad]
 * @returns contact that just touches at rest with the screw not advanced
 * @throws {RangeError} unless radius is finite and ≥ 0
 */
export function pinContact(options: {
  readonly pin: Point;
  readonly radius: number;
  readonly through: Point;
  readonly axis: number;
}): Contact {
  const { pin, radius, through } = options;
  const [x, y] = [Math.cos(options.axis), Math.sin(options.axis)];
  const reach = (pin[0] - through[0]) * x + (pin[1] - through[1]) * y - radius;
  const at: Point = [through[0] + reach * x, through[1] + reach * y];
  return { ...screwContact({ screwIn: 'arm', tip: 'flat', at, axis: options.axis, radius }), centre: pin };
}

/** Contact seen from the node that carries the arm. */
export interface Touch {
  readonly contact: Contact;
  /** The node at rest, and from it to the arm's own point: of the face, or the ball's centre [mm]. */
  readonly node: Point;
  readonly reach: Point;
}

/** @param node - of the frame, at rest [mm] */
export const newTouch = (contact: Contact, node: Point): Touch => {
  const [x, y] = contact.flatOn === 'arm' ? contact.face : contact.centre;
  return { contact, node, reach: [x - node[0], y - node[1]] };
};

/** Places in an answer: the gap's figures from `GAP` on, the slide's from `SLIDE` on, ξ at `PLACE`. */
export const GAP = 0;
export const SLIDE = 9;
export const PLACE = 18;
export const CONTACT_ANSWER = 19;

/** Of either: value; derivatives by the node's x, y and turn and by the advance; second ones, where they are not zero. */
export const VALUE = 0;
export const BY_X = 1;
export const BY_Y = 2;
export const BY_TURN = 3;
export const BY_ADVANCE = 4;
export const BY_X_TURN = 5;
export const BY_Y_TURN = 6;
export const BY_TURN_TURN = 7;
export const BY_ADVANCE_TURN = 8;

/**
 * Writes gap, slide and their derivatives into `answer`.
 *
 * @param at - the node's displacement in x and y [mm], its turn since rest, counter-clockwise [rad], the advance [mm]
 * Source: plane geometry; relative motion of bodies in contact as in Johnson, Contact Mechanics (1985), ch. 1.
 */
export function touchAt(touch: Touch, at: Float64Array, answer: Float64Array): void {
  if (touch.contact.flatOn === 'arm') faceRides(touch, at, answer);
  else ballRides(touch, at, answer);
}

function faceRides({ contact, reach, node }: Touch, at: Float64Array, answer: Float64Array): void {
  const { screwIn, centre, normal, axis, radius } = contact;
  const advance = at[3]!;
  const c = Math.cos(at[2]!);
  const s = Math.sin(at[2]!);
  const inArm = screwIn === 'arm';
  const shift = inArm ? 0 : advance;
  const nx = c * normal[0] - s * normal[1];
  const ny = s * normal[0] + c * normal[1];
  // From the node to the ball's centre; the same to the face's point, in the arm's own directions at rest.
  const dx = centre[0] + shift * axis[0] - node[0] - at[0]!;
  const dy = centre[1] + shift * axis[1] - node[1] - at[1]!;
  const px = reach[0] + (advance - shift) * axis[0];
  const py = reach[1] + (advance - shift) * axis[1];
  const off = dx * nx + dy * ny;
  const along = dy * nx - dx * ny;
  const place = along + px * normal[1] - py * normal[0];

  answer[GAP + VALUE] = off - px * normal[0] - py * normal[1] - radius;
  answer[GAP + BY_X] = -nx;
  answer[GAP + BY_Y] = -ny;
  answer[GAP + BY_TURN] = along;
  answer[GAP + BY_ADVANCE] = inArm ? -axis[0] * normal[0] - axis[1] * normal[1] : axis[0] * nx + axis[1] * ny;
  answer[GAP + BY_X_TURN] = ny;
  answer[GAP + BY_Y_TURN] = -nx;
  answer[GAP + BY_TURN_TURN] = -off;
  answer[GAP + BY_ADVANCE_TURN] = inArm ? 0 : axis[1] * nx - axis[0] * ny;

  answer[SLIDE + VALUE] = place + radius * at[2]!;
  answer[SLIDE + BY_X] = ny;
  answer[SLIDE + BY_Y] = -nx;
  answer[SLIDE + BY_TURN] = radius - off;
  answer[SLIDE + BY_ADVANCE] = inArm ? axis[0] * normal[1] - axis[1] * normal[0] : axis[1] * nx - axis[0] * ny;
  answer[SLIDE + BY_X_TURN] = nx;
  answer[SLIDE + BY_Y_TURN] = ny;
  answer[SLIDE + BY_TURN_TURN] = -along;
  answer[SLIDE + BY_ADVANCE_TURN] = inArm ? 0 : -axis[0] * nx - axis[1] * ny;
  answer[PLACE] = place;
}

function ballRides({ contact, reach, node }: Touch, at: Float64Array, answer: Float64Array): void {
  const { screwIn, face, normal, axis, radius } = contact;
  const [nx, ny] = normal;
  const advance = at[3]!;
  const c = Math.cos(at[2]!);
  const s = Math.sin(at[2]!);
  const inArm = screwIn === 'arm';
  const shift = inArm ? 0 : advance;
  // From the node to the ball's centre, and the screw's axis, as they stand.
  const px = reach[0] + (advance - shift) * axis[0];
  const py = reach[1] + (advance - shift) * axis[1];
  const wx = c * px - s * py;
  const wy = s * px + c * py;
  const ax = inArm ? c * axis[0] - s * axis[1] : -axis[0];
  const ay = inArm ? s * axis[0] + c * axis[1] : -axis[1];
  const dx = node[0] + at[0]! + wx - face[0] - shift * axis[0];
  const dy = node[1] + at[1]! + wy - face[1] - shift * axis[1];
  const place = dy * nx - dx * ny;

  answer[GAP + VALUE] = dx * nx + dy * ny - radius;
  answer[GAP + BY_X] = nx;
  answer[GAP + BY_Y] = ny;
  answer[GAP + BY_TURN] = wx * ny - wy * nx;
  answer[GAP + BY_ADVANCE] = ax * nx + ay * ny;
  answer[GAP + BY_X_TURN] = 0;
  answer[GAP + BY_Y_TURN] = 0;
  answer[GAP + BY_TURN_TURN] = -wx * nx - wy * ny;
  answer[GAP + BY_ADVANCE_TURN] = inArm ? ax * ny - ay * nx : 0;

  answer[SLIDE + VALUE] = place - radius * at[2]!;
  answer[SLIDE + BY_X] = -ny;
  answer[SLIDE + BY_Y] = nx;
  answer[SLIDE + BY_TURN] = wx * nx + wy * ny - radius;
  answer[SLIDE + BY_ADVANCE] = ay * nx - ax * ny;
  answer[SLIDE + BY_X_TURN] = 0;
  answer[SLIDE + BY_Y_TURN] = 0;
  answer[SLIDE + BY_TURN_TURN] = wx * ny - wy * nx;
  answer[SLIDE + BY_ADVANCE_TURN] = inArm ? ax * nx + ay * ny : 0;
  answer[PLACE] = place;
}
