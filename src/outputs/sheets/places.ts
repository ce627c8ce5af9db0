/** Where the kit stands on the table, and where screws go through its deck. Assembly coordinates, mm. */
import { threads } from '../../components/index.js';
import { apply } from '../../solid/matrix.js';
import type { Vec2 } from '../../solid/mesh.js';
import { meshBox } from '../../solid/mesh-measures.js';
import type { OutputContext } from '../context.js';
import { type Standing, standing } from '../standing.js';

interface Flat {
  readonly min: Vec2;
  readonly max: Vec2;
}

/** @returns the box around everything printed that stays, seen from above */
export function footprint(context: Pick<OutputContext, 'kit' | 'meshOf'>): Flat {
  const boxes = standing(context)
    .filter(({ part }) => part.kind === 'printed' && !part.id.startsWith('hood'))
    .map(flatBox);
  const all = (of: 'min' | 'max', k: 0 | 1) => boxes.map((box) => box[of][k]);
  return {
    min: [Math.min(...all('min', 0)), Math.min(...all('min', 1))],
    max: [Math.max(...all('max', 0)), Math.max(...all('max', 1))],
  };
}

/** @returns the deck's tiles */
export const deckOutlines = (context: Pick<OutputContext, 'kit' | 'meshOf'>): readonly Flat[] =>
  standing(context)
    .filter(({ part }) => part.id.startsWith('deck-tile'))
    .map(flatBox);

/** @returns where the deck's screws go down, and what hole they need */
export const deckHoles = ({ kit, spec }: Pick<OutputContext, 'kit' | 'spec'>) =>
  kit.placements
    .filter(({ name }) => /^deck-screw-/.test(name))
    .map(({ matrix }) => ({
      place: [matrix[3]!, matrix[7]!] as const satisfies Vec2,
      diameter: threads[spec.screws.fix].clearance.value,
    }));

function flatBox({ mesh, matrix }: Pick<Standing, 'mesh' | 'matrix'>): Flat {
  const { min, max } = meshBox(mesh);
  const corners = [min[0], max[0]].flatMap((x) =>
    [min[1], max[1]].flatMap((y) => [min[2], max[2]].map((z) => apply(matrix, [x, y, z]))),
  );
  const all = (k: 0 | 1) => corners.map((corner) => corner[k]);
  return {
    min: [Math.min(...all(0)), Math.min(...all(1))],
    max: [Math.max(...all(0)), Math.max(...all(1))],
  };
}
