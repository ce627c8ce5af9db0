import { expect, test } from 'vitest';
import { type Item, picture, VIEWS } from '../../src/outputs/picture/picture.js';
import { translation } from '../../src/solid/matrix.js';
import { blockMesh } from '../solid/meshes.js';

const colour = [200, 40, 40] as const;
const block = (to: readonly [number, number, number], more: Partial<Item> = {}): Item => ({
  mesh: blockMesh([0, 0, 0], to),
  colour,
  ...more,
});
const reddish = (rgb: Uint8Array, at: number) => rgb[3 * at]! > 2 * rgb[3 * at + 1]!;
const share = ({ rgb }: { readonly rgb: Uint8Array }, is = reddish) => {
  const count = rgb.length / 3;
  return Array.from({ length: count }, (_, i) => i).filter((i) => is(rgb, i)).length / count;
};

test('a block seen from above fills the picture as wide as it should: 90 % of the width, a third of that high', () => {
  const seen = picture([block([60, 20, 5])], { toEye: VIEWS.top!, size: [200, 150] });
  // 180 of 200 pixels wide and 60 of 150 high, less the dark lines along the edges.
  expect(share(seen)).toBeLessThanOrEqual((180 * 60) / (200 * 150) + 0.005);
  expect(share(seen)).toBeGreaterThan((178 * 58) / (200 * 150));
});

test('what stands in front hides what is behind, whatever the order', () => {
  const front = block([20, 1, 20], { matrix: translation([0, -9, 0]) });
  const behind = block([20, 1, 20], { colour: [40, 40, 200] });
  for (const items of [
    [front, behind],
    [behind, front],
  ]) {
    const seen = picture(items, { toEye: VIEWS.near!, size: [120, 120] });
    expect(share(seen, (rgb, i) => rgb[3 * i + 2]! > 2 * rgb[3 * i]!)).toBe(0);
    expect(share(seen)).toBeGreaterThan(0.75);
  }
});

test('a cut takes off one side, and what is wholly on it', () => {
  const items = [block([20, 20, 20]), block([20, 5, 20], { matrix: translation([0, -9, 0]), colour: [40, 40, 200] })];
  const seen = picture(items, { toEye: VIEWS.near!, size: [120, 120], cut: { axis: 1, away: '<', at: 10 } });
  expect(share(seen, (rgb, i) => rgb[3 * i + 2]! > 2 * rgb[3 * i]!)).toBe(0);
  expect(share(seen)).toBeGreaterThan(0.75);
  expect(() => picture(items, { cut: { axis: 1, away: '<', at: 40 }, toEye: VIEWS.near! })).toThrow(/nothing to show/);
});

test('twice as large about a corner: a quarter of the picture shows the block', () => {
  const items = [block([60, 60, 5])];
  const seen = picture(items, { toEye: VIEWS.top!, size: [150, 150], centre: [60, 60, 5], zoom: 2 });
  expect(share(seen)).toBeGreaterThan(0.25 - 0.02);
  expect(share(seen)).toBeLessThanOrEqual(0.25);
});
