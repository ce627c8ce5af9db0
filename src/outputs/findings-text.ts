/** Findings as people read them: the worst first, those of one kind together. */
import type { Finding, Severity } from '../findings.js';
import { counted, hanging, wrap } from './text.js';

const ORDER: readonly Severity[] = ['error', 'warning', 'note'];

/** @returns findings, errors first; otherwise in the order in which they were found */
export const bySeverity = (findings: readonly Finding[]): readonly Finding[] =>
  ORDER.flatMap((severity) => findings.filter((finding) => finding.severity === severity));

/** `2 errors, 1 warning, 4 notes`, or `no findings`. */
export function tally(findings: readonly Finding[]): string {
  const counts = ORDER.map((severity) => [severity, findings.filter((f) => f.severity === severity).length] as const);
  const said = counts.filter(([, count]) => count > 0).map(([severity, count]) => counted(count, severity));
  return said.length === 0 ? 'no findings' : said.join(', ');
}

/**
 * One entry a kind of finding: the first in full, the rest by number and subject.
 *
 * @param most - how many subjects are named before the rest is only counted
 */
export function findingsText(
  findings: readonly Finding[],
  { width, most = 4 }: { readonly width: number; readonly most?: number },
): string {
  return kindsOf(findings)
    .map((kind) => entry(kind, { width, most }))
    .join('\n');
}

/** Findings of one code and severity. */
export interface FindingKind {
  readonly first: Finding;
  /** The first's sentence, beginning with its subject where it does not name it. */
  readonly says: string;
  readonly others: readonly Finding[];
  /** Of the others, each once. */
  readonly subjects: readonly string[];
  /** What to change for any of them. */
  readonly remedies: readonly string[];
}

/** @returns findings by kind, the worst first */
export function kindsOf(findings: readonly Finding[]): readonly FindingKind[] {
  const kinds = new Map<string, Finding[]>();
  for (const finding of bySeverity(findings)) {
    const key = `${finding.severity} ${finding.code} ${finding.accepted === true}`;
    kinds.set(key, [...(kinds.get(key) ?? []), finding]);
  }
  return [...kinds.values()].map((kind) => {
    const [first, ...others] = kind as [Finding, ...Finding[]];
    return {
      first,
      says: first.message.includes(first.subject) ? first.message : `${first.subject}: ${first.message}`,
      others,
      subjects: [...new Set(others.map(({ subject }) => subject))],
      remedies: [...new Set(kind.flatMap(({ remedies }) => remedies))],
    };
  });
}

function entry(
  { first, says, others, subjects, remedies }: FindingKind,
  { width, most }: { readonly width: number; readonly most: number },
): string {
  const indent = ' '.repeat(11);
  const lines = [`  ${first.severity.padEnd(9)}${first.code}${first.accepted === true ? ' (accepted)' : ''}`];
  lines.push(indent + wrap(says, { width, indent }));
  if (others.length > 0) {
    const named = subjects.slice(0, most).join(', ') + (subjects.length > most ? ', …' : '');
    lines.push(indent + wrap(`And ${others.length} more of this kind: ${named}`, { width, indent }));
  }
  if (remedies.length > 0)
    lines.push(
      indent +
        hanging('To change:', remedies.join(', '), { width: width - 11, column: 11 }).replaceAll('\n', `\n${indent}`),
    );
  return lines.join('\n');
}
