/** Findings that the user accepts by their code: never all at once, never eye safety. */
import { closest, distance } from 'fastest-levenshtein';
import type { Mistake } from '../errors.js';
import type { Finding } from '../findings.js';
import { CODES } from './index.js';

/** Codes under this can't be accepted. */
const NEVER = 'eye-safety/';

export interface Accepted {
  /** The same findings; those of an accepted code are marked. */
  readonly findings: readonly Finding[];
  /** Codes that can't be accepted, or that no check knows. */
  readonly mistakes: readonly Mistake[];
}

/**
 * Marks findings as accepted.
 *
 * @param codes - as given, compared exactly
 * @param further - codes that come from elsewhere than the checks, such as the file gate's; those found count as known
 */
export function accept(
  findings: readonly Finding[],
  codes: readonly string[],
  further: readonly string[] = [],
): Accepted {
  const known = new Set([...CODES, ...further, ...findings.map((finding) => finding.code)]);
  const mistakes = codes.flatMap((code) => mistake(code, known));
  const good = new Set(codes.filter((code) => known.has(code) && !code.startsWith(NEVER)));
  return {
    findings: findings.map((finding) => (good.has(finding.code) ? { ...finding, accepted: true } : finding)),
    mistakes,
  };
}

export interface Verdict {
  /** No error stands that was not accepted. */
  readonly good: boolean;
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  /** Of these, accepted by name. */
  readonly accepted: number;
}

/** @returns the count of findings, and whether the kit may be written */
export function verdict(findings: readonly Finding[]): Verdict {
  const count = (severity: Finding['severity']) => findings.filter((finding) => finding.severity === severity).length;
  return {
    good: !findings.some(
      ({ severity, accepted, code }) => severity === 'error' && (!accepted || code.startsWith(NEVER)),
    ),
    errors: count('error'),
    warnings: count('warning'),
    notes: count('note'),
    accepted: findings.filter((finding) => finding.accepted).length,
  };
}

function mistake(code: string, known: ReadonlySet<string>): Mistake[] {
  if (code.startsWith(NEVER))
    return [
      { code: 'accept/eye-safety', path: 'accept', message: `${code} concerns eye safety and can't be accepted.` },
    ];
  if (known.has(code)) return [];
  const near = closest(
    code,
    [...known].filter((other) => !other.startsWith(NEVER)),
  );
  return [
    {
      code: 'accept/unknown',
      path: 'accept',
      message: `No finding is called ${JSON.stringify(code)}; a code is accepted in full, one at a time.`,
      ...(distance(code, near) <= code.length / 2 ? { hint: `Did you mean ${near}?` } : {}),
    },
  ];
}
