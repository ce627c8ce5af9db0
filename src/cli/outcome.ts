/** What became of one preset: plain data, so that a worker can hand it over. */
import type { Finding } from '../findings.js';
import type { GridSamples } from '../layout/light/sample-grids.js';
import type { Solved } from '../spec/spec.js';
import type { ExitCode } from './exit.js';

export interface Outcome {
  /** The kit's name, and the preset's path. */
  readonly name: string;
  readonly preset: string;
  readonly exit: ExitCode;
  /** `made`: files are in place · `passed`: checked only · `refused`: errors, nothing written · `failed`: see `failure`. */
  readonly status: 'made' | 'passed' | 'refused' | 'failed';
  /** The kit's folder, when files were written. */
  readonly folder: string | null;
  readonly files: readonly string[];
  readonly findings: readonly Finding[];
  readonly solved: readonly Solved[];
  /** Grids that were drawn. */
  readonly samples: GridSamples | null;
  /** What the kit is, in a few lines; empty when it couldn't be drawn. */
  readonly made: string;
  /** The whole summary, wrapped for the terminal. */
  readonly summary: string;
  /** What went wrong, as text and as data, when it failed. */
  readonly failure: { readonly text: string; readonly data: Readonly<Record<string, unknown>> } | null;
}

/** One preset to be made or only checked. */
export interface Job {
  readonly preset: string;
  readonly text: string;
  readonly name: string;
  /** Folder of all kits; null: write nothing. */
  readonly out: string | null;
  readonly accept: readonly string[];
  /** Grids to draw and align at random; null: none. */
  readonly samples: { readonly grids: number; readonly seed: number } | null;
  /** Columns to wrap at. */
  readonly width: number;
}

/** An outcome of which nothing is known yet but whose it is. */
export const nothingYet = ({ name, preset }: Pick<Job, 'name' | 'preset'>): Omit<Outcome, 'exit' | 'status'> => ({
  name,
  preset,
  folder: null,
  files: [],
  findings: [],
  solved: [],
  samples: null,
  made: '',
  summary: '',
  failure: null,
});

/** Stages of a job in their order, for progress. */
export const STAGES = ['layout', 'parts', 'shapes', 'checks', 'lists', 'samples', 'writing'] as const;
export type JobStage = (typeof STAGES)[number];
