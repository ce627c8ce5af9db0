/** Progress on standard error: one bar on a terminal, otherwise one plain line a kit. */
import { newBar } from './bar.js';
import { type JobStage, type Outcome, STAGES } from './outcome.js';
import { printable } from './printable.js';
import { warn } from './terminal.js';

export interface Progress {
  /** @param share - how much of the stage is done, 0 to 1, where that is known */
  stage(name: string, stage: JobStage, share?: number): void;
  finished(outcome: Outcome): void;
  stop(): void;
}

const WORDS: Readonly<Record<JobStage, string>> = {
  layout: 'laying out',
  parts: 'drawing',
  checks: 'checking',
  shapes: 'meshing',
  lists: 'listing',
  samples: 'drawing grids',
  writing: 'writing',
};

/** @param kits - how many there are in all */
export const startProgress = (kits: number): Progress => (process.stderr.isTTY ? bar(kits) : lines(kits));

function bar(kits: number): Progress {
  const done = new Map<string, number>();
  const single = newBar('{finished} of {kits}  {now}');
  let finished = 0;
  single.start(kits * STAGES.length, 0, { finished, kits, now: '' });
  const update = (now: string) =>
    single.update(
      [...done.values()].reduce((a, b) => a + b, 0),
      { finished, kits, now },
    );
  return {
    stage(name, stage, share = 0) {
      done.set(name, STAGES.indexOf(stage) + share);
      update(`${printable(name)}: ${WORDS[stage]}`.slice(0, 40));
    },
    finished({ name }) {
      finished += 1;
      done.set(name, STAGES.length);
      update('');
    },
    stop: () => single.stop(),
  };
}

function lines(kits: number): Progress {
  let finished = 0;
  return {
    stage() {},
    finished({ name, status }) {
      finished += 1;
      warn(`${finished} of ${kits}: ${printable(name)} ${status}`);
    },
    stop() {},
  };
}
