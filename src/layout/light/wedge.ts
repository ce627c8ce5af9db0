/** Whether barrels are so true that a lean given to them on purpose would help: a mount's yaw is undone by rolling a crooked barrel. */
import { channelChance } from '../../optics/chance.js';
import { bestWedge } from '../../optics/wedge.js';
import type { Solved } from '../../spec/spec.js';
import { deg, rad } from '../../units.js';
import { type AimInputs, channelOf } from './aim.js';
import type { LineWay } from './lines.js';

/** A lean is looked for where more of the channels than this fail for their yaw alone. */
const ENOUGH = 0.95;
const STEP = rad(0.5);
const MOST = rad(4);

/**
 * @returns the lean that would help most on the longest line; the kit draws none, so its value is 0
 */
export function wedgeLine(ways: readonly [LineWay, LineWay], inputs: AimInputs): Solved {
  const i = ways[0].lever > ways[1].lever ? 0 : 1;
  const channel = channelOf(ways[i]!, { ...inputs, tolerance: inputs.tolerance[i]! });
  const { sigma, reach } = channel;
  const mounting = { ...channel.mounting, points: 6 } as const;
  const without = channelChance({ kind: 'rayleigh', sigma }, mounting, reach);
  const percent = (share: number) => `${Math.round(1000 * share) / 10} %`;
  const none = { path: 'aim.wedge', value: 0 } as const;
  if (without >= ENOUGH)
    return {
      ...none,
      why: `no lean given to the barrels: as crooked as they are, ${percent(without)} of the longest lines come right`,
    };
  const best = bestWedge({ sigma, mounting, reach, step: STEP, most: MOST });
  return {
    ...none,
    why:
      best.chance > best.without + 0.01
        ? `none is drawn, though barrels are too true for their mounts: leaned by ${Math.round(10 * deg(best.wedge)) / 10}° on purpose (a strip under one end of each, turned with it), ${percent(best.chance)} of the longest lines come right in place of ${percent(best.without)}`
        : `no lean given to the barrels: none of up to 4° helps, ${percent(without)} of the longest lines come right`,
  };
}
