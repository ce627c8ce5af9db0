/** The plane's operations on manifold-3d's cross sections. Each call frees what it made. */
import type { CrossSection, ManifoldToplevel } from 'manifold-3d';
import type { Outlines } from './mesh.js';
import { requireFinite } from './numbers.js';
import { roundSegments } from './outlines.js';
import type { Profiles } from './profiles.js';

export function manifoldProfiles({ CrossSection }: ManifoldToplevel): Profiles {
  const open = (outlines: Outlines): CrossSection => {
    for (const outline of outlines) for (const point of outline) requireFinite('profile: a coordinate', point);
    // The library can't read an empty list.
    return outlines.length === 0
      ? new CrossSection([[]], 'Positive')
      : new CrossSection(outlines as [number, number][][], 'Positive');
  };
  const using = <T>(made: readonly CrossSection[], fn: () => T): T => {
    try {
      return fn();
    } finally {
      for (const one of made) one.delete();
    }
  };
  const close = (section: CrossSection): Outlines => using([section], () => section.toPolygons());

  return {
    union(all) {
      const sections = all.map(open);
      return using(sections, () => close(CrossSection.union(sections)));
    },
    difference(from, cut) {
      const [a, b] = [open(from), open(cut)];
      return using([a, b], () => close(a.subtract(b)));
    },
    intersection(first, second) {
      const [a, b] = [open(first), open(second)];
      return using([a, b], () => close(a.intersect(b)));
    },
    offset(outlines, distance, { corners } = { corners: 'round' }) {
      requireFinite('offset: the distance', [distance]);
      const section = open(outlines);
      return using([section], () =>
        close(
          corners === 'round'
            ? section.offset(distance, 'Round', 2, distance === 0 ? 8 : roundSegments(Math.abs(distance)))
            : section.offset(distance, 'Miter', 4),
        ),
      );
    },
    pieces(outlines) {
      const section = open(outlines);
      return using([section], () => section.decompose().map(close));
    },
    area(outlines) {
      const section = open(outlines);
      return using([section], () => section.area());
    },
    bounds(outlines) {
      const section = open(outlines);
      return using([section], () => {
        if (section.isEmpty()) throw new RangeError('bounds: the outlines enclose no area');
        const { min, max } = section.bounds();
        return { min: [...min], max: [...max] } as const;
      });
    },
  };
}
