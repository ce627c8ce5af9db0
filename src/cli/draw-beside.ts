/** Draws in a second thread what is drawn of meshes alone, while this one goes on checking. */
import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { isMainThread, MessageChannel, receiveMessageOnPort, Worker } from 'node:worker_threads';
import type { Drawings, Drawn, ShownContext } from '../outputs/context.js';
import { drawHere, drawn, once } from '../outputs/drawn.js';
import { shapePaths } from '../outputs/shapes.js';
import type { Mesh } from '../solid/mesh.js';

/** What the thread is told. */
export type Shown = Omit<ShownContext, 'meshOf' | 'compression'> & { readonly meshes: ReadonlyMap<string, Mesh> };

/** How far the thread is: one number that both see. */
export const STATES = ['starting', 'ready', 'done', 'failed'] as const;
export type State = (typeof STATES)[number];

export const setState = (cell: Int32Array, state: State): void => {
  Atomics.store(cell, 0, STATES.indexOf(state));
  Atomics.notify(cell, 0);
};

/** A thread that says nothing for so long is given up [ms]. */
const PATIENCE = 60_000;

export interface Beside {
  readonly draw: (context: ShownContext) => Drawn;
  /** Ends the thread, whatever it is at. */
  readonly end: () => void;
  readonly state: () => State;
}

/** @returns null where a second thread would only take the first one's time */
export function drawBeside(): Beside | null {
  const script = new URL('./draw-worker.js', import.meta.url);
  if (!isMainThread || availableParallelism() < 2 || !existsSync(fileURLToPath(script))) return null;
  const cell = new Int32Array(new SharedArrayBuffer(4));
  const { port1: port, port2 } = new MessageChannel();
  const worker = new Worker(script, { workerData: { cell, port: port2 }, transferList: [port2] });
  // What it can't draw is drawn here, and then fails here.
  worker.on('error', () => setState(cell, 'failed'));
  const state = () => STATES[Atomics.load(cell, 0)]!;
  worker.unref();
  port.unref();

  const draw = (context: ShownContext): Drawn => {
    port.postMessage(plain(context));
    const there = once(drawings);
    const here = once(() => drawHere(context));
    return drawn((kind) => there()?.[kind] ?? here()[kind]());
  };

  /** Waits without going back to the event loop, as nothing in between may see the solids half drawn. */
  const drawings = (): Drawings | null => {
    Atomics.wait(cell, 0, STATES.indexOf('ready'), PATIENCE);
    if (state() !== 'done') return null;
    return (receiveMessageOnPort(port)?.message ?? null) as Drawings | null;
  };

  const end = () => {
    if (state() !== 'done') setState(cell, 'failed');
    void worker.terminate();
  };
  return { draw, end, state };
}

/** Without solids and functions, which can't be sent. */
function plain({ kit, spec, cuts, meshOf }: ShownContext): Shown {
  const parts = new Map(
    [...kit.parts].map(([id, { title, kind, material, densityGcm3, order, posed }]) => [
      id,
      { id, title, kind, material, densityGcm3, order, posed: posed && {} },
    ]),
  );
  return {
    kit: { ...kit, parts },
    spec,
    cuts,
    meshes: new Map(shapePaths(kit).map((path) => [path, meshOf(path)])),
  };
}
