/** Lids of the trays, rods for their lamps, and the battery's door. */

import { PIPE } from '../layout/bay/openings.js';
import type { Unit } from '../layout/bay/types.js';
import { side } from '../layout/fits.js';
import type { LayoutWithBay } from '../layout/layout.js';
import { drawBayLid, lidMatrix } from '../parts/bay-lid.js';
import { drawLightPipe } from '../parts/module.js';
import { multiply, translation } from '../solid/matrix.js';
import { trayMatrix, trayName } from './bay-trays.js';
import { type Bench, fixKey, formedOverlap, move } from './bench.js';
import type { Move } from './types.js';

/** @param covers - of the rail that it lies beside */
export function placeLids(b: Bench, layout: LayoutWithBay, kind: Unit['kind']): void {
  const { bay, frame: f } = layout;
  const joins: string[] = [];
  const hardware: string[] = [];
  const moves: Move[] = [];
  bay.units.forEach((unit, i) => {
    if (unit.kind !== kind) return;
    const tray = trayName(i);
    const base = trayMatrix(layout, unit);
    const stem = kind === 'battery' ? 'door' : 'lid';
    const lid = b.place({
      name: `bay-${stem}-${i + 1}`,
      part: b.printed(`bay-${stem}-${i + 1}`, kind === 'battery' ? 'battery door' : 'lid of the electronics bay', () =>
        drawBayLid(b.k, layout, unit),
      ),
      matrix: multiply(base, lidMatrix(layout)),
      touches: [tray],
    });
    joins.push(lid);
    for (const [j, pipe] of unit.pipes.entries()) {
      const length = Math.round(100 * (bay.height + bay.lid - pipe.from)) / 100;
      const rod = b.place({
        name: `bay-light-pipe-${i + 1}-${j + 1}`,
        part: b.bought(
          {
            id: `light-pipe-${PIPE.diameter}x${length}`,
            title: `clear rod Ø${PIPE.diameter}, cut to ${length}`,
            material: 'acrylic',
            densityGcm3: 1.19,
            order: { standard: '', size: `Ø${PIPE.diameter}`, lengthMm: length },
          },
          () => drawLightPipe(b.k, { diameter: PIPE.diameter, length }),
        ),
        matrix: multiply(base, translation([pipe.at[0], pipe.at[1], pipe.from])),
        touches: [lid],
      });
      b.fit({ a: lid, b: rod, what: 'the rod in the lid', fitClass: 'press', drawn: side(layout.spec, 'press') });
      hardware.push(rod);
      // The lid's file has the kit's down as its z.
      moves.push(move(rod, [0, 0, 1], length + 5, { inFrameOf: lid }));
    }
    moves.push(move(lid, [0, 0, -1], 20));
    for (const [j, [x, y]] of unit.bosses.entries()) {
      const screw = b.screw({
        name: `${lid}-screw-${j + 1}`,
        head: 'sunk',
        size: layout.spec.screws.fix,
        length: f.boss.screwLength,
        matrix: multiply(base, translation([x, y, bay.height + bay.lid])),
        overlaps: [formedOverlap(layout, { with: tray, engaged: f.boss.engaged, standing: true })],
        into: { kind: 'formed', part: tray, engaged: f.boss.engaged },
        tipRoom: f.boss.pilotDepth - f.boss.engaged,
        when: 'at its step',
        through: [lid],
      });
      hardware.push(screw);
      moves.push(move(screw, [0, 0, -1], 15, { tool: fixKey(b) }));
    }
  });
  if (joins.length === 0) return;
  b.step(
    kind === 'battery'
      ? 'Screw the battery’s door on'
      : 'Lead the wires through the notches, tie the bundle to the rib beside them, lay the lid on and screw it down',
    { joins, hardware, moves },
  );
}
