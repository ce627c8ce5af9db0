/** The room that bought parts take in the tilt mount. mm. */
import { pins, threads } from '../components/index.js';
import type { Spec } from '../spec/spec.js';
import { carrierOf, clampSeat } from './carrier.js';
import { side, upTenth } from './fits.js';
import { CLOSE_WALL, COLLAR, COLLAR_AIR } from './mount-sizes.js';

/** Width that the parts in the mount need: the barrel's seat, the nuts, the pin. */
export function leastMountWidth(spec: Spec): number {
  const seat = 2 * (carrierOf(spec).diameter / 2 + 0.45 + CLOSE_WALL);
  const { adjust, clamp, fix } = spec.screws;
  const nut = Math.max(...[adjust, clamp, fix].map((size) => threads[size].nutFlats.value));
  const pocket = 2 * (nut / Math.sqrt(3) + side(spec, 'slide') + CLOSE_WALL);
  return upTenth(Math.max(seat, pocket, Math.min(...pins['3'].lengths.value) + CLOSE_WALL + 0.3));
}

/** Outer radius of the collar for a barrel. */
export const collarRadius = (spec: Spec): number => carrierOf(spec).diameter / 2 + COLLAR.wall + COLLAR.notchDepth;

/** As many notches as leave two printed lines between neighbours at their ground, ten at most. */
export function collarNotches(spec: Spec): number {
  const ground = collarRadius(spec) - COLLAR.notchDepth;
  const between = COLLAR.notchWidth + 2 * spec.printer.machine.lineWidth.value;
  return Math.min(COLLAR.notches, Math.floor((2 * Math.PI * ground) / between));
}

/**
 * Where the barrel lies: the collar and a little air take its rear, the seat the rest; a seat is never shorter than its
 * clamp's nut needs, so a short barrel stands back in it.
 */
export function barrelPlace(spec: Spec): { readonly front: number; readonly rear: number; readonly seat: number } {
  const { length } = carrierOf(spec);
  const held = length - COLLAR.length - COLLAR_AIR;
  const seat = Math.max(held, clampSeat(spec));
  return { front: held - seat, rear: held - seat - length, seat };
}

/** How much of the mount's length stands behind the leaf's turn: fixing nut, pin, adjusting nut. */
export function rearRoom(spec: Spec): { readonly toFix: number; readonly toScrew: number; readonly toEnd: number } {
  const fix = threads[spec.screws.fix];
  const adjust = threads[spec.screws.adjust];
  const slide = side(spec, 'slide');
  const toFix = CLOSE_WALL + fix.nutFlats.value / 2 + slide;
  const pinRadius = pins['3'].diameter.value / 2;
  const toScrew = toFix + fix.clearance.value / 2 + 0.95 + pinRadius;
  return { toFix, toScrew, toEnd: toScrew + Math.max(adjust.nutFlats.value / 2 + slide, pinRadius) + CLOSE_WALL };
}

/** Air between the wires and the adjusting screw's head, at least: with coarse printers their gap's tolerance, and a little. */
const HEAD_AIR = 0.25;

/** How far to the side the wires pass the adjusting screw's head, which comes down beside them. */
export const wireAside = (spec: Spec): number =>
  threads[spec.screws.adjust].capHead.value / 2 +
  Math.max(HEAD_AIR, spec.printer.machine.gapTolerance.value + 0.05) +
  spec.emitters.part.wireDiameter.value / 2;
