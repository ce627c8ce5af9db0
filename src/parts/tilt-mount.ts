/**
 * The tilt mount: base, post, leaf, arm and seat in one piece. File coordinates: x = u (along the beam, front at 0, rear
 * negative), y = w (up in the kit), z = v (across), so that it prints lying on its side with the layers along the leaf.
 * Every nut pocket and the pin's groove open to the upper side; holes that lie carry a 45° roof there.
 */
import { threads } from '../components/index.js';
import type { ScrewSize } from '../components/types.js';
import { side } from '../layout/fits.js';
import { FILLET_INTO, flexAt, type LeafEnd, leafEnd, padHalf } from '../layout/leaf-place.js';
import { armMotion, leafAtFlex, leafSlice, leafStrip } from '../layout/leaf-shape.js';
import type { MountLayout } from '../layout/mount.js';
import { NUT_WALLS } from '../layout/mount-sizes.js';
import { planeMatrix } from '../layout/plane.js';
import type { AtPoses, LeafDesign, Pose } from '../layout/types.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { apply } from '../solid/matrix.js';
import type { Matrix, Outlines, Vec2 } from '../solid/mesh.js';
import { circle, polygon, rectangle, teardrop } from '../solid/outlines.js';
import { prism } from '../solid/shapes.js';
import type { Spec } from '../spec/spec.js';
import type { Rad } from '../units.js';

/** Past every face that a cut goes through [mm]. */
const OVER = 1;
/** How far joined pieces reach into each other [mm]. */
const INTO = FILLET_INTO;
/** How far the foot over the post reaches behind it before the leaf's room is cut: more than the bias moves it [mm]. */
const FOOT_BEHIND = 2;
/** How far the bore's upper flats stand off the barrel, along w [mm]. */
const BORE_PLAY = 0.3;
/** Steps of a quarter-round fillet. */
const FILLET_STEPS = 6;

/** @returns the mount as printed, and at each pose of the kit */
export function drawMountAtPoses(
  k: Kernel,
  spec: Spec,
  mount: MountLayout,
): {
  readonly solid: Solid;
  readonly posed: Readonly<Record<Pose, Solid>>;
  readonly springCut: AtPoses<Solid>;
} {
  const turned = tiltMounts(k, spec, mount);
  const all = <T>(draw: (flex: Rad) => T): AtPoses<T> => ({
    printed: draw(0 as Rad),
    posed: {
      lowest: draw(flexAt(mount.leaf, 'lowest')),
      level: draw(flexAt(mount.leaf, 'level')),
      highest: draw(flexAt(mount.leaf, 'highest')),
    },
  });
  const { printed, posed } = all(turned);
  const springCut = all((flex) =>
    prism(k, polygon(leafSlice(mount.leaf, flex).map(([u, w]): Vec2 => [u + mount.origin[0], w + mount.origin[1]])), {
      axis: 'z',
      from: -OVER,
      to: mount.width + OVER,
    }),
  );
  return { solid: printed, posed, springCut };
}

/** @param flex - turn of the arm from rest [rad]; 0: as printed */
export const drawTiltMount = (k: Kernel, spec: Spec, mount: MountLayout, flex: Rad): Solid =>
  tiltMounts(k, spec, mount)(flex);

/** Draws at once what is the same at every flex. */
function tiltMounts(k: Kernel, spec: Spec, mount: MountLayout): (flex: Rad) => Solid {
  const { width, leaf, origin } = mount;
  const across = (outlines: Outlines) => prism(k, outlines, { axis: 'z', from: 0, to: width });
  const end = leafAtFlex(leaf, 0 as Rad).end.at;
  const root: Vec2 = [origin[0] + end[0], origin[1] + end[1]];
  const [outOfBase, outOfArm] = ROOTS[leafEnd(leaf)];
  const arm = armAtRest(k, spec, mount);
  const baseFillets = filletPair(origin, leaf, outOfBase).map((outline) => across(polygon(outline)));
  const base = k.subtract(k.union(basePieces(mount).map(across)), cutsInBase(k, spec, mount));
  return (flex) => {
    const fromRest = planeMatrix(armMotion(leaf, 0 as Rad, flex), origin);
    const strip = leafStrip(leaf, flex).map(([u, w]): Vec2 => [u + origin[0], w + origin[1]]);
    const armFillets = filletPair(root, leaf, outOfArm).map((outline) =>
      across(polygon(outline.map((p) => inPlane(fromRest, p)))),
    );
    return k.union([base, k.move(arm, fromRest), across(polygon(strip)), ...armFillets, ...baseFillets]);
  };
}

/** The moving arm alone: what the leaf carries, turned by `flex` from rest. */
export function drawArm(
  k: Kernel,
  spec: Spec,
  { mount, flex }: { readonly mount: MountLayout; readonly flex: Rad },
): Solid {
  return k.move(armAtRest(k, spec, mount), planeMatrix(armMotion(mount.leaf, 0 as Rad, flex), mount.origin));
}

/** As printed: drawn at level, brought to rest, where the leaf's room is a slot of even width. */
function armAtRest(k: Kernel, spec: Spec, mount: MountLayout): Solid {
  const { width, leaf, origin } = mount;
  const [u0, u1, w0, w1] = mount.arm.free;
  const across = (outlines: Outlines) => prism(k, outlines, { axis: 'z', from: 0, to: width });
  const toRest = planeMatrix(armMotion(leaf, leaf.bias, 0 as Rad), origin);
  const pieces = k.move(k.union(armPieces(mount).map(across)), toRest);
  const room = prism(k, rectangle(u0, w0, u1, w1), { axis: 'z', from: -OVER, to: width + OVER });
  return k.subtract(pieces, [room, ...cutsInArm(k, spec, mount).map((cut) => k.move(cut, toRest))]);
}

/** The arm at level, before the leaf's room is cut from it. */
function armPieces({ arm, base, seat, length, leaf, post, origin }: MountLayout): Outlines[] {
  const pieces = [
    rectangle(-length, arm.rearBottom, base.rearFrom + INTO, arm.neckTop),
    rectangle(-seat.length, arm.neckTop - INTO, 0, seat.top),
  ];
  const kind = leafEnd(leaf);
  // The foot starts well ahead of the thick rear: turned to rest, its edge there would leave a fin between arm and base.
  if (kind === 'front')
    return [
      ...pieces,
      rectangle(base.rearFrom, arm.rearBottom, 0, arm.neckTop),
      rectangle(-post.depth - FOOT_BEHIND, arm.footBottom, 0, arm.rearBottom + INTO),
    ];
  if (kind === 'top') {
    // Cut off at the leaf's end as printed, the pad holds it from above.
    const [at, half] = [origin[0], padHalf(leaf)];
    return [
      ...pieces,
      rectangle(base.rearFrom, arm.footBottom, 0, arm.neckTop),
      rectangle(at - half, arm.under - 1, at + half, arm.neckTop),
    ];
  }
  // The leaf ends at the rear: a foot holds it there, the chin hangs down in front.
  const root = -post.depth - (leaf.layout === 'notch' ? 2 : 1) * leaf.length;
  return [
    ...pieces,
    rectangle(base.rearFrom, arm.under, 0, arm.neckTop),
    rectangle(Math.min(base.rearFrom, root) - 2, arm.rootBottom, root + 1, arm.under + INTO),
    rectangle(-arm.chinDepth, arm.footBottom, 0, arm.under + INTO),
  ];
}

function basePieces({ base, post, length }: MountLayout): Outlines[] {
  return [
    rectangle(base.rearFrom - INTO, 0, 0, base.front),
    rectangle(-post.depth, 0, 0, post.top),
    rectangle(-length, 0, base.rearFrom, base.rear),
  ];
}

/** Directions in which a leaf leaves base and arm, by where it ends. */
const ROOTS: Record<LeafEnd, readonly [Vec2, Vec2]> = {
  front: [
    [-1, 0],
    [-1, 0],
  ],
  rear: [
    [-1, 0],
    [1, 0],
  ],
  top: [
    [0, 1],
    [0, -1],
  ],
};

/** Quarter-round fillets on both sides of a leaf's root, which leaves its block's face in a direction. */
function filletPair([u, w]: Vec2, { fillet: r, thickness, layout }: LeafDesign, [du, dw]: Vec2): Vec2[][] {
  if (layout === 'notch') return [];
  return [1, -1].map((side) => {
    // A point so far out along the leaf and so far off its face.
    const at = (out: number, off: number): Vec2 => {
      const aside = side * (thickness / 2 + off);
      return [u + du * out - dw * aside, w + dw * out + du * aside];
    };
    const arc = Array.from({ length: FILLET_STEPS + 1 }, (_, i) => {
      const angle = (i * Math.PI) / 2 / FILLET_STEPS;
      return at(r * (1 - Math.sin(angle)), r * (1 - Math.cos(angle)));
    });
    return [at(-INTO, -thickness / 4), at(r, -thickness / 4), ...arc, at(-INTO, r)];
  });
}

/** Bore, clamp screw with nut, adjusting screw with nut; level. */
function cutsInArm(k: Kernel, spec: Spec, mount: MountLayout): Solid[] {
  const { width, axis, seat, clamp, adjust, arm } = mount;
  const mid = width / 2;
  const hole = (size: ScrewSize, u: number, from: number, to: number) =>
    prism(k, teardrop([u, mid], threads[size].clearance.value / 2, { roof: '+y' }), { axis: 'y', from, to });
  return [
    prism(k, boreOutline(mount), { axis: 'x', from: -seat.length - OVER, to: OVER }),
    ...underClampNut(k, spec, mount),
    nutPocket(k, spec, { size: spec.screws.clamp, u: clamp.at, floor: seat.nutFloor, mount }),
    hole(spec.screws.clamp, clamp.at, axis, seat.top + OVER),
    nutPocket(k, spec, { size: spec.screws.adjust, u: adjust.at, floor: adjust.nutFloor, mount }),
    hole(spec.screws.adjust, adjust.at, arm.rearBottom - OVER, arm.neckTop + OVER),
  ];
}

/**
 * The seat's bore in (w, v): a diamond whose lower flats touch the barrel, opened upward by a slide, cut flat below the
 * barrel, at its sides and under the clamp's nut. Lying, its sides are the roof: a bridge of about two millimetres.
 */
function boreOutline({ axis, width, barrel, seat }: MountLayout): Outlines {
  const vertex = barrel.radius * Math.SQRT2;
  // A thin barrel stands lower in the diamond: the flat stays short of its corner.
  const below = Math.min(barrel.radius + 0.7, vertex - 0.2);
  const sides = barrel.radius + 0.45;
  const above = seat.nutFloor - axis + 0.01;
  const half: Vec2[] = [
    [-below, vertex - below],
    [-(vertex - sides), sides],
    [vertex - sides + BORE_PLAY, sides],
    [above, Math.max(0.4, vertex + BORE_PLAY - above)],
  ];
  const points = [...half, ...half.toReversed().map(([w, v]): Vec2 => [w, -v])];
  return polygon(points.map(([w, v]): Vec2 => [axis + w, width / 2 + v]));
}

/**
 * Between the bore's roof and the nut's pocket stands a web whose lower edge, as printed, would begin in the air beside the
 * screw's hole: it is left out up to the hole's ridge, where it goes from one wall of the pocket to the other as a bridge.
 */
function underClampNut(k: Kernel, spec: Spec, { axis, width, seat, clamp, barrel }: MountLayout): Solid[] {
  const size = threads[spec.screws.clamp];
  const ridge = (size.clearance.value / 2) * Math.SQRT2;
  const roof = barrel.radius * Math.SQRT2 + BORE_PLAY - ridge;
  if (axis + roof >= seat.nutFloor) return [];
  const half = size.nutFlats.value / 2 + side(spec, 'slide');
  const outline = rectangle(clamp.at - half, axis, clamp.at + half, seat.nutFloor + INTO);
  return [prism(k, outline, { axis: 'z', from: width / 2, to: width / 2 + ridge })];
}

/** Pocket for a captured nut: slid in from the side that is up in print, its end as pointed as the nut. */
function nutPocket(
  k: Kernel,
  spec: Spec,
  { size, u, floor, mount }: { size: ScrewSize; u: number; floor: number; mount: MountLayout },
): Solid {
  const { nutFlats, nutHeight } = threads[size];
  const half = nutFlats.value / 2 + side(spec, 'slide');
  const mid = mount.width / 2;
  const flank = half / Math.sqrt(3);
  const outline: Vec2[] = [
    [u + half, mount.width + OVER],
    [u - half, mount.width + OVER],
    [u - half, mid - flank],
    [u, mid - 2 * flank],
    [u + half, mid - flank],
  ];
  return prism(k, polygon(outline), { axis: 'y', from: floor, to: floor + nutHeight.value + NUT_WALLS.play });
}

/** Groove for the pin under the adjusting screw, hole and nut of the screw that fixes the mount. */
function cutsInBase(k: Kernel, spec: Spec, mount: MountLayout): Solid[] {
  const { pin, fix, width } = mount;
  const top = fix.nutFloor + threads[spec.screws.fix].nutHeight.value + NUT_WALLS.play + fix.tipRoom;
  return [
    prism(k, circle(pin.at, pin.radius + side(spec, 'snug'), { fit: 'hole' }), {
      axis: 'z',
      from: pin.from,
      to: width + OVER,
    }),
    prism(k, teardrop([fix.at, width / 2], threads[spec.screws.fix].clearance.value / 2, { roof: '+y' }), {
      axis: 'y',
      from: -OVER,
      to: top,
    }),
    nutPocket(k, spec, { size: spec.screws.fix, u: fix.at, floor: fix.nutFloor, mount }),
  ];
}

const inPlane = (m: Matrix, [u, w]: Vec2): Vec2 => {
  const [x, y] = apply(m, [u, w, 0]);
  return [x, y];
};
