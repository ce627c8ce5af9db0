/** The second thread's side of the drawing: one kit is drawn, then it ends. */
import { type MessagePort, workerData } from 'node:worker_threads';
import { drawAll } from '../outputs/drawn.js';
import { compression } from './compression.js';
import { type Shown, setState } from './draw-beside.js';

const { cell, port } = workerData as { readonly cell: Int32Array; readonly port: MessagePort };

port.once('message', ({ meshes, ...shown }: Shown) => {
  try {
    port.postMessage(drawAll({ ...shown, compression, meshOf: (path) => meshes.get(path)! }));
    setState(cell, 'done');
  } catch {
    // It is drawn again in the first thread, which says what is wrong.
    setState(cell, 'failed');
  }
});
setState(cell, 'ready');
