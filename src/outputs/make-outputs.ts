/** From a checked kit to its files: shapes first, read back by the gate, then everything that tells of them. */
import { verdict } from '../checks/accept.js';
import type { Finding } from '../findings.js';
import type { Mesh } from '../solid/mesh.js';
import { layBeds, NO_BEDS } from './beds/lay-beds.js';
import type { Drawn, OutputContext, OutputFile, Outputs, ShapeFile, ShownContext } from './context.js';
import { partCuts } from './drawings/section.js';
import { drawHere, once } from './drawn.js';
import { bySeverity } from './findings-text.js';
import { gate } from './gate.js';
import { shapeFiles } from './shapes.js';
import { readStl, type StlRead } from './stl-read.js';

/** What is begun before the kit is checked. */
export interface Begun {
  readonly shapes: readonly ShapeFile[];
  readonly meshOf: OutputContext['meshOf'];
  /** The gate's. */
  readonly findings: readonly Finding[];
  readonly drawn: Drawn;
}

export type ShapeInputs = Pick<OutputContext, 'kit' | 'spec' | 'kernel' | 'compression'> & {
  /** Draws what is drawn of meshes alone; left out: here, and when it is asked for. */
  readonly draw?: ((context: ShownContext) => Drawn) | undefined;
};

export interface OutputInputs extends Omit<OutputContext, 'shapes' | 'meshOf' | 'beds' | 'drawn'> {
  /** Shapes that are written already; left out: they are written first. */
  readonly begun?: Begun;
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

/** Writes the shapes, reads them back, and begins what is drawn of them. */
export function beginOutputs({ kit, spec, kernel, compression, draw = drawHere }: ShapeInputs): Begun {
  const shapes = shapeFiles(kit, spec.name, kernel);
  const readOf = reader(shapes);
  const findings = gate(shapes, kernel, readOf);
  const meshOf = meshesOf(readOf);
  const cuts = once(() => partCuts({ kit, kernel }));
  const shown: ShownContext = {
    kit,
    spec,
    meshOf,
    compression,
    get cuts() {
      return cuts();
    },
  };
  return { shapes, meshOf, findings, drawn: (verdict(findings).good ? draw : drawHere)(shown) };
}

/**
 * @param inputs - the kit, with the findings of its checks; a broken file can't be accepted, so the gate's come on top
 * @returns the files, or none when an error stands; the context carries every finding, the gate's included
 */
export function makeOutputs({ outputs, listing, begun, ...inputs }: OutputInputs): Made {
  const { shapes, meshOf, drawn, findings: ofShapes } = begun ?? beginOutputs(inputs);
  const findings = bySeverity([...inputs.findings, ...ofShapes]);
  const told = { ...inputs, shapes, meshOf, drawn, findings };
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
