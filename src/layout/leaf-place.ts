/**
 * Where the leaf stands between base and arm, and what of both makes room for it. Profile coordinates (u, w) [mm], level pose
 * unless said. A leaf ends in the arm at the front (an even number of legs), at the rear (an odd one), or at the top (upright).
 */
import type { Vec2 } from '../solid/mesh.js';
import type { Spec } from '../spec/spec.js';
import type { Rad } from '../units.js';
import { upTenth } from './fits.js';
import { armMotion, leafAtFlex, type PlaneMotion } from './leaf-shape.js';
import { barrelPlace, rearRoom, wireAside } from './mount-room.js';
import { AIR, BASE_FRONT, NECK, SHOULDER, WIRE_STRAIGHT } from './mount-sizes.js';
import { moved } from './plane.js';
import type { LeafDesign, Pose } from './types.js';

export type LeafEnd = 'front' | 'rear' | 'top';

export const leafEnd = ({ layout, legs }: Pick<LeafDesign, 'layout' | 'legs'>): LeafEnd =>
  layout === 'upright' ? 'top' : legs % 2 === 0 ? 'front' : 'rear';

export interface LeafPlace {
  /** Where the leaf leaves the post, or the base. */
  readonly origin: Vec2;
  readonly post: { readonly depth: number; readonly top: number };
  /** Underside of the arm over the leaf. */
  readonly under: number;
  /** Underside of the foot that holds a leaf's rear end, and of the chin, and how far the chin reaches back. */
  readonly rootBottom: number;
  readonly footBottom: number;
  readonly chinDepth: number;
  /** Rectangle around the leaf, cut from the arm at rest: u from, u to, w from, w to. */
  readonly free: readonly [number, number, number, number];
  /** Least height of the arm's top. */
  readonly neckLeast: number;
}

export interface PlaceOptions {
  /** From the mount's front to where the leaf starts. */
  readonly post: number;
  /** u where the thick rear begins. */
  readonly rear: number;
  /** Least height of the arm's underside at the rear: the base's rear and the arm's sag at rest. */
  readonly rearLeast: number;
}

/** Beside an upright leaf: the pad on the arm that holds its top. */
const PAD = 2;

export function placeLeaf(leaf: LeafDesign, options: PlaceOptions): LeafPlace {
  const kind = leafEnd(leaf);
  return kind === 'top' ? placeUpright(leaf, options) : placeLying(leaf, { ...options, kind });
}

/** How far the leaf and its turns reach behind where it starts, with air where nothing holds it. */
export function leafReach(leaf: Pick<LeafDesign, 'layout' | 'legs' | 'length' | 'legPitch' | 'thickness'>): number {
  if (leaf.layout === 'upright') return leaf.thickness / 2 + PAD + AIR;
  return legSpan(leaf) + (leaf.legs > 1 ? leaf.legPitch / 2 + leaf.thickness / 2 + AIR : 0);
}

/** u at which the thick rear begins: behind the leaf's last turn or end, with air, and so that the wires are aside at the screw. */
export function rearFrom(
  spec: Spec,
  {
    leaf,
    post,
  }: {
    readonly leaf: Pick<LeafDesign, 'layout' | 'legs' | 'length' | 'legPitch' | 'thickness'>;
    readonly post: number;
  },
): number {
  // Their bend runs at 45° past the screw's head: it must end so far ahead of it.
  const bend = (Math.SQRT2 - 1) * wireAside(spec) + 0.2;
  const wires = -barrelPlace(spec).rear + WIRE_STRAIGHT + wireAside(spec) + bend;
  return -Math.max(post + leafReach(leaf), wires - rearRoom(spec).toScrew);
}

/** Length of a leg along u. */
const legSpan = ({ layout, length }: Pick<LeafDesign, 'layout' | 'length'>) =>
  layout === 'notch' ? 2 * length : length;

/** Plastic above and below a root: a notch's faces open to its blocks. */
const shoulderOf = ({ layout, length, fillet }: LeafDesign) =>
  layout === 'notch' ? length : Math.max(SHOULDER, fillet);

/** Fillets end short of the faces across the slot, as a tangent there would leave a sliver; the slope of the arm at rest takes some. */
const slotOf = ({ fillet }: LeafDesign) => Math.max(AIR, fillet) + 0.1;

function placeLying(
  leaf: LeafDesign,
  { post, rear, rearLeast, kind }: PlaceOptions & { readonly kind: 'front' | 'rear' },
): LeafPlace {
  const [shoulder, slot, half] = [shoulderOf(leaf), slotOf(leaf), leaf.thickness / 2];
  const end = leafAtFlex(leaf, leaf.bias).end.at;
  const rest = leafAtFlex(leaf, 0 as Rad).end.at;
  const below = leaf.layout === 'notch' ? shoulder : slot;
  const lowRoot = kind === 'front' ? 0 : rearLeast + shoulder - end[1];
  const origin: Vec2 = [-post, Math.max(BASE_FRONT + below, lowRoot) + half];
  const top = origin[1] + half + shoulder;
  const footBottom = chinOver(leaf, { top, origin });
  const turn = leaf.legs > 1 ? leaf.legPitch / 2 + half : 0;
  const restTop = origin[1] + (leaf.legs - 1) * leaf.legPitch + half + slot;
  // Over a leaf that ends at the front the arm's underside, level as printed, rises to the rear by the bias at level.
  const overLeaf = origin[1] + end[1] + half + (leaf.layout === 'notch' ? shoulder : slot);
  const under =
    kind === 'front' ? overLeaf + Math.tan(leaf.bias) * (origin[0] + rest[0] - rear) : Math.max(footBottom, overLeaf);
  return {
    origin,
    post: { depth: post, top },
    under,
    rootBottom: origin[1] + end[1] - half - shoulder,
    footBottom,
    chinDepth: leaf.legs > 1 && kind === 'rear' ? post - turn - AIR : post,
    free:
      kind === 'front'
        ? [rear, origin[0] + rest[0], 0, restTop]
        : [origin[0] + rest[0], origin[0] + (leaf.legs > 1 ? turn + AIR : 0), 0, restTop],
    neckLeast: under + NECK,
  };
}

/** An upright leaf stands on the base behind the post, its top in a pad under the arm. */
function placeUpright(leaf: LeafDesign, { post, rearLeast }: PlaceOptions): LeafPlace {
  const half = leaf.thickness / 2;
  const end = leafAtFlex(leaf, leaf.bias).end.at;
  const origin: Vec2 = [-post, Math.max(BASE_FRONT, rearLeast - end[1])];
  const under = origin[1] + end[1];
  const depth = post - half - PAD - AIR;
  const footBottom = under + 0.4;
  // The chin is the arm itself: the post ends where its front meets it at the stop.
  const toStop = armMotion(leaf, leaf.bias, stopFlex(leaf));
  return {
    origin,
    post: { depth, top: footBottom - drop(toStop, [0, footBottom], origin) },
    under,
    rootBottom: under,
    footBottom,
    chinDepth: depth,
    free: [-post - half - PAD - AIR, -post + half + PAD + AIR, 0, origin[1] + leaf.length],
    neckLeast: footBottom + NECK,
  };
}

/** Half of the pad that holds an upright leaf's top, along u. */
export const padHalf = ({ thickness }: Pick<LeafDesign, 'thickness'>): number => thickness / 2 + PAD;

/** The chin's corner at the mount's front meets the post's top at the stop: the motion from level to there, undone. */
function chinOver(leaf: LeafDesign, { top, origin }: { readonly top: number; readonly origin: Vec2 }): number {
  return upTenth(top + drop(armMotion(leaf, leaf.bias, stopFlex(leaf)), [0, top], origin));
}

/** How far joined pieces of a mount reach into each other [mm]. */
export const FILLET_INTO = 0.2;

/**
 * How much too high the foot's underside is, as printed, to hold the lower fillet of a root at the front: turned to rest it rises toward
 * the rear, and what of the fillet it leaves free would stand there as a fin.
 *
 * @returns [mm]; 0 or less where the foot holds it
 */
export function filletFree(leaf: LeafDesign, { origin, footBottom }: Pick<LeafPlace, 'origin' | 'footBottom'>): number {
  const toRest = armMotion(leaf, leaf.bias, 0 as Rad);
  const rest = leafAtFlex(leaf, 0 as Rad).end.at;
  const [front, rear] = [0, 2 * origin[0]].map((u) => moved(toRest, [u, footBottom], origin)) as [Vec2, Vec2];
  // The fillet is drawn a little into the foot.
  const face = origin[0] + rest[0] + FILLET_INTO;
  const underside = front[1] + ((rear[1] - front[1]) * (face - front[0])) / (rear[0] - front[0]);
  return underside - (origin[1] + rest[1] - leaf.thickness / 2 - leaf.fillet);
}

const stopFlex = (leaf: LeafDesign) => flexAt(leaf, 'stop');

/** Flex from rest at a pose, and where the stop is drawn to touch. */
export function flexAt(leaf: LeafDesign, pose: Pose | 'stop'): Rad {
  if (pose === 'highest') return leaf.preload;
  if (pose === 'level') return (leaf.bias + (leaf.lean ?? 0)) as Rad;
  const lowest = leaf.preload + 2 * leaf.tilt;
  return (pose === 'lowest' ? lowest : lowest + leaf.stopMargin) as Rad;
}

/** How far a point of the arm goes down in a motion. */
export function drop(motion: PlaneMotion, point: Vec2, origin: Vec2): number {
  return point[1] - moved(motion, point, origin)[1];
}
