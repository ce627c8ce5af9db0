/** Where the kit stands on the table, and where screws go through its deck. Assembly coordinates, mm. */
import type { Kit } from '../../kit/types.js';
import { apply } from '../../solid/matrix.js';
import type { Vec2 } from '../../solid/mesh.js';
import { meshBox } from '../../solid/mesh-measures.js';
import type { OutputContext } from '../context.js';
import { standing } from '../standing.js';

/** @returns the box around everything printed that stays, seen from above */
export function footprint(context: Pick<OutputContext, 'kit' | 'meshOf'>): { readonly min: Vec2; readonly max: Vec2 } {
  const corners = standing(context)
    .filter(({ part }) => part.kind === 'printed' && !part.id.startsWith('hood'))
    .flatMap(({ mesh, matrix }) => {
      const { min, max } = meshBox(mesh);
      return [min[0], max[0]].flatMap((x) =>
        [min[1], max[1]].flatMap((y) => [min[2], max[2]].map((z) => apply(matrix, [x, y, z]))),
      );
    });
  const all = (k: 0 | 1) => corners.map((corner) => corner[k]);
  return {
    min: [Math.min(...all(0)), Math.min(...all(1))],
    max: [Math.max(...all(0)), Math.max(...all(1))],
  };
}

export const deckScrewPlaces = ({ placements }: Kit): readonly Vec2[] =>
  placements.filter(({ name }) => /^deck-screw-/.test(name)).map(({ matrix }): Vec2 => [matrix[3]!, matrix[7]!]);
