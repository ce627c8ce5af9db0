#!/usr/bin/env node
/**
 * Draws a written kit, or single STL files, as a PNG.
 *
 *   node tests/tools/render.mjs out/<kit> [--view iso-front] [--hide 'cover|plug'] [--only rail] [--cut 'x<62'] [--beams] -o picture.png
 *   node tests/tools/render.mjs a.stl [b.stl …] [--view 1,-2,0.5] -o picture.png
 *   node tests/tools/render.mjs out/<kit> --parts -o folder      every printed part alone, as it is printed
 *
 * --view   a name (iso-front, iso-below, top, near, left …) or a direction to the eye; one that begins with a minus: --view=-1,-2,0.5
 * --hide, --only   regular expressions on placement or part names; several with commas
 * --cut    takes away what lies on that side of the plane
 * --focus  fits the picture to the placements that match, or centres it on a point x,y,z
 * --zoom   times larger
 * --beams  draws the beams
 * --size   pixels, 1200x900
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { PNG } from 'pngjs';
import { picture, VIEWS } from '../../.build/outputs/picture/picture.js';
import { beamItems, kitItems, readKit, stlItem } from './kit-items.mjs';

/** Flat colours pack best unfiltered, without an alpha channel, by plain deflate (strategy 0). */
const FLAT = { colorType: 2, filterType: 0, deflateLevel: 9, deflateStrategy: 0 };

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    view: { type: 'string', default: 'iso-front' },
    hide: { type: 'string' },
    only: { type: 'string' },
    cut: { type: 'string' },
    focus: { type: 'string' },
    zoom: { type: 'string', default: '1' },
    size: { type: 'string', default: '1200x900' },
    beams: { type: 'boolean', default: false },
    parts: { type: 'boolean', default: false },
    out: { type: 'string', short: 'o' },
  },
});
const [source] = positionals;
if (!values.out || source === undefined) {
  console.error('usage: render.mjs KIT_FOLDER | FILE.stl …  -o PICTURE.png  (see the head of this file)');
  process.exit(2);
}
if (values.parts) {
  mkdirSync(values.out, { recursive: true });
  for (const { id, file } of readKit(source).parts.filter(({ file }) => file))
    draw([stlItem(join(source, file))], join(values.out, `${id}.png`));
} else if (source.endsWith('.stl')) draw(positionals.map(stlItem), values.out);
else {
  const kit = readKit(source);
  draw([...kitItems(source, kit), ...(values.beams ? beamItems(kit) : [])], values.out);
}

function draw(all, file) {
  const hidden = matching('hide', all);
  const shown = (values.only ? matching('only', all) : all).filter((item) => !hidden.includes(item));
  const centre = triple(values.focus ?? '');
  const started = performance.now();
  const { width, height, rgb } = picture(shown, {
    toEye: VIEWS[values.view] ?? triple(values.view) ?? wrong('view', 'a name or x,y,z'),
    size: numbers(values.size, 'x', 2) ?? wrong('size', '1200x900'),
    cut: values.cut ? cutOf(values.cut) : null,
    focus: values.focus && !centre ? matching('focus', shown) : shown,
    centre,
    zoom: Number(values.zoom) > 0 ? Number(values.zoom) : wrong('zoom', 'a number above 0'),
  });
  const png = new PNG({ width, height });
  for (let i = 0; i < width * height; i++) png.data.set([rgb[3 * i], rgb[3 * i + 1], rgb[3 * i + 2], 255], 4 * i);
  writeFileSync(file, PNG.sync.write(png, FLAT));
  const triangles = shown.reduce((sum, { mesh }) => sum + mesh.triangles.length / 3, 0);
  const took = Math.round(performance.now() - started);
  console.log(`${file}: ${shown.length} of ${all.length} shown, ${triangles} triangles, ${took} ms`);
}

/** An expression that matches nothing is a slip, not a wish. */
function matching(option, items) {
  if (!values[option]) return [];
  return [
    ...new Set(
      values[option].split(',').flatMap((text) => {
        const pattern = new RegExp(text);
        const found = items.filter(({ name, part }) => pattern.test(name) || pattern.test(part));
        return found.length > 0 ? found : wrong(option, `names that exist; ${text} matches none`);
      }),
    ),
  ];
}

function cutOf(text) {
  const [, axis, away, at] = /^([xyz])([<>])(-?\d+(?:\.\d+)?)$/.exec(text) ?? wrong('cut', "'x<62'");
  return { axis: 'xyz'.indexOf(axis), away, at: Number(at) };
}

function numbers(text, between, count) {
  const found = text.split(between).map(Number);
  return found.length === count && found.every(Number.isFinite) ? found : null;
}

function triple(text) {
  return numbers(text, ',', 3);
}

function wrong(option, wanted) {
  console.error(`--${option} ${values[option]}: ${wanted} is wanted`);
  process.exit(2);
}
