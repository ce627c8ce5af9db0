/** Drawings and sheets: read back by an XML parser and by a PDF tool of their own, against figures by hand. */
import { inflateSync } from 'node:zlib';
import { DOMParser } from 'linkedom';
import { expect, test } from 'vitest';
import { edgesOf } from '../../src/outputs/drawings/edges.js';
import { lineView } from '../../src/outputs/drawings/line-view.js';
import { partSheet } from '../../src/outputs/drawings/part-sheet.js';
import { partCut } from '../../src/outputs/drawings/section.js';
import { takenApart } from '../../src/outputs/explode.js';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { sheetPdf } from '../../src/outputs/sheets/pdf.js';
import { legend } from '../../src/outputs/sheets/sheets.js';
import { A4, OVERLAP, onTile, tilesOf } from '../../src/outputs/sheets/tiles.js';
import { translation } from '../../src/solid/matrix.js';
import { box } from '../../src/solid/shapes.js';
import { blockMesh } from '../solid/meshes.js';
import { sampleInputs, sampleSpec } from './sample-kit.js';

const block = blockMesh([0, 0, 0], [30, 20, 10]);
const lengths = ({ segments }: ReturnType<typeof lineView>) =>
  segments.map(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1]));
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

test('a block has 12 edges; the diagonals of its faces are none', () => {
  const edges = edgesOf(block);
  expect(edges.sharp).toHaveLength(12);
  expect([...edges.sharp]).toEqual(Array(12).fill(1));
});

test('a block from the front is its outline, 30 × 10; from a corner 9 of its 12 edges are seen', () => {
  const item = [{ mesh: block, edges: edgesOf(block) }];
  const front = lineView(item, [0, -1, 0]);
  expect([front.max[0] - front.min[0], front.max[1] - front.min[1]]).toEqual([30, 10]);
  // Edges towards the eye are points; the outline's four are there, those behind fall on them.
  expect(sum(lengths(front))).toBeCloseTo(80, 0);
  // By hand, seen along (1, 1, 1)/√3: an edge along an axis shows √(2/3) of its length; three of each kind less the hidden corner's.
  const corner = lineView(item, [1, 1, 1]);
  expect(sum(lengths(corner))).toBeCloseTo(Math.sqrt(2 / 3) * 3 * (30 + 20 + 10), 0);
});

test('what stands behind another piece is left out', () => {
  const near = { mesh: block, edges: edgesOf(block) };
  const small = blockMesh([10, 0, 3], [20, 5, 7]);
  const behind = { mesh: small, edges: edgesOf(small), matrix: translation([0, 40, 0]) };
  const alone = sum(lengths(lineView([near], [0, -1, 0])));
  expect(sum(lengths(lineView([near, behind], [0, -1, 0])))).toBeCloseTo(alone, 1);
  expect(sum(lengths(lineView([near, behind], [0, 1, 0])))).toBeCloseTo(alone + 28, 0);
});

async function files() {
  const made = makeOutputs(await sampleInputs());
  return new Map(made.files.map(({ path, bytes }) => [path, bytes]));
}
const textOf = (bytes: Uint8Array) => new TextDecoder().decode(bytes);

test('a part’s sheet is A4, says its scale and its dimensions, and escapes the kit’s title', async () => {
  const svg = textOf((await files()).get('drawings/block.svg')!);
  const document = new DOMParser().parseFromString(svg, 'image/svg+xml');
  const root = document.querySelector('svg')!;
  expect([root.getAttribute('width'), root.getAttribute('height')]).toEqual(['297mm', '210mm']);
  const said = [...document.querySelectorAll('text')].map((node) => node.textContent);
  // By hand: the block is 10 × 20 × 3; four views of it fit A4 at 5:1 but not at 10:1.
  for (const figure of ['10', '20', '3']) expect(said).toContain(figure);
  expect(said.join('\n')).toContain('Scale 5:1');
  expect(said.join('\n')).toContain('=Potting, "shed" <b>panel</b>');
  expect(svg).not.toContain('<b>');
  // The front view's lower edge is drawn 50 mm long: 10 mm at 5:1.
  const path = document.querySelector('path[stroke-width="0.35"]')!.getAttribute('d')!;
  const drawn = [...path.matchAll(/M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)/g)].map(([, a, b, c, d]) =>
    Math.hypot(+c! - +a!, +d! - +b!),
  );
  expect(drawn.some((length) => Math.abs(length - 50) < 0.3)).toBe(true);
});

test('the section stands upright: a foot 20 wide under a post 5 wide, 12 high', async () => {
  const sample = await sampleInputs();
  const inputs = { ...sample, kit: { ...sample.kit, beams: [] } };
  const { kernel } = inputs;
  const solid = kernel.union([box(kernel, [0, 0, 0], [20, 10, 2]), box(kernel, [0, 0, 1], [5, 10, 12])]);
  const made = makeOutputs(inputs);
  const part = { ...[...inputs.kit.parts.values()][1]!, solid, posed: null };
  const cuts = new Map([[part.id, partCut(part, inputs)]]);
  const svg = partSheet(part, { ...made.context, cuts, meshOf: () => kernel.mesh(solid) });
  const path = new DOMParser().parseFromString(svg, 'image/svg+xml').querySelector('path[fill="url(#hatch)"]')!;
  const points = [...path.getAttribute('d')!.matchAll(/([\d.]+) ([\d.]+)/g)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );
  const [left, right] = [Math.min(...points.map(([x]) => x)), Math.max(...points.map(([x]) => x))];
  const low = Math.max(...points.map(([, y]) => y));
  const at = (x: number) => points.filter(([px]) => Math.abs(px - x) < 0.01).map(([, y]) => y);
  // At the foot's outer end there is only the foot, 2 of the 12 high, at the bottom of the drawing; the scale is 5:1.
  expect(right - left).toBeCloseTo(100, 1);
  expect(Math.max(...at(right))).toBeCloseTo(low, 2);
  expect(low - Math.min(...at(right))).toBeCloseTo(10, 1);
  expect(low - Math.min(...at(left))).toBeCloseTo(60, 1);
});

test('the legend’s cells are as wide and deep as the grid’s, labels in their middles, the near row lowest', () => {
  const { size, marks } = legend({ spec: sampleSpec });
  // By hand: cells 22 and 33 wide, 21 deep, 8 around.
  expect(size).toEqual([22 + 33 + 16, 21 + 16]);
  const cuts = marks.flatMap((mark) => (mark.kind === 'line' ? [mark.points] : []));
  expect(cuts.map(([a]) => a![0]).slice(0, 3)).toEqual([8, 30, 63]);
  const labels = marks.flatMap((mark) => (mark.kind === 'text' ? [[mark.text, mark.at[0]]] : []));
  expect(labels).toEqual([
    ['sow', 19],
    ['rest', 46.5],
  ]);
});

test('pages of a large sheet overlap and cover it; a line over the seam is on both', () => {
  const tiles = tilesOf([400, 500], A4);
  // By hand: 186 × 257 a page, 10 shared: 400 needs (400 − 10)/176 = 2.2, so 3; 500 needs 490/247 = 1.98, so 2.
  expect(tiles).toHaveLength(6);
  expect(tiles.at(-1)!.shows.slice(2)).toEqual([400, 500]);
  expect(tiles[0]!.shows[2] - tiles[1]!.shows[0]).toBe(OVERLAP);
  const line = {
    kind: 'line',
    points: [
      [0, 5],
      [400, 5],
    ],
  } as const;
  const pieces = tiles.slice(0, 3).map((tile) => onTile(line, tile));
  const long = pieces.map((own) =>
    sum(own.map((one) => (one.kind === 'line' ? one.points[1]![0] - one.points[0]![0] : 0))),
  );
  expect(sum(long)).toBeCloseTo(400 + 2 * OVERLAP, 9);
});

test('the PDF: A4 pages, the same bytes twice, and a ruler 100 mm long by its own coordinates', async () => {
  const made = await files();
  const pdf = made.get('sheets/template.pdf')!;
  expect(textOf(pdf.slice(0, 5))).toBe('%PDF-');
  expect(pdf).toEqual((await files()).get('sheets/template.pdf')!);
  // Uncompressed page boxes: A4 in points, 210 · 72 / 25.4 = 595.28, 297 · 72 / 25.4 = 841.89.
  const [, w, h] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(new TextDecoder('latin1').decode(pdf))!;
  expect(Number(w)).toBeCloseTo(595.28, 1);
  expect(Number(h)).toBeCloseTo(841.89, 1);
});

test('the ruler is 100 mm from end to end by the page’s own operators (ISO 32000: m moves, l draws, in 1/72 inch)', () => {
  const pdf = Buffer.from(sheetPdf([100, 100], { title: 'Ruler', marks: [], page: A4 }));
  const from = pdf.indexOf('stream\n') + 7;
  const content = inflateSync(pdf.subarray(from)).toString('latin1');
  const level = [...content.matchAll(/([\d.]+) ([\d.]+) m\s+([\d.]+) ([\d.]+) l/g)].map(([, a, b, c, d]) => [
    (Math.abs(+c! - +a!) * 25.4) / 72,
    (Math.abs(+d! - +b!) * 25.4) / 72,
  ]);
  expect(level.length).toBeGreaterThan(11);
  expect(Math.max(...level.map(([x]) => x!))).toBeCloseTo(100, 2);
});

test('taken apart: the sample’s pin goes back the way it came, its block stays', async () => {
  const { kit } = await sampleInputs();
  const apart = takenApart(kit);
  expect(apart.get('pin.1')!.by[2]).toBeGreaterThan(0);
  expect(apart.get('block.1')!.by).toEqual([0, 0, 0]);
});
