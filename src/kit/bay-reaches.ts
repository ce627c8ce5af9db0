/** Rooms that the bay must leave free: for plugs and wires at their connectors, and over what is seen or touched through the lid. */
import type { Connector, Module } from '../components/module.js';
import type { BayLayout, PlacedModule } from '../layout/bay/types.js';
import type { Box } from '../solid/mesh.js';
import { atEdge } from '../spec/board-edge.js';
import type { Reach } from './types.js';

/** A finger or an eye over the lid. */
const OVER_LID = 25;
const OFF = 0.05;
/** What holds the neighbour may reach in so far. */
const BEHIND = 0.15;

export function reachesOf(
  { module: { part, id }, z }: PlacedModule,
  { placement, bay }: { readonly placement: string; readonly bay: BayLayout },
): readonly Reach[] {
  const plugs = part.connectors.value
    .filter(({ room }) => room > 0)
    .map(
      (connector): Reach => ({
        kind: 'plug',
        what: `${connector.what} of ${id}`,
        placement,
        room: plugRoom(part, connector),
      }),
    );
  const top = part.thickness.value + part.above.value + OFF;
  const over = bay.height + bay.lid + OVER_LID - z;
  const seen = [
    ...(part.window ? [{ what: 'window', ...part.window.value }] : []),
    ...(part.knobs?.value ?? []).map((knob) => ({ what: 'knob', ...knob })),
  ].map(
    ({ what, x, y, width, depth }): Reach => ({
      kind: 'face',
      what: `${what} of ${id}`,
      placement,
      room: { min: [x - width / 2, y - depth / 2, top], max: [x + width / 2, y + depth / 2, over] },
    }),
  );
  return [...plugs, ...seen];
}

function plugRoom(part: Module, { side, at, width, height, up, room }: Connector): Box {
  const [x0, y0, x1, y1] = atEdge(part, side, { along: [at - width / 2, at + width / 2], out: [OFF, room - BEHIND] });
  return { min: [x0, y0, up - height / 2], max: [x1, y1, up + height / 2] };
}
