/** Boards in a sentence, for summary and report. */
import type { BoardsOfKit } from '../../kit/types.js';
import { counted } from '../text.js';

export function boardsText({ boards, places, panels: { designs, waste } }: BoardsOfKit): string {
  const panels = designs.reduce((sum, { order }) => sum + order, 0);
  return `Boards: ${counted(places.length, 'piece')} of ${counted(boards.length, 'kind')}, from ${counted(panels, 'panel')} of ${counted(designs.length, 'design')}; ${Math.round(100 * waste)} % of the panels is waste or spare.`;
}
