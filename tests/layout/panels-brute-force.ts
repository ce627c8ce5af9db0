/** Fewest designs, then fewest panels, by trying everything: for a handful of small strips. Shares no code with the program. */

export interface Kind {
  readonly id: string;
  readonly length: number;
  readonly height: number;
  readonly quantity: number;
}

interface Rect {
  readonly w: number;
  readonly h: number;
}

interface Placed extends Rect {
  readonly x: number;
  readonly y: number;
}

const CUT = 2;

/** Whether rectangles fit a panel at all: each at every sum of sides, both ways round (normal patterns: Herz 1972, from memory). */
export function fits(rects: readonly Rect[], limit: { readonly x: number; readonly y: number }): boolean {
  const sides = rects.flatMap(({ w, h }) => [w + CUT, h + CUT]);
  let sums = [0];
  for (const side of sides)
    sums = [...new Set([...sums, ...sums.map((s) => s + side)])].filter((s) => s < Math.max(limit.x, limit.y));
  const place = (i: number, done: readonly Placed[]): boolean => {
    const rect = rects[i];
    if (!rect) return true;
    for (const { w, h } of [rect, { w: rect.h, h: rect.w }])
      for (const x of sums)
        for (const y of sums) {
          if (x + w > limit.x + 1e-9 || y + h > limit.y + 1e-9) continue;
          const apart = done.every(
            (o) =>
              x + w + CUT <= o.x + 1e-9 ||
              o.x + o.w + CUT <= x + 1e-9 ||
              y + h + CUT <= o.y + 1e-9 ||
              o.y + o.h + CUT <= y + 1e-9,
          );
          if (apart && place(i + 1, [...done, { x, y, w, h }])) return true;
        }
    return false;
  };
  return place(0, []);
}

/** @returns [designs, panels]; a board may lie on any number of designs */
export function leastPanels(
  kinds: readonly Kind[],
  limit: { readonly x: number; readonly y: number },
): readonly [number, number] {
  const contents = everyContent(kinds, limit);
  const most = kinds.reduce((sum, { quantity }) => sum + quantity, 0);
  for (let designs = 1; ; designs++)
    for (let panels = designs; panels <= most; panels++)
      if (choose(contents, { kinds, designs, panels, from: 0, left: kinds.map(({ quantity }) => quantity) }))
        return [designs, panels];
}

function everyContent(kinds: readonly Kind[], limit: { readonly x: number; readonly y: number }): number[][] {
  let found: number[][] = [[]];
  for (const { quantity } of kinds)
    found = found.flatMap((one) => Array.from({ length: quantity + 1 }, (_, n) => [...one, n]));
  return found.filter(
    (content) =>
      content.some((n) => n > 0) &&
      fits(
        content.flatMap((n, i) => Array.from({ length: n }, () => ({ w: kinds[i]!.length, h: kinds[i]!.height }))),
        limit,
      ),
  );
}

interface Choice {
  readonly kinds: readonly Kind[];
  readonly designs: number;
  readonly panels: number;
  readonly from: number;
  readonly left: readonly number[];
}

function choose(contents: readonly number[][], { kinds, designs, panels, from, left }: Choice): boolean {
  if (designs === 0) return panels === 0 && left.every((n) => n <= 0);
  for (let i = from; i < contents.length; i++)
    for (let times = 1; times <= panels - designs + 1; times++) {
      if (designs === 1 && times !== panels) continue;
      const rest = left.map((n, k) => n - times * contents[i]![k]!);
      if (choose(contents, { kinds, designs: designs - 1, panels: panels - times, from: i + 1, left: rest }))
        return true;
    }
  return false;
}
