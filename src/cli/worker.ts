/** The worker's side of a job. */
import { parentPort, workerData } from 'node:worker_threads';
import type { WorkerMessage } from './jobs.js';
import type { Job } from './outcome.js';
import { runJob } from './run-job.js';

const post = (message: WorkerMessage) => parentPort?.postMessage(message);
post({ outcome: await runJob(workerData as Job, (stage, share) => post({ stage, share })) });
