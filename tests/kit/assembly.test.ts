/** The order of assembly, counted without the check that walks it: every placement is named once and brought once. */
import { beforeAll, describe, expect, test } from 'vitest';
import { type Drawn, draw, openWorkshop, shipped } from './make.js';

const NAMES = ['greenhouse-bench', 'glaze-selector', 'tight-cue-strip', 'foyer-row', 'seed-library'];
const drawn = new Map<string, Drawn>();
beforeAll(async () => {
  const shop = await openWorkshop();
  for (const name of NAMES) drawn.set(name, draw(shop, shipped(name)));
}, 120_000);

const twice = (names: readonly string[]) => names.filter((name, i) => names.indexOf(name) !== i);

describe.each(NAMES)('%s', (name) => {
  const kit = () => drawn.get(name)!.kit;

  test('steps are numbered from 1, and each has a title of its own', () => {
    const { assembly } = kit();
    expect(assembly.map(({ step }) => step)).toEqual(assembly.map((_, i) => i + 1));
    expect(twice(assembly.map(({ title }) => title))).toEqual([]);
  });

  test('every placement is joined or used as hardware in exactly one step', () => {
    const { assembly, placements } = kit();
    const named = assembly.flatMap(({ joins, hardware }) => [...joins, ...hardware]);
    expect(twice(named)).toEqual([]);
    expect([...named].sort()).toEqual(placements.map((one) => one.name).sort());
  });

  test('every placement is brought in exactly one step; only the first of all lies there already', () => {
    const { assembly, placements } = kit();
    const steps = new Map<string, Set<string>>();
    for (const { step, moves } of assembly)
      for (const { placement, inFrameOf } of moves) {
        const key = `${step} in ${inFrameOf ?? 'the kit'}`;
        steps.set(placement, (steps.get(placement) ?? new Set()).add(key));
      }
    const still = placements.map((one) => one.name).filter((one) => !steps.has(one));
    // Sub-assemblies start from a part of their own, which is brought with them later: only the kit's first never moves.
    expect(still).toEqual([assembly[0]!.joins[0]!]);
    // What is brought to a sub-assembly rides with it from then on; nothing is brought to the kit twice.
    for (const [placement, keys] of steps) {
      expect([...keys].filter((key) => key.endsWith('the kit')).length, placement).toBeLessThanOrEqual(1);
      expect([...keys].filter((key) => !key.endsWith('the kit')).length, placement).toBeLessThanOrEqual(1);
    }
  });

  test('who is brought to another is brought after that other stands or with it', () => {
    const { assembly } = kit();
    const stepOf = new Map(
      assembly.flatMap(({ step, joins, hardware }) => [...joins, ...hardware].map((n) => [n, step])),
    );
    for (const { step, moves } of assembly)
      for (const { inFrameOf } of moves)
        if (inFrameOf !== null) expect(stepOf.get(inFrameOf)).toBeLessThanOrEqual(step);
  });

  test('hoods come before plugs, after which only feet and a battery follow, and a mount’s screw after its mount', () => {
    const { assembly } = kit();
    const stepWith = (end: string) =>
      assembly.find((step) => step.moves.some(({ placement }) => placement.endsWith(end)))!.step;
    expect(stepWith('-hood-1')).toBeLessThan(stepWith('-mount-plug'));
    const after = assembly
      .slice(stepWith('-mount-plug'))
      .flatMap(({ moves }) => moves.map(({ placement }) => placement));
    expect(after.filter((one) => !/^(foot|bay-battery|bay-door)-/.test(one))).toEqual([]);
    const order = assembly.flatMap((step) => step.moves.map(({ placement }) => placement));
    for (const mount of order.filter((one) => one.endsWith('-mount')))
      expect(order.indexOf(`${mount.slice(0, -'-mount'.length)}-fix-screw`)).toBeGreaterThan(order.indexOf(mount));
  });
});
