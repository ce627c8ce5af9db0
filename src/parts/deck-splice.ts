/** Plate under a seam of the deck: x along the seam from the plate's start, y across from the seam, z up. Prints flat. */
import type { DeckSplice } from '../layout/deck.js';
import type { Layout } from '../layout/layout.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { box } from '../solid/shapes.js';
import { sunkHole } from './holes.js';

export function drawDeckSplice(k: Kernel, layout: Layout, splice: DeckSplice): Solid {
  const { plate, strip } = layout.deck;
  const cuts = splice.screws.flatMap((at) =>
    [-strip / 2, strip / 2].map((y) =>
      sunkHole(k, layout.spec, { at: [at - splice.from, y, 0], way: '+z', depth: plate.thickness + 1 }),
    ),
  );
  return k.subtract(
    box(k, [0, -plate.width / 2, 0], [splice.to - splice.from, plate.width / 2, plate.thickness]),
    cuts,
  );
}
