/** What was chosen for the bay, and why. */
import type { BaySpec } from '../../spec/bay.js';
import type { Solved } from '../../spec/spec.js';
import { upTenth } from '../fits.js';
import type { BayLayout } from './types.js';

/** @param outside - length of the row of trays [mm] */
export function solvedOf(given: BaySpec, bay: BayLayout, outside: number): Solved[] {
  const depth = Math.max(...bay.units.map(({ size }) => size[1]));
  const pieces = bay.units.length === 1 ? 'one tray' : `${bay.units.length} trays`;
  return [
    ...(given.place === undefined
      ? [
          {
            path: 'bay.place',
            value: bay.place,
            why: 'the longer rail of emitters: on the others the alignment hood hangs',
          },
        ]
      : []),
    {
      path: 'bay.size',
      value: [upTenth(outside), upTenth(depth), upTenth(bay.height + bay.lid)],
      why: `${pieces} in a row, the least area of all depths tried; boards with the room they need take ${Math.round(100 * bay.fill)} % of the floor`,
    },
    {
      path: 'bay.vents',
      value: Math.round(bay.heat.vents),
      why:
        bay.heat.vents === 0
          ? `none: ${bay.heat.watts.toFixed(2)} W warm the closed box by ${bay.heat.closed.toFixed(1)} K`
          : `mm² of slots below and as much above: closed, ${bay.heat.watts.toFixed(2)} W would warm it by ${bay.heat.closed.toFixed(1)} K; so they do by about ${bay.heat.drawn.toFixed(1)} K`,
    },
  ];
}
