/** The trays with their modules placed, held and open where they must be. Tray coordinates, mm. */
import type { Mistake } from '../../errors.js';
import { TO_WALL } from '../../spec/bay.js';
import type { Spec } from '../../spec/spec.js';
import { upTenth } from '../fits.js';
import { fixingOf, type Heights, standOf } from './fixing.js';
import { wallOf } from './footprint.js';
import { joinHoles } from './join-holes.js';
import { overModule, plugHole } from './openings.js';
import type { Spot } from './pack.js';
import { TRAYS_APART } from './sizes.js';
import type { PlacedModule, Rect, Unit, Wall } from './types.js';
import type { Row } from './units.js';

/** A plug reaches through its wall where the board's edge is no further from it. */
const REACH = TO_WALL + 1.5;

interface PlaceOptions {
  readonly wall: number;
  readonly heights: Heights;
  readonly apart: boolean;
}

/** Two printed lines and a little: plastic that the walls' check takes. */
const LINES = 2.1;

/** A tray without what holds it. */
export type LooseUnit = Omit<Unit, 'bosses' | 'held' | 'tie'>;

export function placeModules(
  spec: Spec,
  row: Row,
  { wall, heights, apart }: PlaceOptions,
): { readonly units: readonly LooseUnit[]; readonly mistakes: readonly Mistake[] } {
  const mistakes: Mistake[] = [];
  const { bridge: bridgeable, lineWidth } = spec.printer.machine;
  const bridge = bridgeable.value;
  const leastWeb = LINES * lineWidth.value;
  let from = 0;
  const units = row.trays.map(({ kind, packed, length }, i): LooseUnit => {
    const size = [upTenth(length + 2 * wall), upTenth(row.depth + 2 * wall)] as const;
    const modules = packed.spots.map((spot) => placeOne(spec, spot, { wall, heights }));
    const free: readonly Wall[] = [
      'outer',
      ...(apart ? (['inner'] as const) : []),
      ...(i === 0 ? (['left'] as const) : []),
      ...(i === row.trays.length - 1 ? (['right'] as const) : []),
    ];
    const plugs = modules.flatMap((placed) =>
      placed.module.part.connectors.value
        .filter(({ access }) => access === 'outside')
        .map((connector) => ({ placed, connector, looks: wallOf(connector.side, placed.turn) })),
    );
    for (const { placed, connector, looks } of plugs) {
      const away = toWall(placed.outline, looks, { size, wall });
      if (free.includes(looks) && away <= REACH + 1e-9) continue;
      const what = free.includes(looks)
        ? `stands ${upTenth(away)} mm from the wall that it would be plugged through, ${upTenth(away - REACH)} mm too far`
        : `faces ${BLOCKED[looks]}, through which nothing can be plugged`;
      mistakes.push({
        code: 'preset/connector',
        path: placed.module.path,
        message: `the ${connector.what} of ${placed.module.id} ${what}`,
        hint: 'leave at and turn out, and it is turned to the outer wall',
      });
    }
    const over = modules.map((placed) => overModule(spec, placed, heights.top));
    const lid = joinHoles(
      over.flatMap(({ holes }) => holes),
      leastWeb,
    );
    // A lamp under a hole that it shares is seen without a rod, and a rod would find no plastic to sit in.
    const alone = lid.flatMap((hole) => (hole.kind === 'round' ? [hole.at] : []));
    const unit: LooseUnit = {
      kind,
      from,
      size,
      modules,
      walls: plugs.map(({ placed, connector }) => plugHole(placed, connector, { top: heights.top, bridge })),
      lid,
      pipes: over.flatMap(({ pipes }) => pipes).filter(({ at }) => alone.includes(at)),
    };
    from = upTenth(from + size[0] + TRAYS_APART);
    return unit;
  });
  return { units, mistakes };
}

const BLOCKED: Readonly<Record<Wall, string>> = {
  inner: 'the rail',
  left: 'the tray beside it',
  right: 'the tray beside it',
  outer: 'the outer wall',
};

function placeOne(
  spec: Spec,
  { module, footprint, cell }: Spot,
  { wall, heights }: { wall: number; heights: Heights },
): PlacedModule {
  const { size, margins, turn } = footprint;
  const [x, y] = [wall + cell[0] + margins.left, wall + cell[1] + margins.inner];
  const outline: Rect = [x, y, x + size[0], y + size[1]];
  return {
    module,
    turn,
    outline,
    z: standOf(module, { spec, ...heights }),
    fixing: fixingOf(spec, { module, turn, outline }),
  };
}

/** From an outline's edge to the inner face of the wall that it looks at. */
function toWall(outline: Rect, looks: Wall, { size, wall }: { size: readonly [number, number]; wall: number }): number {
  if (looks === 'left') return outline[0] - wall;
  if (looks === 'inner') return outline[1] - wall;
  return looks === 'right' ? size[0] - wall - outline[2] : size[1] - wall - outline[3];
}
