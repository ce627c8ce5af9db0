/** Openings in the covers, over every screw that is turned in alignment and over the collar. */
import { hexKeyFor, threads } from '../components/index.js';
import type { Outlines, Vec2 } from '../solid/mesh.js';
import { rectangle, slot } from '../solid/outlines.js';
import type { Spec } from '../spec/spec.js';
import type { SectionLayout } from './frame.js';
import { type MountLayout, poseMotion } from './mount.js';
import { moved } from './plane.js';
import type { SocketLayout } from './socket.js';

/** Around a key, each side. */
const KEY_PLAY = 0.6;
/** Turn of the key from one notch to the next, each side of upright. */
const SWING_PLAY = 1.5;
/** Around the key in the collar's slot, each side: it only leans there. */
const ROLL_PLAY = 0.35;

export interface Opening {
  readonly name: 'clamp' | 'roll' | 'adjust' | 'slide';
  /** Outline with x along the rail from the beam, y outward from the mount's or socket's front. */
  readonly outline: Outlines;
}

/** Slots over a mount, as long as the tilt moves what is below them. */
export interface OpeningOptions {
  readonly spec: Spec;
  readonly mount: MountLayout;
  readonly socket: SocketLayout;
  readonly section: SectionLayout;
}

export function mountOpenings({ spec, mount, section }: Omit<OpeningOptions, 'socket'>): readonly Opening[] {
  const clampKey = key(threads[spec.screws.clamp].setKey.value) / 2 + KEY_PLAY;
  const adjustKey = key(threads[spec.screws.adjust].capKey.value) / 2 + KEY_PLAY;
  const top = section.height + section.cover - section.floor;
  // Where the axis of a screw of the arm leaves the cover at both ends of the travel.
  const reach = (u: number, w: number): [number, number] => {
    const at = (['lowest', 'level', 'highest'] as const).map((pose) => {
      const motion = poseMotion(mount.leaf, pose);
      const [pu, pw] = moved(motion, [u, w], mount.origin);
      return -(pu - Math.tan(motion.angle) * (top - pw));
    });
    return [Math.min(...at), Math.max(...at)];
  };
  const swing = Math.PI / mount.collar.notches + (SWING_PLAY * Math.PI) / 180;
  const rollHalf = Math.tan(swing) * (top - mount.axis) + clampKey - KEY_PLAY + ROLL_PLAY;
  const middle = mount.collar.front - mount.collar.length / 2;
  const slotFor = (name: Opening['name'], half: number, [from, to]: [number, number]): Window => ({
    name,
    half,
    from: from - half,
    to: to + half,
    outline: slot([0, from], [0, to], half),
  });
  const [r0, r1] = reach(middle, mount.axis);
  const [from, to] = [r0 - clampKey, r1 + clampKey];
  const windows: readonly Window[] = [
    slotFor('clamp', clampKey, reach(mount.clamp.at, mount.seat.top)),
    { name: 'roll', half: rollHalf, from, to, outline: rectangle(-rollHalf, from, rollHalf, to) },
    slotFor('adjust', adjustKey, reach(mount.adjust.at, mount.arm.neckTop)),
  ];
  return joined(windows, 2 * spec.printer.machine.lineWidth.value);
}

interface Window extends Opening {
  /** Half its width along the rail, and its extent outward. */
  readonly half: number;
  readonly from: number;
  readonly to: number;
}

/** Windows with less than a web between them become one: at large tilts they run into each other. */
function joined(windows: readonly Window[], web: number): readonly Window[] {
  const out: Window[] = [];
  for (const one of windows) {
    const last = out.at(-1);
    if (last === undefined || one.from - last.to >= web) {
      out.push(one);
      continue;
    }
    const half = Math.max(last.half, one.half);
    const [from, to] = [Math.min(last.from, one.from), Math.max(last.to, one.to)];
    out[out.length - 1] = { name: last.name, half, from, to, outline: rectangle(-half, from, half, to) };
  }
  return out;
}

/** Slot over a socket's screw, as long as the slide. */
export function socketOpenings({ spec, socket }: Pick<OpeningOptions, 'spec' | 'socket'>): Opening[] {
  const radius = key(threads[spec.screws.fix].capKey.value) / 2 + KEY_PLAY;
  return [
    {
      name: 'slide',
      outline: slot([-socket.slide, -socket.foot.screwAt], [socket.slide, -socket.foot.screwAt], radius),
    },
  ];
}

/** Rim of a plug's plate around its openings, and the plate's thickness. */
export const PLUG = { plate: 1.2, rim: 1 } as const;

/** Between the plugs of neighbouring lines. */
export const PLUG_APART = 0.4;

/** Half of a plug's width along the rail: a rim where the pitch leaves room. */
export function plugHalf(options: OpeningOptions & { readonly pitch: number }): number {
  const widest = openingsHalf(options);
  return Math.max(widest, Math.min(widest + PLUG.rim, (options.pitch - PLUG_APART) / 2));
}

/** How far the widest opening reaches along the rail to either side of its beam. */
export function openingsHalf(options: OpeningOptions): number {
  const all = [...mountOpenings(options), ...socketOpenings(options)].flatMap(({ outline }) => outline.flat());
  return Math.max(...all.map(([x]: Vec2) => Math.abs(x)));
}

/** Across corners of the key for a socket of this size. */
const key = (flats: number): number => hexKeyFor(flats).corners.value;
