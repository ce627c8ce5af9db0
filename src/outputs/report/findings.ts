/** Findings with their remedies, the worst first. */
import type { Finding } from '../../findings.js';
import { kindsOf } from '../findings-text.js';
import { text } from './html.js';

const KIND = { error: 'bad', warning: 'warn', note: 'soft' } as const;

/** Those of one kind together: the first in full, the others by subject. */
export function findingsHtml(findings: readonly Finding[]): string {
  if (findings.length === 0) return '<p>None.</p>';
  return kindsOf(findings)
    .map(({ first: { severity, code, accepted }, says, others, subjects, remedies }) => {
      const more =
        others.length > 0
          ? `<p class="soft">And ${others.length} more of this kind: ${text(subjects.join(', '))}.</p>`
          : '';
      const change =
        remedies.length > 0
          ? `<p>To change: ${remedies.map((path) => `<code>${text(path)}</code>`).join(', ')}.</p>`
          : '';
      return `<h3><span class="${KIND[severity]}">${severity}${accepted === true ? ' (accepted)' : ''}</span> ${text(code)}</h3><p>${text(says)}</p>${more}${change}`;
    })
    .join('\n');
}
