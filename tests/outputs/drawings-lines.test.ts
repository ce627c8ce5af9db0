/** Lines of part sheets: hidden edges, slivers, where a part is cut; every figure by hand. */
import { DOMParser } from 'linkedom';
import { expect, test } from 'vitest';
import type { Kit, Part } from '../../src/kit/types.js';
import { chained } from '../../src/outputs/drawings/chained.js';
import { across } from '../../src/outputs/drawings/dimension.js';
import { edgesOf } from '../../src/outputs/drawings/edges.js';
import { lineView } from '../../src/outputs/drawings/line-view.js';
import { partSheet } from '../../src/outputs/drawings/part-sheet.js';
import { partCut, sectionOf } from '../../src/outputs/drawings/section.js';
import type { Segment } from '../../src/outputs/drawings/segment.js';
import { fitted } from '../../src/outputs/drawings/sheet-frame.js';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { frame, translation } from '../../src/solid/matrix.js';
import type { Mesh } from '../../src/solid/mesh.js';
import { box } from '../../src/solid/shapes.js';
import { sampleInputs, sampleSpec } from './sample-kit.js';

const length = ([[ax, ay], [bx, by]]: Segment) => Math.hypot(bx - ax, by - ay);
const sum = (segments: readonly Segment[]) => segments.reduce((total, one) => total + length(one), 0);
const seen = (mesh: Mesh, toEye: readonly [number, number, number]) =>
  lineView([{ mesh, edges: edgesOf(mesh) }], toEye, { hidden: true });

test('a pocket from below is hidden from above and from the front, and seen from below', async () => {
  const k = await loadManifoldKernel();
  // Block 30 × 20 × 10, pocket 12 × 8 from below, 4 deep: x 9…21, y 6…14.
  const mesh = k.mesh(k.subtract(box(k, [0, 0, 0], [30, 20, 10]), [box(k, [9, 6, -1], [21, 14, 4])]));
  const [above, front, below] = [seen(mesh, [0, 0, 1]), seen(mesh, [0, -1, 0]), seen(mesh, [0, 0, -1])];
  // By hand: outline 2 · (30 + 20); the pocket's 2 · (12 + 8), its rim and its floor on one another, once.
  expect(sum(above.segments)).toBeCloseTo(100, 0);
  expect(Math.abs(sum(above.hidden) - 40)).toBeLessThan(1);
  // From the front: two sides 4 high and a ceiling 12 long; what lies on the outline is drawn already.
  expect(sum(front.segments)).toBeCloseTo(80, 0);
  expect(Math.abs(sum(front.hidden) - 20)).toBeLessThan(1);
  // From below nothing is behind anything: the pocket's rim and its floor's edges, one over the other.
  expect(sum(below.segments)).toBeCloseTo(100 + 40 + 40, 0);
  expect(sum(below.hidden)).toBe(0);
});

test('nothing hidden is drawn unless it is asked for', async () => {
  const k = await loadManifoldKernel();
  const mesh = k.mesh(k.subtract(box(k, [0, 0, 0], [30, 20, 10]), [box(k, [9, 6, -1], [21, 14, 4])]));
  expect(lineView([{ mesh, edges: edgesOf(mesh) }], [0, 0, 1]).hidden).toEqual([]);
});

test('an edge split by a sliver is still an edge: its two pieces, sharp', () => {
  // Two square faces 10 × 10 at a right angle along x; the level one sees the edge whole, the upright one in two: 6 and 4.
  // The sliver 0–4–1 lies between them, without area.
  const mesh: Mesh = {
    // biome-ignore format: a point a line
    positions: Float32Array.from([
      0, 0, 0,
      10, 0, 0,
      10, 10, 0,
      0, 10, 0,
      6, 0, 0,
      0, 0, -10,
      10, 0, -10,
    ]),
    triangles: Uint32Array.from([0, 1, 2, 0, 2, 3, 1, 0, 4, 4, 0, 5, 4, 5, 6, 4, 6, 1]),
  };
  const edges = edgesOf(mesh);
  const long = [...edges.sharp.keys()].map((e) => {
    const [ax, ay, az, bx, by, bz] = edges.corners.subarray(6 * e, 6 * e + 6);
    return Math.hypot(bx! - ax!, by! - ay!, bz! - az!);
  });
  expect(long.toSorted()).toEqual([4, 6]);
  expect([...edges.sharp]).toEqual([1, 1]);
});

const identity = translation([0, 0, 0]);
async function cutOf({
  beams = [],
  screws = [],
  matrix = identity,
}: Partial<Pick<Kit, 'beams' | 'screws'>> & { readonly matrix?: typeof identity }) {
  const kernel = await loadManifoldKernel();
  const part: Part = {
    id: 'plate',
    title: 'Plate',
    kind: 'printed',
    material: 'invented',
    densityGcm3: 1,
    solid: box(kernel, [0, 0, 0], [40, 24, 6]),
    posed: null,
    order: null,
  };
  const placements = [{ name: 'p', part: 'plate', matrix, rides: null, touches: [], overlaps: [] }];
  const kit: Kit = { parts: new Map([['plate', part]]), placements, beams, screws, fits: [], assembly: [] };
  return sectionOf(part, { kernel, kit });
}
const beam = { name: 'b', line: 'row', index: 0, diameter: 2, corridor: 3, emitter: 'p', receiver: 'p' } as const;
const screw = {
  placement: 's',
  size: 'm3',
  lengthMm: 8,
  into: { kind: 'formed', part: 'p', engaged: 4 },
  tipRoom: null,
  tool: { name: 'key', diameter: 2, reach: 9, when: 'at its step' },
} as const;

test.for([
  {
    row: 'a beam along x at y = 7, upright: y = 7, 40 × 6',
    kit: { beams: [{ ...beam, from: [-5, 7, 2], to: [-1, 7, 2] }] },
    want: { axis: 1, at: 7, size: [40, 6] },
  },
  {
    row: 'the beam nearest the middle of two',
    kit: {
      beams: [
        { ...beam, from: [31, 50, 2], to: [31, 60, 2] },
        { ...beam, from: [17, 50, 2], to: [17, 60, 2] },
      ],
    },
    want: { axis: 0, at: 17, size: [24, 6] },
  },
  {
    row: 'a beam above the plate does not count; the middle of the side with as many corners',
    kit: { beams: [{ ...beam, from: [-5, 7, 9], to: [60, 7, 9] }] },
    want: { axis: 1, at: 12, size: [40, 6] },
  },
  {
    row: 'a screw down through (11, 5)',
    kit: { screws: [{ ...screw, head: [11, 5, 8], direction: [0, 0, -1] }] },
    want: { axis: 1, at: 5, size: [40, 6] },
  },
  {
    row: 'a screw that ends above the plate does not count',
    kit: { screws: [{ ...screw, head: [11, 5, 15], direction: [0, 0, -1] }] },
    want: { axis: 1, at: 12, size: [40, 6] },
  },
  {
    row: 'a plate standing on its long side, the beam along it: cut in the plane that it prints on',
    // File x stays x, file y points up, file z toward −y: the beam at y = −2 is at z = 2.
    kit: {
      beams: [{ ...beam, from: [-5, -2, 9], to: [-1, -2, 9] }],
      matrix: frame([1, 0, 0], [0, 0, 1], [0, -1, 0], [0, 0, 0]),
    },
    want: { axis: 2, at: 2, size: [40, 24] },
  },
] as const)('where it is cut: $row', async ({ kit, want }) => {
  const { axis, at, size } = await cutOf(kit as Parameters<typeof cutOf>[0]);
  expect(axis).toBe(want.axis);
  expect(at).toBeCloseTo(want.at, 9);
  expect(size[0]).toBeCloseTo(want.size[0], 4);
  expect(size[1]).toBeCloseTo(want.size[1], 4);
});

test('pieces that follow one another become one line, a corner ends it', () => {
  const lines = chained([
    [
      [4, 0],
      [7, 0.5],
    ],
    [
      [0, 0],
      [4, 0],
    ],
    [
      [7, 5],
      [7, 0.5],
    ],
  ]);
  expect(lines).toEqual([
    [
      [0, 0],
      [4, 0],
      [7, 0.5],
    ],
    [
      [7, 5],
      [7, 0.5],
    ],
  ]);
});

test('a dimension too short for its arrows has them outside, its figure beside them (ISO 129-1)', () => {
  const texts = (to: number) =>
    across(10, to, { y: 5, edge: 15, value: 3 }).flatMap((mark) => (mark.kind === 'text' ? [mark.at[0]] : []));
  expect(texts(40)).toEqual([25]);
  expect(texts(13)[0]).toBeGreaterThan(13);
});

test('a text too long for its room is cut short', () => {
  expect(fitted('short', { size: 2, room: 30 })).toBe('short');
  const cut = fitted('x'.repeat(200), { size: 2, room: 30 });
  // By hand: a letter takes .95 · 2, so 15 of them fit.
  expect(cut).toBe(`${'x'.repeat(14)}…`);
});

test('a part that A4 would reduce goes on A3 if that shows it larger', async () => {
  const inputs = await sampleInputs();
  const { kernel } = inputs;
  const sheet = (size: readonly [number, number, number]) => {
    const solid = box(kernel, [0, 0, 0], size);
    const made = makeOutputs(inputs);
    const kit = { ...inputs.kit, beams: [] };
    const part = { ...inputs.kit.parts.get('block')!, solid, posed: null };
    const cuts = new Map([[part.id, partCut(part, { kernel, kit })]]);
    const svg = partSheet(part, { ...made.context, kit, cuts, meshOf: () => kernel.mesh(solid) });
    const root = new DOMParser().parseFromString(svg, 'image/svg+xml').querySelector('svg')!;
    return [root.getAttribute('width'), /Scale ([\d:]+)/.exec(svg)![1]];
  };
  // By hand: 297 − 20 − 48 = 229 across on A4, 352 on A3; a view and a section of the length side by side.
  expect(sheet([100, 20, 10])).toEqual(['297mm', '1:1']);
  expect(sheet([170, 20, 10])).toEqual(['420mm', '1:1']);
  // 800 beside one another are 160 at 1:5 and 400 at 1:2: A3 gains nothing.
  expect(sheet([400, 20, 10])).toEqual(['297mm', '1:5']);
});

test('titles that look like markup stay text', async () => {
  const inputs = await sampleInputs();
  const title = '<script>alert("1")</script> & \u0007 ]]>';
  const made = makeOutputs({ ...inputs, spec: { ...sampleSpec, title } });
  const drawings = made.files.filter(({ path }) => path.endsWith('.svg') && /^(drawings|sheets)\//.test(path));
  expect(drawings.length).toBeGreaterThan(4);
  for (const { bytes } of drawings) {
    const svg = new TextDecoder().decode(bytes);
    expect(svg).not.toContain('<script');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: XML 1.0 allows none but tab and line ends
    expect(svg).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/);
    const document = new DOMParser().parseFromString(svg, 'image/svg+xml');
    expect(document.documentElement.textContent).toContain('<script>alert');
  }
});
