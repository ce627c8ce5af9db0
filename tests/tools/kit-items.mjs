/** What a written kit's folder holds, as items to draw. */
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { cross, unit } from '../../.build/checks/vectors.js';
import { BEAM, colourOf } from '../../.build/outputs/colours.js';

/** Facets of a drawn beam. */
const ROUND = 24;

export const readKit = (folder) => JSON.parse(readFileSync(join(folder, 'kit.json'), 'utf8'));

/** Every placement, in the shape that it has in the assembled kit. */
export function kitItems(folder, { parts, placements }) {
  const shapes = new Map(
    parts.map((part) => [
      part.id,
      { mesh: readSoup(join(folder, part.posed ?? part.file ?? part.mesh)), colour: colourOf(part) },
    ]),
  );
  return placements.map(({ name, part, matrix }) => ({ ...shapes.get(part), name, part, matrix }));
}

/** Every beam as a rod. */
export const beamItems = ({ beams }) =>
  beams.map(({ name, from, to, diameter_mm }) => ({
    name: `${name}-beam`,
    part: 'beam',
    mesh: rod(from, to, diameter_mm / 2),
    colour: BEAM,
  }));

/** One STL file by itself. */
export function stlItem(file) {
  const id = basename(file, '.stl');
  return { name: id, part: id, mesh: readSoup(file), colour: colourOf({ id }) };
}

/** Triangles that share no vertex, from a binary STL. */
function readSoup(file) {
  const bytes = readFileSync(file);
  const count = bytes.readUInt32LE(80);
  const soup = new Float32Array(9 * count);
  for (let t = 0; t < count; t++)
    for (let i = 0; i < 9; i++) soup[9 * t + i] = bytes.readFloatLE(84 + 50 * t + 12 + 4 * i);
  return soupMesh(soup);
}

function rod(from, to, radius) {
  const way = unit(to.map((c, i) => c - from[i]));
  const x = unit(cross(Math.abs(way[2]) > 0.9 ? [1, 0, 0] : [0, 0, 1], way));
  const y = cross(way, x);
  const rim = (end, k) => {
    const a = (2 * Math.PI * k) / ROUND;
    return end.map((c, i) => c + radius * (Math.cos(a) * x[i] + Math.sin(a) * y[i]));
  };
  const triangles = Array.from({ length: ROUND }, (_, k) => {
    const [a, b, c, d] = [rim(from, k), rim(from, k + 1), rim(to, k), rim(to, k + 1)];
    return [a, b, d, a, d, c, from, b, a, to, c, d];
  });
  return soupMesh(Float32Array.from(triangles.flat(2)));
}

const soupMesh = (positions) => ({
  positions,
  triangles: Uint32Array.from({ length: positions.length / 3 }, (_, i) => i),
});
