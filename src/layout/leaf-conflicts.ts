/** Says, when no leaf meets the demands, which of them would have to give way and how far. */
import type { Mistake } from '../errors.js';
import { deg, rad } from '../units.js';
import { nearestLeaf, type SearchOptions, searchLeaf, steps } from './leaf-search.js';
import type { LeafDemands } from './types.js';

/** @returns a mistake for each single demand or pinned figure that, given up alone, would let a leaf hold */
export function leafConflicts(demands: LeafDemands, options: SearchOptions): readonly Mistake[] {
  const mistakes: Mistake[] = [];
  const what = `no leaf of ${options.plastic.title} tilts by ±${say(deg(demands.tilt))}° within the mount's room and holds for years`;
  const add = (path: string, hint: string) => mistakes.push({ code: 'leaf/conflict', path, message: what, hint });
  const works = (patch: Partial<LeafDemands>) => searchLeaf({ ...demands, ...patch }, options);

  for (const pin of ['layout', 'legs', 'length', 'thickness'] as const) {
    if (demands[pin] === undefined) continue;
    const free = works({ [pin]: undefined });
    if (free) add(`leaf.${pin}`, `${demands[pin]} is pinned; ${say(free.design[pin])} would do, or leave it out`);
  }
  const tiltMost = deg(demands.tilt);
  const tilt = least(steps(0, tiltMost - 0.1, 0.1).reverse(), (value) => works({ tilt: rad(Math.max(value, 0.1)) }));
  if (tilt !== undefined) add('aim.tilt', `at most ${say(Math.max(tilt, 0.1))} would do`);
  const width = least(steps(demands.width, demands.width + 8, 0.5), (value) => works({ width: value }));
  if (width !== undefined) add('leaf.width', `${say(width)} or more would do`);
  const room: string[] = [];
  for (const [key, name, most] of [
    ['lengthMost', 'longer', 10],
    ['heightMost', 'higher', 8],
    ['post', 'deeper in its post', 5],
  ] as const) {
    const grown = least(steps(demands[key], demands[key] + most, 0.5), (value) => works({ [key]: value }));
    if (grown !== undefined) room.push(`${say(grown - demands[key])} mm ${name}`);
  }
  if (room.length > 0) add('leaf', `a mount ${room.join(' or ')} would do: a smaller barrel or screw makes room`);
  const calm = least(steps(0, demands.shockG, 0.25).reverse(), (shockG) => works({ shockG }));
  if (calm !== undefined)
    add(
      'material',
      `under ${say(calm)} g instead of ${say(demands.shockG)} g it would do; a stiffer plastic that creeps less keeps its preload`,
    );
  return mistakes.length > 0
    ? mistakes
    : [
        {
          code: 'leaf/conflict',
          path: 'leaf',
          message: what,
          hint: `no single demand given up alone would do: ${missed(demands, options)}; try another material and a smaller aim.tilt`,
        },
      ];
}

const UNITS = {
  height: ['height', 1, ' mm'],
  length: ['length along the beam', 1, ' mm'],
  post: ['depth of the post', 1, ' mm'],
  bias: ['tilt as printed', 1, '°'],
  gap: ['gap between legs', 1, ' mm'],
  strain: ['strain held for years', 100, ' %'],
  stop: ['strain at the stop', 100, ' %'],
  stress: ['stress at the stop', 1, ' MPa'],
} as const;

/** By how much the leaf that comes nearest misses each demand. */
function missed(demands: LeafDemands, options: SearchOptions): string {
  const nearest = nearestLeaf(demands, options);
  if (!nearest)
    return `a room of ${say(demands.lengthMost)} × ${say(demands.heightMost)} mm, the screw behind it, takes no leaf at all`;
  return nearest.broken
    .map(({ rule, measured, limit }) => {
      const [what, scale, unit] = UNITS[rule];
      return `${what} ${say(scale * measured)} against ${say(scale * limit)}${unit}`;
    })
    .reduce((all, each) => `${all}, ${each}`);
}

const say = (value: number | string) => (typeof value === 'string' ? value : String(Number(value.toFixed(2))));

/** First of the values, ordered from hard to easy, that works: by halving, as what works stays so when it gets easier. */
function least(values: readonly number[], works: (value: number) => unknown): number | undefined {
  if (values.length === 0 || !works(values[values.length - 1]!)) return undefined;
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (works(values[middle]!)) high = middle;
    else low = middle + 1;
  }
  return values[low];
}
