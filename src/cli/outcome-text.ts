/** What the terminal shows of a run. One kit is told in full; of several only what one has to know. */
import { bySeverity, findingsText, tally } from '../outputs/findings-text.js';
import { cautionsText } from '../outputs/summary.js';
import { counted, wrap } from '../outputs/text.js';
import type { Outcome } from './outcome.js';
import { printable } from './printable.js';
import { strong } from './terminal.js';

/** @param outcomes - one or more, none of them failed */
export function outcomesText(outcomes: readonly Outcome[], width: number): string {
  const [only] = outcomes;
  if (only !== undefined && outcomes.length === 1)
    return printable(`${only.summary}\n`) + strong(printable(verdict(only)));
  const blocks = outcomes.map((outcome) => block(outcome, width));
  return [...blocks, printable(cautionsText(width)), totals(outcomes)].join('\n\n');
}

function block(outcome: Outcome, width: number): string {
  // Notes stand in the summary of each kit; here they would bury what matters.
  const weighty = bySeverity(outcome.findings).filter(({ severity }) => severity !== 'note');
  const lines = [
    outcome.made.replaceAll(/^/gm, '  '),
    `  Findings: ${tally(outcome.findings)}`,
    ...(weighty.length === 0 ? [] : [findingsText(weighty, { width: width - 2 }).replaceAll(/^/gm, '  ')]),
  ];
  return `${strong(printable(verdict(outcome)))}\n${printable(lines.join('\n'))}`;
}

function verdict({ name, status, folder, files, findings }: Outcome): string {
  if (status === 'made') return `${name}: made, ${counted(files.length, 'file')} in ${folder}/`;
  if (status === 'passed') return `${name}: passes its checks; nothing is written by a check`;
  const errors = counted(
    findings.filter(({ severity, accepted }) => severity === 'error' && accepted !== true).length,
    'error',
  );
  return `${name}: refused for ${errors}; nothing was written, an earlier kit stays as it was`;
}

function totals(outcomes: readonly Outcome[]): string {
  const count = (status: Outcome['status']) => outcomes.filter((outcome) => outcome.status === status).length;
  const said = [
    [count('made'), 'made'],
    [count('passed'), 'passed'],
    [count('refused'), 'refused'],
  ] as const;
  const parts = said.filter(([n]) => n > 0).map(([n, word]) => `${n} ${word}`);
  return wrap(
    `${counted(outcomes.length, 'kit')}: ${parts.join(', ')}.${count('made') > 0 ? ' Each kit\u2019s summary.txt tells what was chosen and why.' : ''}`,
    { width: 100 },
  );
}
