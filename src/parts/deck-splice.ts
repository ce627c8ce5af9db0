/** Plate under a seam of the deck: x along the seam from the plate's start, y across from the seam, z up. Prints flat. */
import type { DeckSplice } from '../layout/deck.js';
import type { Layout } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import type { Vec3 } from '../solid/mesh.js';
import { atPlaces, box } from '../solid/shapes.js';
import { sunkHole } from './holes.js';

export function drawDeckSplice(k: Kernel, layout: Layout, splice: DeckSplice): Solid {
  const { plate, strip } = layout.deck;
  const hole = sunkHole(k, layout.spec, { at: [0, 0, 0], way: '+z', depth: plate.thickness + 1 });
  const places = splice.screws.flatMap((at) => [-strip / 2, strip / 2].map((y): Vec3 => [at - splice.from, y, 0]));
  return k.subtract(
    box(k, [0, -plate.width / 2, 0], [splice.to - splice.from, plate.width / 2, plate.thickness]),
    atPlaces(k, hole, places),
  );
}
