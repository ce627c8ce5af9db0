/**
 * Which boards lie together on which panel. A maker is paid by the design and by the panel, so one design ordered several times is better than
 * several designs: first as few designs as will do, then as few panels, then as few boards too many.
 */
import { type Group, mixed, type Wanted } from './mix.js';
import { type PanelLimit, type PanelSpot, packPanel } from './pack.js';

export interface PanelDesign {
  readonly id: string;
  readonly spots: readonly PanelSpot[];
  /** No larger than its boards need [mm]. */
  readonly width: number;
  readonly height: number;
  /** Panels of it to order. */
  readonly order: number;
}

export interface PanelSet {
  readonly designs: readonly PanelDesign[];
  /** Boards on the panels that no place needs. */
  readonly spare: number;
  /** Share of the ordered panels that is no board in use: cuts, corners left, spare boards. */
  readonly waste: number;
}

/** Kinds of boards up to which every way to share them among designs is looked at: 877 ways for seven. */
const MOST_KINDS = 7;

/** @returns null where a board by itself is larger than the limit */
export function solvePanels(wanted: readonly Wanted[], limit: PanelLimit): PanelSet | null {
  const known = new Map<string, Group | null>();
  const solved = (kinds: readonly Wanted[]): Group | null => {
    const key = kinds.map(({ id }) => id).join();
    const before = known.get(key);
    if (before !== undefined) return before;
    const group = solveGroup(kinds, limit);
    known.set(key, group);
    return group;
  };
  if (wanted.some((kind) => solved([kind]) === null)) return null;
  const apart = wanted.length <= MOST_KINDS ? best(wanted, solved) : firstFit(wanted, solved);
  const at = { designs: apart.length, fewerThan: ordered(apart) };
  return panelSet((at.designs > 1 && mixed(wanted, limit, at)) || apart, wanted);
}

/** Fewest panels of one design that give every board often enough; null where one of each is too much for a panel. */
function solveGroup(kinds: readonly Wanted[], limit: PanelLimit): Group | null {
  const most = Math.max(...kinds.map(({ quantity }) => quantity));
  for (let order = 1; order <= most; order++) {
    const strips = kinds.flatMap((kind) => Array.from({ length: Math.ceil(kind.quantity / order) }, () => kind));
    const spots = packPanel(strips, limit);
    if (!spots) continue;
    return { spots, order };
  }
  return null;
}

type Solve = (kinds: readonly Wanted[]) => Group | null;

/** Every way to share the kinds among designs, fewest designs first. */
function best(wanted: readonly Wanted[], solved: Solve): readonly Group[] {
  let found: readonly Group[] | null = null;
  const cost = (groups: readonly Group[]) => [
    groups.length,
    ordered(groups),
    groups.reduce((sum, { order, spots }) => sum + order * spots.length, 0),
  ];
  const visit = (rest: readonly Wanted[], parts: readonly (readonly Wanted[])[]): void => {
    const [kind, ...later] = rest;
    if (kind === undefined) {
      const groups = parts.map(solved);
      if (groups.some((group) => group === null)) return;
      const all = groups as readonly Group[];
      if (found === null || less(cost(all), cost(found))) found = all;
      return;
    }
    parts.forEach((part, i) => {
      visit(
        later,
        parts.map((one, j) => (i === j ? [...part, kind] : one)),
      );
    });
    if (found === null || parts.length + 1 <= found.length) visit(later, [...parts, [kind]]);
  };
  visit(wanted, []);
  return found ?? [];
}

const ordered = (groups: readonly Group[]): number => groups.reduce((sum, { order }) => sum + order, 0);

function less(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((value, k) => value !== b[k]);
  return i >= 0 && a[i]! < b[i]!;
}

/** Many kinds: each onto the first design that still takes one of it. */
function firstFit(wanted: readonly Wanted[], solved: Solve): readonly Group[] {
  const parts: Wanted[][] = [];
  for (const kind of [...wanted].sort((a, b) => b.length - a.length)) {
    const part = parts.find((one) => solved([...one, kind]) !== null);
    if (part) part.push(kind);
    else parts.push([kind]);
  }
  return parts.map((part) => solved(part)!);
}

function panelSet(groups: readonly Group[], wanted: readonly Wanted[]): PanelSet {
  const kinds = new Map(wanted.map((kind) => [kind.id, kind]));
  const designs = groups.map(({ spots, order }, i): PanelDesign => {
    const far = (size: 'x' | 'y') =>
      Math.max(
        ...spots.map((spot) => {
          const { length, height } = kinds.get(spot.id)!;
          return spot[size] + ((size === 'x') === spot.turned ? height : length);
        }),
      );
    return {
      id: `panel-${i + 1}`,
      spots: spots.map((at) => ({ ...at, x: tidy(at.x), y: tidy(at.y) })),
      order,
      width: tidy(far('x')),
      height: tidy(far('y')),
    };
  });
  const area = designs.reduce((sum, { width, height, order }) => sum + width * height * order, 0);
  const used = wanted.reduce((sum, { length, height, quantity }) => sum + length * height * quantity, 0);
  return {
    designs,
    spare:
      groups.reduce((sum, { order, spots }) => sum + order * spots.length, 0) -
      wanted.reduce((sum, { quantity }) => sum + quantity, 0),
    waste: area > 0 ? 1 - used / area : 0,
  };
}

const tidy = (value: number): number => Math.round(value * 1000) / 1000;
