/** Emitters: each mount with its barrel, collar, screws, nuts and pin, as one sub-assembly. */
import { threads } from '../components/index.js';
import { side } from '../layout/fits.js';
import { poseMotion } from '../layout/mount.js';
import { NUT_WALLS } from '../layout/mount-sizes.js';
import { planeMatrix } from '../layout/plane.js';
import type { RailRun } from '../layout/runs.js';
import { drawPin, drawWires } from '../parts/bought.js';
import { BUMP, RIB_HEIGHT } from '../parts/emitter-rail.js';
import { drawMountAtPoses } from '../parts/tilt-mount.js';
import { applyDirection, frame, multiply, translation } from '../solid/matrix.js';
import type { Matrix, Vec3 } from '../solid/mesh.js';
import { deg, type Rad } from '../units.js';
import { type Bench, hexKey, move } from './bench.js';
import { placeBody } from './emitter-body.js';
import type { Move, Placement, Pose } from './types.js';

export interface PlacedEmitter {
  readonly mount: string;
  readonly barrel: string;
  readonly fixScrew: string;
  /** Names of everything in the sub-assembly but the mount itself. */
  readonly riders: readonly string[];
}

/** The mount's own axes: its front, its top and its upper side in print, as directions of its file. */
const DOWN: Vec3 = [0, -1, 0];
const FORWARD: Vec3 = [1, 0, 0];
const INTO_SIDE: Vec3 = [0, 0, -1];
/** A screw's or nut's z along the mount's up. */
const upright = (at: Vec3): Matrix => frame([1, 0, 0], [0, 0, -1], [0, 1, 0], at);

/** Places all emitters of a run and writes the steps at the bench; the mounts are lowered into the rails by `lowerMounts`. */
export function placeEmitters(b: Bench, run: RailRun): PlacedEmitter[] {
  const { mount } = b.layout;
  // How the arm stands at each pose, from level.
  const motion = (pose: Pose) => planeMatrix(poseMotion(mount.leaf, pose), mount.origin);
  const motions = { lowest: motion('lowest'), level: motion('level'), highest: motion('highest') };
  return run.beams.map((beam) => placeEmitter(b, { run, beam, motions }));
}

/** From a mount's file coordinates to its rail's. */
export function mountInRail(b: Bench, at: number): Matrix {
  const { mount, frame: f } = b.layout;
  return frame([0, -1, 0], [0, 0, 1], [-1, 0, 0], [at + mount.width / 2, f.section.mountFront, f.section.floor]);
}

function placeEmitter(
  b: Bench,
  { run, beam, motions }: { run: RailRun; beam: RailRun['beams'][number]; motions: Readonly<Record<Pose, Matrix>> },
): PlacedEmitter {
  const { layout, k } = b;
  const { mount, spec, frame: f } = layout;
  const stem = `${beam.line}-${beam.index}`;
  const base = multiply(run.matrix, mountInRail(b, beam.at));
  const rail = railName(run, beam.at);
  const mid = mount.width / 2;

  const mountPart = b.posed('tilt-mount', 'tilt mount', () => drawMountAtPoses(k, spec, mount));
  const name = b.place({
    name: `${stem}-mount`,
    part: mountPart,
    matrix: base,
    touches: [rail],
    overlaps: [
      {
        with: rail,
        most: bumpsInMount(side(spec, 'snug')),
        why: 'two bumps on the rib press the mount against the other rib, so that it has no play in yaw',
      },
    ],
  });
  /** Places of what rides on the arm: local place at level, or one for each pose. */
  const riding = (local: Matrix | Readonly<Record<Pose, Matrix>>): Pick<Placement, 'matrix' | 'rides'> => {
    const at = (pose: Pose) =>
      multiply(base, motions[pose], Array.isArray(local) ? local : (local as Record<Pose, Matrix>)[pose]);
    return { matrix: at('level'), rides: { lowest: at('lowest'), highest: at('highest') } };
  };
  const nutPlay = NUT_WALLS.play;
  const slide = side(spec, 'slide');
  const nut = (what: string, u: number, w: number, rides: boolean, size: typeof spec.screws.fix) => {
    const local = upright([u, w, mid]);
    const placed = b.place({
      name: `${stem}-${what}-nut`,
      part: b.nut(size),
      ...(rides ? riding(local) : { matrix: multiply(base, local) }),
      touches: [name],
    });
    b.fit({ a: name, b: placed, what: `the ${what} nut in its pocket`, fitClass: 'slide', drawn: slide });
    return placed;
  };
  const clampNut = nut('clamp', mount.clamp.at, mount.seat.nutFloor + nutPlay, true, spec.screws.clamp);
  const adjustNut = nut('adjust', mount.adjust.at, mount.adjust.nutFloor + nutPlay, true, spec.screws.adjust);
  const fixNut = nut('fix', mount.fix.at, mount.fix.nutFloor, false, spec.screws.fix);

  const pinDiameter = 2 * mount.pin.radius;
  const pin = b.place({
    name: `${stem}-pin`,
    part: b.bought(
      {
        id: `pin-${pinDiameter}x${mount.pin.length}`,
        title: `parallel pin ${pinDiameter} × ${mount.pin.length}`,
        material: 'steel',
        densityGcm3: 7.85,
        order: { standard: 'ISO 2338', size: `Ø${pinDiameter}`, lengthMm: mount.pin.length },
      },
      () => drawPin(k, mount.pin),
    ),
    matrix: multiply(base, translation([mount.pin.at[0], mount.pin.at[1], mount.pin.from + 0.1])),
    touches: [name],
  });
  b.fit({ a: name, b: pin, what: 'the pin in its groove', fitClass: 'snug', drawn: side(spec, 'snug') });

  const { barrel, collar } = placeBody(b, { stem, mount: name, riding });
  const wires = b.place({
    name: `${stem}-wires`,
    part: b.bought(
      {
        id: 'emitter-wires',
        title: 'pair of wires at the emitter',
        material: 'copper and insulation',
        densityGcm3: 3,
        order: { standard: '', size: `Ø${mount.wire.diameter}`, lengthMm: null },
      },
      () => drawWires(k, mount),
    ),
    ...riding(translation([0, 0, 0])),
    touches: [barrel],
  });

  const clampTop = mount.axis + mount.barrel.radius + mount.clamp.screwLength;
  const clamp = b.screw({
    name: `${stem}-clamp-screw`,
    head: 'set',
    size: spec.screws.clamp,
    length: mount.clamp.screwLength,
    ...riding(upright([mount.clamp.at, clampTop, mid])),
    into: {
      kind: 'nut',
      nut: clampNut,
      beyond: mount.seat.nutFloor + nutPlay - mount.axis - mount.barrel.radius,
    },
    tipRoom: null,
    when: 'covers on',
    through: [name, mount.sleeve ? collar : barrel],
  });
  const adjustThread = threads[spec.screws.adjust];
  const { standoff } = mount.adjust;
  const adjustAt = (pose: Pose) =>
    upright([mount.adjust.at, mount.arm.neckTop + standoff[pose] + adjustThread.capHeight.value, mid]);
  const reachLeast = mount.adjust.screwLength - standoff.highest;
  const adjust = b.screw({
    name: `${stem}-adjust-screw`,
    head: 'cap',
    size: spec.screws.adjust,
    length: mount.adjust.screwLength,
    ...riding({ lowest: adjustAt('lowest'), level: adjustAt('level'), highest: adjustAt('highest') }),
    into: {
      kind: 'nut',
      nut: adjustNut,
      beyond: reachLeast - (mount.arm.neckTop - mount.adjust.nutFloor - nutPlay),
    },
    tipRoom: null,
    when: 'covers on',
    through: [name, pin],
  });
  const fixThread = threads[spec.screws.fix];
  const fixLength = mount.fix.screwLength;
  const fixScrew = b.screw({
    name: `${stem}-fix-screw`,
    head: 'sunk',
    size: spec.screws.fix,
    length: fixLength,
    matrix: multiply(base, frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [mount.fix.at, -f.section.floor, mid])),
    into: {
      kind: 'nut',
      nut: fixNut,
      beyond: fixLength - f.section.floor - mount.fix.nutFloor - fixThread.nutHeight.value,
    },
    tipRoom:
      mount.fix.nutFloor + fixThread.nutHeight.value + nutPlay + mount.fix.tipRoom - (fixLength - f.section.floor),
    when: 'at its step',
    through: [rail, name],
  });
  return {
    mount: name,
    barrel,
    fixScrew,
    riders: [clampNut, adjustNut, fixNut, pin, barrel, collar, wires, clamp, adjust],
  };
}

/**
 * What the tips of both bumps share with the mount, and a tenth [mm³]: of a triangle as high as gap and crush together, the
 * part beyond the gap.
 */
function bumpsInMount(gap: number): number {
  const tip = (BUMP.breadth * BUMP.crush ** 2) / (2 * (gap + BUMP.crush));
  return Math.ceil(2 * tip * RIB_HEIGHT * 1.1 * 100) / 100;
}

const COLLARED =
  'Press a collar on the rear of each barrel, wires through it, and push the barrel into its seat from behind';
const INTO_SLEEVE = 'then the emitter with its wires into the sleeve until its front is flush';
const SLEEVED = `Push each sleeve into its seat from behind, its collar outside, ${INTO_SLEEVE}`;
/** The mark on the collar shows the way the barrel leans. */
const leaning = (lean: Rad) =>
  `Push each sleeve into its seat from behind, its collar outside, the flat between two of its notches up: that is the way its bore leans and the beam points, by ${Number(deg(lean).toFixed(2))}°; ${INTO_SLEEVE}`;
const STAND =
  'Turn in the clamp screw until it just holds the barrel, and the adjusting screw until the arm stands level';
const STAND_LEANING =
  'Turn in the clamp screw until it just holds the sleeve, and the adjusting screw until the barrel, not the arm, stands level';

/** Steps at the bench for all mounts at once. */
export function benchSteps(b: Bench, emitters: readonly PlacedEmitter[]): void {
  const { mount, spec } = b.layout;
  const [clampTool, adjustTool] = [hexKey(spec.screws.clamp, 'set').name, hexKey(spec.screws.adjust, 'cap').name];
  const side = mount.width / 2 + 4;
  const each = (pick: (e: PlacedEmitter, i: number) => Move[]) => emitters.flatMap(pick);
  const of = (e: PlacedEmitter, i: number) => e.riders[i]!;
  b.step('Slide three nuts and the pin into each mount, from the side that was up in print', {
    joins: emitters.map((e) => e.mount),
    hardware: emitters.flatMap((e) => e.riders.slice(0, 4)),
    moves: each((e) => [0, 1, 2, 3].map((i) => move(of(e, i), INTO_SIDE, side, { inFrameOf: e.mount }))),
  });
  const lean = mount.sleeve?.lean ?? (0 as Rad);
  // The arm stands tilted down by the lean: what slides along it or across it does so, the barrel goes in level.
  const aligned = planeMatrix(poseMotion(mount.leaf, 'level'), mount.origin);
  const alongArm = applyDirection(aligned, FORWARD);
  const downArm = applyDirection(aligned, DOWN);
  b.step(lean > 0 ? leaning(lean) : mount.sleeve ? SLEEVED : COLLARED, {
    joins: emitters.map((e) => of(e, 5)),
    hardware: emitters.flatMap((e) => [of(e, 4), of(e, 6)]),
    // A flange comes to rest inside the sleeve: the emitter follows it in.
    moves: each((e) =>
      (mount.sleeve ? [5, 4, 6] : [4, 5, 6]).map((i) =>
        move(of(e, i), i === 5 ? alongArm : FORWARD, mount.length, { inFrameOf: e.mount }),
      ),
    ),
  });
  b.step(lean > 0 ? STAND_LEANING : STAND, {
    joins: [],
    hardware: emitters.flatMap((e) => [of(e, 7), of(e, 8)]),
    moves: each((e) =>
      [7, 8].map((i) => move(of(e, i), downArm, 15, { inFrameOf: e.mount, tool: i === 7 ? clampTool : adjustTool })),
    ),
  });
}

/** Mounts into the rails from above, and the screws that fix them from below. */
export function lowerMounts(b: Bench, emitters: readonly PlacedEmitter[]): void {
  const travel = b.layout.frame.section.height + 5;
  b.step(
    'With the rail pushed over the edge of the table, lower each mount between its ribs, wires first, and fix it with a screw from below',
    {
      joins: [],
      hardware: emitters.map((e) => e.fixScrew),
      moves: emitters.flatMap((e) => [
        move(e.mount, [0, 0, -1], travel),
        move(e.fixScrew, [0, 0, 1], 15, { tool: hexKey(b.layout.spec.screws.fix, 'sunk').name }),
      ]),
    },
  );
}

/** Name of the placed segment under a place along a rail. */
export function railName(run: RailRun, at: number): string {
  const i = run.segments.findIndex((segment) => at >= segment.from && at <= segment.from + segment.length);
  return segmentName(run, i);
}

export const segmentName = (run: RailRun, i: number): string =>
  `${run.side}-rail${run.segments.length > 1 ? `-${i + 1}` : ''}`;
