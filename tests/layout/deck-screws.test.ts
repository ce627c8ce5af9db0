/** The screws that hold the deck: where they stand, and that they clear what is around them. */
import { describe, expect, test } from 'vitest';
import { deckScrewAt } from '../../src/layout/deck-screws.js';
import { layOut } from '../../src/layout/lay-out.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { shipped } from '../kit/make.js';

const NAMES = ['greenhouse-bench', 'glaze-selector', 'tight-cue-strip', 'foyer-row', 'seed-library'];
const lay = (text: string) => layOut(readPreset(text, 'tested.yaml'));

/** Half the head of an M3 countersunk screw as drawn: sharp cone 1.5 + 1.86 high (ISO 10642), sunk by a tenth. */
const RIM = 3.46;
/** Pilot of an M3 forming screw, half: common practice, no source. */
const PILOT = 1.25;

describe.each(NAMES)('%s', (name) => {
  const layout = lay(shipped(name));
  const { deckHold, deck, grid, frame, runs } = layout;
  const at = deckHold.screws.map((screw) => deckScrewAt(deckHold, screw, grid));

  test('one near each corner, mirrored', () => {
    expect(at).toHaveLength(4);
    const mid = [grid.width / 2, grid.depth / 2] as const;
    expect(new Set(at.map(([x, y]) => `${x > mid[0]} ${y > mid[1]}`)).size).toBe(4);
    // 4.3 from the wall: rim and edge; the deck begins .3 from it.
    for (const [x, y] of at) {
      const fromWall = Math.min(x, y, grid.width - x, grid.depth - y);
      expect(fromWall - 0.3).toBeGreaterThan(RIM);
      // Within the sill, and plastic left around the pilot on its field side.
      expect(fromWall + PILOT).toBeLessThanOrEqual(frame.section.sill - 1.2 + 1e-9);
    }
  });

  test('the head clears the deck’s seams, the pilot the brackets and bars in the sill', () => {
    for (const [x, y] of at)
      for (const tile of deck.tiles)
        for (const [place, edges] of [
          [x, tile.x],
          [y, tile.y],
        ] as const)
          for (const edge of edges) expect(Math.abs(place - edge)).toBeGreaterThan(RIM);
    for (const { side, at: along } of deckHold.screws) {
      const run = runs.find((one) => one.side === side)!;
      for (const joint of [0, run.length, ...run.seams])
        expect(Math.abs(along - joint)).toBeGreaterThan(frame.joint.leg + PILOT);
    }
  });

  test('each ends in the piece of rail it stands over', () => {
    const held = runs.flatMap((run) =>
      run.segments.flatMap((s) => s.deckScrews.map((x) => `${run.side} ${x + s.from}`)),
    );
    expect(held.sort()).toEqual(deckHold.screws.map(({ side, at: along }) => `${side} ${along}`).sort());
  });

  test('the thread is formed over 1.5 diameters and more, and the pilot ends in the sill', () => {
    expect(deckHold.engaged).toBeGreaterThanOrEqual(4.5);
    expect(deckHold.pilotDepth).toBeGreaterThan(deckHold.engaged);
    expect(deckHold.pilotDepth).toBeLessThan(frame.section.sillTop);
  });
});

test('a field that leaves no sill between its brackets has a loose deck', () => {
  // One cell: 46 mm between walls, of which two M3 brackets take 45.
  expect(lay('grid: { rows: 1, columns: 1, pitch: 20 }\nscrews: { fix: M3 }').deckHold.screws).toEqual([]);
});

test('a deck thinner than a head is high lies loose', () => {
  // ISO 10642: an M3 head's sharp cone is 1.86 high; sunk by a tenth, two layers under it: 2.36.
  const preset = (deck: number) => `grid: { rows: 2, columns: 8, pitch: 24 }\nframe: { deck: ${deck} }`;
  expect(lay(preset(2.3)).deckHold.screws).toEqual([]);
  expect(lay(preset(2.4)).deckHold.screws).toHaveLength(4);
});
