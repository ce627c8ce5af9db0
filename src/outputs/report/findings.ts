/** Findings with their remedies, the worst first. */
import type { Finding } from '../../findings.js';
import { bySeverity } from '../findings-text.js';
import { text } from './html.js';

const KIND = { error: 'bad', warning: 'warn', note: 'soft' } as const;

/** Those of one kind together: the first in full, the others by subject. */
export function findingsHtml(findings: readonly Finding[]): string {
  if (findings.length === 0) return '<p>None.</p>';
  const kinds = new Map<string, Finding[]>();
  for (const finding of bySeverity(findings)) {
    const key = `${finding.severity} ${finding.code}`;
    kinds.set(key, [...(kinds.get(key) ?? []), finding]);
  }
  return [...kinds.values()]
    .map(([first, ...others]) => {
      const { severity, code, subject, message, remedies, accepted } = first!;
      const more =
        others.length > 0
          ? `<p class="soft">And ${others.length} more of this kind: ${text([...new Set(others.map((one) => one.subject))].join(', '))}.</p>`
          : '';
      const change =
        remedies.length > 0
          ? `<p>To change: ${remedies.map((path) => `<code>${text(path)}</code>`).join(', ')}.</p>`
          : '';
      return `<h3><span class="${KIND[severity]}">${severity}${accepted === true ? ' (accepted)' : ''}</span> ${text(code)}</h3><p>${text(message.includes(subject) ? message : `${subject}: ${message}`)}</p>${more}${change}`;
    })
    .join('\n');
}
