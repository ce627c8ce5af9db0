/** A small sweep for the tests of its outputs: some pass, some fail, one can't be drawn. */
import { readPreset } from '../../src/spec/read-preset.js';
import { evaluate } from '../../src/tune/evaluate.js';
import { planSweep } from '../../src/tune/points.js';
import { reportOf, type TuneReport } from '../../src/tune/report.js';
import { readVary, type Vary } from '../../src/tune/vary.js';

export const SWEEP: readonly Vary[] = [
  { path: 'leaf.legs', text: '1,2,3' },
  { path: 'leaf.thickness', text: '0.86,1.67' },
  { path: 'leaf.length', text: '6,9' },
];

export function sampleSweep(lines = '', vary: readonly Vary[] = SWEEP): TuneReport {
  const spec = readPreset(`grid: { rows: 2, columns: 3, pitch: 22 }\n${lines}`, 'sample.yaml');
  const read = readVary(vary);
  if ('mistakes' in read) throw new Error(read.mistakes[0]!.message);
  const plan = planSweep(spec, read.axes);
  if ('mistakes' in plan) throw new Error(plan.mistakes[0]!.message);
  return reportOf(spec, { plan, rows: plan.points.map((point) => evaluate(spec, point)) });
}
