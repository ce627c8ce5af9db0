/** What a mount is asked for before its leaf is chosen: its width, and the tilt either way. */
import { type Mistake, PresetError } from '../errors.js';
import { bowSlope } from '../mechanics/beam.js';
import { tiltFor } from '../optics/chance.js';
import { tiltForLeaned } from '../optics/wedge.js';
import { usableBed } from '../printers/usable-bed.js';
import type { Solved, Spec } from '../spec/spec.js';
import { deg, type Rad } from '../units.js';
import { carrierOf, sleeveSolved } from './carrier.js';
import { downTenth, side, upTenth } from './fits.js';
import { leastPitchOf } from './grid.js';
import { collarRadius, leastMountWidth } from './mount-room.js';
import { leastSocketPitch } from './socket.js';

/** Width of a mount where the pitch leaves room: stiffer in yaw and easier to hold than the least. */
const MOUNT_WIDTH = 12;
/** Rib between two mounts, at least. */
const RIB = 1.2;
/** Thinnest rib worth printing, beside a seam where neighbours can't share one: two lines [mm]. */
export const RIB_LEAST = 0.9;
/** Share of the channels whose yaw can be rolled out that the tilt must be enough for. Source: common practice. */
const TILT_ENOUGH = 0.99;

/** The wires' bundle stands back from the barrel's rim, where the collar sits, all round [mm]. */
const WIRE_INSIDE = 0.4;

/** Share of the tilt either way that what is aligned away may take, in all; beside warp there is weight and the screw's force. */
export const ALIGNED_SHARE = 0.5;
const WARP_ROOM = 1.15;

export interface MountAsk {
  readonly width: number;
  readonly tiltDeg: number;
  readonly solved: readonly Solved[];
}

/**
 * @param rail - length of the longest rail [mm], as far as it is known
 * @throws {PresetError} when barrel, nuts or neighbours leave no room
 */
export function askMount(spec: Spec, rail: number): MountAsk {
  const leastPitch = leastPitchOf(spec);
  // A rail in pieces is cut midway between two mounts: each side needs a rib of its own.
  const inPieces = rail > longestPiece(spec);
  const solved: Solved[] = [];
  const fail = (mistakes: readonly Mistake[]): never => {
    throw new PresetError(spec.name, mistakes);
  };
  const { wireDiameter, diameter } = spec.emitters.part;
  const carrier = carrierOf(spec);
  solved.push(...sleeveSolved(spec, carrier));
  const wireMost = downTenth((carrier.sleeve ? 2 * carrier.sleeve.rearBore : diameter.value) - 2 * WIRE_INSIDE);
  if (wireDiameter.value > wireMost + 1e-9)
    fail([
      {
        code: 'preset/wires-too-thick',
        path: 'emitters.part.wire_diameter',
        message: `wires ${wireDiameter.value} mm thick behind a body of Ø${diameter.value} mm leave the collar on it no rim to clear them`,
        hint: `at most ${wireMost} mm`,
      },
    ]);
  const widthOwn = leastMountWidth(spec);
  if (spec.leaf.width !== undefined && spec.leaf.width < widthOwn - 1e-9)
    fail([
      {
        code: 'preset/mount-too-narrow',
        path: 'leaf.width',
        message: `a mount ${spec.leaf.width} mm wide has no room for barrel, nuts and pin`,
        hint: `at least ${widthOwn} mm`,
      },
    ]);
  const widthLeast = Math.max(spec.leaf.width ?? 0, widthOwn);
  const between = 2 * side(spec, 'snug') + (inPieces ? 2 * RIB_LEAST : RIB);
  const collars = 2 * collarRadius(spec) + 0.4;
  const least = upTenth(Math.max(widthLeast + between, collars, leastSocketPitch(spec)));
  if (leastPitch < least - 1e-9)
    fail([
      {
        code: 'preset/pitch-too-small',
        path: 'grid.pitch',
        message: `beams ${Number(leastPitch.toFixed(3))} mm apart leave no room for mounts and sockets side by side`,
        hint: `the least pitch for this emitter and receiver${inPieces ? ', with rails in pieces,' : ''} is ${least} mm`,
      },
    ]);
  const width = spec.leaf.width ?? Math.max(widthOwn, Math.min(MOUNT_WIDTH, downTenth(leastPitch - between)));
  if (spec.leaf.width === undefined)
    solved.push({
      path: 'leaf.width',
      value: width,
      why: `the mount's width: ${MOUNT_WIDTH} mm where the pitch allows it, never less than the ${widthLeast} mm that barrel, nuts and pin need`,
    });

  const { tiltDeg, why } = tiltOf(spec, Math.min(rail, longestPiece(spec)));
  const wedgeDeg = spec.aim.wedgeDeg ?? 0;
  if (wedgeDeg > tiltDeg + 1e-9)
    fail([
      {
        code: 'preset/lean-beyond-tilt',
        path: 'aim.wedge',
        message: `a barrel leaned by ${wedgeDeg}° on purpose is brought level by tilting its mount as far, which reaches ±${tiltDeg}°`,
        hint: `at most ${tiltDeg}°, or an aim.tilt of ${wedgeDeg}° and more`,
      },
    ]);
  if (spec.aim.tiltDeg === undefined)
    solved.push({ path: 'aim.tilt', value: tiltDeg, why: `either way from level: ${why}` });
  return { width, tiltDeg, solved };
}

/** In half degrees: what the barrels ask for, or, where they are straight, what the longest piece of rail does. */
function tiltOf(spec: Spec, piece: number): { readonly tiltDeg: number; readonly why: string } {
  const sigma = spec.emitters.part.boresightSigmaDeg.value;
  const warp = deg(bowSlope(spec.printer.machine.warpPer100.value, 100, piece) as Rad);
  const halves = (value: number) => Math.ceil(2 * value - 1e-9) / 2;
  const sm = spec.aim.mountErrorDeg;
  const wedge = spec.aim.wedgeDeg ?? 0;
  const barrels = halves(
    wedge === 0
      ? tiltFor(TILT_ENOUGH, { se: sigma, sm })
      : Math.max(wedge, tiltForLeaned(TILT_ENOUGH, { sigma, wedge, sm })),
  );
  const rails = halves((WARP_ROOM * warp) / ALIGNED_SHARE);
  const own = `enough for 99 of 100 barrels whose yaw can be rolled out, with boresight errors of σ ${sigma}°${wedge > 0 ? ` and a lean of ${wedge}°` : ''} in mounts that stand true to σ ${sm}°`;
  if (spec.aim.tiltDeg !== undefined || barrels >= rails) return { tiltDeg: spec.aim.tiltDeg ?? barrels, why: own };
  return {
    tiltDeg: rails,
    why: `warp may turn the mounts on a piece of rail ${upTenth(piece)} mm long by ${Math.round(10 * warp) / 10}°, and half of the tilt may go there`,
  };
}

/** What the bed takes along its longer side [mm]. */
export const longestPiece = ({ printer: { machine } }: Spec): number => Math.max(...usableBed(machine));
