/** 3MF: by the core specification's rules, and by a loader that knows nothing of this project (three, its 3MF loader). */
import { unzipSync } from 'fflate';
import { DOMParser } from 'linkedom';
import { Box3, type MeshPhongMaterial, type Mesh as ThreeMesh, Vector3 } from 'three';
import { ThreeMFLoader } from 'three/examples/jsm/loaders/3MFLoader.js';
import { beforeAll, expect, test } from 'vitest';
import { compression } from '../../src/cli/compression.js';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { decimal, modelXml, xmlText } from '../../src/outputs/three-mf/model-xml.js';
import { threeMf } from '../../src/outputs/three-mf/package.js';
import { translation } from '../../src/solid/matrix.js';
import { blockMesh } from '../solid/meshes.js';
import { sampleInputs } from './sample-kit.js';

type Files = ReadonlyMap<string, Uint8Array>;
let files: Files;
beforeAll(async () => {
  (globalThis as { DOMParser?: unknown }).DOMParser = DOMParser;
  files = new Map(makeOutputs(await sampleInputs()).files.map(({ path, bytes }) => [path, bytes]));
});

const load = (path: string) => {
  const bytes = files.get(path)!;
  return new ThreeMFLoader().parse(
    bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as ArrayBuffer,
  );
};
const xmlOf = (path: string) => new TextDecoder().decode(unzipSync(files.get(path)!)['3D/3dmodel.model']!);

/** Rules of the core specification that need no reader: namespace, unit, objects before use, whole meshes. */
function rules(xml: string) {
  const document = new DOMParser().parseFromString(xml, 'text/xml');
  const model = document.querySelector('model')!;
  expect(model.getAttribute('xmlns')).toBe('http://schemas.microsoft.com/3dmanufacturing/core/2015/02');
  expect(model.getAttribute('unit')).toBe('millimeter');
  const ids = [...document.querySelectorAll('object')].map((object) => object.getAttribute('id'));
  expect(new Set(ids).size).toBe(ids.length);
  for (const item of document.querySelectorAll('item')) {
    expect(ids).toContain(item.getAttribute('objectid'));
    const numbers = item.getAttribute('transform')!.split(' ').map(Number);
    expect(numbers).toHaveLength(12);
    const [a, b, c, d, e, f, g, h, i] = numbers as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    expect(a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)).toBeCloseTo(1, 6);
  }
  for (const object of document.querySelectorAll('object')) {
    const edges = new Set<string>();
    for (const triangle of object.querySelectorAll('triangle')) {
      const v = ['v1', 'v2', 'v3'].map((key) => triangle.getAttribute(key)!);
      expect(new Set(v).size).toBe(3);
      for (const k of [0, 1, 2]) {
        const edge = `${v[k]}>${v[(k + 1) % 3]}`;
        expect(edges.has(edge)).toBe(false);
        edges.add(edge);
      }
    }
    for (const edge of edges) expect(edges.has(edge.split('>').reverse().join('>'))).toBe(true);
  }
  // No number in it is written with an exponent, no name but the core specification's own stands in the metadata.
  expect(xml).not.toMatch(/"[^"]*\d[eE][-+]?\d[^"]*" [xyz]=|[xyz]="[^"]*[eE]/);
  for (const meta of document.querySelectorAll('metadata'))
    expect(['Title', 'Description', 'Application']).toContain(meta.getAttribute('name'));
  return document;
}

test('the kit: two blocks as they stand, one object used twice, and the pin', () => {
  const document = rules(xmlOf('kit.3mf'));
  expect([...document.querySelectorAll('object')].map((object) => object.getAttribute('partnumber'))).toEqual([
    'pin-2x7',
    'block',
  ]);
  const group = load('kit.3mf');
  expect(group.children).toHaveLength(3);
  // By hand: the block stands 4 high at x = 0 and 40.1234567, the pin 2 × 2 × 7 at −30; all a third of a mm up.
  const boxes = group.children.map((child) => new Box3().setFromObject(child));
  const wanted = [
    [0, 0, 1 / 3, 10, 20, 4 + 1 / 3],
    [40.1234567, 0, 1 / 3, 50.1234567, 20, 4 + 1 / 3],
    [-31, -1, 1 / 3, -29, 1, 7 + 1 / 3],
  ];
  for (const [i, want] of wanted.entries()) {
    const found = [...boxes[i]!.min.toArray(), ...boxes[i]!.max.toArray()];
    for (const [k, value] of want.entries()) expect(found[k], `${i}, ${k}`).toBeCloseTo(value, 3);
  }
});

test('a bed: both blocks as printed, nothing bought, volumes by the divergence theorem 600 mm³ each', () => {
  rules(xmlOf('prints/bed-1.3mf'));
  const group = load('prints/bed-1.3mf');
  expect(group.children).toHaveLength(2);
  for (const child of group.children) {
    let volume = 0;
    child.updateMatrixWorld(true);
    child.traverse((node) => {
      const { geometry, matrixWorld } = node as ThreeMesh;
      if (!geometry) return;
      const flat = geometry.index ? geometry.toNonIndexed() : geometry;
      const position = flat.getAttribute('position');
      const corner = (i: number) => new Vector3().fromBufferAttribute(position, i).applyMatrix4(matrixWorld);
      for (let i = 0; i < position.count; i += 3) volume += corner(i).dot(corner(i + 1).cross(corner(i + 2))) / 6;
    });
    expect(volume).toBeCloseTo(600, 2);
    const { min } = new Box3().setFromObject(child);
    expect(min.z).toBeCloseTo(0, 6);
    expect(min.x).toBeGreaterThan(0);
  }
});

test('its thumbnail is a PNG of 256 pixels a side; the parts of the package point to what is there', () => {
  const parts = unzipSync(files.get('kit.3mf')!);
  const png = parts['Metadata/thumbnail.png']!;
  // PNG, ISO/IEC 15948: signature, then IHDR with width and height.
  expect([...png.slice(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  const view = new DataView(png.buffer, png.byteOffset);
  expect([view.getUint32(16), view.getUint32(20)]).toEqual([256, 256]);
  const relations = new TextDecoder().decode(parts['_rels/.rels']!);
  for (const [, target] of relations.matchAll(/Target="\/([^"]+)"/g)) expect(Object.keys(parts)).toContain(target);
});

test('a title of markup and quotes stays text', () => {
  const xml = xmlOf('kit.3mf');
  expect(xml).not.toContain('<b>');
  const title = [...new DOMParser().parseFromString(xml, 'text/xml').querySelectorAll('metadata')][0]!;
  expect(title.textContent).toBe('=Potting, "shed" <b>panel</b>');
  expect(xmlText('a\u0000b\uD800c')).toBe('a\uFFFDb\uFFFDc');
});

test('numbers: the fewest decimals that give the same float32, never an exponent', () => {
  for (const [value, text] of [
    [Math.fround(0.1), '0.1'],
    [Math.fround(1e-7), '0.0000001'],
    [-0, '0'],
    [Math.fround(123.456), '123.456'],
    [Math.fround(1 / 3), '0.33333334'],
  ] as const)
    expect(decimal(value)).toBe(text);
});

test('an object that is used by two items is written once', () => {
  const mesh = blockMesh([0, 0, 0], [1, 2, 3]);
  const xml = new TextDecoder().decode(
    modelXml({
      title: 't',
      description: 'd',
      objects: [{ key: 'a', name: 'a', partNumber: 'a', mesh, colour: [1, 2, 3] }],
      items: [0, 9].map((x) => ({ object: 'a', partNumber: 'a', matrix: translation([x, 0, 0]) })),
    }),
  );
  expect(xml.match(/<mesh>/g)).toHaveLength(1);
  expect(xml.match(/<item /g)).toHaveLength(2);
});

test('each object is read back in its own colour, whatever the order', () => {
  const mesh = blockMesh([0, 0, 0], [1, 2, 3]);
  const colours = { sand: [210, 180, 140], slate: [47, 79, 79], again: [210, 180, 140] } as const;
  const keys = ['sand', 'slate', 'again'] as const;
  const model = modelXml({
    title: 't',
    description: 'd',
    objects: keys.map((key) => ({ key, name: key, partNumber: key, mesh, colour: colours[key] })),
    items: [...keys].reverse().map((key, i) => ({ object: key, partNumber: key, matrix: translation([9 * i, 0, 0]) })),
  });
  const bytes = threeMf({ model, thumbnail: new Uint8Array() }, compression);
  const { children } = new ThreeMFLoader().parse(new Uint8Array(bytes).buffer);
  const found = children.map((child) => {
    let colour = '';
    child.traverse((node) => {
      const { material } = node as ThreeMesh;
      if (material) colour = (material as MeshPhongMaterial).color.getHexString();
    });
    return colour;
  });
  // By hand: 210, 180, 140 is d2b48c; 47, 79, 79 is 2f4f4f.
  expect(found).toEqual(['d2b48c', '2f4f4f', 'd2b48c']);
});
