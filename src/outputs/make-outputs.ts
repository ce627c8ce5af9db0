/** From a checked kit to its files: shapes first, read back by the gate, then everything that tells of them. */
import { verdict } from '../checks/accept.js';
import type { OutputContext, OutputFile } from './context.js';
import { bySeverity } from './findings-text.js';
import { gate } from './gate.js';
import { OUTPUTS } from './index.js';
import { shapeFiles } from './shapes.js';

export interface OutputInputs extends Omit<OutputContext, 'shapes'> {
  /** Called when the shapes are sound and the lists begin. */
  readonly listing: () => void;
}

export interface Made {
  readonly context: OutputContext;
  /** An error stands that was not accepted: there are no files. */
  readonly blocked: boolean;
  readonly files: readonly OutputFile[];
}

/**
 * @param inputs - the kit, with the findings of its checks; a broken file can't be accepted, so the gate's come on top
 * @returns the files, or none when an error stands; the context carries every finding, the gate's included
 */
export function makeOutputs({ listing, ...inputs }: OutputInputs): Made {
  const shapes = shapeFiles(inputs.kit, inputs.spec.name, inputs.kernel);
  const findings = bySeverity([...inputs.findings, ...gate(shapes, inputs.kernel)]);
  const context: OutputContext = { ...inputs, shapes, findings };
  if (!verdict(findings).good) return { context, blocked: true, files: [] };
  listing();
  const lists = Object.values(OUTPUTS).flatMap((output) => output(context));
  const shapesOnly = shapes.map(({ path, bytes }) => ({ path, bytes }));
  return { context, blocked: false, files: [...shapesOnly, ...lists] };
}
