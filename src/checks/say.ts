/** Findings in one shape of sentence. */
import type { Finding } from '../findings.js';

/** @returns the finding; without figures, both are null */
export const say = (
  finding: Omit<Finding, 'measured' | 'limit' | 'unit' | 'accepted'> &
    Partial<Pick<Finding, 'measured' | 'limit' | 'unit'>>,
): Finding => ({ measured: null, limit: null, unit: '', ...finding });

/** A figure as printed in a sentence: three significant digits, no exponent. */
export function figure(value: number): string {
  if (value === 0) return '0';
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  return value
    .toFixed(Math.min(digits, 4))
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '');
}
