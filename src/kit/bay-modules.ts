/** Boards on their posts and under their clips, and the battery between its ribs. */
import { threads } from '../components/index.js';
import { CLIP } from '../layout/bay/footprint.js';
import type { PlacedModule, Unit } from '../layout/bay/types.js';
import type { LayoutWithBay } from '../layout/layout.js';
import { clipScrewAt, drawBoardClip, onEdge } from '../parts/bay-clips.js';
import { drawModule } from '../parts/module.js';
import { frame, multiply, rotation, translation } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import { reachesOf } from './bay-reaches.js';
import { trayMatrix, trayName } from './bay-trays.js';
import { type Bench, formedOverlap, hexKey, move } from './bench.js';
import type { Move } from './types.js';

/** A knob stands out of the lid by this. */
const KNOB_OUT = 1.5;
/** A module is lowered from over the walls. */
const LOWERED = 8;

export const moduleName = ({ module }: PlacedModule): string => `bay-${module.id}`;

/** From a board's coordinates to its tray's. */
export function boardMatrix({ module: { part }, turn, outline, z }: PlacedModule): Matrix {
  const [l, w] = [part.length.value, part.width.value];
  const corner = { 0: [0, 0], 90: [w, 0], 180: [l, w], 270: [0, l] } as const;
  const [dx, dy] = corner[turn];
  return multiply(translation([outline[0] + dx, outline[1] + dy, z]), rotation('z', (turn * Math.PI) / 180));
}

/** @param kind - batteries come last of all, when nothing else is open */
export function placeModules(b: Bench, layout: LayoutWithBay, kind: Unit['kind']): void {
  const joins: string[] = [];
  const hardware: string[] = [];
  const moves: Move[] = [];
  layout.bay.units.forEach((unit, i) => {
    if (unit.kind !== kind) return;
    for (const placed of unit.modules) {
      const one = placeModule(b, layout, { placed, unit, tray: trayName(i) });
      hardware.push(one.name, ...one.screws);
      joins.push(...one.clips);
      moves.push(...one.moves);
    }
  });
  if (hardware.length === 0) return;
  b.step(
    kind === 'battery'
      ? 'Lay the battery between its ribs and connect it only now; keep to its maker’s rules for handling, charging and fire, and never use a swollen or damaged cell'
      : 'Lower each board onto its posts or between its bars, screw it down, or lay a clip over each edge and screw that; solder wires away from the plastic',
    { joins, hardware, moves },
  );
}

interface ModulePlace {
  readonly placed: PlacedModule;
  readonly unit: Unit;
  readonly tray: string;
}

function placeModule(b: Bench, layout: LayoutWithBay, { placed, unit, tray }: ModulePlace) {
  const { bay, spec } = layout;
  const { module, fixing, z } = placed;
  const { part } = module;
  const base = trayMatrix(layout, unit);
  const volume =
    part.length.value * part.width.value * (part.thickness.value + (part.cell ? 0 : 0.5 * part.above.value));
  const reach = bay.height + bay.lid + KNOB_OUT - z;
  const name = b.place({
    name: moduleName(placed),
    part: b.bought(
      {
        id: `module-${module.name}`,
        title: part.title,
        material: 'as bought',
        densityGcm3: (part.massG.value / volume) * 1000,
        order: { standard: '', size: `${part.length.value} × ${part.width.value}`, lengthMm: null },
      },
      () => drawModule(b.k, part, { reach }),
    ),
    matrix: multiply(base, boardMatrix(placed)),
    touches: [tray],
  });
  for (const one of reachesOf(placed, { placement: name, bay })) b.reach(one);
  const lowered = bay.height - z + LOWERED;
  const moves: Move[] = [move(name, [0, 0, -1], lowered)];
  const clips: string[] = [];
  const screws: string[] = [];
  const top = z + part.thickness.value;
  if (fixing.kind === 'screws') {
    const head = threads[fixing.size].capHeight.value;
    for (const [j, [x, y]] of fixing.at.entries()) {
      const screw = b.screw({
        name: `${name}-screw-${j + 1}`,
        head: 'cap',
        size: fixing.size,
        length: fixing.length,
        matrix: multiply(base, translation([x, y, top + head])),
        overlaps: [formedOverlap(layout, { with: tray, engaged: fixing.engaged, standing: true, size: fixing.size })],
        into: { kind: 'formed', part: tray, engaged: fixing.engaged },
        tipRoom: 1,
        when: 'at its step',
        through: [name],
      });
      screws.push(screw);
      moves.push(move(screw, [0, 0, -1], lowered, { tool: hexKey(fixing.size, 'cap').name }));
    }
  }
  if (fixing.kind === 'clips') {
    const size = spec.screws.fix;
    for (const [j, bar] of fixing.bars.entries()) {
      const { out } = bar;
      const clip = b.place({
        name: `${name}-clip-${j + 1}`,
        part: b.printed('board-clip', 'clip over a board’s edge', () => drawBoardClip(b.k, spec)),
        matrix: multiply(
          base,
          frame([out[1], -out[0], 0], [out[0], out[1], 0], [0, 0, 1], [bar.at[0], bar.at[1], top]),
        ),
        touches: [name, tray],
      });
      clips.push(clip);
      const [x, y] = onEdge(bar)([0, clipScrewAt(spec)]);
      const screw = b.screw({
        name: `${clip}-screw`,
        head: 'cap',
        size,
        length: fixing.length,
        matrix: multiply(base, translation([x, y, top + CLIP.plate + threads[size].capHeight.value])),
        overlaps: [formedOverlap(layout, { with: tray, engaged: fixing.engaged, standing: true })],
        into: { kind: 'formed', part: tray, engaged: fixing.engaged },
        tipRoom: 1,
        when: 'at its step',
        through: [clip],
      });
      screws.push(screw);
      moves.push(move(clip, [0, 0, -1], lowered), move(screw, [0, 0, -1], lowered, { tool: hexKey(size, 'cap').name }));
    }
  }
  return { name, clips, screws, moves };
}
