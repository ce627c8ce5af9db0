#!/usr/bin/env node
/**
 * Draws a written kit, or single STL files, as a PNG.
 *
 *   node tests/tools/render.mjs out/<kit> [--view iso-front] [--hide cover,deck] [--only rail] [--focus mount-1] [--section x=50] -o picture.png
 *   node tests/tools/render.mjs --stl a.stl [--stl b.stl …] [--view 1,-2,0.5] -o picture.png
 *
 * A view that begins with a minus is written --view=-1,-2,0.5.
 * --hide, --only and --focus take pieces of placement or part names, with commas; --focus fits the picture to what it names.
 * --section keeps what lies beyond the plane, seen from the eye. --parts draws each printed part alone, into the folder -o.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { PNG } from 'pngjs';
import { picture, VIEWS } from './picture.mjs';

const PRINTED = [
  [214, 156, 92],
  [120, 160, 190],
  [150, 175, 120],
  [200, 128, 128],
  [168, 148, 190],
  [222, 196, 120],
  [120, 178, 170],
  [190, 170, 150],
  [140, 140, 165],
  [205, 150, 180],
];
const BOUGHT = { steel: [176, 180, 186], brass: [206, 178, 88] };
const OTHER = [96, 100, 106];

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    stl: { type: 'string', multiple: true },
    view: { type: 'string', default: 'iso-front' },
    hide: { type: 'string' },
    only: { type: 'string' },
    focus: { type: 'string' },
    section: { type: 'string' },
    size: { type: 'string', default: '1200x900' },
    parts: { type: 'boolean', default: false },
    out: { type: 'string', short: 'o' },
  },
});
if (!values.out || (positionals.length === 0 && !values.stl)) {
  console.error('usage: render.mjs <kit folder> | --stl FILE …  -o PICTURE.png  (see the head of this file)');
  process.exit(2);
}

const items = values.stl ? stlItems(values.stl) : kitItems(positionals[0]);
if (values.parts) {
  mkdirSync(values.out, { recursive: true });
  const folder = positionals[0];
  for (const part of JSON.parse(readFileSync(join(folder, 'kit.json'), 'utf8')).parts.filter(({ file }) => file)) {
    draw(
      [{ name: part.id, soup: readSoup(join(folder, part.file)), colour: PRINTED[0] }],
      join(values.out, `${part.id}.png`),
    );
  }
} else draw(items, values.out);

function draw(all, file) {
  const shown = all.filter(({ name }) => !matches(values.hide, name, false) && matches(values.only, name, true));
  const focus = shown.filter(({ name }) => matches(values.focus, name, true));
  const toEye = VIEWS[values.view] ?? numbers(values.view, 3);
  const [axis, at] = values.section ? values.section.split('=') : [];
  const section = values.section ? { axis: ['x', 'y', 'z'].indexOf(axis), at: Number(at) } : null;
  if (section && (section.axis < 0 || !Number.isFinite(section.at)))
    throw new Error(`--section wants x=50, got ${values.section}`);
  const size = numbers(values.size.replace('x', ','), 2);
  const started = performance.now();
  const { width, height, rgb } = picture(shown, {
    toEye,
    size,
    section,
    focus: focus.length === shown.length ? shown : focus,
  });
  const png = new PNG({ width, height });
  for (let i = 0; i < width * height; i++) png.data.set([rgb[3 * i], rgb[3 * i + 1], rgb[3 * i + 2], 255], 4 * i);
  writeFileSync(file, PNG.sync.write(png));
  const triangles = shown.reduce((sum, { soup }) => sum + soup.length / 9, 0);
  console.log(
    `${file}: ${shown.length} of ${all.length} shown, ${triangles} triangles, ${Math.round(performance.now() - started)} ms`,
  );
}

function kitItems(folder) {
  const kit = JSON.parse(readFileSync(join(folder, 'kit.json'), 'utf8'));
  const printed = kit.parts.filter(({ kind }) => kind === 'printed');
  const shapes = new Map(
    kit.parts.map((part) => [
      part.id,
      {
        soup: readSoup(join(folder, part.posed ?? part.mesh ?? part.file)),
        colour:
          part.kind === 'printed' ? PRINTED[printed.indexOf(part) % PRINTED.length] : (BOUGHT[part.material] ?? OTHER),
      },
    ]),
  );
  return kit.placements.map(({ name, part, matrix }) => ({ ...shapes.get(part), name: `${name} ${part}`, matrix }));
}

function stlItems(files) {
  return files.map((file, i) => ({ name: basename(file), soup: readSoup(file), colour: PRINTED[i % PRINTED.length] }));
}

/** Nine numbers a triangle, from a binary STL. */
function readSoup(file) {
  const bytes = readFileSync(file);
  const count = bytes.readUInt32LE(80);
  const soup = new Float32Array(9 * count);
  for (let t = 0; t < count; t++)
    for (let i = 0; i < 9; i++) soup[9 * t + i] = bytes.readFloatLE(84 + 50 * t + 12 + 4 * i);
  return soup;
}

function matches(list, name, whenNone) {
  if (!list) return whenNone;
  return list.split(',').some((piece) => name.includes(piece));
}

function numbers(text, count) {
  const found = text.split(',').map(Number);
  if (found.length !== count || !found.every(Number.isFinite))
    throw new Error(`not ${count} numbers, nor a known view: ${text}`);
  return found;
}
