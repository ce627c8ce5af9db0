/**
 * Is every wall two printed lines thick, and every gap and hole wide enough to stay open? One line still prints, as the weak wall
 * that it is; what is thinner is left out.
 */
import type { Finding } from '../../findings.js';
import type { Check, ShapeContext } from '../context.js';
import { figure, say } from '../say.js';
import { type PrintLimits, printLimits } from './limits.js';
import { type NarrowAt, narrowPlaces } from './narrow.js';
import { place, printed, printedMesh } from './printed.js';

export const walls: Check<ShapeContext> = {
  name: 'walls',
  codes: ['print/thin-wall', 'print/small-gap', 'print/small-hole'],
  run(context) {
    const limits = printLimits(context.spec.printer.machine);
    return printed(context.kit).flatMap((part): readonly Finding[] => {
      const { id, solid } = part;
      const found = narrowPlaces(context.kernel, solid, { limits, mesh: printedMesh(context, part) });
      const holes = found.gaps.filter((gap) => isHole(gap, limits));
      const gaps = found.gaps.filter((gap) => !isHole(gap, limits) && gap.width < limits.gap);
      return [
        ...worst(found.walls, (wall, more) => ({
          code: 'print/thin-wall',
          severity: wall.width < limits.line ? 'error' : 'warning',
          limit: limits.wall,
          message:
            wall.width < limits.line
              ? `${id} has a wall ${figure(wall.width)} mm thick ${place(wall.at)}${more}, under one printed line of ${figure(limits.line)} mm, and is left out there; two lines are ${figure(limits.wall)} mm: make it thicker, or print thinner lines.`
              : `${id} has a wall ${figure(wall.width)} mm thick ${place(wall.at)}${more}, under two printed lines, ${figure(limits.wall)} mm, and is weak there: make it thicker, or print thinner lines.`,
          remedies: ['printer.line_width', 'printer'],
        })),
        ...worst(gaps, (gap, more) => ({
          code: 'print/small-gap',
          severity: 'error',
          limit: limits.gap,
          message: `${id} has a gap ${figure(gap.width)} mm wide ${place(gap.at)}${more}; a printed gap may be off by ${figure(limits.gap)} mm and come out closed: widen it.`,
          remedies: ['printer.gap_tolerance', 'printer'],
        })),
        ...worst(holes, (hole, more) => ({
          code: 'print/small-hole',
          severity: 'error',
          limit: limits.hole,
          message: `${id} has a hole ${figure(hole.width)} mm wide ${place(hole.at)}${more}; this printer closes holes by ${figure(limits.hole - limits.gap)} mm and may be off by ${figure(limits.gap)} mm: widen it, or drill it.`,
          remedies: ['printer.hole_growth', 'printer'],
        })),
      ].map((fault) => say({ subject: id, unit: 'mm', ...fault }));
    });
  },
};

/** Closed all around and no longer than three times as wide as may be: a slit is a gap. */
const isHole = ({ closed, length }: NarrowAt, { hole }: PrintLimits): boolean => closed && length <= 3 * hole;

type Told = Pick<Finding, 'code' | 'severity' | 'limit' | 'message' | 'remedies'>;

/** The narrowest speaks for all. */
function worst(
  all: readonly NarrowAt[],
  tell: (one: NarrowAt, more: string) => Told,
): readonly (Told & { readonly measured: number })[] {
  if (all.length === 0) return [];
  const one = all.reduce((least, other) => (other.width < least.width ? other : least));
  const more = all.length > 1 ? `, one of ${all.length} sections that show such` : '';
  return [{ measured: one.width, ...tell(one, more) }];
}
