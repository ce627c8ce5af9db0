/** Runs jobs one after the other in this thread, or side by side in workers: one kit a job, results in the jobs' order. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { EXIT } from './exit.js';
import { failureJson, failureText } from './failure-text.js';
import { type Job, type JobStage, nothingYet, type Outcome } from './outcome.js';
import type { Progress } from './progress.js';
import { runJob } from './run-job.js';

/** What a worker says: a stage begins, or the job is done. */
export type WorkerMessage =
  | { readonly stage: JobStage; readonly share?: number | undefined }
  | { readonly outcome: Outcome };

/** @returns how many workers are worth it when the user names no number */
export const usualWorkers = (jobs: number): number => Math.min(jobs, availableParallelism());

/**
 * @param workers - how many kits are made at a time; 1 starts no worker
 * @returns one outcome a job, in the same order
 */
export async function runJobs(jobs: readonly Job[], workers: number, progress: Progress): Promise<readonly Outcome[]> {
  const outcomes = new Array<Outcome>(jobs.length);
  const run = workers > 1 ? runInWorker : runJob;
  const queue = jobs.entries();
  const lane = async () => {
    for (const [index, job] of queue) {
      const outcome = await run(job, (stage, share) => progress.stage(job.name, stage, share));
      outcomes[index] = outcome;
      progress.finished(outcome);
    }
  };
  await Promise.all(Array.from({ length: Math.min(workers, jobs.length) }, lane));
  return outcomes;
}

/** A fresh worker for each kit: it costs 40 ms and gives all its memory back. */
function runInWorker(job: Job, progress: (stage: JobStage, share?: number) => void): Promise<Outcome> {
  return new Promise((resolve) => {
    const worker = new Worker(new URL('./worker.js', import.meta.url), { workerData: job });
    let outcome: Outcome | undefined;
    const fail = (error: unknown) => {
      outcome ??= crashed(job, error);
    };
    worker.on('message', (message: WorkerMessage) => {
      if ('stage' in message) progress(message.stage, message.share);
      else outcome = message.outcome;
    });
    worker.on('error', fail);
    worker.on('exit', (code) => {
      fail(new Error(`the worker ended with code ${code} and no result`));
      resolve(outcome!);
    });
  });
}

const crashed = (job: Job, error: unknown): Outcome => ({
  ...nothingYet(job),
  exit: EXIT.bug,
  status: 'failed',
  failure: { text: failureText(error, job.width), data: failureJson(error) },
});
