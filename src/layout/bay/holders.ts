/** The ground that posts and bars under a board take, and how high they rise. Tray coordinates, mm. */
import { threads } from '../../components/index.js';
import { CHEEK } from '../../spec/bay.js';
import { BOARD_PLAY, CLIP } from './footprint.js';
import type { PlacedModule, Rect } from './types.js';

/** Plastic around a post's pilot, and most that the pilot grows by on a side. */
export const POST_WALL = 1.7;
const GROWTH = 0.25;

export interface Holder {
  readonly area: Rect;
  readonly top: number;
}

export function holders({ fixing, module: { part }, z }: PlacedModule): readonly Holder[] {
  if (fixing.kind === 'ribs') return [];
  if (fixing.kind === 'screws') {
    const radius = threads[fixing.size].pilot.value / 2 + POST_WALL + GROWTH;
    return fixing.at.map(([x, y]) => ({ area: [x - radius, y - radius, x + radius, y + radius], top: z }));
  }
  return fixing.bars.map(({ at: [x, y], out: [ox, oy], length }) => {
    const half = length / 2 + BOARD_PLAY + CLIP.cheek;
    const [along, across] = [Math.abs(oy) * half, Math.abs(ox) * half];
    const ends = (o: number) => [Math.min(-CHEEK * o, CLIP.depth * o), Math.max(-CHEEK * o, CLIP.depth * o)] as const;
    const [ex, ey] = [ends(ox), ends(oy)];
    return {
      area: [x - along + ex[0], y - across + ey[0], x + along + ex[1], y + across + ey[1]],
      top: z + part.thickness.value,
    };
  });
}
