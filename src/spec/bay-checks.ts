/** What the bay's figures show only together: holes, connectors and windows on their board, batteries that go together. */
import { modules, threads } from '../components/index.js';
import type { Edge } from '../components/module.js';
import { CHEEK, clipEdges, type GivenModule, moduleOf, type OwnModule, PLUG_CHEEK } from './bay.js';
import { checkCrowded } from './bay-crowded.js';
import { MOST_MODULES } from './bay-schema.js';
import { type Unplaced, valueAt } from './mistakes.js';
import { presetSchema } from './schema.js';
import { dotted, list, type Path } from './words.js';

const NEEDED = ['length', 'width', 'thickness', 'above', 'below', 'mass_g'] as const;
/** Ring of board around a hole [mm]. Source: common practice. */
const RING = 0.5;

export function checkBay(data: unknown): Unplaced[] {
  const bay = valueAt(data, ['bay']);
  if (bay === undefined) return [];
  const schema = presetSchema.shape.bay.unwrap().shape.modules;
  const written = valueAt(data, ['bay', 'modules']);
  const items = Array.isArray(written) ? written : [];
  const right = items.flatMap((item, i) =>
    schema.element.safeParse(item).success ? [{ item: item as GivenModule, path: ['bay', 'modules', i] as Path }] : [],
  );
  return [
    ...checkCable(bay),
    ...checkNumber(right),
    ...right.flatMap(({ item, path }) => checkModule(item, path)),
    ...checkCells(right),
  ];
}

interface Item {
  readonly item: GivenModule;
  readonly path: Path;
}

function checkCable(bay: unknown): Unplaced[] {
  const [place, cable] = [valueAt(bay, ['place']), valueAt(bay, ['cable'])];
  if (cable === undefined || place === 'apart') return [];
  const message = 'a cable lies between panel and a case that stands apart; this bay hangs on a rail';
  return [{ code: 'preset/conflict', path: ['bay', 'cable'], message, hint: 'place: apart, or no cable', at: 'key' }];
}

function checkNumber(items: readonly Item[]): Unplaced[] {
  const count = items.reduce((sum, { item }) => sum + (typeof item === 'string' ? 1 : (item.count ?? 1)), 0);
  const pinned = items.filter(({ item }) => typeof item === 'object' && item.at !== undefined && (item.count ?? 1) > 1);
  return [
    ...(count > MOST_MODULES
      ? [
          {
            code: 'preset/too-large',
            path: ['bay', 'modules'],
            message: `${count} modules, more than the most allowed, ${MOST_MODULES}`,
            at: 'key' as const,
          },
        ]
      : []),
    ...pinned.map(({ path }) => ({
      code: 'preset/conflict',
      path: [...path, 'at'],
      message: 'several modules are given one place',
      hint: 'a line for each of them',
      at: 'value' as const,
    })),
  ];
}

function checkModule(item: GivenModule, at: Path): Unplaced[] {
  if (typeof item === 'string' || typeof item.part === 'string') return [];
  const { part } = item;
  const path = [...at, 'part'];
  const missing = part.base === undefined ? NEEDED.filter((key) => part[key] === undefined) : [];
  if (missing.length > 0) {
    const message = `without a base an outline needs ${list(missing, 'and')}`;
    const hint = `start from one of the catalogue: base: ${Object.keys(modules)[0]}`;
    return [{ code: 'preset/incomplete', path, message, hint, at: 'key' }];
  }
  const off = [...checkHoles(part, path), ...checkEdges(part, path), ...checkPatches(part, path)];
  return off.length > 0 ? off : [...checkClips(part, path), ...checkCrowded(part, path)];
}

function checkHoles(part: OwnModule, path: Path): Unplaced[] {
  const { holes, holeDiameter, length, width } = moduleOf(part);
  if (holes.value.length === 0) return [];
  const key = part.holes === undefined ? 'length' : 'holes';
  const least = Math.min(...Object.values(threads).map(({ clearance }) => clearance.value));
  if (holeDiameter === undefined || holeDiameter.value < least - 1e-9) {
    const message =
      holeDiameter === undefined ? 'holes without their diameter' : `holes Ø${holeDiameter.value} take no screw`;
    return [
      {
        code: 'preset/incomplete',
        path: [...path, 'holes'],
        message,
        hint: `hole_diameter: ${least} or more`,
        at: 'key',
      },
    ];
  }
  const radius = holeDiameter.value / 2 + RING;
  return holes.value.flatMap(([x, y], i): Unplaced[] => {
    const off = Math.max(radius - x, x + radius - length.value, radius - y, y + radius - width.value);
    if (off <= 1e-9) return [];
    const message = `hole ${i + 1} at ${x}, ${y} with a ring of ${RING} around it reaches ${round(off)} mm off the board of ${length.value} × ${width.value}`;
    return [
      { code: 'preset/off-board', path: key === 'holes' ? [...path, key, i] : [...path, key], message, at: 'value' },
    ];
  });
}

const along = (edge: Edge): 'length' | 'width' => (edge === 'left' || edge === 'right' ? 'width' : 'length');

function checkEdges(part: OwnModule, path: Path): Unplaced[] {
  const shape = moduleOf(part);
  const own = part.connectors !== undefined;
  return shape.connectors.value.flatMap(({ side, at, what }, i): Unplaced[] => {
    const edge = shape[along(side)].value;
    if (at <= edge) return [];
    const message = `${what} stands ${round(at - edge)} mm past the end of the ${side} edge, which is ${edge} mm long`;
    return [
      {
        code: 'preset/off-board',
        path: own ? [...path, 'connectors', i, 'at'] : path,
        message,
        at: own ? 'value' : 'key',
      },
    ];
  });
}

function checkPatches(part: OwnModule, path: Path): Unplaced[] {
  const { length, width, window, knobs, lamps } = moduleOf(part);
  const own = (key: 'window' | 'knobs' | 'lamps', ...rest: Path): Path =>
    part[key] === undefined ? [] : [key, ...rest];
  const patches = [
    ...(window ? [{ what: 'window', at: own('window'), ...window.value }] : []),
    ...(knobs?.value ?? []).map((knob, i) => ({ what: `knob ${i + 1}`, at: own('knobs', i), ...knob })),
    ...(lamps?.value ?? []).map(([x, y], i) => ({
      what: `lamp ${i + 1}`,
      at: own('lamps', i),
      x,
      y,
      width: 0,
      depth: 0,
    })),
  ];
  return patches.flatMap(({ what, at, x, y, width: w, depth: d }): Unplaced[] => {
    const off = Math.max(w / 2 - x, x + w / 2 - length.value, d / 2 - y, y + d / 2 - width.value);
    if (off <= 1e-9) return [];
    const message = `the ${what} reaches ${round(off)} mm off the board of ${length.value} × ${width.value}`;
    return [{ code: 'preset/off-board', path: [...path, ...at], message, at: at.length > 0 ? 'value' : 'key' }];
  });
}

function checkClips(part: OwnModule, path: Path): Unplaced[] {
  const shape = moduleOf(part);
  if (shape.holes.value.length > 0 || shape.cell) return [];
  const held = clipEdges(shape);
  if (held === null) {
    const message = 'a board without holes is held at two opposite edges, but connectors look over one of each pair';
    return [
      { code: 'preset/conflict', path, message, hint: 'holes, or connectors at two opposite edges only', at: 'key' },
    ];
  }
  // The bars' cheeks stand beside the corners of the edges between.
  return shape.connectors.value.flatMap(({ side, at, width, what, access }, i): Unplaced[] => {
    const edge = shape[along(side)].value;
    const cheek = access === 'outside' ? PLUG_CHEEK : CHEEK;
    const over = cheek - Math.min(at - width / 2, edge - at - width / 2);
    if (over <= 1e-9) return [];
    const message = `${what} at the ${side} edge reaches ${round(over)} mm into the ${cheek} mm at the edge's ends where clips hold the board`;
    const own = part.connectors !== undefined;
    return [
      {
        code: 'preset/conflict',
        path: own ? [...path, 'connectors', i] : path,
        message,
        hint: 'a narrower plug, or holes',
        at: own ? 'value' : 'key',
      },
    ];
  });
}

function checkCells(items: readonly Item[]): Unplaced[] {
  const cells = items.flatMap(({ item, path }) => {
    if (typeof item === 'object' && checkModule(item, path).length > 0) return [];
    const { cell } = moduleOf(item);
    return cell ? [{ cell, path }] : [];
  });
  const [first] = cells;
  return cells.flatMap(({ cell, path }): Unplaced[] => {
    if (first === undefined || Math.abs(cell.voltage.value - first.cell.voltage.value) < 1e-9) return [];
    const message = `a battery of ${cell.voltage.value} V beside one of ${first.cell.voltage.value} V: batteries side by side must be alike`;
    return [{ code: 'preset/conflict', path, message, hint: `see ${dotted(first.path)}`, at: 'value' }];
  });
}

const round = (value: number): number => Math.round(100 * value) / 100;
