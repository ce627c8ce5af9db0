/** From what is varied to the single designs. */
import { type Mistake, PresetError } from '../errors.js';
import { type Baseline, baselineOf } from '../layout/baseline.js';
import { leafRoom, leafSizeMistakes, pinnedMistakes, thicknessOf } from '../layout/leaf-size.js';
import type { LeafLayout, Spec } from '../spec/spec.js';
import type { Axis, TunePoint, VariedPath } from './types.js';
import { MOST_DESIGNS, tooMany } from './vary.js';

export interface Plan {
  readonly points: readonly TunePoint[];
  /** What is varied, as given or as chosen for want of anything given. */
  readonly axes: readonly Axis[];
  readonly byDefault: boolean;
  /** Combinations that make no leaf and are left out: a straight leaf of several legs, a fold of one. */
  readonly left: number;
  readonly baseline: Baseline | undefined;
}

type Leaf = Pick<TunePoint, 'layout' | 'legs' | 'length' | 'thickness'>;
type Kind = Pick<TunePoint, 'layout' | 'legs'>;

/** Where nothing is solved and nothing is said. */
const USUAL = { layout: 'folded', legs: 3, length: 8 } as const;
const USUAL_RADIUS = 3;
/** Print lines that the default sweep tries, and how far it goes below and above the solved length [mm]. */
const LINES = [2, 3, 4] as const;
const BELOW = 3;
const ABOVE = 6;
const LEAST = 4;

/**
 * @param axes - empty: thickness, length, layout and legs around the solved design
 * @returns the designs, the last axis varying fastest; or what is wrong with the sweep
 * @throws {PresetError} when what the preset itself pins is wrong, or its mounts have no room
 */
export function planSweep(spec: Spec, axes: readonly Axis[]): Plan | { readonly mistakes: readonly Mistake[] } {
  const baseline = baselineOf(spec);
  const layout = spec.leaf.layout ?? baseline?.mount.leaf.layout ?? USUAL.layout;
  const base: Leaf = {
    layout,
    legs: spec.leaf.legs ?? baseline?.mount.leaf.legs ?? USUAL.legs,
    length: spec.leaf.length ?? baseline?.mount.leaf.length ?? (layout === 'notch' ? USUAL_RADIUS : USUAL.length),
    thickness: spec.leaf.thickness ?? baseline?.mount.leaf.thickness ?? thicknessOf(spec, 2),
  };
  const byDefault = axes.length === 0;
  const own = pinnedMistakes(spec);
  if (own.length > 0) throw new PresetError(spec.name, own);
  const room = leafRoom(spec, baseline);
  const varied = byDefault ? defaultAxes(spec, { base, room }) : axes;
  const valuesOf = (path: VariedPath) => (varied.find((axis) => axis.path === path)?.values ?? []) as readonly number[];
  const mistakes = leafSizeMistakes(spec, {
    room,
    layout: varied.some(({ path }) => path === 'leaf.layout') ? undefined : layout,
    lengths: valuesOf('leaf.length'),
    thicknesses: valuesOf('leaf.thickness'),
  });
  if (mistakes.length > 0) return { mistakes };

  const { points, left } = combine(spec, { varied, base });
  if (points.length > MOST_DESIGNS) return { mistakes: [tooMany(points.length, varied[0]!.path)] };
  if (points.length === 0) {
    const message = 'none of these layouts goes with any of these numbers of legs';
    return {
      mistakes: [
        { code: 'tune/no-leaf', path: 'leaf.legs', message, hint: 'a folded leaf has 2 or 3 legs, any other 1' },
      ],
    };
  }
  return { points, axes: varied, byDefault, left, baseline };
}

function defaultAxes(spec: Spec, { base, room }: { readonly base: Leaf; readonly room: number }): readonly Axis[] {
  const notch = base.layout === 'notch';
  const step = notch ? 0.5 : 1;
  const first = Math.max(notch ? 1 : LEAST, Math.ceil(base.length) - BELOW * step);
  const even = Array.from({ length: BELOW + ABOVE + 1 }, (_, i) => first + i * step);
  const lengths = [...new Set([...even, base.length])].filter((length) => length <= room).sort((a, b) => a - b);
  const thicknesses = [...new Set([...LINES.map((lines) => thicknessOf(spec, lines)), base.thickness])].sort(
    (a, b) => a - b,
  );
  const layouts: readonly LeafLayout[] =
    base.layout === 'in-line' || base.layout === 'folded' ? ['in-line', 'folded'] : [base.layout];
  return [
    { path: 'leaf.layout', values: layouts },
    { path: 'leaf.legs', values: layouts.includes('folded') ? [1, 2, 3] : [1] },
    { path: 'leaf.thickness', values: thicknesses },
    { path: 'leaf.length', values: lengths },
  ];
}

function combine(
  spec: Spec,
  { varied, base }: { readonly varied: readonly Axis[]; readonly base: Leaf },
): { readonly points: readonly TunePoint[]; readonly left: number } {
  const paths = varied.map(({ path }) => path);
  const points: TunePoint[] = [];
  let left = 0;
  for (const values of product(varied.map((axis) => axis.values))) {
    const at = <T>(path: VariedPath): T | undefined => values[paths.indexOf(path)] as T | undefined;
    const kinds = kindsOf({
      layout: at<LeafLayout>('leaf.layout') ?? spec.leaf.layout,
      legs: at<number>('leaf.legs') ?? spec.leaf.legs,
      free: at('leaf.layout') !== undefined,
      base,
    });
    if (kinds.length === 0) left += 1;
    for (const { layout, legs } of kinds) {
      const alike = (layout === 'notch') === (base.layout === 'notch');
      points.push({
        number: points.length + 1,
        layout,
        legs,
        length: at<number>('leaf.length') ?? (alike ? base.length : layout === 'notch' ? USUAL_RADIUS : USUAL.length),
        thickness: at<number>('leaf.thickness') ?? base.thickness,
        width: at<number>('leaf.width') ?? spec.leaf.width,
        material: at('material'),
        tiltDeg: at<number>('aim.tilt') ?? spec.aim.tiltDeg,
        adjust: at('screws.adjust'),
      });
    }
  }
  return { points, left };
}

/** What is left open goes with what is said; a layout that is varied brings its numbers of legs along. */
function kindsOf({
  layout,
  legs,
  free,
  base,
}: {
  readonly layout: LeafLayout | undefined;
  readonly legs: number | undefined;
  readonly free: boolean;
  readonly base: Kind;
}): readonly Kind[] {
  if (layout !== undefined && legs !== undefined) return (layout === 'folded') === legs > 1 ? [{ layout, legs }] : [];
  if (layout !== undefined) {
    if (layout !== 'folded') return [{ layout, legs: 1 }];
    return (free || base.legs < 2 ? [2, 3] : [base.legs]).map((each) => ({ layout, legs: each }));
  }
  if (legs === undefined) return [base];
  return [{ legs, layout: legs > 1 ? 'folded' : base.legs === 1 ? base.layout : 'in-line' }];
}

/** Every choice of one value from each list; the last list varies fastest. */
function* product<T>(lists: readonly (readonly T[])[]): Generator<readonly T[]> {
  const [first, ...rest] = lists;
  if (first === undefined) {
    yield [];
    return;
  }
  for (const value of first) for (const tail of product(rest)) yield [value, ...tail];
}
