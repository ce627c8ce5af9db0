/**
 * A lean given to barrels that are truer than their mounts: a mount's yaw is undone by rolling a crooked barrel. Such a barrel lies in a
 * sleeve, which is thicker than the barrel, so that mount, rails and aim are no longer the same: the kit is laid out anew with it.
 */
import { type Mistake, PresetError } from '../../errors.js';
import { channelChance } from '../../optics/chance.js';
import { bestWedge, type WedgeAnswer } from '../../optics/wedge.js';
import type { Solved, Spec } from '../../spec/spec.js';
import { deg, rad } from '../../units.js';
import { HIGHEST } from '../hood.js';
import type { Layout } from '../layout.js';
import { type AimFigures, type AimInputs, aimFigures, channelOf } from './aim.js';
import type { LineWay } from './lines.js';

/** A lean is looked for where more of the longest lines than this fail, and drawn where so many more come right. */
const ENOUGH = 0.95;
const WORTH = 0.05;
const STEP = rad(0.5);
const MOST = rad(4);

/** @returns the lean that would help most on the longest line; null where hardly a line fails */
export function leanFor(
  { aim }: Pick<Spec, 'aim'>,
  { ways, inputs }: { readonly ways: readonly [LineWay, LineWay]; readonly inputs: AimInputs },
): WedgeAnswer | null {
  const i = longest(ways);
  const channel = channelOf(ways[i]!, { ...inputs, tolerance: inputs.tolerance[i]! });
  const { sigma, reach } = channel;
  const mounting = { ...channel.mounting, points: 6 } as const;
  if (channelChance({ kind: 'rayleigh', sigma }, mounting, reach) >= ENOUGH) return null;
  // It acts from the beam's exit: as an angle about the axis of tilt it is less.
  const share = ways[i]!.distance / ways[i]!.lever;
  // The arm makes it good by tilting as far.
  const most = aim.tiltDeg === undefined ? MOST : Math.min(MOST, rad(aim.tiltDeg));
  const best = bestWedge({ sigma, mounting, reach, step: STEP * share, most: most * share });
  return { ...best, wedge: best.wedge / share };
}

const longest = (ways: readonly [LineWay, LineWay]): 0 | 1 => (ways[0].lever > ways[1].lever ? 0 : 1);
const percent = (share: number) => `${Math.round(1000 * share) / 10} %`;

/**
 * @param plain - the kit without any lean @param lay - lays out the same preset with one
 * @returns the kit with the lean that helps most where it helps enough and goes together, else the plain one; both say why
 */
export function leanWhereItHelps(plain: Layout, lay: (spec: Spec) => Layout): Layout {
  const { spec, ways, aim } = plain;
  const i = longest(ways);
  const before = aimFigures(spec, { ways, inputs: aim });
  const share = percent(before.lines[i].chance);
  const none = (why: string): Layout => ({
    ...plain,
    solved: [...plain.solved, { path: 'aim.wedge', value: 0, why } satisfies Solved],
  });
  const best = leanFor(spec, { ways, inputs: aim });
  if (best === null)
    return none(`no lean given to the barrels: as crooked as they are, ${share} of the longest lines come right`);
  if (best.chance < best.without + WORTH)
    return none(
      `no lean given to the barrels: none that the tilt makes good brings ${100 * WORTH} more of a hundred longest lines right, ${share} do`,
    );
  const wedgeDeg = Math.round(10 * deg(best.wedge)) / 10;
  const leaned = tried({ ...spec, aim: { ...spec.aim, wedgeDeg } }, lay);
  const against = 'mistake' in leaned ? leaned.mistake.message : notWorth(leaned, before);
  if ('mistake' in leaned || against !== null)
    return none(
      `none is drawn, though barrels are too true for their mounts: leaned by ${wedgeDeg}° on purpose ${percent(best.chance)} of the longest lines would come right in place of ${share}, but in a kit with such sleeves ${against}`,
    );
  const after = aimFigures(leaned.spec, { ways: leaned.ways, inputs: leaned.aim });
  return {
    ...leaned,
    solved: [
      ...leaned.solved,
      {
        path: 'aim.wedge',
        value: wedgeDeg,
        why: `barrels are too true for their mounts: leaned by ${wedgeDeg}° on purpose, in a sleeve bored askew that is rolled with its collar, ${percent(after.lines[i].chance)} of the longest lines come right in place of ${share}`,
      },
    ],
  };
}

function tried(spec: Spec, lay: (spec: Spec) => Layout): Layout | { readonly mistake: Mistake } {
  try {
    return lay(spec);
  } catch (error) {
    if (!(error instanceof PresetError)) throw error;
    return { mistake: error.mistakes[0]! };
  }
}

/** Why the finished kit is none the better for its lean; null where it is. */
function notWorth({ spec, ways, aim, hood }: Layout, before: AimFigures): string | null {
  const after = aimFigures(spec, { ways, inputs: aim });
  const i = longest(ways);
  if (after.lines[i].chance < before.lines[i].chance + WORTH || after.all < before.all)
    return `${percent(after.lines[i].chance)} do`;
  return hood.panels.some(({ height }) => height >= HIGHEST)
    ? `the hood that ends every beam would be ${HIGHEST} mm high and more`
    : null;
}
