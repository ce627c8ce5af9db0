/** Kits with boards: they go together, boards stand where receivers' legs come, and what is wrong with them is found. */
import { beforeAll, describe, expect, test } from 'vitest';
import { fits as fitsCheck } from '../../src/checks/fits.js';
import { insertion } from '../../src/checks/insertion.js';
import { interference } from '../../src/checks/interference.js';
import { threads } from '../../src/components/index.js';
import { PresetError } from '../../src/errors.js';
import type { Kit } from '../../src/kit/types.js';
import { layOut } from '../../src/layout/lay-out.js';
import { apply, multiply, translation } from '../../src/solid/matrix.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { type Drawn, draw, openWorkshop, said, sceneOf, shipped, type Workshop } from './make.js';

let shop: Workshop;
let both: Drawn;
const bench = (boards: string) => `${shipped('greenhouse-bench')}\nboards: ${boards}\n`;
const small = (more: string) => `grid: { rows: 2, columns: 3, pitch: 20 }\n${more}\n`;
beforeAll(async () => {
  shop = await openWorkshop();
  both = draw(shop, bench('{ emitters: true }'));
});

describe('nothing is in the way of anything', () => {
  test.for([
    ['carriers alone', small('boards: {}')],
    ['supply boards alone', small('boards: { receivers: false, emitters: true }')],
    ['thin boards, small panels', small('boards: { emitters: true, panel: { x: 50, y: 40 }, thickness: 0.8 }')],
    [
      'thick boards in one piece',
      `${shipped('tight-cue-strip')}\nboards: { emitters: true, panel: { x: 300, y: 300 }, thickness: 2.4 }`,
    ],
    ['two legs, low body', small('receivers: { part: side-looker }\nboards: { emitters: true }')],
    ['legs a tenth of an inch apart', small('receivers: { part: three-leg-formed }\nboards: {}')],
    [
      'LEDs, lit one by one',
      small('emitters: { part: led-5-red }\nscan: { light_us: 150 }\nboards: { emitters: true }'),
    ],
    ['rails in pieces, cells unequal', shipped('glaze-selector')],
  ] as const)('%s', { timeout: 120_000 }, ([, preset]) => {
    const { findings, inPieces } = said(shop, preset);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(inPieces).toEqual([]);
    expect(findings.filter(({ code }) => code === 'boards/panels')).toHaveLength(1);
  });
});

test('each leg comes in the middle of its hole in the middle row', () => {
  const { kit, layout } = both;
  const { boards, places } = kit.boards!;
  const matrixOf = (name: string) => kit.placements.find((one) => one.name === name)!.matrix;
  let legs = 0;
  for (const { board: id, placement, beams } of places.filter(({ board }) => board.startsWith('carrier')))
    for (const [i, beam] of beams.entries()) {
      const receiver = matrixOf(`${beam}-receiver`);
      const holes = boards
        .find((one) => one.id === id)!
        .holes.filter(({ label }) => label.startsWith(`line ${i + 1}, leg`));
      expect(holes).toHaveLength(9);
      for (const k of [-1, 0, 1]) {
        // TO-92: three legs 1.27 apart, 0.46 thick (public outline drawings); they are bent back under the lid.
        const leg = apply(receiver, [-30, 1.27 * k, layout.socket.legs.top - 0.23 - layout.socket.axis]);
        const met = holes.filter((hole) => {
          const at = apply(matrixOf(placement), [hole.x, hole.y, 0]);
          const along = beam.startsWith('column') ? 0 : 1;
          return Math.hypot(at[along]! - leg[along]!, at[2] - leg[2]) < 0.01;
        });
        expect(met.map(({ d }) => d)).toEqual([0.65]);
        legs++;
      }
    }
  expect(legs).toBe(30);
});

test('the other rows stand a slide to the side and a tenth of an inch up and down; by hand on the near rail', () => {
  const carrier = both.kit.boards!.boards.find(({ id }) => id === 'carrier-1')!;
  // The first beam stands 18 from the rail's end, the board begins beside the post's top: 10 + 0.4.
  expect([carrier.length, carrier.beams]).toEqual([2 * 7.6 + 44, [7.6, 29.6, 51.6]]);
  const first = carrier.holes.filter(({ label }) => /^line 1, leg/.test(label)).map(({ x, y }) => [x, y]);
  const [low, , middle, , high] = [0, 1, 4, 5, 7].map((i) => first[i]!);
  expect([middle![0]! - 1.5, middle![1]! - 2.54].map((v) => v.toFixed(3))).toEqual(first[1]!.map((v) => v.toFixed(3)));
  expect([middle![0]! + 1.5, middle![1]! + 2.54].map((v) => v.toFixed(3))).toEqual(high!.map((v) => v.toFixed(3)));
  expect(low![0]).toBeCloseTo(7.6 - 1.5 - 1.27, 9);
  expect(middle![0]).toBeCloseTo(7.6, 9);
});

test('every board has mounting holes for M2.5 with 1.5 mm left around, a resistor a line, pads a line and for both poles', () => {
  // ISO 273, medium series: 2.9 for M2.5.
  expect(threads['M2.5'].clearance.value).toBe(2.9);
  for (const { kind, beams, length, height, holes } of both.kit.boards!.boards) {
    const of = (use: string) => holes.filter((hole) => hole.use === use);
    expect(of('mounting').map(({ d, x }) => [d, Math.min(x, length - x).toFixed(2)])).toEqual([
      [2.9, '2.95'],
      [2.9, '2.95'],
    ]);
    expect(of(kind === 'receiver' ? 'pull-up' : 'resistor')).toHaveLength(2 * beams.length);
    const pads = new Set(of('pad').map(({ label }) => label));
    const lines = kind === 'receiver' ? beams.map((_, i) => `line ${i + 1}`) : [];
    expect([...pads].sort()).toEqual(['ground', ...lines, 'supply']);
    if (kind === 'emitter')
      expect([of('wire').length, of('relief').length]).toEqual([2 * beams.length, 2 * beams.length]);
    for (const { x, y, d, ring } of holes)
      expect(Math.min(x, y, length - x, height - y) - d / 2).toBeGreaterThanOrEqual(ring - 2e-3);
  }
});

test('with carriers sockets go first, then receivers with their carrier, then lids; without, as ever', () => {
  const steps = (kit: Kit) => kit.assembly.map(({ title }) => title);
  const at = (titles: readonly string[], what: RegExp) => titles.findIndex((title) => what.test(title));
  const titles = steps(both.kit);
  const order = [
    /^Set each socket/,
    /plug them into the middle row/,
    /^Lower each carrier/,
    /^Press a lid/,
    /covers on the rails/,
  ];
  const found = order.map((what) => at(titles, what));
  expect(found.every((place, i) => place >= 0 && (i === 0 || place > found[i - 1]!))).toBe(true);
  const plain = steps(draw(shop, shipped('greenhouse-bench')).kit);
  expect([at(plain, /carrier|supply board/), at(plain, /press the lid on/) < at(plain, /^Set each socket/)]).toEqual([
    -1,
    true,
  ]);
});

describe('a board out of its place is found', () => {
  const moved = (name: string, by: readonly [number, number, number]): Kit => ({
    ...both.kit,
    placements: both.kit.placements.map((one) =>
      one.name === name ? { ...one, matrix: multiply(one.matrix, translation(by)) } : one,
    ),
  });
  const codes = (check: typeof insertion, kit: Kit) =>
    check
      .run({ kit, spec: both.layout.spec, kernel: shop.kernel, scene: sceneOf(shop, kit) })
      .map(({ code, subject }) => `${code} ${subject}`);

  test('as drawn there is nothing', () => {
    for (const check of [insertion, interference, fitsCheck]) expect(codes(check, both.kit)).toEqual([]);
  });
  test('a millimetre forward it stands in its guides and meets a cheek on the way down', () => {
    const kit = moved('near-board-1', [0, 0, 1]);
    expect(codes(interference, kit)).toContain('interference/overlap near-rail / near-board-1');
    expect(codes(insertion, kit)).toContain('insertion/blocked near-board-1');
  });
  test('play in the guides of a tenth more than the class is no longer the fit that is drawn', () => {
    expect(codes(fitsCheck, moved('left-board', [0, 0, 0.1]))).toEqual(['fit/not-as-drawn left-rail / left-board']);
  });
});

describe('what a preset asks of boards and can’t have', () => {
  const mistakesOf = (preset: string) => {
    try {
      layOut(readPreset(preset, 'tested.yaml'));
    } catch (error) {
      if (error instanceof PresetError)
        return error.mistakes.map(({ code, path, hint = '' }) => ({ code, path, hint }));
      throw error;
    }
    return [];
  };
  test('a panel smaller than one receiver’s place: the least that would do is told, does, and less does not', () => {
    const [mistake] = mistakesOf(bench('{ panel: { x: 22, y: 20 } }'));
    expect(mistake).toMatchObject({ code: 'preset/panel-too-small', path: 'boards.panel' });
    const [x, y] = /([\d.]+) × ([\d.]+)/.exec(mistake!.hint)!.slice(1).map(Number) as [number, number];
    // By hand: 2 · (slide 1.5 + 1.27 + half a drill 0.325 + edge 1) is 8.19, 2 · (half of 5.08 + 0.45 + 1) is 7.98.
    expect([x, y]).toEqual([8.2, 22.4]);
    expect(mistakesOf(bench(`{ panel: { x: ${y}, y: 20 } }`))).toEqual([]);
    expect(mistakesOf(bench(`{ panel: { x: ${y - 0.1}, y: 20 } }`))).toHaveLength(1);
  });
  test('legs so close that their holes would meet', () => {
    const legs = (pitch: number) => small(`receivers: { part: { base: three-leg, leg_pitch: ${pitch} } }\nboards: {}`);
    expect(mistakesOf(legs(1.1))).toMatchObject([{ code: 'preset/legs-too-close', path: 'receivers.part.leg_pitch' }]);
    expect(mistakesOf(legs(1.15))).toEqual([]);
    expect(mistakesOf(legs(1.1).replace('{}', '{ receivers: false, emitters: true }'))).toEqual([]);
  });
  test('a margin that would bring holes over a board’s end', () => {
    const margin = (boards: string) =>
      `grid: { rows: 4, columns: 5, pitch: 20 }\nreceivers: { part: { base: three-leg-formed, legs: 4 } }\nframe: { margin: 16.8 }\n${boards}`;
    const found = mistakesOf(margin('boards: {}'));
    const without = mistakesOf(margin(''));
    expect([found.map(({ code }) => code), without]).toEqual([['preset/margin-too-small'], []]);
  });
});
