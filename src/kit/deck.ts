/** Deck: tiles, splice plates below their seams, legends. */
import { tileAt } from '../layout/deck.js';
import { deckScrewAt } from '../layout/deck-screws.js';
import { drawDeckSplice } from '../parts/deck-splice.js';
import { drawDeckTile, tileMatrix } from '../parts/deck-tile.js';
import { frame, translation } from '../solid/matrix.js';
import { type Bench, fixKey, formedOverlap, move } from './bench.js';
import { BRACKETS } from './frame.js';
import { type Lettering, liesOn, writeLegends } from './legends.js';
import { railName, segmentName } from './mounts.js';
import type { Move } from './types.js';

export function placeDeck(b: Bench, lettering: Lettering): void {
  const { layout, k } = b;
  const { deck, frame: f } = layout;
  const many = deck.tiles.length > 1;
  const carriers = layout.runs.flatMap((run) => run.segments.map((_, i) => segmentName(run, i)));
  const brackets = [...BRACKETS, ...layout.runs.flatMap((run) => run.seams.map((_, i) => `${run.side}-bar-${i + 1}`))];
  const legends = writeLegends(layout, lettering);
  for (const { label, place, stroke } of legends) b.legend({ label, place, stroke });
  const tiles = deck.tiles.map((tile, i) => {
    const id = many ? `deck-tile-${i + 1}` : 'deck-tile';
    return b.place({
      name: many ? `deck-${i + 1}` : 'deck',
      part: b.printed(id, 'deck tile', () =>
        drawDeckTile(k, layout, { tile, legends: legends.filter((one) => one.engraved && liesOn(tile, one.at)) }),
      ),
      matrix: tileMatrix(tile),
      touches: [...carriers, ...brackets],
    });
  });
  const moves: Move[] = tiles.slice(1).map((name, i) => {
    const tile = deck.tiles[i + 1]!;
    // File axes: x as in the kit, y mirrored.
    return move(name, tile.seams.left ? [-1, 0, 0] : [0, 1, 0], 20, { inFrameOf: tiles[0]! });
  });
  const joins = [...tiles];
  const hardware: string[] = [];
  const under = -f.section.deck - deck.ribDepth;
  deck.splices.forEach((splice, i) => {
    const length = splice.to - splice.from;
    const id = `deck-splice-${Math.round(length * 10) / 10}-${splice.screws.length}`;
    const turned = splice.along === 'y';
    const plate = b.place({
      name: `deck-plate-${i + 1}`,
      part: b.printed(id, 'splice plate under the deck', () => drawDeckSplice(k, layout, splice)),
      // File: x along the seam from the plate's start, y across from the seam, z up with its top at the ribs.
      matrix: turned
        ? frame([0, 1, 0], [-1, 0, 0], [0, 0, 1], [splice.at, splice.from, under - deck.plate.thickness])
        : frame([1, 0, 0], [0, 1, 0], [0, 0, 1], [splice.from, splice.at, under - deck.plate.thickness]),
      touches: tiles,
    });
    joins.push(plate);
    // The file's z points down in the tile's file: up in the kit is −z there.
    moves.push(move(plate, [0, 0, -1], 15, { inFrameOf: tiles[0]! }));
    for (const at of splice.screws)
      for (const off of [-deck.strip / 2, deck.strip / 2]) {
        const [x, y] = turned ? [splice.at + off, at] : [at, splice.at + off];
        const tile = tiles[tileAt(deck, [x, y])]!;
        const name = b.screw({
          name: `${plate}-screw-${hardware.length + 1}`,
          head: 'sunk',
          size: layout.spec.screws.fix,
          length: deck.screwLength,
          matrix: frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [x, y, under - deck.plate.thickness]),
          overlaps: [formedOverlap(layout, { with: tile, engaged: deck.engaged, standing: true })],
          into: { kind: 'formed', part: tile, engaged: deck.engaged },
          tipRoom: deck.pilotDepth - deck.engaged,
          when: 'at its step',
          through: [plate],
        });
        hardware.push(name);
        moves.push(move(name, [0, 0, -1], deck.screwLength + 3, { inFrameOf: tiles[0]!, tool: fixKey(b) }));
      }
  });
  if (many)
    b.step('Lay the deck tiles face down, push them together, and screw the splice plates over the seams', {
      joins,
      hardware,
      moves,
    });
  lowerDeck(b, tiles);
}

/** The deck goes in whole, from above; its screws hold it, or it lies loose where no rail has room for them. */
function lowerDeck(b: Bench, tiles: readonly string[]): void {
  const { deck, deckHold, grid, frame: f, runs } = b.layout;
  const hardware = deckHold.screws.map((screw, i) => {
    const [x, y] = deckScrewAt(deckHold, screw, grid);
    const tile = tiles[tileAt(deck, [x, y])]!;
    const rail = railName(runs.find(({ side }) => side === screw.side)!, screw.at);
    return b.screw({
      name: `deck-screw-${i + 1}`,
      head: 'sunk',
      size: b.layout.spec.screws.fix,
      length: deckHold.length,
      matrix: translation([x, y, 0]),
      overlaps: [formedOverlap(b.layout, { with: rail, engaged: deckHold.engaged, standing: true })],
      into: { kind: 'formed', part: rail, engaged: deckHold.engaged },
      tipRoom: deckHold.pilotDepth - deckHold.engaged,
      when: 'at its step',
      through: [tile],
    });
  });
  const held = hardware.length > 0;
  b.step(
    held
      ? `Lower the deck onto the sills and screw it down near its corners; to take it out again, undo these ${hardware.length} screws and push it up from below`
      : 'Lower the deck onto the sills: it lies loose, so hold it when the kit is turned over; to take it out again, push it up from below',
    {
      joins: tiles.length > 1 ? [] : tiles,
      hardware,
      moves: [
        move(tiles[0]!, [0, 0, -1], f.section.height),
        ...hardware.map((name) => move(name, [0, 0, -1], deckHold.length + 3, { tool: fixKey(b) })),
      ],
    },
  );
}
