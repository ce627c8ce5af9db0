/** From a checked kit to its files: shapes first, read back by the gate, then everything that tells of them. */
import { verdict } from '../checks/accept.js';
import type { Mesh } from '../solid/mesh.js';
import { layBeds, NO_BEDS } from './beds/lay-beds.js';
import type { OutputContext, OutputFile, Outputs, ShapeFile } from './context.js';
import { bySeverity } from './findings-text.js';
import { gate } from './gate.js';
import { shapeFiles } from './shapes.js';
import { readStl, type StlRead } from './stl-read.js';

export interface OutputInputs extends Omit<OutputContext, 'shapes' | 'meshOf' | 'beds'> {
  /** The kinds of files that are wanted; null: only what is found. */
  readonly outputs: Outputs | null;
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
export function makeOutputs({ outputs, listing, ...inputs }: OutputInputs): Made {
  const shapes = shapeFiles(inputs.kit, inputs.spec.name, inputs.kernel);
  const readOf = reader(shapes);
  const findings = bySeverity([...inputs.findings, ...gate(shapes, inputs.kernel, readOf)]);
  const told = { ...inputs, shapes, meshOf: meshesOf(readOf), findings };
  // A part too large for any bed can't be laid on one: what blocks the kit is said without beds.
  const good = verdict(findings).good && !findings.some(({ code }) => code.startsWith('bed/too-'));
  const context: OutputContext = { ...told, beds: good ? layBeds(inputs) : NO_BEDS };
  if (!verdict(findings).good) return { context, blocked: true, files: [] };
  if (outputs === null) return { context, blocked: false, files: [] };
  listing();
  const lists = Object.values(outputs).flatMap((output) => output(context));
  const shapesOnly = shapes.map(({ path, bytes }) => ({ path, bytes }));
  return { context, blocked: false, files: [...shapesOnly, ...lists] };
}

/** Reads each file once, when it is first asked for. */
function reader(shapes: readonly ShapeFile[]): (path: string) => StlRead {
  const bytes = new Map(shapes.map((shape) => [shape.path, shape.bytes]));
  const reads = new Map<string, StlRead>();
  return (path) => {
    const read = reads.get(path) ?? readStl(bytes.get(path) ?? new Uint8Array());
    reads.set(path, read);
    return read;
  };
}

const meshesOf =
  (readOf: (path: string) => StlRead) =>
  (path: string): Mesh => {
    const read = readOf(path);
    if (!read.ok) throw new Error(`${path} is no sound shape file`);
    return read.mesh;
  };
