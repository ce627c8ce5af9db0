/** The report, as a parser of its own reads it. */
import { inflateSync } from 'node:zlib';
import { DOMParser } from 'linkedom';
import { beforeAll, expect, test } from 'vitest';
import { compression } from '../../src/cli/compression.js';
import { OUTPUTS } from '../../src/outputs/index.js';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { base64 } from '../../src/outputs/report/html.js';
import { makeKit } from '../../src/pipeline.js';
import { readPreset } from '../../src/spec/read-preset.js';
import type { SceneData } from '../../src/viewer/scene-data.js';
import { openWorkshop, shipped } from '../kit/make.js';
import { sampleFinding, sampleInputs } from './sample-kit.js';

const page = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
const dom = (html: string) => new DOMParser().parseFromString(html, 'text/html');

interface Whole {
  readonly html: string;
  readonly scene: SceneData;
  readonly steps: number;
  readonly volumes: ReadonlyMap<string, number>;
}
let whole: Whole;
beforeAll(async () => {
  const { kernel, profiles } = await openWorkshop();
  whole = kernel.scope(() => {
    const { files, context } = makeKit(readPreset(shipped('tight-cue-strip'), 'tight-cue-strip.yaml'), {
      kernel,
      profiles,
      hash: () => '',
      outputs: OUTPUTS,
      compression,
      viewer: 'const done = "</script>";',
      progress: () => {},
      accept: [],
    });
    const html = page(files.find(({ path }) => path === 'report.html')!.bytes);
    const scene = JSON.parse(dom(html).querySelector('#scene-data')!.textContent!) as SceneData;
    const volumes = new Map(
      [...context.kit.parts.values()].map((part) => [part.id, kernel.volume(part.posed?.level ?? part.solid)]),
    );
    return { keep: [], value: { html, scene, steps: context.kit.assembly.length, volumes } };
  });
}, 60_000);

test('nothing in it is fetched from anywhere: every address is a chapter of its own or data', () => {
  const document = dom(whole.html);
  const targets = [...document.querySelectorAll('[src], [href]')].map(
    (node) => node.getAttribute('src') ?? node.getAttribute('href')!,
  );
  expect(targets.length).toBeGreaterThan(10);
  for (const target of targets) expect(target).toMatch(/^(#|data:image\/png;base64,)/);
  for (const [, id] of whole.html.matchAll(/href="#([^"]+)"/g)) expect(document.querySelector(`#${id}`)).not.toBeNull();
  expect(document.querySelector('meta[http-equiv]')!.getAttribute('content')).toContain("default-src 'none'");
});

test('a script that holds its own end tag does not end early', () => {
  expect(dom(whole.html).querySelectorAll('script')).toHaveLength(2);
});

test('every step of assembly has its picture and its title', () => {
  const steps = [...dom(whole.html).querySelectorAll('.steps li')];
  expect(steps).toHaveLength(whole.steps);
  for (const [i, step] of steps.entries()) {
    expect(step.querySelector('h3')!.textContent).toMatch(new RegExp(`^${i + 1}\\. \\S`));
    expect(step.querySelector('img')!.getAttribute('src')!.length).toBeGreaterThan(1000);
  }
});

test('the 3D view’s meshes, unpacked by zlib itself, enclose what the solids do: within .1 % and a thousandth of their box', () => {
  const block = inflateSync(Buffer.from(whole.scene.meshes, 'base64'));
  for (const { id, at, vertices, triangles, indexBytes, min, step } of whole.scene.parts) {
    const corner = (v: number) =>
      [0, 1, 2].map((k) => min[k]! + step * block.readUInt16LE(at + 2 * (3 * v + k))) as [number, number, number];
    expect(indexBytes).toBe(2);
    let volume = 0;
    for (let t = 0; t < triangles; t++) {
      const [a, b, c] = [0, 1, 2].map((k) => corner(block.readUInt16LE(at + 6 * vertices + 2 * (3 * t + k)))) as [
        [number, number, number],
        [number, number, number],
        [number, number, number],
      ];
      volume +=
        (a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0])) /
        6;
    }
    // Steps of at most .005 mm: a wall of 1 mm loses up to half a percent of its thickness.
    expect(volume / whole.volumes.get(id)!, id).toBeCloseTo(1, 2);
  }
});

test('taken apart, every nut, screw and cover stands off its place, the cover’s screws beyond the cover', () => {
  const at = (name: string) => whole.scene.placements.find((one) => one.name === name)!.apart;
  const cover = at('far-cover');
  expect(cover[2]).toBeGreaterThan(20);
  expect(at('far-cover-screw-1')[2]).toBeGreaterThan(cover[2]);
  // A nut rides on its mount: as high as that, and out of its side as well.
  const [mount, nut] = [at('column-0-mount'), at('column-0-fix-nut')];
  expect(nut[2]).toBeCloseTo(mount[2], 6);
  expect(Math.hypot(nut[0] - mount[0], nut[1] - mount[1])).toBeGreaterThan(10);
});

test('a title, label and finding of markup stay text', async () => {
  const { files } = makeOutputs(
    await sampleInputs([{ ...sampleFinding, message: '<img src=x onerror=alert(1)> & "so"' }]),
  );
  const html = page(files.find(({ path }) => path === 'report.html')!.bytes);
  const document = dom(html);
  expect(document.querySelector('h1')!.textContent).toBe('=Potting, "shed" <b>panel</b>');
  expect(document.querySelector('title')!.textContent).toContain('<b>panel</b>');
  expect(document.querySelectorAll('img[onerror], b')).toHaveLength(0);
  expect(document.querySelector('#findings')!.textContent).toContain('<img src=x onerror=alert(1)> & "so"');
});

test.for([
  // RFC 4648, section 10.
  ['', ''],
  ['f', 'Zg=='],
  ['fo', 'Zm8='],
  ['foo', 'Zm9v'],
  ['foob', 'Zm9vYg=='],
  ['fooba', 'Zm9vYmE='],
  ['foobar', 'Zm9vYmFy'],
] as const)('base64 of "%s" is "%s"', ([plain, coded]) => {
  expect(base64(new TextEncoder().encode(plain))).toBe(coded);
});
