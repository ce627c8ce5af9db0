/** Computes the rows of a sweep, a large one in two workers, with a bar on a terminal. */
import { availableParallelism } from 'node:os';
import { setImmediate } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import type { SingleBar } from 'cli-progress';
import type { Spec } from '../spec/spec.js';
import type { TunePoint, TuneRow } from '../tune/types.js';
import { newBar } from './bar.js';
import { runTuneJob, type TuneMessage } from './tune-job.js';

/** From so many designs on a second thread pays for its start. */
const MANY = 500;
const THREADS = 2;
/** Fewer are done before a bar could be read. */
const SHOWN = 200;
/** Designs done at a go in this thread, between two looks at the screen. */
const CHUNK = 20;

/** @returns one row a point, in the same order */
export async function tuneRows(spec: Spec, points: readonly TunePoint[]): Promise<readonly TuneRow[]> {
  const bar = points.length >= SHOWN && process.stderr.isTTY ? startBar(points.length) : undefined;
  const progress = (done: number) => bar?.increment(done);
  try {
    const threads = Math.min(THREADS, availableParallelism());
    return points.length > MANY && threads > 1
      ? await inWorkers({ spec, points, threads, progress })
      : await here({ spec, points, progress });
  } finally {
    bar?.stop();
  }
}

function startBar(total: number): SingleBar {
  const bar = newBar('{value} of {total} designs, {eta_formatted} left');
  bar.start(total, 0);
  return bar;
}

interface Share {
  readonly spec: Spec;
  readonly points: readonly TunePoint[];
  readonly progress: (done: number) => void;
}

async function here({ spec, points, progress }: Share): Promise<readonly TuneRow[]> {
  const rows: TuneRow[] = [];
  for (let from = 0; from < points.length; from += CHUNK) {
    rows.push(...runTuneJob({ spec, points: points.slice(from, from + CHUNK) }, progress));
    // Lets the bar be drawn and Ctrl-C be heard.
    await setImmediate();
  }
  return rows;
}

/** Dealt out like cards: neighbouring designs cost alike, so that all threads end together. */
async function inWorkers({
  spec,
  points,
  threads,
  progress,
}: Share & { readonly threads: number }): Promise<readonly TuneRow[]> {
  const hands = Array.from({ length: threads }, (_, k) => points.filter((_, i) => i % threads === k));
  const dealt = await Promise.all(hands.map((hand) => inWorker({ spec, points: hand, progress })));
  return points.map((_, i) => dealt[i % threads]![Math.floor(i / threads)]!);
}

function inWorker({ spec, points, progress }: Share): Promise<readonly TuneRow[]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./tune-worker.js', import.meta.url), { workerData: { spec, points } });
    worker.on('message', (message: TuneMessage) => {
      if ('rows' in message) resolve(message.rows);
      else progress(message.done);
    });
    worker.on('error', reject);
    worker.on('exit', (code) => reject(new Error(`the worker ended with code ${code} and no result`)));
  });
}
