/** The worker's side of a sweep. */
import { parentPort, workerData } from 'node:worker_threads';
import { runTuneJob, type TuneJob, type TuneMessage } from './tune-job.js';

const post = (message: TuneMessage) => parentPort?.postMessage(message);
post({ rows: runTuneJob(workerData as TuneJob, (done) => post({ done })) });
