/** The kit for the page's 3D view: meshes packed small, places, beams. */
import type { Mesh } from '../../solid/mesh.js';
import { meshBox } from '../../solid/mesh-measures.js';
import type { PartData, SceneData } from '../../viewer/scene-data.js';
import { joinBytes } from '../bytes.js';
import { colourOf, hex } from '../colours.js';
import type { OutputContext } from '../context.js';
import { takenApart } from '../explode.js';
import { tidy } from '../json-text.js';
import { partFigures, quantities } from '../part-figures.js';
import { shapePath } from '../shapes.js';
import { isCover, standingPath } from '../standing.js';
import { base64 } from './html.js';

/** Steps along the longest side of a part: less than .01 mm on the largest bed. */
const STEPS = 65_535;

export function sceneData(context: OutputContext): SceneData {
  const { kit, kernel, meshOf, compression } = context;
  const count = quantities(kit);
  const parts = [...kit.parts.values()].filter(({ id }) => (count.get(id) ?? 0) > 0);
  const blocks: Uint8Array[] = [];
  let at = 0;
  const told = parts.map((part): PartData => {
    const packed = pack(meshOf(standingPath(part)), at);
    blocks.push(packed.bytes);
    const { massG } = partFigures(part, kernel);
    const figures: PartData = {
      id: part.id,
      title: part.title,
      kind: part.kind,
      material: part.material,
      massG: tidy(massG, 3),
      quantity: count.get(part.id)!,
      file: shapePath(part.kind === 'printed' ? 'stl' : 'bought', part),
      colour: hex(colourOf(part)),
      cover: isCover(part),
      at,
      ...packed.figures,
    };
    at += packed.bytes.length;
    return figures;
  });
  const apart = takenApart(kit);
  return {
    parts: told,
    placements: kit.placements.map(({ name, part, matrix }) => ({
      name,
      part: parts.findIndex(({ id }) => id === part),
      matrix: matrix.map((value) => tidy(value, 6)),
      apart: apart.get(name)!.by.map((value) => tidy(value, 1)) as unknown as readonly [number, number, number],
    })),
    beams: kit.beams.map(({ from, to, diameter }) => ({ from, to, diameter })),
    meshes: base64(compression.deflate(joinBytes(blocks))),
  };
}

/** Vertices in steps from the box's least corner, then indices; each part's bytes begin on a multiple of four. */
function pack(
  mesh: Mesh,
  at: number,
): {
  readonly bytes: Uint8Array;
  readonly figures: Pick<PartData, 'vertices' | 'triangles' | 'indexBytes' | 'min' | 'step'>;
} {
  const { positions, triangles } = mesh;
  const { min, max } = meshBox(mesh);
  const step = Math.max(max[0] - min[0], max[1] - min[1], max[2] - min[2]) / STEPS;
  const vertices = positions.length / 3;
  const indexBytes = vertices > 65_536 ? 4 : 2;
  const first = 2 * positions.length;
  const gap = indexBytes === 4 ? (4 - ((at + first) % 4)) % 4 : 0;
  const length = first + gap + indexBytes * triangles.length;
  const bytes = new Uint8Array(length + ((4 - (length % 4)) % 4));
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < positions.length; i++)
    view.setUint16(2 * i, Math.round((positions[i]! - min[i % 3]!) / step), true);
  for (let i = 0; i < triangles.length; i++)
    if (indexBytes === 2) view.setUint16(first + 2 * i, triangles[i]!, true);
    else view.setUint32(first + gap + 4 * i, triangles[i]!, true);
  return { bytes, figures: { vertices, triangles: triangles.length / 3, indexBytes, min, step } };
}
