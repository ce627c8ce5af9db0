/**
 * The receiver socket in numbers. Coordinates [mm]: u along the beam, 0 at the socket's front, positive toward the field;
 * w up from the rail's floor; the body stands at w = `bottom` on the rail's plinth.
 *
 * From front to rear: a foot with the slot by which it slides, the face that carries the target, the aperture tube, the
 * pocket (open above: the legs leave upward), and the stop, over which the legs are bent back.
 */
import { threads } from '../components/index.js';
import type { Spec } from '../spec/spec.js';
import { side, stocked } from './fits.js';

export interface SocketLayout {
  readonly width: number;
  readonly length: number;
  /** Slide either way from the middle. */
  readonly slide: number;
  readonly bottom: number;
  readonly axis: number;
  readonly foot: { readonly length: number; readonly top: number; readonly screwAt: number };
  readonly face: number;
  readonly tube: { readonly radius: number; readonly end: number };
  /** Pocket of the body, and the wider channel above its top in which the legs leave. */
  readonly pocket: {
    readonly width: number;
    readonly rear: number;
    readonly floor: number;
    readonly channel: number;
    readonly channelFrom: number;
  };
  readonly stop: { readonly top: number };
  /** Top of the body, where the lid lies; and of the lid. */
  readonly top: number;
  readonly lid: { readonly thickness: number; readonly plugBottom: number };
  readonly groove: { readonly at: number; readonly width: number; readonly depth: number };
  readonly legs: { readonly top: number; readonly bent: number; readonly out: number };
  readonly screwLength: number;
  readonly engaged: number;
}

const WALL = 1.3;
const STOP = 2;
const FOOT = 10;
const FOOT_HEIGHT = 5;
/** Height of the plinth the sockets stand on: room for the screw's formed thread. */
const PLINTH = 8;
const LEG_RISE = 1.5;
/** Between the stop's top and the legs bent over it; stop above the tube's roof. */
const LEG_OVER = 0.5;
const STOP_OVER = 0.2;
const GROOVE = { width: 3, depth: 1.6 } as const;
const SLIDE_MOST = 1.5;
const SLIDE_LEAST = 1;
/** Between neighbouring sockets when both are slid toward each other. */
const APART = 0.4;

const slotWall = 1.2;
/** Plastic between the groove in a socket's underside and the pocket over it. */
export const GROOVE_ROOF = 1;
/** Corners of the body rest against the tube's rim by this. */
export const TUBE_HELD = 0.2;
/** Roof of the tube over its middle, in radii, and what is left above it. */
export const TUBE_ROOF = 1.25;
const OVER_TUBE = 1.2;

/** Between the cheeks: body or legs, whichever is wider, with play. */
function channelWidth(spec: Spec): number {
  const { width, legs, legPitch, legWidth } = spec.receivers.part;
  const span = (legs.value - 1) * legPitch.value + legWidth.value;
  return Math.max(width.value, span) + 2 * side(spec, 'slide');
}

/** Width of a socket with this slide. */
function socketWidth(spec: Spec, slide: number): number {
  const body = Math.max(channelWidth(spec), spec.receivers.part.apertureDiameter.value) + 2 * WALL;
  return Math.max(body, threads[spec.screws.fix].clearance.value + 2 * slide + 2 * slotWall);
}

/** Least distance between beams that the sockets allow. */
export const leastSocketPitch = (spec: Spec): number => socketWidth(spec, SLIDE_LEAST) + 2 * SLIDE_LEAST + APART;

export function laySocket(
  spec: Spec,
  { axis, pitch }: { readonly axis: number; readonly pitch: number },
): SocketLayout {
  const receiver = spec.receivers.part;
  const screw = threads[spec.screws.fix];
  let slide = SLIDE_MOST;
  while (slide > SLIDE_LEAST && socketWidth(spec, slide) + 2 * slide + APART > pitch + 1e-9) slide -= 0.1;
  slide = Math.round(slide * 10) / 10;
  const play = side(spec, 'slide');
  const tubeEnd = -FOOT - receiver.apertureDepth.value;
  const pocketRear = tubeEnd - receiver.depth.value - 2 * play;
  const length = -(pocketRear - STOP);
  const floor = axis - receiver.sensorFromTop.value;
  const bodyTop = floor + receiver.height.value;
  // The stop ends what passes the tube, whose roof is its highest point; the legs are bent over it.
  const stopLeast = axis + TUBE_ROOF * (receiver.apertureDiameter.value / 2) + STOP_OVER;
  const legTop = Math.max(bodyTop + LEG_RISE, stopLeast + receiver.legWidth.value + LEG_OVER);
  const screwLength = stocked(screw.capLengths.value, FOOT_HEIGHT + 1.5 * screw.diameter.value) ?? 0;
  return {
    width: socketWidth(spec, slide),
    length,
    slide,
    bottom: PLINTH,
    axis,
    foot: { length: FOOT, top: PLINTH + FOOT_HEIGHT, screwAt: -FOOT / 2 + 0.5 },
    face: -FOOT,
    tube: { radius: receiver.apertureDiameter.value / 2, end: tubeEnd },
    pocket: {
      width: receiver.width.value + 2 * play,
      rear: pocketRear,
      floor,
      channel: channelWidth(spec),
      channelFrom: bodyTop - 0.05,
    },
    stop: { top: legTop - receiver.legWidth.value - LEG_OVER },
    top: Math.max(legTop + 1.8, axis + TUBE_ROOF * (receiver.apertureDiameter.value / 2) + OVER_TUBE),
    lid: { thickness: 1.6, plugBottom: legTop + 0.2 },
    groove: { at: pocketRear + 1.5, width: GROOVE.width + 2 * play, depth: GROOVE.depth + 0.2 },
    legs: { top: legTop, bent: receiver.legWidth.value, out: -length - 2 },
    screwLength,
    engaged: screwLength - FOOT_HEIGHT,
  };
}

/** The ridge on the rail that keeps a socket square while it slides. */
export const SOCKET_RIDGE = GROOVE;
