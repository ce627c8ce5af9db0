/**
 * The tilt mount in numbers. Profile coordinates (u, w) [mm]: u along the beam, 0 at the mount's front face, positive toward
 * the field, so the mount lies at u < 0; w up from the rail's floor. The width v runs across. The arm stands level unless said.
 *
 * From front to rear: post with the leaf behind it, the seat above both; then the collar on the barrel's rear, below it the
 * arm's neck; then, behind the leaf, the thick ends of arm and base with the adjusting screw between them.
 */
import { pins, threads } from '../components/index.js';
import type { Vec2 } from '../solid/mesh.js';
import type { Spec } from '../spec/spec.js';
import type { Rad } from '../units.js';
import { carrierOf, type SleeveLayout } from './carrier.js';
import { stocked, upTenth } from './fits.js';
import { drop, flexAt, leafEnd, placeLeaf, rearFrom } from './leaf-place.js';
import { armMotion, type PlaneMotion } from './leaf-shape.js';
import { barrelPlace, collarNotches, collarRadius, rearRoom, wireAside } from './mount-room.js';
import {
  AIR,
  BASE_FRONT,
  CLOSE_WALL,
  COLLAR,
  NUT_PLAY,
  PULL_WALL,
  RAIL_FLOOR,
  THIN_WALL,
  TIP_ROOM,
  WIRE_STRAIGHT,
} from './mount-sizes.js';
import { moved } from './plane.js';
import type { LeafDesign, Pose } from './types.js';

export interface MountLayout {
  readonly leaf: LeafDesign;
  /** Across the beam. */
  readonly width: number;
  /** Front to rear, and height of the barrel's axis above the rail's floor. */
  readonly length: number;
  readonly axis: number;
  /** Where the leaf leaves the post. */
  readonly origin: Vec2;
  readonly post: { readonly depth: number; readonly top: number };
  readonly base: {
    readonly front: number;
    readonly rear: number /** u where the thick rear begins */;
    readonly rearFrom: number;
  };
  readonly arm: {
    readonly neckTop: number;
    readonly rearBottom: number;
    /** Underside over a leaf that ends at the rear, and of the foot that holds its end. */
    readonly under: number;
    readonly rootBottom: number;
    /** How far the chin reaches back from the front. */
    readonly chinDepth: number;
    /** Underside of the foot that is the chin: it meets the post's top. */
    readonly footBottom: number;
    /** Rectangle around the leaf, cut from the arm at rest: u from, u to, w from, w to. */
    readonly free: readonly [number, number, number, number];
  };
  /** What lies in the seat; `front`: u of its foremost point, `exit`: of the emitter's front, on the seat's axis. */
  readonly barrel: { readonly radius: number; readonly length: number; readonly front: number; readonly exit: number };
  /** The body in the seat is a sleeve around the emitter, one piece with the collar. */
  readonly sleeve: SleeveLayout | null;
  readonly seat: { readonly length: number; readonly top: number; readonly nutFloor: number };
  readonly collar: {
    readonly outer: number;
    readonly length: number;
    readonly notches: number;
    readonly notchDepth: number;
    readonly notchWidth: number;
    /** u of its front face. */
    readonly front: number;
  };
  readonly clamp: { readonly at: number; readonly screwLength: number; readonly nutAt: Vec2 };
  readonly adjust: {
    readonly at: number;
    readonly screwLength: number;
    /** Underside of the nut's pocket in the arm, w. */
    readonly nutFloor: number;
    /** Screw head's underside above the arm's neck at each pose, along the screw. */
    readonly standoff: Readonly<Record<Pose, number>>;
  };
  readonly pin: { readonly at: Vec2; readonly radius: number; readonly length: number; readonly from: number };
  readonly fix: {
    readonly at: number;
    readonly nutFloor: number;
    readonly tipRoom: number;
    readonly screwLength: number;
  };
  /** The wires' path in (u, v from the middle, w). */
  readonly wire: { readonly diameter: number; readonly path: readonly (readonly [number, number, number])[] };
  /** Room that the arm takes beyond its level outline: forward of u = 0, and upward of w = 0. */
  readonly sweep: { readonly forward: number; readonly top: number };
}

export function layMount(
  spec: Spec,
  { leaf: design, width, post }: { readonly leaf: LeafDesign; readonly width: number; readonly post: number },
): MountLayout {
  const clampThread = threads[spec.screws.clamp];
  const adjustThread = threads[spec.screws.adjust];
  const fixThread = threads[spec.screws.fix];
  const { diameter, length: barrelLength, sleeve } = carrierOf(spec);
  const lean = sleeve?.lean ?? 0;
  const leaf: LeafDesign = lean > 0 ? { ...design, lean: lean as Rad } : design;
  const radius = diameter / 2;
  const collarOuter = collarRadius(spec);
  const room = rearRoom(spec);
  const rear = rearFrom(spec, { leaf, post });
  const screwAt = rear - room.toScrew;
  const length = upTenth(-(rear - room.toEnd));
  const rearThick = PULL_WALL + adjustThread.nutHeight.value + NUT_PLAY + CLOSE_WALL;
  const fixNeed = RAIL_FLOOR + PULL_WALL + fixThread.nutHeight.value + fixThread.pitch.value;
  const fixLength = stocked(fixThread.sunkLengths.value, fixNeed) ?? 0;
  const fixPocket = PULL_WALL + fixThread.nutHeight.value + NUT_PLAY;
  const fixTip = Math.max(fixPocket, fixLength - RAIL_FLOOR) + TIP_ROOM;
  const baseNeed = fixTip + THIN_WALL;

  // As printed the arm's rear hangs down by the bias; it must still clear the base.
  const sag = drop(armMotion(leaf, leaf.bias, 0 as Rad), [post - length, 0], [0, 0]);
  const place = placeLeaf(leaf, { post, rear, rearLeast: baseNeed + AIR + sag });
  const { origin } = place;
  const neckTop = upTenth(Math.max(place.neckLeast, baseNeed + AIR + sag + rearThick));
  const rearBottom = leafEnd(leaf) === 'rear' ? Math.min(neckTop - rearThick, place.rootBottom) : neckTop - rearThick;
  const baseRear = Math.floor((rearBottom - sag - AIR) * 10) / 10;
  const axis = upTenth(neckTop + COLLAR.air + collarOuter);

  const { front: barrelFront, rear: barrelRear, seat: seatLength } = barrelPlace(spec);
  const nutFloor = axis + radius + clampThread.pitch.value + 0.05;
  const seatTop = upTenth(nutFloor + clampThread.nutHeight.value + NUT_PLAY + PULL_WALL);
  // The longest set screw that ends below the seat's top: its socket is easiest to reach.
  const clampLength = Math.max(0, ...clampThread.setLengths.value.filter((l) => axis + radius + l <= seatTop));

  const pinRadius = pins['3'].diameter.value / 2;
  const pinFrom = CLOSE_WALL;
  const pinLength = Math.max(...pins['3'].lengths.value.filter((l) => l <= width - pinFrom - 0.3));
  const pin: Vec2 = [screwAt, baseRear - 0.6];
  const reach = (pose: Pose): number => tipReach(leaf, { origin, neck: [screwAt, neckTop], pin, pinRadius, pose });
  const adjustLength = stocked(adjustThread.capLengths.value, reach('lowest') + 0.4) ?? 0;

  const corners: Vec2[] = [
    [0, axis],
    [0, seatTop],
    [-seatLength, seatTop],
  ];
  const swept = (['lowest', 'highest'] as const).flatMap((pose) =>
    corners.map((corner) => moved(poseMotion(leaf, pose), corner, origin)),
  );
  const exit = barrelFront - (sleeve?.setBack ?? 0);
  // A leaning barrel's wires go on straight along it, below the seat's axis.
  const along = (back: number): readonly [number, number, number] => [
    exit - back * Math.cos(lean),
    0,
    axis - back * Math.sin(lean),
  ];
  const wireDiameter = spec.emitters.part.wireDiameter.value;
  const aside = wireAside(spec);
  const outside = -length - 0.5 - wireDiameter / 2;
  return {
    leaf,
    width,
    length,
    axis,
    origin,
    post: place.post,
    // An upright leaf stands on the base, however high the arm's rear asks it to stand.
    base: { front: leafEnd(leaf) === 'top' ? origin[1] : BASE_FRONT, rear: baseRear, rearFrom: rear },
    arm: {
      neckTop,
      rearBottom,
      under: place.under,
      rootBottom: place.rootBottom,
      footBottom: place.footBottom,
      chinDepth: place.chinDepth,
      free: place.free,
    },
    barrel: { radius, length: barrelLength, front: barrelFront, exit },
    sleeve,
    seat: { length: seatLength, top: seatTop, nutFloor },
    collar: {
      outer: collarOuter,
      length: COLLAR.length,
      notches: collarNotches(spec),
      notchDepth: COLLAR.notchDepth,
      notchWidth: COLLAR.notchWidth,
      front: barrelRear + COLLAR.length,
    },
    clamp: { at: -seatLength / 2, screwLength: clampLength, nutAt: [-seatLength / 2, nutFloor] },
    adjust: {
      at: screwAt,
      screwLength: adjustLength,
      nutFloor: rearBottom + CLOSE_WALL,
      standoff: {
        lowest: adjustLength - reach('lowest'),
        level: adjustLength - reach('level'),
        highest: adjustLength - reach('highest'),
      },
    },
    pin: { at: pin, radius: pinRadius, length: pinLength, from: pinFrom },
    fix: { at: rear - room.toFix, nutFloor: PULL_WALL, tipRoom: fixTip - fixPocket, screwLength: fixLength },
    wire: {
      diameter: wireDiameter,
      path: [
        along(sleeve ? sleeve.body.length : barrelLength),
        along((exit - barrelRear + WIRE_STRAIGHT) / Math.cos(lean)),
        [barrelRear - WIRE_STRAIGHT - aside, aside, axis],
        [outside, aside, axis],
        [outside, aside, axis - 9],
      ],
    },
    sweep: {
      forward: Math.max(...swept.map(([u]) => u)),
      top: Math.max(...swept.map(([, w]) => w)),
    },
  };
}

/** Motion of the arm from level to a pose. */
export const poseMotion = (leaf: LeafDesign, pose: Pose): PlaneMotion => armMotion(leaf, leaf.bias, flexAt(leaf, pose));

/**
 * Length of screw from the neck's top to its tip when the flat tip touches the pin: the pin's centre, measured along the
 * screw's axis at that pose, less its radius.
 */
function tipReach(
  leaf: LeafDesign,
  { origin, neck, pin, pinRadius, pose }: { origin: Vec2; neck: Vec2; pin: Vec2; pinRadius: number; pose: Pose },
): number {
  const motion = poseMotion(leaf, pose);
  const [u, w] = moved(motion, neck, origin);
  const down: Vec2 = [Math.sin(motion.angle), -Math.cos(motion.angle)];
  return (pin[0] - u) * down[0] + (pin[1] - w) * down[1] - pinRadius;
}
