/** One design of a sweep: drawn as the kit's solver would draw it, bent by the nonlinear solver, and judged. */
import { threads } from '../components/index.js';
import { PresetError } from '../errors.js';
import { type Field, layField } from '../layout/field.js';
import { layAround } from '../layout/lay-out.js';
import { bentFiguresOrNot } from '../layout/leaf-bent.js';
import { findleyOf, type LeafFigures } from '../layout/leaf-figures.js';
import { type Nearest, nearestLeaf, THICKNESS_ERROR } from '../layout/leaf-search.js';
import { centreOfRotation } from '../layout/leaf-shape.js';
import { roomsOf, type Settled, settleMount } from '../layout/mount-solve.js';
import { plastics } from '../materials/index.js';
import { forceLeft, YEAR_HOURS } from '../mechanics/creep.js';
import type { Spec } from '../spec/spec.js';
import { deg, type Rad, rad } from '../units.js';
import { faultsOf, remarksOf } from './judge.js';
import type { Fault, FaultCode, ThicknessEffect, TuneFigures, TunePoint, TuneRow } from './types.js';

/** How a mount bends: the one line by which a sweep's theory would be changed. */
const bend = bentFiguresOrNot;

/** A design laid out, before it is judged. */
export interface Drawn {
  readonly spec: Spec;
  readonly field: Field<Settled<Nearest>>;
}

/** @returns the preset's spec with a design's values in it */
export function specAt(spec: Spec, point: TunePoint): Spec {
  const { layout, legs, length, thickness, width, tiltDeg, adjust } = point;
  const material = point.material as keyof typeof plastics | undefined;
  return {
    ...spec,
    leaf: { layout, legs, length, thickness, width },
    aim: { ...spec.aim, tiltDeg },
    material: material === undefined ? spec.material : { name: material, plastic: plastics[material] },
    screws: adjust === undefined ? spec.screws : { ...spec.screws, adjust },
  };
}

/**
 * @returns the mount that a kit of this design would get, also where it misses its demands; undefined where none can be drawn
 * @throws {PresetError} when barrel, nuts or neighbouring mounts leave no room
 */
export function draw(preset: Spec, point: TunePoint): Drawn | undefined {
  const spec = specAt(preset, point);
  const lengthMost = roomsOf(spec).at(-1)!;
  const field = layField(spec, ({ width, tiltDeg }) =>
    settleMount(spec, { width, tilt: rad(tiltDeg), lengthMost, choose: nearestLeaf }),
  );
  return field && { spec, field };
}

/** Never throws for a design that can't be drawn, laid out or bent: its row says so. */
export function evaluate(preset: Spec, point: TunePoint): TuneRow {
  const nothing = { point, mount: null, figures: null, remarks: [] };
  let drawn: Drawn | undefined;
  try {
    drawn = draw(preset, point);
  } catch (error) {
    if (!(error instanceof PresetError)) throw error;
    return { ...nothing, faults: [plain('around', error)] };
  }
  if (!drawn) return { ...nothing, faults: [plain('undrawn')] };
  const { spec, field } = drawn;
  const { mount, demands, chosen } = field.found;
  const row = {
    ...nothing,
    mount: {
      length: mount.length,
      width: mount.width,
      axis: mount.axis,
      legPitch: mount.leaf.legPitch,
      fillet: mount.leaf.fillet,
      preload: deg(mount.leaf.preload),
    },
  };
  const { plastic } = spec.material;
  const bent = bend(mount, { demands, plastic });
  if (!bent) return { ...row, faults: [plain('unsolved')] };
  const off = (by: number) =>
    bend({ ...mount, leaf: { ...mount.leaf, thickness: mount.leaf.thickness + by } }, { demands, plastic });
  const [thin, thick] = [off(-THICKNESS_ERROR), off(THICKNESS_ERROR)];
  const faults = faultsOf({ bent, leaf: mount.leaf, plastic, broken: chosen.broken });
  if (faults.length === 0) faults.push(...aroundFaults(drawn));
  return {
    ...row,
    figures: figuresOf(drawn, { bent, thin, thick }),
    faults,
    remarks: remarksOf({ bent, thin, thick, leaf: mount.leaf, spec }),
  };
}

function figuresOf(
  { spec, field }: Drawn,
  {
    bent,
    thin,
    thick,
  }: { readonly bent: LeafFigures; readonly thin: LeafFigures | undefined; readonly thick: LeafFigures | undefined },
): TuneFigures {
  const { leaf } = field.mount;
  const { plastic } = spec.material;
  const allowed = plastic.sustainedStrain.value;
  const turn = bent.turnPerAdvance * threads[spec.screws.adjust].pitch.value;
  const reach = reachOf(field);
  // The flex at which the strain is just what is allowed, on the straight line through the lowest beam and the stop.
  const spare = ((allowed - bent.strain) * leaf.stopLatest) / (bent.stopStrain - bent.strain);
  const effect = (of: LeafFigures | undefined): ThicknessEffect | null =>
    of
      ? {
          stiffness: change(of.stiffness, bent.stiffness),
          force: change(of.force.lowest, bent.force.lowest),
          strain: change(of.strain, bent.strain),
        }
      : null;
  return {
    tilt: deg(leaf.tilt),
    tiltHeld: Math.max(0, deg((leaf.tilt + spare / 2) as Rad)),
    force: bent.force,
    screwStiffness: bent.screwStiffness,
    stiffness: bent.stiffness,
    strain: 100 * bent.strain,
    strainAllowed: 100 * allowed,
    stopStrain: 100 * bent.stopStrain,
    stopStress: bent.stopStress,
    safety: bent.safety,
    stopSafety: plastic.strength.value / bent.stopStress,
    preloadLeft: bent.force.highest * forceLeft(findleyOf(plastic), YEAR_HOURS),
    preloadRatio: leaf.preload / bent.preloadNeeded,
    backOff: deg(bent.backOff),
    degPerTurn: (turn * 180) / Math.PI,
    mmPerTurn: reach * Math.tan(turn),
    reach,
    frequency: bent.frequency,
    corrected: bent.corrected,
    thinner: effect(thin),
    thicker: effect(thick),
  };
}

const change = (of: number, nominal: number): number => 100 * (of / nominal - 1);

/** From the leaf's centre of rotation to the front of the farthest receiver's socket [mm]. */
function reachOf({ grid, mount, frame: { section } }: Field<unknown>): number {
  const behind = -(mount.origin[0] + centreOfRotation(mount.leaf)[0]);
  return Math.max(grid.width, grid.depth) + section.mountFront + section.socketFront + behind;
}

function aroundFaults({ spec, field }: Drawn): readonly Fault[] {
  try {
    layAround(spec, field);
    return [];
  } catch (error) {
    if (!(error instanceof PresetError)) throw error;
    return [plain('around', error)];
  }
}

const plain = (code: FaultCode, error?: PresetError): Fault => {
  const [first] = error?.mistakes ?? [];
  const said = first && [first.message, first.hint].filter((part) => part !== undefined).join('; ');
  return { code, measured: null, limit: null, unit: '', ...(said !== undefined && { message: said }) };
};
