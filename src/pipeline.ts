/** The one place where the stages meet: layout → parts and kit → checks → shapes and their gate → lists. */
import { accept } from './checks/accept.js';
import { runChecks } from './checks/index.js';
import { drawKit } from './kit/draw-kit.js';
import { layOut } from './layout/lay-out.js';
import { type Made, makeOutputs } from './outputs/make-outputs.js';
import type { MeasuringKernel } from './solid/kernel.js';
import type { Spec } from './spec/spec.js';

export type Stage = 'layout' | 'parts' | 'checks' | 'shapes' | 'lists';

/** What the edge hands in: everything that is not a pure function of the spec. */
export interface Tools {
  readonly kernel: MeasuringKernel;
  /** SHA-256 as lower-case hex. */
  readonly hash: (bytes: Uint8Array) => string;
  /** Called as each stage begins. */
  readonly progress: (stage: Stage) => void;
  /** Codes of findings that the user accepts by name. */
  readonly accept: readonly string[];
}

/**
 * Makes a kit in memory: same spec, same bytes.
 *
 * @returns findings and files; no files where an error stands that was not accepted
 * @throws {PresetError} when the preset's demands can't be met together
 */
export function makeKit(spec: Spec, { kernel, hash, progress, accept: codes }: Tools): Made {
  progress('layout');
  const layout = layOut(spec);
  progress('parts');
  const { kit, figures } = drawKit(layout, kernel);
  progress('checks');
  const found = runChecks({ kit, spec, kernel, leaf: layout.mount.leaf, ...figures });
  progress('shapes');
  return makeOutputs({
    spec,
    solved: [...spec.chosen, ...layout.solved],
    kit,
    findings: accept(found, codes).findings,
    kernel,
    hash,
    listing: () => progress('lists'),
  });
}
