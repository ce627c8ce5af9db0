/** Boards shared among designs: a board may lie on several, where that needs fewer panels. */
import { type PanelLimit, type PanelSpot, packPanel, type Strip } from './pack.js';

export interface Wanted extends Strip {
  readonly quantity: number;
}

/** One design: what lies on it, and how often it is ordered. */
export interface Group {
  readonly spots: readonly PanelSpot[];
  readonly order: number;
}

/** Panels tried, and choices looked at, before the search is given up: counted, so that it always ends alike. */
const MOST_PACKED = 1500;
const MOST_CHOICES = 200_000;

/** How many of each kind lie on a panel. */
type Content = readonly number[];

/**
 * @param at - so many designs, and fewer than so many panels
 * @returns the designs with the fewest panels; null where none need fewer, or the search is too long
 */
export function mixed(
  wanted: readonly Wanted[],
  limit: PanelLimit,
  at: { readonly designs: number; readonly fewerThan: number },
): readonly Group[] | null {
  const contents = fullContents(wanted, limit);
  if (!contents) return null;
  const most = wanted.map((_, k) => Math.max(...contents.map((content) => content[k]!)));
  const budget = { left: MOST_CHOICES };
  for (let panels = at.designs; panels < at.fewerThan; panels++) {
    const left = wanted.map(({ quantity }) => quantity);
    const chosen = choose({ contents, most, budget }, { designs: at.designs, panels, from: 0, left });
    if (chosen) return trimmed(chosen, wanted, limit);
    if (budget.left <= 0) return null;
  }
  return null;
}

/** Every content to which nothing can be added; null where there are too many to try. */
function fullContents(wanted: readonly Wanted[], limit: PanelLimit): readonly Content[] | null {
  let found: Content[] = [[]];
  let packed = 0;
  for (const { quantity } of wanted) {
    const next: Content[] = [];
    for (const before of found)
      for (let n = 0; n <= quantity; n++) {
        const content = [...before, n];
        if (n > 0) {
          if (++packed > MOST_PACKED) return null;
          if (!packPanel(stripsOf(content, wanted), limit)) break;
        }
        next.push(content);
      }
    found = next;
  }
  const within = (a: Content, b: Content) => a !== b && a.every((n, k) => n <= b[k]!);
  return found.filter((one) => !found.some((other) => within(one, other)));
}

const stripsOf = (content: Content, wanted: readonly Wanted[]): Strip[] =>
  content.flatMap((n, k) => Array.from({ length: n }, () => wanted[k]!));

interface Tried {
  readonly contents: readonly Content[];
  /** Of each kind, the most on any panel. */
  readonly most: Content;
  readonly budget: { left: number };
}

interface Left {
  readonly designs: number;
  readonly panels: number;
  readonly from: number;
  readonly left: Content;
}

interface Chosen {
  readonly content: Content;
  readonly order: number;
}

function choose(tried: Tried, { designs, panels, from, left }: Left): readonly Chosen[] | null {
  if (designs === 0) return left.every((n) => n <= 0) ? [] : null;
  if (left.some((n, k) => n > panels * tried.most[k]!) || --tried.budget.left <= 0) return null;
  for (let i = from; i < tried.contents.length; i++) {
    const content = tried.contents[i]!;
    for (let order = designs === 1 ? panels : 1; order <= panels - designs + 1; order++) {
      const rest = left.map((n, k) => n - order * content[k]!);
      const later = choose(tried, { designs: designs - 1, panels: panels - order, from: i + 1, left: rest });
      if (later) return [{ content, order }, ...later];
    }
  }
  return null;
}

/** Leaves out boards that no place needs, where the rest still packs. */
function trimmed(chosen: readonly Chosen[], wanted: readonly Wanted[], limit: PanelLimit): readonly Group[] {
  const spare = wanted.map(
    ({ quantity }, k) => chosen.reduce((sum, { content, order }) => sum + order * content[k]!, 0) - quantity,
  );
  return chosen.map(({ content, order }) => {
    const less = content.map((n, k) => {
      const off = Math.min(n, Math.floor(spare[k]! / order));
      spare[k]! -= off * order;
      return n - off;
    });
    const spots = packPanel(stripsOf(less, wanted), limit) ?? packPanel(stripsOf(content, wanted), limit)!;
    return { spots, order };
  });
}
