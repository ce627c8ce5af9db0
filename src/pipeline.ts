/** The one place where the stages meet: layout → parts and kit → shapes and their gate → checks → lists. */
import { accept } from './checks/accept.js';
import { frameFigures } from './checks/frame-figures.js';
import { runChecks } from './checks/index.js';
import { drawKit } from './kit/draw-kit.js';
import { movingMass } from './kit/moving-mass.js';
import { layOut } from './layout/lay-out.js';
import { bentFigures } from './layout/leaf-bent.js';
import { leafOff } from './layout/leaf-off.js';
import { lightBudget } from './layout/light/budget.js';
import { thermalFigures } from './layout/thermal.js';
import type { Compression, Drawn, Outputs, ShownContext } from './outputs/context.js';
import { beginOutputs, type Made, makeOutputs } from './outputs/make-outputs.js';
import type { MeasuringKernel } from './solid/kernel.js';
import type { Profiles } from './solid/profiles.js';
import { letterer } from './solid/text.js';
import type { Spec } from './spec/spec.js';
import { travelAlong } from './tune/travel.js';

export type Stage = 'layout' | 'parts' | 'shapes' | 'checks' | 'lists';

/** What the edge hands in: everything that is not a pure function of the spec. */
export interface Tools {
  readonly kernel: MeasuringKernel;
  readonly profiles: Profiles;
  /** SHA-256 as lower-case hex. */
  readonly hash: (bytes: Uint8Array) => string;
  readonly compression: Compression;
  /** Script of the report's 3D view. */
  readonly viewer: string;
  /** Called as each stage begins. */
  readonly progress: (stage: Stage) => void;
  /** The kinds of files that are wanted; null: only what is found. */
  readonly outputs: Outputs | null;
  /** Draws what is drawn of meshes alone, beside the checks; left out: here and after them. */
  readonly draw?: ((context: ShownContext) => Drawn) | undefined;
  /** Codes of findings that the user accepts by name. */
  readonly accept: readonly string[];
}

/**
 * Makes a kit in memory: same spec, same bytes.
 *
 * @returns findings and files; no files where an error stands that was not accepted
 * @throws {PresetError} when the preset's demands can't be met together
 */
export function makeKit(
  preset: Spec,
  { kernel, profiles, hash, compression, viewer, progress, outputs, draw, accept: codes }: Tools,
): Made {
  progress('layout');
  const layout = layOut(preset);
  const { spec } = layout;
  progress('parts');
  const kit = drawKit(layout, { kernel, lettering: letterer(profiles) });
  progress('shapes');
  const begun = beginOutputs({ kit, spec, kernel, compression, draw: outputs === null ? undefined : draw });
  progress('checks');
  const { leaf } = layout.mount;
  const light = lightBudget(layout);
  const bending = {
    demands: { ...layout.demands, ...movingMass(layout, { kit, kernel }) },
    plastic: spec.material.plastic,
  };
  const found = runChecks({
    kit,
    spec,
    kernel,
    leaf,
    leafFigures: bentFigures(layout.mount, bending),
    leafOff: leafOff(layout.mount, bending),
    frameFigures: frameFigures({ layout, kit, kernel, light }),
    light,
    thermal: thermalFigures({ ...layout, lever: Math.max(...light.aim.lines.map(({ lever }) => lever)) }),
  });
  return makeOutputs({
    begun,
    spec,
    solved: [...spec.chosen, ...layout.solved],
    kit,
    light,
    findings: accept(found, codes).findings,
    travel: outputs === null ? undefined : travelAlong(layout, spec),
    viewer,
    compression,
    kernel,
    hash,
    outputs,
    listing: () => progress('lists'),
  });
}
