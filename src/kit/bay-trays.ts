/** The bay's trays: along their rail, or in a row of their own, each screwed on; and the feet below them. */
import { JOINT, jointPlaces } from '../layout/bay/sizes.js';
import type { Unit } from '../layout/bay/types.js';
import type { LayoutWithBay } from '../layout/layout.js';
import { drawBayTray } from '../parts/bay-tray.js';
import { drawFoot, FOOT } from '../parts/module.js';
import { apply, applyDirection, frame, multiply, translation } from '../solid/matrix.js';
import type { Matrix, Vec3 } from '../solid/mesh.js';
import { type Bench, fixKey, formedOverlap, move } from './bench.js';
import { coverName } from './covers.js';
import { POSTS } from './frame.js';
import { railName, segmentName } from './mounts.js';
import type { Kit, Move } from './types.js';

export const trayName = (i: number): string => `bay-tray-${i + 1}`;

/** @returns from a tray's coordinates to the assembly's */
export const trayMatrix = ({ bay }: LayoutWithBay, unit: Unit): Matrix =>
  multiply(bay.matrix, translation([unit.from, 0, 0]));

/** Trays come to their rail before anything stands in them: their screws are turned from inside. */
export function placeTrays(b: Bench, layout: LayoutWithBay): void {
  const { bay } = layout;
  const run = layout.runs.find(({ side }) => side === bay.place);
  const rails = run ? run.segments.map((_, i) => segmentName(run, i)) : [];
  // Heads lie in the walls that it comes against; the rail's cover ends at its top edge.
  const heads = b
    .kit()
    .screws.filter(({ placement }) => [...POSTS, `${bay.place}-plate`].some((stem) => placement.startsWith(stem)));
  const beside = run
    ? [...rails, ...POSTS, ...heads.map(({ placement }) => placement), ...run.segments.map((_, i) => coverName(run, i))]
    : [];
  const moves: Move[] = [];
  const hardware: string[] = [];
  const trays = bay.units.map((unit, i) => {
    const joined = run ? { before: false, after: false } : { before: i > 0, after: i < bay.units.length - 1 };
    const title = unit.kind === 'battery' ? 'tray of the battery' : 'tray of the electronics bay';
    const name = b.place({
      name: trayName(i),
      part: b.printed(`bay-tray-${i + 1}`, title, () => drawBayTray(b.k, layout, { unit, joined })),
      matrix: trayMatrix(layout, unit),
      touches: beside,
    });
    // Against the rail from outside; apart, toward the tray before it.
    if (run) moves.push(move(name, applyDirection(bay.matrix, [0, -1, 0]), 40));
    else if (i === 0) moves.push(move(name, [0, 0, -1], 40));
    else moves.push(move(name, [-1, 0, 0], 40));
    return name;
  });
  bay.units.forEach((unit, i) => {
    const own = run
      ? unit.held.flatMap((at) =>
          bay.screw.heights.map((z) => ({
            local: frame([1, 0, 0], [0, 0, -1], [0, 1, 0], [at, bay.wall, z]),
            unit,
            through: trays[i]!,
            into: railName(run, bay.start + unit.from + at),
          })),
        )
      : i === 0
        ? []
        : joinPlaces(layout, i).map((local) => ({
            local,
            unit: bay.units[i - 1]!,
            through: trays[i - 1]!,
            into: trays[i]!,
          }));
    for (const [j, { local, unit: on, through, into }] of own.entries()) {
      const matrix = multiply(trayMatrix(layout, on), local);
      const name = b.screw({
        name: `${trays[i]!}-screw-${j + 1}`,
        head: 'sunk',
        size: layout.spec.screws.fix,
        length: bay.screw.length,
        matrix,
        overlaps: [formedOverlap(layout, { with: into, engaged: bay.screw.engaged, standing: false })],
        into: { kind: 'formed', part: into, engaged: bay.screw.engaged },
        tipRoom: JOINT.tip,
        when: 'at its step',
        shortArm: true,
        through: [through],
      });
      hardware.push(name);
      moves.push(move(name, applyDirection(matrix, [0, 0, -1]), bay.screw.length + 3, { tool: fixKey(b) }));
    }
  });
  const title = run
    ? `Hold the bay’s ${trays.length > 1 ? 'trays' : 'tray'} against the ${bay.place} rail and screw ${trays.length > 1 ? 'them' : 'it'} on from inside, with the short arm of the key`
    : trays.length > 1
      ? 'Stand the case’s trays in a row and screw each to the one before it, from inside, with the short arm of the key'
      : 'Stand the case’s tray beside the panel';
  b.step(title, { joins: trays, hardware, moves });
}

/** @returns where the rails' wires end: at the notch into a bay that hangs on one */
export function wiresInto({ bay, frame: f, runs }: LayoutWithBay): Pick<Kit, 'wiresEnd'> {
  const run = runs.find(({ side }) => side === bay.place);
  if (run === undefined || bay.rail === null) return {};
  const [from, to] = bay.rail.notch;
  return { wiresEnd: apply(run.matrix, [(from + to) / 2, f.section.width, bay.height]) };
}

/** Heads in the right wall of the tray before, tips toward this one; in that tray's coordinates. */
function joinPlaces({ bay }: LayoutWithBay, i: number): readonly Matrix[] {
  const before = bay.units[i - 1]!;
  return jointPlaces(before.size, bay.wall).flatMap((y) =>
    bay.screw.heights.map((z) => frame([0, 1, 0], [0, 0, -1], [-1, 0, 0], [before.size[0] - bay.wall, y, z])),
  );
}

const FOOT_IN = 9;

/** Once all is closed but the battery, with the panel on its back: feet under the frame's corners and the bay's outer ones, or under the case. */
export function placeFeet(b: Bench, layout: LayoutWithBay): void {
  const { bay, runs, frame: f } = layout;
  const run = runs.find(({ side }) => side === bay.place);
  const part = b.bought(
    {
      id: `foot-${FOOT.diameter}x${FOOT.height}`,
      title: `self-adhesive foot Ø${FOOT.diameter} × ${FOOT.height}`,
      material: 'rubber',
      densityGcm3: 1.1,
      order: { standard: '', size: `Ø${FOOT.diameter}`, lengthMm: FOOT.height },
    },
    () => drawFoot(b.k),
  );
  const first = bay.units[0]!;
  const last = bay.units.at(-1)!;
  const [left, right] = [FOOT_IN, last.from + last.size[0] - FOOT_IN];
  const rows = run ? [last.size[1] - FOOT_IN] : [FOOT_IN, first.size[1] - FOOT_IN];
  const under: { at: Matrix; on: string }[] = rows.flatMap((y) => [
    { at: multiply(bay.matrix, translation([left, y, 0])), on: trayName(0) },
    { at: multiply(bay.matrix, translation([right, y, 0])), on: trayName(bay.units.length - 1) },
  ]);
  if (run)
    for (const rail of runs.filter(({ side }) => side === 'far' || side === 'near'))
      for (const [at, i] of [
        [FOOT_IN, 0],
        [rail.length - FOOT_IN, rail.segments.length - 1],
      ] as const)
        under.push({
          // On the side of the field: no screw's head is there.
          at: multiply(rail.matrix, translation([at, f.section.wall + FOOT.diameter / 2, 0])),
          on: segmentName(rail, i),
        });
  const feet = under.map(({ at, on }, i) => b.place({ name: `foot-${i + 1}`, part, matrix: at, touches: [on] }));
  const up: Vec3 = [0, 0, 1];
  b.step(run ? 'Turn the panel over and stick the feet on' : 'Turn the case over and stick the feet on', {
    joins: [],
    hardware: feet,
    moves: feet.map((name) => move(name, up, 30)),
  });
}
