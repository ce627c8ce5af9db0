import { beforeAll, describe, expect, test } from 'vitest';
import { insertion } from '../../src/checks/insertion.js';
import { toolAccess } from '../../src/checks/tool-access.js';
import type { Kit, Move, Step } from '../../src/kit/types.js';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { box } from '../../src/solid/shapes.js';
import { change, changeScrew, contextOf, shifted, soundKit, withThing } from './sound-kit.js';

let k: MeasuringKernel;
let sound: Kit;
beforeAll(async () => {
  k = await loadManifoldKernel();
  sound = soundKit(k);
});

const ask = (kit: Kit) => insertion.run(contextOf(k, kit));
const codes = (kit: Kit) => ask(kit).map(({ code }) => code);
const changeStep = (kit: Kit, step: number, patch: (step: Step) => Partial<Step>): Kit => ({
  ...kit,
  assembly: kit.assembly.map((one) => (one.step === step ? { ...one, ...patch(one) } : one)),
});
const changeMove = (kit: Kit, step: number, name: string, patch: Partial<Move>): Kit =>
  changeStep(kit, step, ({ moves }) => ({
    moves: moves.map((move) => (move.placement === name ? { ...move, ...patch } : move)),
  }));

describe('insertion', () => {
  test('passes the sound kit', () => expect(ask(sound)).toEqual([]));

  test('finds a nut that would have to pass through the base', () => {
    const [found, ...more] = ask(changeMove(sound, 2, 'bracket-nut', { direction: [0, 0, -1] }));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'insertion/blocked', subject: 'bracket-nut' });
    expect(found!.message).toContain('base');
  });

  test('finds a roof that stands over a screw, though it is clear of where the screw ends', () => {
    // The roof is fitted first, 16 above the base: the screw's head comes from higher up.
    const kit = withThing(sound, 'roof', box(k, [2, 12, 16], [20, 28, 17]), { touches: [] });
    const early = changeStep(kit, 1, () => ({
      joins: ['base', 'roof'],
      moves: [{ placement: 'roof', direction: [0, 0, -1], travel: 9, tool: null, inFrameOf: null }],
    }));
    expect(ask(early).map(({ subject }) => subject)).toEqual(['bracket', 'bracket-screw']);
    // Fitted last, it is in nobody's way.
    const late = changeStep(kit, 4, ({ joins, moves }) => ({
      joins: [...joins, 'roof'],
      moves: [...moves, { placement: 'roof', direction: [0, 0, -1], travel: 9, tool: null, inFrameOf: null }],
    }));
    expect(codes(late)).toEqual([]);
  });

  test('follows several moves one after the other', () => {
    // The receiver rises by 3, then slides 4: a sill in front of its place is passed only if it starts higher.
    const sill = withThing(sound, 'sill', box(k, [67, 2, 9], [69, 6, 9.9]));
    const kit = changeStep(sill, 1, () => ({
      joins: ['base', 'sill'],
      moves: [{ placement: 'sill', direction: [0, 0, -1], travel: 9, tool: null, inFrameOf: null }],
    }));
    expect(ask(kit)).toMatchObject([{ code: 'insertion/blocked', subject: 'receiver' }]);
    const once = changeStep(kit, 4, ({ moves }) => ({
      moves: moves.filter(({ placement, direction }) => placement !== 'receiver' || direction[2] === 0),
    }));
    expect(codes(once)).toEqual([]);
  });

  test('a sub-assembly travels whole, and only its own parts are in its way', () => {
    // A wall beside the arm, under the way of the weight alone: the arm passes, the weight upon it doesn't.
    const wall = withThing(sound, 'wall', box(k, [43, 34.5, 8], [47, 38, 12]));
    const kit = changeStep(wall, 1, () => ({
      joins: ['base', 'wall'],
      moves: [{ placement: 'wall', direction: [0, 0, -1], travel: 9, tool: null, inFrameOf: null }],
    }));
    expect(codes(kit)).toEqual([]);
    const from = changeMove(kit, 3, 'arm', { direction: [0, -1, 0], travel: 12 });
    expect(codes(from)).toEqual([]);
    const high = shifted(from, 'wall', [0, 0, -2.5]);
    const [found, ...more] = ask(high);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'insertion/blocked', subject: 'arm' });
    expect(found!.message).toContain('weight, on its way with arm');
    // Set on the bench, away from the wall, the weight may come from where the wall will be.
    expect(codes(changeMove(kit, 3, 'weight', { direction: [0, -1, 0] }))).toEqual([]);
    expect(codes(changeMove(kit, 3, 'weight', { direction: [0, 0, 1] }))).toEqual(['insertion/blocked']);
  });

  test('a forming screw may cut on its way, up to what is meant', () => {
    expect(codes(change(sound, 'lid-screw', { overlaps: [{ with: 'base', most: 6, why: 'formed' }] }))).toEqual([
      'insertion/more-than-meant',
    ]);
    expect(codes(change(sound, 'lid-screw', { overlaps: [] }))).toEqual(['insertion/blocked']);
  });

  test('every placement is brought once, by a move', () => {
    expect(
      codes(changeStep(sound, 3, () => ({ joins: ['arm'], moves: sound.assembly[2]!.moves.slice(0, 2) }))),
    ).toEqual(['assembly/missing']);
    expect(codes(changeStep(sound, 4, ({ joins }) => ({ joins: [...joins, 'peg'] })))).toEqual(['assembly/twice']);
    expect(codes(changeStep(sound, 3, ({ moves }) => ({ moves: moves.slice(0, 2) })))).toEqual(['assembly/no-move']);
    expect(codes(changeMove(sound, 3, 'weight', { inFrameOf: 'stop' }))).toContain('assembly/frame');
    const stray = sound.assembly[3]!.moves[0]!;
    expect(codes(changeStep(sound, 2, ({ moves }) => ({ moves: [...moves, stray] })))).toContain('assembly/stray-move');
  });
});

describe('tool access', () => {
  const tools = (kit: Kit) => toolAccess.run(contextOf(k, kit));
  const covered = { name: 'hex key 2', diameter: 2.3, reach: 20, when: 'covers on' } as const;

  test('passes the sound kit', () => expect(tools(sound)).toEqual([]));

  test('finds what stands over a head, at the time it is turned', () => {
    const kit = withThing(sound, 'roof', box(k, [2, 12, 16], [20, 28, 17]));
    const late = changeStep(kit, 4, ({ joins, moves }) => ({
      joins: [...joins, 'roof'],
      moves: [...moves, { placement: 'roof', direction: [0, 0, -1], travel: 9, tool: null, inFrameOf: null }],
    }));
    expect(tools(late)).toEqual([]);
    const turned = changeScrew(late, 'bracket-screw', { tool: covered });
    expect(tools(turned)).toMatchObject([{ code: 'tool/blocked', subject: 'bracket-screw' }]);
    // By hand: Ø2.3 through 1 mm of roof; the tested bar is a 24-gon about it.
    expect(tools(turned)[0]!.measured).toBeCloseTo((Math.PI / 4) * 2.3 ** 2 * 1.0058, 2);
  });

  test('what closes an access hole after alignment is not in its way', () => {
    const roof = withThing(sound, 'roof', box(k, [2, 12, 16], [20, 28, 17]), { afterAlignment: true });
    expect(tools(changeScrew(roof, 'bracket-screw', { tool: covered }))).toEqual([]);
  });

  test('a screw that rides takes its key along to both ends', () => {
    // On the arm's end, 9 from the axis: at the highest beam the head goes back by 6 sin 3° = 0.31, at the lowest forward.
    const kit = changeScrew(withThing(sound, 'shield', box(k, [47.3, 28, 12], [48, 32, 20])), 'bracket-screw', {
      placement: 'weight',
      head: [46, 30, 7],
      tool: covered,
    });
    const [found, ...more] = tools(kit);
    expect(more).toEqual([]);
    expect(found!.message).toContain('lowest');
    const level = changeScrew(kit, 'weight', { tool: { ...covered, when: 'at its step' } });
    expect(tools(level)).toEqual([]);
  });
});
