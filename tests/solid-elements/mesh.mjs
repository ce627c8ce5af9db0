/** Solid mesh of half a prism: its profile cut into quadrilaterals by the mesher, drawn out into 20-node bricks layer by layer. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Layers from the plane of symmetry to the free side, as shares of half the width: finer where the edges curl. */
const LAYERS = [0, 0.4, 0.7, 0.9, 1];
/** Triangles of the second order and eight-node quadrilaterals in the mesher's version 2 text format. */
const TRIANGLE = 9;
const QUADRILATERAL = 16;
/** The mesher's ways to make quadrilaterals alone: the better shapes first, which an odd outline can defeat. */
const RECOMBINING = [3, 2];

/**
 * @param {object} options
 * @param {readonly import('./outline.mjs').Edge[]} options.edges - counter-clockwise
 * @param {(at: readonly [number, number], edge: import('./outline.mjs').Edge) => number} options.size - at an end of an edge [mm]
 * @param {number} options.width - whole width [mm]
 * @param {string} options.folder - for the mesher's files
 * @returns {{ nodes: { at: [number, number], z: number }[], bricks: number[][] }} nodes counted from 0; z = 0 is the plane of symmetry
 */
export function meshHalf({ edges, size, width, folder }) {
  const geo = join(folder, 'profile.geo');
  const msh = join(folder, 'profile.msh');
  for (const way of RECOMBINING) {
    writeFileSync(geo, geoText(edges, size, way));
    execFileSync('gmsh', ['-2', '-v', '1', '-nt', '1', '-format', 'msh2', '-o', msh, geo], { stdio: 'pipe' });
    const profile = readMsh(readFileSync(msh, 'utf8'));
    if (profile.triangles === 0) return drawOut(profile, width / 2);
  }
  throw new Error('the mesher left triangles');
}

function geoText(edges, size, way) {
  const n = edges.length;
  const sizes = edges.map((edge, i) => Math.min(size(edge.from, edge), size(edge.from, edges[(i + n - 1) % n])));
  const point = (id, [x, y], lc) => `Point(${id}) = {${x}, ${y}, 0, ${lc}};`;
  return [
    'Mesh.ElementOrder = 2; Mesh.SecondOrderIncomplete = 1; Mesh.Algorithm = 6; Mesh.RecombineAll = 1;',
    `Mesh.RecombinationAlgorithm = ${way}; Mesh.CharacteristicLengthExtendFromBoundary = 1;`,
    ...edges.map(({ from }, i) => point(i + 1, from, sizes[i])),
    ...edges.flatMap(({ centre }, i) => {
      const ends = [i + 1, ((i + 1) % n) + 1];
      if (!centre) return [`Line(${i + 1}) = {${ends}};`];
      return [point(n + i + 1, centre, 1), `Circle(${i + 1}) = {${ends[0]}, ${n + i + 1}, ${ends[1]}};`];
    }),
    `Line Loop(1) = {${edges.map((_, i) => i + 1)}}; Plane Surface(1) = {1};`,
    '',
  ].join('\n');
}

function readMsh(text) {
  const part = (name) => text.split(`$${name}\n`)[1].split(`$End${name}`)[0].trim().split('\n').slice(1);
  const places = new Map(
    part('Nodes').map((line) => {
      const [id, x, y] = line.split(' ').map(Number);
      return [id, [x, y]];
    }),
  );
  const elements = part('Elements').map((line) => {
    const [, kind, tags, ...rest] = line.split(' ').map(Number);
    return { kind, nodes: rest.slice(tags) };
  });
  const faces = elements.filter(({ kind }) => kind === QUADRILATERAL).map(({ nodes }) => nodes);
  if (faces.length === 0) throw new Error('the mesher made no mesh');
  return { places, faces, triangles: elements.filter(({ kind }) => kind === TRIANGLE).length };
}

/** Corners get a node at every half layer, middles of sides one at every layer. */
function drawOut({ places, faces }, half) {
  const nodes = [];
  const found = new Map();
  const node = (id, level) => {
    const key = `${id} ${level}`;
    if (!found.has(key)) {
      const low = LAYERS[Math.floor(level / 2)];
      const high = LAYERS[Math.ceil(level / 2)];
      found.set(key, nodes.push({ at: places.get(id), z: (half * (low + high)) / 2 }) - 1);
    }
    return found.get(key);
  };
  const bricks = faces.flatMap((face) => {
    const turned = area(face.slice(0, 4).map((id) => places.get(id))) < 0;
    const corners = turned ? face.slice(0, 4).toReversed() : face.slice(0, 4);
    const middles = turned ? [...face.slice(4, 7).toReversed(), face[7]] : face.slice(4);
    return LAYERS.slice(1).map((_, layer) => {
      const [low, high] = [2 * layer, 2 * layer + 2];
      return [
        ...corners.map((id) => node(id, low)),
        ...corners.map((id) => node(id, high)),
        ...middles.map((id) => node(id, low)),
        ...middles.map((id) => node(id, high)),
        ...corners.map((id) => node(id, low + 1)),
      ];
    });
  });
  return { nodes, bricks };
}

const area = (points) =>
  points.reduce((sum, [x, y], i) => {
    const [x2, y2] = points[(i + 1) % points.length];
    return sum + (x * y2 - x2 * y) / 2;
  }, 0);
