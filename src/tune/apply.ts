/** Puts a design into a preset, so that its kit gets exactly that leaf. */
import { readPreset } from '../spec/read-preset.js';
import { type PresetValues, setValues } from '../spec/set-values.js';
import type { Spec } from '../spec/spec.js';
import type { Plan } from './points.js';
import type { TunePoint } from './types.js';

/**
 * @param lean - that was solved for the sweep's mounts [°]
 * @returns what must stand in the preset: the whole leaf and the lean, as they would be solved anew; else what was varied
 */
export function valuesOf(
  point: TunePoint,
  { axes, lean }: Pick<Plan, 'axes'> & { readonly lean?: number | undefined },
): PresetValues {
  const varied = new Set(axes.map(({ path }) => path));
  const { layout, legs, length, thickness, width, material, tiltDeg, adjust } = point;
  return {
    'leaf.layout': layout,
    'leaf.legs': legs,
    'leaf.length': length,
    'leaf.thickness': thickness,
    ...(varied.has('leaf.width') && width !== undefined && { 'leaf.width': width }),
    ...(varied.has('material') && material !== undefined && { material }),
    ...(varied.has('aim.tilt') && tiltDeg !== undefined && { 'aim.tilt': tiltDeg }),
    ...(lean !== undefined && { 'aim.wedge': lean }),
    ...(varied.has('screws.adjust') && adjust !== undefined && { 'screws.adjust': adjust }),
  };
}

/**
 * @param text - the preset, as it was read for the sweep
 * @returns its new text, which reads as the same preset but for these values
 * @throws {Error} when it doesn't: nothing must be written then
 */
export function applied(text: string, file: string, values: PresetValues): string {
  const changed = setValues(text, values);
  const spec = readPreset(changed, file);
  const read: Record<string, unknown> = {
    'leaf.layout': spec.leaf.layout,
    'leaf.legs': spec.leaf.legs,
    'leaf.length': spec.leaf.length,
    'leaf.thickness': spec.leaf.thickness,
    'leaf.width': spec.leaf.width,
    'aim.tilt': spec.aim.tiltDeg,
    'aim.wedge': spec.aim.wedgeDeg,
    'screws.adjust': spec.screws.adjust,
    material: spec.material.name,
  };
  const wrong = Object.entries(values).filter(([path, value]) => read[path] !== value);
  if (wrong.length > 0)
    throw new Error(`the changed preset reads ${wrong.map(([path]) => `${path} as ${read[path]}`).join(', ')}`);
  if (besides(spec) !== besides(readPreset(text, file)))
    throw new Error('the changed preset reads differently elsewhere');
  return changed;
}

/** Everything that a sweep doesn't vary. */
const besides = ({ leaf: _leaf, aim: _aim, material: _material, screws, chosen: _chosen, ...rest }: Spec): string =>
  JSON.stringify({ ...rest, clamp: screws.clamp, fix: screws.fix });
