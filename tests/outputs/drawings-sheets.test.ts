/** Plan, exploded view and sheets at 1:1, read back by an XML parser and by the PDF's own operators; figures by hand. */
import { inflateSync } from 'node:zlib';
import { DOMParser } from 'linkedom';
import { expect, test } from 'vitest';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { sheetPdf } from '../../src/outputs/sheets/pdf.js';
import { legend } from '../../src/outputs/sheets/sheets.js';
import { A4, LETTER, registration, tilesOf } from '../../src/outputs/sheets/tiles.js';
import { sampleInputs, sampleSpec } from './sample-kit.js';

const POINT = 25.4 / 72;

/** Pages of a PDF as their drawn lines and texts [mm from the lower left]: ISO 32000, m moves, l draws, Td places text. */
function pagesOf(pdf: Uint8Array) {
  const bytes = Buffer.from(pdf);
  const text = bytes.toString('latin1');
  const boxes = [...text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, w, h]) => [
    +w! * POINT,
    +h! * POINT,
  ]);
  const contents = [...text.matchAll(/stream\n/g)].flatMap(({ index }) => {
    // The word ends "endstream", too.
    if (text.slice(index - 3, index) === 'end') return [];
    const content = inflateSync(bytes.subarray(index + 7)).toString('latin1');
    return content.includes(' l') ? [content] : [];
  });
  return contents.map((content, i) => ({
    size: boxes[i] ?? boxes[0]!,
    lines: [...content.matchAll(/([\d.-]+) ([\d.-]+) m\s+([\d.-]+) ([\d.-]+) l/g)].map(([, ...numbers]) =>
      numbers.map((one) => +one * POINT),
    ),
    said: [...content.matchAll(/\(((?:[^()\\]|\\.)*)\) Tj/g)].map(([, words]) => words!),
  }));
}

test.for([
  { paper: 'A4', page: A4, want: [210, 297] },
  { paper: 'Letter', page: LETTER, want: [8.5 * 25.4, 11 * 25.4] },
] as const)('on $paper every page is as large as the paper and bears a ruler of 100 mm', ({ page, want }) => {
  const pages = pagesOf(sheetPdf([400, 300], { title: 'Large', marks: [], page }));
  expect(pages.length).toBeGreaterThan(3);
  for (const { size, lines, said } of pages) {
    expect(size[0]).toBeCloseTo(want[0], 1);
    expect(size[1]).toBeCloseTo(want[1], 1);
    const level = lines.filter(([, a, , b]) => Math.abs(a! - b!) < 1e-6).map(([a, , b]) => Math.abs(b! - a!));
    expect(Math.max(...level)).toBeCloseTo(100, 2);
    expect(said.join(' ')).toContain('100 mm');
  }
});

test('the crosses of neighbouring pages are the same places of the sheet', () => {
  const pages = pagesOf(sheetPdf([300, 100], { title: 'Two', marks: [], page: A4 }));
  expect(pages).toHaveLength(2);
  // By hand: 186 shown a page, 10 shared, so page 2 begins at 176 and the seam's middle is at 181: on page 1 at 12 + 181,
  // on page 2 at 12 + 5.
  const crossed = pages.map(({ lines }) =>
    lines
      .filter(([x, a, y, b]) => Math.abs(x! - y!) < 1e-6 && Math.abs(Math.abs(b! - a!) - 8) < 0.01)
      .map(([x]) => Math.round(x! * 10) / 10),
  );
  expect(crossed).toEqual([
    [193, 193],
    [17, 17],
  ]);
});

test('a sheet of one page needs no crosses', () => {
  expect(registration(tilesOf([150, 150], A4))).toEqual([]);
});

test('the legend’s PDF is cut where the cells end: 22 and 33 wide, 21 deep', () => {
  const { size, marks } = legend({ spec: sampleSpec });
  const [page] = pagesOf(sheetPdf(size, { title: 'Legend', marks, page: A4 }));
  const upright = page!.lines.filter(([a, , b]) => Math.abs(a! - b!) < 1e-6);
  const cuts = upright.filter(([, a, , b]) => Math.abs(Math.abs(b! - a!) - 21) < 0.01).map(([x]) => x!);
  expect(cuts).toHaveLength(3);
  expect(cuts[1]! - cuts[0]!).toBeCloseTo(22, 2);
  expect(cuts[2]! - cuts[1]!).toBeCloseTo(33, 2);
  expect(page!.said).toEqual(expect.arrayContaining(['sow', 'rest']));
});

async function drawn(path: string, change: (inputs: Awaited<ReturnType<typeof sampleInputs>>) => object = () => ({})) {
  const inputs = await sampleInputs();
  const made = makeOutputs({ ...inputs, ...change(inputs) });
  const svg = new TextDecoder().decode(made.files.find((file) => file.path === path)!.bytes);
  return new DOMParser().parseFromString(svg, 'image/svg+xml');
}
type Document = Awaited<ReturnType<typeof drawn>>;
const said = (document: Document) => [...document.querySelectorAll('text')].map((node) => node.textContent);
const row = {
  name: 'row.0',
  line: 'row',
  index: 0,
  from: [60, 20, 5],
  to: [-10, 20, 5],
  diameter: 2.5,
  corridor: 3.75,
  emitter: 'block.2',
  receiver: 'block.1',
} as const;

test('the plan names beams, keys and sides: emitters far and right, receivers near and left', async () => {
  const document = await drawn('drawings/plan.svg', ({ kit }) => ({ kit: { ...kit, beams: [...kit.beams, row] } }));
  const words = said(document);
  expect(words).toEqual(expect.arrayContaining(['column.0', 'row.0', 'sow']));
  const at = (word: string) =>
    [...document.querySelectorAll('text')]
      .filter((node) => node.textContent === word)
      .map((node) => [Number(node.getAttribute('x')), Number(node.getAttribute('y'))]);
  // The column's beam runs from y = 42 to −3, the row's from x = 60 to −10; on paper y runs down.
  const [far, right] = at('emitters');
  const [near, left] = at('receivers');
  expect(far![1]).toBeLessThan(near![1]!);
  expect(right![0]).toBeGreaterThan(left![0]!);
});

test('the plan says nothing of keys without labels', async () => {
  const document = await drawn('drawings/plan.svg', ({ kit }) => ({
    kit: { ...kit, beams: [...kit.beams, row] },
    spec: { ...sampleSpec, grid: { ...sampleSpec.grid, labels: null } },
  }));
  expect(said(document)).not.toContain('sow');
});

test('the exploded view numbers each kind and leads to it', async () => {
  const document = await drawn('drawings/exploded.svg');
  const words = said(document);
  expect(words).toEqual(
    expect.arrayContaining([
      expect.stringMatching(/^\d {2}Pin$/),
      expect.stringMatching(/^\d {2}Block, drawn for a test$/),
    ]),
  );
  // Two kinds, none behind the other: two rings, apart from one another by more than their size.
  const rings = [...document.querySelectorAll('circle')].map((node) =>
    ['cx', 'cy', 'r'].map((key) => Number(node.getAttribute(key))),
  );
  expect(rings).toHaveLength(2);
  const [a, b] = rings;
  expect(Math.hypot(a![0]! - b![0]!, a![1]! - b![1]!)).toBeGreaterThan(a![2]! + b![2]!);
});

test('the template gives each hole its size and its place from the outline’s corner', async () => {
  // By hand: the outline is that of the two blocks, x from 0, y from 0; a countersunk M3 needs a hole of 3.4 (ISO 273, medium).
  const screw = { name: 'deck-screw-1', part: 'pin-2x7', rides: null, touches: [], overlaps: [] };
  const document = await drawn('sheets/template.svg', ({ kit }) => ({
    spec: { ...sampleSpec, screws: { ...sampleSpec.screws, fix: 'M3' } },
    kit: {
      ...kit,
      placements: [...kit.placements, { ...screw, matrix: [1, 0, 0, 7.5, 0, 1, 0, 12, 0, 0, 1, 0, 0, 0, 0, 1] }],
    },
  }));
  expect(said(document)).toContain('Ø3.4 at 7.5, 12.0');
  const root = document.querySelector('svg')!;
  // A millimetre is a millimetre: 40.12 + 10 wide and 20 deep, 8 around, 16 below; no narrower than the ruler's line.
  expect(root.getAttribute('width')).toBe('216mm');
  expect(root.getAttribute('height')).toBe('52mm');
  expect(root.getAttribute('viewBox')).toBe('0 0 216 52');
});

test('each further set of labels has a legend of its own, SVG and both papers; the engraved set’s stays as it was', async () => {
  const files = async (labelSets?: readonly { name: string; labels: readonly (readonly string[])[] }[]) =>
    makeOutputs({
      ...(await sampleInputs()),
      spec: { ...sampleSpec, grid: { ...sampleSpec.grid, ...(labelSets && { labelSets }) } },
    }).files;
  const [plain, more] = [await files(), await files([{ name: 'winter', labels: [['größer', '<b>']] }])];
  const bytes = (of: typeof plain, path: string) => of.find((file) => file.path === path)?.bytes;
  for (const end of ['svg', 'pdf'] as const)
    expect(bytes(more, `sheets/legend.${end}`)).toEqual(bytes(plain, `sheets/legend.${end}`));
  expect(plain.some(({ path }) => path.includes('winter'))).toBe(false);
  const svg = new DOMParser().parseFromString(
    new TextDecoder().decode(bytes(more, 'sheets/winter/legend.svg')),
    'image/svg+xml',
  );
  expect(said(svg)).toEqual(expect.arrayContaining(['größer', '<b>']));
  expect(said(svg)).not.toContain('sow');
  // Two bytes of UTF-8 are one of Latin-1 in a PDF's text.
  for (const path of ['sheets/winter/legend.pdf', 'sheets/winter/legend-letter.pdf'])
    expect(pagesOf(bytes(more, path)!)[0]!.said).toEqual(expect.arrayContaining(['gr\xf6\xdfer', '<b>']));
  const report = new DOMParser().parseFromString(new TextDecoder().decode(bytes(more, 'report.html')), 'text/html');
  const cells = [...report.querySelectorAll('#parts td')].map((node) => node.textContent);
  expect(cells).toEqual(expect.arrayContaining(['größer', '<b>']));
  const json = JSON.parse(new TextDecoder().decode(bytes(more, 'kit.json')));
  expect(json.spec.grid.label_sets).toEqual({ winter: [['größer', '<b>']] });
});

test('drawings and sheets come out the same twice', async () => {
  const files = async () =>
    makeOutputs(await sampleInputs()).files.filter(({ path }) => /^(drawings|sheets)\//.test(path));
  const [first, second] = [await files(), await files()];
  expect(first.map(({ path }) => path)).toEqual(
    expect.arrayContaining(['drawings/exploded.svg', 'sheets/legend-letter.pdf', 'sheets/template.pdf']),
  );
  expect(first).toEqual(second);
});
