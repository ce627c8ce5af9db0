/** The tube before a receiver when the preset leaves it open: from the light around, the detector and how true things stand. mm. */
import type { Ambient } from '../ambients/ambient.js';
import type { Receiver } from '../components/types.js';
import { ambientCurrent, levels, type Pin } from '../optics/signal.js';
import { diffuseRejection } from '../optics/tube.js';
import { rad } from '../units.js';
import type { Solved } from './spec.js';

/** How slantwise a beam may come to a socket: its own yaw, and the receiver's slide over a short way. Source: common practice. */
const SLANT = rad(1.5);
/** How far a printed tube may stand beside its detector. Source: common practice. */
const BESIDE = 0.25;
/** A smaller hole comes out rough. Source: common practice (holes under 2 mm: drill). */
const LEAST = 2;
/** Light that comes steeper than this is kept off, as far as the tube need not be longer than `LONGEST`. Source: common practice. */
const STEEP = rad(10);
/** Of the receiver's body that the tube's rim holds, both sides together. */
const RIM = 0.5;
const SHORTEST = 6;
const LONGEST = 14;
/** Deeper still where the light around asks for it. */
const DEEPEST = 24;
/** Share of what keeps a pin dark that light from around may take. Source: common practice. */
export const AMBIENT_SHARE = 1 / 3;

export interface ApertureAsk {
  readonly receiver: Receiver;
  readonly ambient: Ambient;
  readonly pin: Pin;
}

export interface ApertureAnswer {
  readonly diameter: number;
  readonly depth: number;
  readonly solved: readonly Solved[];
}

const halves = (value: number) => Math.ceil(2 * value - 1e-9) / 2;

/** @returns diameter and depth: the given ones where the part has them */
export function settleAperture({ receiver, ambient, pin }: ApertureAsk): ApertureAnswer {
  const detector = 2 * receiver.detectorRadius.value;
  const { width, height } = receiver;
  // The body rests against the tube's rim.
  const held = Math.max(0.5, Math.floor(2 * (Math.min(width.value, height.value) - RIM)) / 2);
  const wide = (depth: number) =>
    Math.min(held, Math.max(LEAST, halves(detector + 2 * (depth * Math.tan(SLANT) + BESIDE))));
  const given = { diameter: receiver.apertureDiameter?.value, depth: receiver.apertureDepth?.value };
  const opening = (depth: number) => given.diameter ?? wide(depth);
  const depth = given.depth ?? deepEnough();
  const diameter = opening(depth);
  const solved: Solved[] = [];
  if (given.diameter === undefined)
    solved.push({
      path: 'receivers.part.aperture_diameter',
      value: diameter,
      why: `the detector’s ${detector} mm are seen whole by a beam up to 1.5° aslant and ${BESIDE} mm beside, and the hole still prints`,
    });
  if (given.depth === undefined)
    solved.push({
      path: 'receivers.part.aperture_depth',
      value: depth,
      why:
        depth > LONGEST
          ? `as deep as ${ambient.title} asks for: diffuse light is cut to 1/${Math.round(rejection(depth))}`
          : `keeps off light from 10° on, or as much of it as ${LONGEST} mm do; diffuse light is cut to 1/${Math.round(rejection(depth))}`,
    });
  return { diameter, depth, solved };

  function rejection(at: number): number {
    const aperture = opening(at);
    return diffuseRejection({ aperture, detector: Math.min(detector, aperture), depth: at });
  }

  function deepEnough(): number {
    let at = SHORTEST;
    while (at < LONGEST && Math.atan((opening(at) + Math.min(detector, opening(at))) / (2 * at)) > STEEP) at += 1;
    const most = AMBIENT_SHARE * levels(pin).dark;
    const part = {
      radius: receiver.detectorRadius.value,
      sensitivity: receiver.sensitivity.value,
      filterFromNm: receiver.filterFromNm.value,
    };
    const light = { direct: 0, diffuse: ambient.diffuseWm2.value };
    while (at < DEEPEST && ambientCurrent(part, light, rejection(at)).diffuse > most) at += 1;
    return at;
  }
}
