/**
 * Tray of the electronics bay: floor, walls with the holes for plugs and wires, bosses for the lid, and what holds each board.
 * Tray coordinates, as it prints: on its floor.
 */
import { threads } from '../components/index.js';
import { BATTERY, wallOf } from '../layout/bay/footprint.js';
import { POST_WALL } from '../layout/bay/holders.js';
import { connectorAt, roofSlope } from '../layout/bay/openings.js';
import { JOINT, jointPlaces, TIE } from '../layout/bay/sizes.js';
import type { PlacedModule, Rect, Unit, WallHole } from '../layout/bay/types.js';
import { grown } from '../layout/fits.js';
import type { LayoutWithBay } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Outlines, Vec3 } from '../solid/mesh.js';
import { asHoles, counterClockwise, polygon, rectangle, together } from '../solid/outlines.js';
import { atPlaces, box, cylinder, prism } from '../solid/shapes.js';
import { clipBars } from './bay-clips.js';
import { pilotHole, plainHole, sunkHole } from './holes.js';

const OVER = 1;
const INTO = 0.2;

export interface TrayOptions {
  readonly unit: Unit;
  /** Trays before and behind it in the row, where they are screwed to each other. */
  readonly joined: { readonly before: boolean; readonly after: boolean };
}

export function drawBayTray(k: Kernel, layout: LayoutWithBay, { unit, joined }: TrayOptions): Solid {
  const { bay, spec, frame } = layout;
  const { wall, floor, height } = bay;
  const [x, y] = unit.size;
  const ring = together(rectangle(0, 0, x, y), asHoles(rectangle(wall, wall, x - wall, y - wall)));
  const add: Solid[] = [
    box(k, [0, 0, 0], [x, y, floor]),
    prism(k, ring, { axis: 'z', from: floor - INTO, to: height }),
    ...unit.bosses.map((at) => lidBoss(k, layout, { at, size: unit.size })),
  ];
  const cut: Solid[] = [
    ...unit.walls.map((hole) => wallHole(k, layout, { hole, unit })),
    ...atPlaces(
      k,
      pilotHole(k, spec, { at: [0, 0, height], way: '-z', depth: frame.boss.pilotDepth }),
      unit.bosses.map(([bx, by]): Vec3 => [bx, by, 0]),
    ),
  ];
  for (const placed of unit.modules) {
    const { fixing } = placed;
    const held =
      fixing.kind === 'screws'
        ? posts(k, layout, placed)
        : fixing.kind === 'clips'
          ? clipBars(k, layout, { placed, bars: fixing.bars, engaged: fixing.engaged, size: unit.size })
          : ribs(k, layout, placed);
    add.push(...held.add);
    cut.push(...held.cut);
  }
  if (unit.tie !== null) {
    add.push(box(k, [unit.tie[0], unit.tie[1], floor - INTO], [unit.tie[2], unit.tie[3], floor + TIE.height]));
    cut.push(...tieSlits(k, unit.tie, floor));
  }
  const { screw } = bay;
  if (unit.held.length > 0)
    cut.push(
      ...atPlaces(
        k,
        sunkHole(k, spec, { at: [0, wall, 0], way: '-y', depth: wall + OVER, up: '+z' }),
        unit.held.flatMap((at) => screw.heights.map((z): Vec3 => [at, 0, z])),
      ),
    );
  const places = jointPlaces([x, y], wall).flatMap((at) => screw.heights.map((z): Vec3 => [0, at, z]));
  if (joined.after)
    cut.push(
      ...atPlaces(k, sunkHole(k, spec, { at: [x - wall, 0, 0], way: '+x', depth: wall + OVER, up: '+z' }), places),
    );
  if (joined.before) {
    const depth = screw.engaged + JOINT.behind;
    const top = screw.heights.at(-1)! + JOINT.breadth / 2;
    for (const at of jointPlaces([x, y], wall))
      add.push(box(k, [wall - INTO, at - JOINT.breadth / 2, floor - INTO], [depth, at + JOINT.breadth / 2, top]));
    cut.push(
      ...atPlaces(
        k,
        pilotHole(k, spec, { at: [0, 0, 0], way: '+x', depth: screw.engaged + JOINT.tip, up: '+z' }),
        places,
      ),
    );
  }
  return k.subtract(k.union(add), cut);
}

/** In a corner under the lid, rising from the long wall at 45°, so that it prints; clear below for what lies there. */
function lidBoss(
  k: Kernel,
  { bay: { wall, height }, frame: { boss } }: LayoutWithBay,
  { at, size }: { readonly at: readonly [number, number]; readonly size: readonly [number, number] },
): Solid {
  const outer = at[1] > size[1] / 2;
  const face = outer ? size[1] - wall : wall;
  const into = outer ? 1 : -1;
  const profile = polygon(
    counterClockwise([
      [face, height],
      [face - into * boss.depth, height],
      [face - into * boss.depth, height - boss.height],
      [face + into * INTO, height - boss.height - boss.depth - INTO],
      [face + into * INTO, height - 1],
    ]),
  );
  return prism(k, profile, { axis: 'x', from: at[0] - boss.width / 2, to: at[0] + boss.width / 2 });
}

function wallHole(
  k: Kernel,
  { bay, spec }: LayoutWithBay,
  { hole, unit }: { readonly hole: WallHole; readonly unit: Unit },
): Solid {
  const { wall, height } = bay;
  const [x, y] = unit.size;
  const outline = hole.open
    ? rectangle(hole.from, hole.low, hole.to, height + OVER)
    : roofed(hole, spec.printer.machine.bridge.value);
  if (hole.wall === 'inner') return prism(k, outline, { axis: 'y', from: -OVER, to: wall + OVER });
  if (hole.wall === 'outer')
    return prism(k, outline, { axis: 'y', from: y - wall - (hole.flush ? INTO : OVER), to: y + OVER });
  return hole.wall === 'left'
    ? prism(k, outline, { axis: 'x', from: -OVER, to: wall + OVER })
    : prism(k, outline, { axis: 'x', from: x - wall - OVER, to: x + OVER });
}

/** Wider than a bridge, its top slopes in at 45°. */
function roofed({ from, to, low, high }: WallHole, bridge: number): Outlines {
  const slope = Math.min(high - low, roofSlope(to - from, bridge));
  if (slope === 0) return rectangle(from, low, to, high);
  return polygon([
    [from, low],
    [to, low],
    [to, high - slope],
    [to - slope, high],
    [from + slope, high],
    [from, high - slope],
  ]);
}

function posts(k: Kernel, { bay, spec }: LayoutWithBay, { fixing, z }: PlacedModule): { add: Solid[]; cut: Solid[] } {
  if (fixing.kind !== 'screws') return { add: [], cut: [] };
  const pilot = threads[fixing.size].pilot.value;
  const radius = grown(spec, pilot) / 2 + POST_WALL;
  const places = fixing.at.map(([x, y]): Vec3 => [x, y, 0]);
  return {
    add: atPlaces(k, cylinder(k, { from: [0, 0, bay.floor - INTO], to: [0, 0, z], radius, fit: 'pin' }), places),
    cut: atPlaces(
      k,
      plainHole(k, spec, { at: [0, 0, z], way: '-z', depth: fixing.engaged + 1, diameter: pilot }),
      places,
    ),
  };
}

/** Between a rib and the leads beside it. */
const LEAD_AIR = 0.3;

/** A corner piece at each corner of a battery; where leads leave beside it, its leg ends before them. */
function ribs(k: Kernel, { bay }: LayoutWithBay, placed: PlacedModule): { add: Solid[]; cut: Solid[] } {
  const [x0, y0, x1, y1] = placed.outline;
  const { play, rib, height } = BATTERY;
  const leads = placed.module.part.connectors.value.map((connector) => {
    const [x, y] = connectorAt(placed, connector);
    return { wall: wallOf(connector.side, placed.turn), x, y, half: connector.width / 2 + LEAD_AIR };
  });
  const corner = (x: number, y: number, [sx, sy]: readonly [number, number]) => {
    const beside = { x: sy > 0 ? 'inner' : 'outer', y: sx > 0 ? 'left' : 'right' } as const;
    const leg = (axis: 'x' | 'y') => {
      const [from, whole, into] = axis === 'x' ? ([x, x1 - x0, sx] as const) : ([y, y1 - y0, sy] as const);
      const free = leads
        .filter(({ wall }) => wall === beside[axis])
        .map((lead) => into * (lead[axis] - from) - lead.half);
      return Math.max(0, Math.min(12, whole / 3, ...free));
    };
    const [dx, dy] = [leg('x'), leg('y')];
    const [px, py] = [x - sx * play, y - sy * play];
    const plan = [
      [px - sx * rib, py - sy * rib],
      [x + sx * dx, py - sy * rib],
      [x + sx * dx, py],
      [px, py],
      [px, y + sy * dy],
      [px - sx * rib, y + sy * dy],
    ] as const;
    return prism(k, polygon(counterClockwise(plan)), { axis: 'z', from: bay.floor - INTO, to: bay.floor + height });
  };
  return {
    add: [corner(x0, y0, [1, 1]), corner(x1, y0, [-1, 1]), corner(x0, y1, [1, -1]), corner(x1, y1, [-1, -1])],
    cut: [],
  };
}

function tieSlits(k: Kernel, [x0, y0, x1, y1]: Rect, floor: number): Solid[] {
  const x = (x0 + x1) / 2;
  return TIE.at.map((z) =>
    box(
      k,
      [x - TIE.width / 2, y0 - OVER, floor + z - TIE.slit / 2],
      [x + TIE.width / 2, y1 + OVER, floor + z + TIE.slit / 2],
    ),
  );
}
