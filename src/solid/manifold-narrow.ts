/**
 * Narrow places of a section on manifold-3d. Opening (shrink, then grow) takes away every wall narrower than its width; closing
 * (grow, then shrink) fills every gap. Corners are mitred, so that they come back as they were.
 */
import type { CrossSection, ManifoldToplevel } from 'manifold-3d';
import type { Narrow, NarrowLimits, NarrowPlace } from './kernel.js';

type Library = Pick<ManifoldToplevel, 'CrossSection'>;

/** Rests of corners have smaller circles in them than this share of the width; places that are narrow, larger ones. */
const REST = 0.15;
/** Places that touch overlap when one is grown by this [mm]. */
const TOUCH = 0.02;
/** A place is as thick as the largest circle in it, to within this. */
const SPOT = 1.15;
/** Corners sharper than 29° are cut. */
const MITRE = 4;

/** @param section - the library's; it stays the caller's */
export function narrowPlaces(library: Library, section: CrossSection, { wall, gap, shallow }: NarrowLimits): Narrow {
  const area = section.area();
  return {
    area,
    walls: rests(library, section, { width: wall, shallow }),
    gaps: rests(library, section, { width: -gap, shallow }),
  };
}

/** @param width - of a gap, below zero: outward first */
function rests(
  { CrossSection }: Library,
  section: CrossSection,
  { width, shallow }: { readonly width: number; readonly shallow: number },
): readonly NarrowPlace[] {
  const made: CrossSection[] = [];
  const keep = (one: CrossSection) => {
    made.push(one);
    return one;
  };
  try {
    const size = Math.abs(width);
    const both = (of: CrossSection, by: number) =>
      keep(
        keep(of.offset((-Math.sign(width) * by) / 2, 'Miter', MITRE)).offset(
          (Math.sign(width) * by) / 2,
          'Miter',
          MITRE,
        ),
      );
    const rested = (of: CrossSection, changed: CrossSection) =>
      keep(width > 0 ? of.subtract(changed) : changed.subtract(of));
    const changed = both(section, size);
    // Two circles' areas tell at once that nothing of weight went.
    if (Math.abs(section.area() - changed.area()) < Math.PI * (REST * size) ** 2) return [];
    const rest = rested(section, changed);
    if (keep(rest.offset(-REST * size, 'Miter', MITRE)).isEmpty()) return [];
    return rest.decompose().flatMap((piece) => {
      keep(piece);
      if (keep(piece.offset(-REST * size, 'Miter', MITRE)).isEmpty()) return [];
      const rim = keep(piece.offset(TOUCH, 'Miter', MITRE));
      // Where a wall's rest joins the body, or a gap opens to the outside.
      const joins = keep(width > 0 ? rim.intersect(changed) : keep(rim.subtract(section)).subtract(piece));
      const closed = width < 0 && joins.isEmpty();
      // A tooth or a notch that joins on one side alone is covered by what it joins, grown by `shallow`.
      if (!joins.isEmpty() && pieces(joins, keep) === 1)
        if (keep(piece.subtract(keep(joins.offset(shallow, 'Miter', MITRE)))).isEmpty()) return [];
      const { min, max } = piece.bounds();
      const found = widest(piece, size, keep);
      // A spot that is shorter than it is thick has smaller circles in it than the wall there: it goes with a wider opening only.
      const around = keep(
        new CrossSection(
          [
            [min[0] - 2 * size, min[1] - 2 * size],
            [max[0] + 2 * size, min[1] - 2 * size],
            [max[0] + 2 * size, max[1] + 2 * size],
            [min[0] - 2 * size, max[1] + 2 * size],
          ],
          'Positive',
        ),
      );
      const here = keep(section.intersect(around));
      const still = keep(rested(here, both(here, SPOT * found)).intersect(piece));
      if (keep(still.offset(-REST * found, 'Miter', MITRE)).isEmpty()) return [];
      return [{ width: found, box: { min: [...min], max: [...max] }, closed }];
    });
  } finally {
    for (const one of made) one.delete();
  }
}

function pieces(section: CrossSection, keep: (one: CrossSection) => CrossSection): number {
  const all = section.decompose();
  for (const one of all) keep(one);
  return all.length;
}

function widest(piece: CrossSection, most: number, keep: (one: CrossSection) => CrossSection): number {
  let [low, high] = [0, most];
  while (high - low > 1e-3) {
    const d = (low + high) / 2;
    if (keep(piece.offset(-d / 2, 'Miter', MITRE)).isEmpty()) high = d;
    else low = d;
  }
  return (low + high) / 2;
}
