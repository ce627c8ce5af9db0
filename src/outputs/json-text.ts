/** JSON that is the same, byte for byte, for the same value, and short enough to read: lists of plain values stay on one line. */

export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/**
 * @param value - keys are written in the order in which they stand
 * @returns JSON text, indented by two spaces, ending in a newline
 * @throws {RangeError} when a number is not finite: JSON would turn it into null without a word
 */
export const jsonText = (value: Json): string => `${write(value, '')}\n`;

/**
 * Rounds to a step of 1e-6 (mm: a nanometre), and −0 to 0.
 *
 * @param digits - decimals kept; rotations take more, so that a matrix stays rigid
 */
export function tidy(value: number, digits = 6): number {
  if (!Number.isFinite(value)) throw new RangeError(`tidy: want a finite number, got ${value}`);
  // Through the decimal string, so that 0.1 + 0.2 comes out as .3 and not as the nearest product of a power of ten.
  return Number(value.toFixed(digits)) + 0;
}

const isPlain = (value: Json) => value === null || typeof value !== 'object';

function write(value: Json, indent: string): string {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new RangeError(`jsonText: number is ${value}`);
  if (value === null || typeof value !== 'object') return JSON.stringify(value);
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    const list = value as readonly Json[];
    if (list.every(isPlain)) return `[${list.map((item) => write(item, '')).join(', ')}]`;
    return `[\n${list.map((item) => deeper + write(item, deeper)).join(',\n')}\n${indent}]`;
  }
  const entries = Object.entries(value as { readonly [key: string]: Json });
  if (entries.length === 0) return '{}';
  const lines = entries.map(([key, item]) => `${deeper}${JSON.stringify(key)}: ${write(item, deeper)}`);
  return `{\n${lines.join(',\n')}\n${indent}}`;
}
