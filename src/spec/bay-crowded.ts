/** What on a board stands in the way of what holds it, or of the wall it is plugged through. mm. */
import { threads } from '../components/index.js';
import type { Module } from '../components/module.js';
import { CLIP_OVER, clipEdges, moduleOf, type OwnModule, pastCorners, screwFor, TO_WALL, WANTED } from './bay.js';
import { type Area, atEdge, jackOf } from './board-edge.js';
import type { Unplaced } from './mistakes.js';
import type { Path } from './words.js';

/** Half of a lamp, or of the rod that leads its light. */
const LAMP = 1.5;

interface Named {
  readonly what: string;
  readonly area: Area;
}
/** Grown by a radius all around. */
interface Held extends Named {
  readonly radius: number;
}

export function checkCrowded(part: OwnModule, path: Path): Unplaced[] {
  const shape = moduleOf(part);
  if (shape.cell) return checkBattery(part, path);
  return [...checkScrews(part, path), ...checkHeld(part, path), ...checkPlugged(part, path)];
}

function checkScrews(part: OwnModule, path: Path): Unplaced[] {
  const { holes, holeDiameter, thickness } = moduleOf(part);
  if (holes.value.length === 0) return [];
  const { capLengths, capHead, diameter } = threads[screwFor(holeDiameter!.value)];
  const most = Math.max(...capLengths.value) - WANTED * diameter.value;
  const thick: Unplaced = {
    code: 'preset/conflict',
    path,
    message: `no screw through Ø${holeDiameter!.value} is long enough for a board ${thickness.value} mm thick`,
    hint: `thickness: ${round(most)} or less, or holes: []`,
    at: 'key',
  };
  const close = holes.value.flatMap(([x, y], j): Unplaced[] =>
    holes.value.slice(0, j).flatMap(([a, b], i): Unplaced[] => {
      const apart = Math.hypot(x - a, y - b);
      if (apart >= capHead.value) return [];
      const own = part.holes !== undefined;
      return [
        {
          code: 'preset/conflict',
          path: own ? [...path, 'holes', j] : path,
          message: `holes ${i + 1} and ${j + 1} are ${round(apart)} mm apart, and the heads of their screws Ø${capHead.value}`,
          hint: `at least ${capHead.value} mm, or one of them left out`,
          at: own ? 'value' : 'key',
        },
      ];
    }),
  );
  return thickness.value <= most + 1e-9 ? close : [thick, ...close];
}

/** Heads of screws and clips lie on the board: nothing else may stand there; nor a jack over a lamp. */
function checkHeld(part: OwnModule, path: Path): Unplaced[] {
  const shape = moduleOf(part);
  const holders = [...heads(shape), ...clips(shape)];
  const own = (key: keyof OwnModule, ...rest: Path): Path => (part[key] === undefined ? path : [...path, key, ...rest]);
  const standing = parts(shape);
  // A lamp's rod goes up to the lid: no jack stands over it.
  const jacks = standing.flatMap(({ what, area, key }): Held[] =>
    key === 'connectors' ? [{ what: `jack of the ${what}`, area, radius: 0 }] : [],
  );
  return standing.flatMap(({ what, area, key, index }): Unplaced[] =>
    [...holders, ...(key === 'lamps' ? jacks : [])].flatMap((held): Unplaced[] => {
      const over = held.radius - distance(area, held.area);
      if (over <= 1e-9) return [];
      const message = `the ${what} reaches ${round(over)} mm into the ${held.what}`;
      const at = index === undefined ? own(key) : own(key, index);
      return [
        {
          code: 'preset/conflict',
          path: at,
          message,
          hint: 'it must stand beside it',
          at: at === path ? 'key' : 'value',
        },
      ];
    }),
  );
}

function heads({ holes, holeDiameter }: Module): Held[] {
  return holes.value.map(([x, y], i) => ({
    what: `head of the screw in hole ${i + 1}`,
    area: [x, y, x, y],
    radius: threads[screwFor(holeDiameter!.value)].capHead.value / 2,
  }));
}

function clips(shape: Module): Held[] {
  const half = CLIP_OVER.breadth / 2;
  return (clipEdges(shape) ?? []).map((edge) => {
    const middle = (edge === 'left' || edge === 'right' ? shape.width : shape.length).value / 2;
    const area = atEdge(shape, edge, { along: [middle - half, middle + half], out: [-CLIP_OVER.lap, 0] });
    return { what: `clip at the ${edge} edge`, area, radius: 0 };
  });
}

interface Part extends Named {
  readonly key: 'connectors' | 'window' | 'knobs' | 'lamps';
  readonly index?: number;
}

function parts(shape: Module): Part[] {
  const around = (x: number, y: number, [a, b]: readonly [number, number]): Area => [x - a, y - b, x + a, y + b];
  const window = shape.window?.value;
  const jacks = shape.connectors.value.flatMap((connector, index): Part[] =>
    connector.access === 'inside'
      ? []
      : [{ what: connector.what, area: jackOf(shape, connector), key: 'connectors', index }],
  );
  return [
    ...jacks,
    ...(window
      ? [
          {
            what: 'window',
            area: around(window.x, window.y, [window.width / 2, window.depth / 2]),
            key: 'window' as const,
          },
        ]
      : []),
    ...(shape.knobs?.value ?? []).map(({ x, y, width, depth }, index) => ({
      what: `knob ${index + 1}`,
      area: around(x, y, [width / 2, depth / 2]),
      key: 'knobs' as const,
      index,
    })),
    ...(shape.lamps?.value ?? []).map(([x, y], index) => ({
      what: `lamp ${index + 1}`,
      area: around(x, y, [LAMP, LAMP]),
      key: 'lamps' as const,
      index,
    })),
  ];
}

/** Between two areas; where they share ground, less than nothing: by how much one would have to be moved. */
function distance(a: Area, b: Area): number {
  const [dx, dy] = [Math.max(a[0] - b[2], b[0] - a[2]), Math.max(a[1] - b[3], b[1] - a[3])];
  return dx > 0 && dy > 0 ? Math.hypot(dx, dy) : Math.max(dx, dy);
}

/** The edge that is plugged from outside stands at a wall: wires at the edges beside it can't reach past it. */
function checkPlugged(part: OwnModule, path: Path): Unplaced[] {
  const shape = moduleOf(part);
  const plugged = shape.connectors.value.filter(({ access }) => access === 'outside').map(({ side }) => side);
  return shape.connectors.value.flatMap((connector, i): Unplaced[] =>
    pastCorners(shape, connector).flatMap(([beside, past]): Unplaced[] => {
      if (!plugged.includes(beside) || connector.access === 'outside' || past <= TO_WALL + 1e-9) return [];
      const message = `${connector.what} at the ${connector.side} edge reaches ${round(past)} mm past the ${beside} edge, which stands ${TO_WALL} mm from the wall that it is plugged through`;
      const own = part.connectors !== undefined;
      return [
        {
          code: 'preset/conflict',
          path: own ? [...path, 'connectors', i] : path,
          message,
          hint: 'a narrower plug, or further from the corner',
          at: own ? 'value' : 'key',
        },
      ];
    }),
  );
}

/** It lies on the floor between ribs, under a door. */
function checkBattery(part: OwnModule, path: Path): Unplaced[] {
  const shape = moduleOf(part);
  const seen = (['window', 'lamps', 'knobs'] as const).filter((key) => part[key] !== undefined);
  return [
    ...(['above', 'below'] as const)
      .filter((key) => shape[key].value > 0)
      .map(
        (key): Unplaced => ({
          code: 'preset/conflict',
          path: part[key] === undefined ? path : [...path, key],
          message: `${shape[key].value} mm ${key} a battery: its thickness is its whole height`,
          hint: `${key}: 0, and more thickness`,
          at: 'value',
        }),
      ),
    ...seen.map(
      (key): Unplaced => ({
        code: 'preset/conflict',
        path: [...path, key],
        message: `${key} on a battery, which lies under a door`,
        at: 'key',
      }),
    ),
    ...shape.connectors.value.flatMap(({ what, up, height }, i): Unplaced[] => {
      const under = height / 2 - up;
      if (under <= 1e-9) return [];
      const own = part.connectors !== undefined;
      return [
        {
          code: 'preset/conflict',
          path: own ? [...path, 'connectors', i, 'up'] : path,
          message: `${what} reach ${round(under)} mm under the battery, which lies on the bay's floor`,
          hint: `up: ${round(height / 2)} or more`,
          at: 'value',
        },
      ];
    }),
  ];
}

const round = (value: number): number => Math.round(100 * value) / 100;
