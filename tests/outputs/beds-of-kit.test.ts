/**
 * The beds of a whole kit, as a reader of 3MF that knows nothing of this project finds them (three, its 3MF loader): every part as
 * often as it is placed, inside the edge margin, a spacing apart, on the bed, as large as its solid.
 */
import { createHash } from 'node:crypto';
import { DOMParser } from 'linkedom';
import { Box3, type Group, type Object3D, type Mesh as ThreeMesh, Vector3 } from 'three';
import { ThreeMFLoader } from 'three/examples/jsm/loaders/3MFLoader.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { bed as bedCheck } from '../../src/checks/bed.js';
import { compression } from '../../src/cli/compression.js';
import { layBeds } from '../../src/outputs/beds/lay-beds.js';
import { OUTPUTS } from '../../src/outputs/index.js';
import { makeKit } from '../../src/pipeline.js';
import { box } from '../../src/solid/shapes.js';
import { readPreset } from '../../src/spec/read-preset.js';
import { openWorkshop } from '../kit/make.js';
import { sampleInputs } from './sample-kit.js';

// A bed, a margin and a spacing that no default would give; the bed is wider than deep.
const PRESET = `grid: { rows: 2, columns: 3, pitch: 22 }
printer: { base: bed-220, bed_x: 190, bed_y: 150, edge_margin: 7, spacing: 3 }
`;
const BED = { width: 190, depth: 150, edge: 7, spacing: 3 };

interface KitJson {
  readonly parts: readonly {
    readonly id: string;
    readonly kind: string;
    readonly quantity: number;
    readonly volume_mm3: number;
  }[];
  readonly placements: readonly { readonly part: string }[];
  readonly prints: {
    readonly beds_at_least: number;
    readonly plastic_g: number;
    readonly filament_m: number;
    readonly hours: number;
    readonly beds: readonly {
      readonly file: string;
      readonly fill: number;
      readonly plastic_g: number;
      readonly filament_m: number;
      readonly hours: number;
      readonly items: readonly {
        readonly part: string;
        readonly at: readonly [number, number];
        readonly turn: number;
      }[];
    }[];
  };
}

let files: ReadonlyMap<string, Uint8Array>;
let kit: KitJson;
beforeAll(async () => {
  (globalThis as { DOMParser?: unknown }).DOMParser = DOMParser;
  const { kernel, profiles } = await openWorkshop();
  const made = kernel.scope(() => {
    const { files: all } = makeKit(readPreset(PRESET, 'tested.yaml'), {
      kernel,
      profiles,
      hash: (bytes) => createHash('sha256').update(bytes).digest('hex'),
      outputs: OUTPUTS,
      compression,
      viewer: '',
      progress: () => {},
      accept: [],
    });
    return { keep: [], value: all };
  });
  files = new Map(made.map(({ path, bytes }) => [path, bytes]));
  kit = JSON.parse(new TextDecoder().decode(files.get('kit.json')!));
});

const load = (path: string): Group => new ThreeMFLoader().parse(new Uint8Array(files.get(path)!).buffer);
const bedFiles = () => [...files.keys()].filter((path) => path.startsWith('prints/')).sort();

/** By the divergence theorem over what the loader made. */
function volumeOf(child: Object3D): number {
  let volume = 0;
  child.updateMatrixWorld(true);
  child.traverse((node) => {
    const { geometry, matrixWorld } = node as ThreeMesh;
    if (!geometry) return;
    const position = (geometry.index ? geometry.toNonIndexed() : geometry).getAttribute('position');
    const corner = (i: number) => new Vector3().fromBufferAttribute(position, i).applyMatrix4(matrixWorld);
    for (let i = 0; i < position.count; i += 3) volume += corner(i).dot(corner(i + 1).cross(corner(i + 2))) / 6;
  });
  return volume;
}

describe('the beds of a kit of 2 × 3', () => {
  test('every printed part stands on them as often as the kit places it, and nothing else', () => {
    const printed = new Set(kit.parts.filter(({ kind }) => kind === 'printed').map(({ id }) => id));
    const wanted = kit.placements.map(({ part }) => part).filter((part) => printed.has(part));
    const laid = kit.prints.beds.flatMap(({ items }) => items.map(({ part }) => part));
    expect(laid.toSorted()).toEqual(wanted.toSorted());
    expect(bedFiles()).toEqual(kit.prints.beds.map(({ file }) => file));
    expect(bedFiles().length).toBeGreaterThan(1);
    expect(bedFiles().length).toBeGreaterThanOrEqual(kit.prints.beds_at_least);
  });

  test('read back, each is as large as its solid, stands on the bed where kit.json says, in the margin, apart from the rest', () => {
    const volumes = new Map(kit.parts.map(({ id, volume_mm3 }) => [id, volume_mm3]));
    for (const { file, items, fill } of kit.prints.beds) {
      const { children } = load(file);
      expect(children).toHaveLength(items.length);
      let covered = 0;
      const boxes = children.map((child) => new Box3().setFromObject(child, true));
      boxes.forEach((a, i) => {
        const { part, at } = items[i]!;
        // The written mesh may differ from the solid by what the file gate lets pass, 5 parts in 10 000.
        expect(Math.abs(volumeOf(children[i]!) / volumes.get(part)! - 1), part).toBeLessThan(5e-4);
        expect(a.min.z).toBeCloseTo(0, 3);
        expect(a.min.x).toBeCloseTo(at[0], 2);
        expect(a.min.y).toBeCloseTo(at[1], 2);
        expect(Math.min(a.min.x, a.min.y)).toBeGreaterThan(BED.edge - 2e-3);
        expect(a.max.x).toBeLessThan(BED.width - BED.edge + 2e-3);
        expect(a.max.y).toBeLessThan(BED.depth - BED.edge + 2e-3);
        covered += (a.max.x - a.min.x) * (a.max.y - a.min.y);
        for (const b of boxes.slice(i + 1)) {
          const apart = Math.max(b.min.x - a.max.x, a.min.x - b.max.x, b.min.y - a.max.y, a.min.y - b.max.y);
          // The file's grid is 1e-5 of a part's size.
          expect(apart, part).toBeGreaterThan(BED.spacing - 4e-3);
        }
      });
      expect(fill).toBeCloseTo(covered / ((190 - 2 * 7) * (150 - 2 * 7)), 2);
    }
  });

  test('some are turned, and the totals are those of the beds', () => {
    const { beds, ...totals } = kit.prints;
    expect(new Set(beds.flatMap(({ items }) => items.map(({ turn }) => turn)))).toEqual(new Set([0, 90]));
    const sum = (of: (bed: (typeof beds)[number]) => number) => beds.reduce((total, bed) => total + of(bed), 0);
    // Each bed is rounded for itself.
    expect(Math.abs(totals.plastic_g - sum((bed) => bed.plastic_g))).toBeLessThan(0.06 * (beds.length + 1));
    expect(Math.abs(totals.filament_m - sum((bed) => bed.filament_m))).toBeLessThan(0.006 * (beds.length + 1));
    expect(Math.abs(totals.hours - sum((bed) => bed.hours))).toBeLessThan(0.06 * (beds.length + 1));
    expect(totals.plastic_g).toBeGreaterThan(0);
  });

  test('kit.3mf holds every placement, bought parts too', () => {
    expect(load('kit.3mf').children).toHaveLength(kit.placements.length);
    expect(new Set(kit.parts.map(({ kind }) => kind))).toEqual(new Set(['printed', 'bought']));
  });
});

test.for([
  { size: 210, laid: true },
  // Meshes are float32: what is drawn 80.52 long measures 80.520000003. A micrometre is let pass.
  { size: 210.0009, laid: true },
  { size: 210.002, laid: false },
])(
  'a block $size long on a bed that takes 210: what the check of the bed lets pass is laid ($laid)',
  async ({ size, laid }) => {
    const inputs = await sampleInputs([]);
    const { kernel } = inputs;
    const long = { ...inputs.kit.parts.get('block')!, posed: null, solid: box(kernel, [0, 0, 0], [size, 20, 3]) };
    const kitOfOne = { ...inputs.kit, parts: new Map([...inputs.kit.parts, ['block', long]]) };
    const codes = bedCheck
      .run({ ...inputs, kit: kitOfOne } as unknown as Parameters<typeof bedCheck.run>[0])
      .map(({ code }) => code);
    expect(codes).toEqual(laid ? [] : ['bed/too-large']);
    const lay = () => layBeds({ ...inputs, kit: kitOfOne });
    if (laid) expect(lay().beds.map(({ items }) => items.length)).toEqual([2]);
    else expect(lay).toThrow(/does not fit/);
  },
);
