/** Boards and panels as `kit.json` shows them; nothing where the kit has none. */
import type { Kit } from '../../kit/types.js';
import { type Json, tidy } from '../json-text.js';

export function boardsJson({ boards: all }: Pick<Kit, 'boards'>): { readonly [key: string]: Json } {
  if (!all) return {};
  const { boards, panels, places } = all;
  return {
    boards: boards.map(({ id, title, length, height, thickness, holes }) => ({
      id,
      title,
      size_mm: [tidy(length), tidy(height)],
      thickness_mm: tidy(thickness),
      holes: holes.map(({ x, y, d, use }) => ({ x: tidy(x), y: tidy(y), d: tidy(d), use })),
      panel: panels.designs.find(({ spots }) => spots.some((spot) => spot.id === id))?.id ?? null,
      quantity: places.filter(({ board }) => board === id).length,
      places: places
        .filter(({ board }) => board === id)
        .map(({ placement, beams }) => ({ placement, beams: [...beams] })),
    })),
    panels: panels.designs.map(({ id, width, height, order, spots }) => ({
      id,
      size_mm: [tidy(width), tidy(height)],
      order,
      boards: spots.map((spot) => ({ board: spot.id, at: [tidy(spot.x), tidy(spot.y)], turn: spot.turned ? 90 : 0 })),
    })),
    boards_waste: tidy(panels.waste, 3),
    boards_spare: panels.spare,
  };
}
