/** `prints/bed-1.3mf` …: every bed as it goes to the printer. */
import { multiply, rotation, translation } from '../../solid/matrix.js';
import type { Matrix } from '../../solid/mesh.js';
import type { Bed, BedItem } from '../beds/lay-beds.js';
import { colourOf } from '../colours.js';
import type { Output, OutputContext } from '../context.js';
import { picture, VIEWS } from '../picture/picture.js';
import { png } from '../picture/png.js';
import { shapePath } from '../shapes.js';
import { modelXml } from './model-xml.js';
import { threeMf } from './package.js';

export const THUMBNAIL = [256, 256] as const;

export const bed3mf: Output = (context) =>
  context.beds.beds.map((bed) => ({ path: bed.file, bytes: bytesOf(context, bed) }));

function bytesOf({ spec, meshOf, compression }: OutputContext, { items, number, material }: Bed): Uint8Array {
  const parts = [...new Set(items.map(({ part }) => part))];
  const meshes = new Map(parts.map((part) => [part.id, meshOf(shapePath('stl', part))]));
  const shown = items.map((item) => ({
    mesh: meshes.get(item.part.id)!,
    matrix: onBed(item),
    colour: colourOf(item.part),
  }));
  const model = modelXml({
    title: `${spec.title}, bed ${number}`,
    description: `${items.length} parts in ${material}, as they are printed: no supports`,
    objects: parts.map((part) => ({
      key: part.id,
      name: part.title,
      partNumber: part.id,
      mesh: meshes.get(part.id)!,
      colour: colourOf(part),
    })),
    items: items.map((item) => ({ object: item.part.id, partNumber: item.part.id, matrix: onBed(item) })),
  });
  return threeMf(
    { model, thumbnail: png(picture(shown, { toEye: VIEWS['iso-front'], size: THUMBNAIL }), compression) },
    compression,
  );
}

/** A quarter turn carries the box's far left corner to the near left. */
export const onBed = ({ spot, box: { min, max } }: Pick<BedItem, 'spot' | 'box'>): Matrix =>
  spot.turned
    ? multiply(translation([spot.x + max[1], spot.y - min[0], 0]), rotation('z', Math.PI / 2))
    : translation([spot.x - min[0], spot.y - min[1], 0]);
