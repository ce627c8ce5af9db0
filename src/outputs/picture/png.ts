/** A picture as PNG (ISO/IEC 15948): three bytes a pixel, rows unfiltered, which packs flat colours best. */
import { joinBytes } from '../bytes.js';
import type { Compression } from '../context.js';
import type { Picture } from './picture.js';

const SIGNATURE = [137, 80, 78, 71, 13, 10, 26, 10];
const RGB = 2;

/** By hand rather than by a library, because packing goes through the edge's zlib, which is several times as fast. */
export function png(
  { width, height, rgb }: Picture,
  { deflate, crc32 }: Pick<Compression, 'deflate' | 'crc32'>,
): Uint8Array {
  const row = 3 * width;
  const rows = new Uint8Array(height * (row + 1));
  for (let y = 0; y < height; y++) rows.set(rgb.subarray(y * row, (y + 1) * row), y * (row + 1) + 1);
  const head = new Uint8Array(13);
  const view = new DataView(head.buffer);
  view.setUint32(0, width);
  view.setUint32(4, height);
  head.set([8, RGB, 0, 0, 0], 8);
  const chunks = [
    chunk('IHDR', head, crc32),
    chunk('IDAT', deflate(rows), crc32),
    chunk('IEND', new Uint8Array(), crc32),
  ];
  return joinBytes([Uint8Array.from(SIGNATURE), ...chunks]);
}

function chunk(kind: string, data: Uint8Array, crc32: Compression['crc32']): Uint8Array {
  const bytes = new Uint8Array(12 + data.length);
  const view = new DataView(bytes.buffer);
  view.setUint32(0, data.length);
  bytes.set(
    [...kind].map((c) => c.charCodeAt(0)),
    4,
  );
  bytes.set(data, 8);
  view.setUint32(8 + data.length, crc32(bytes.subarray(4, 8 + data.length)));
  return bytes;
}
