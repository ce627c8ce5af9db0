/** Plain text for people: wrapping and counting. */

/**
 * Breaks text at blanks; a word longer than a line stands alone.
 *
 * @param width - columns in all, the indent included
 * @param indent - put before every line but the first, which the caller has begun
 */
export function wrap(
  text: string,
  { width, indent = '' }: { readonly width: number; readonly indent?: string },
): string {
  const room = Math.max(20, width - indent.length);
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((w) => w !== '')) {
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].join(`\n${indent}`);
}

/** An entry whose text hangs behind its label: `label   text that goes on below itself`. */
export function hanging(
  label: string,
  text: string,
  { width, column }: { readonly width: number; readonly column: number },
): string {
  const indent = ' '.repeat(column);
  const body = wrap(text, { width, indent });
  return label.length < column ? label.padEnd(column) + body : `${label}\n${indent}${body}`;
}

/** `1 note`, `3 notes`. */
export const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
