/** Markup that can't be broken by what a preset says. */
import { escapeXml } from '../svg-scale.js';

export const text = escapeXml;

/** @returns an element; `inner` is markup, left out for elements that hold nothing; attribute values are escaped */
export const tag = (name: string, attributes: Readonly<Record<string, string | number>>, inner?: string): string =>
  `<${name}${Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${escapeXml(String(value))}"`)
    .join('')}>${inner === undefined ? '' : `${inner}</${name}>`}`;

export type Cell = string | number | null;

/** @returns a table that scrolls sideways by itself on a narrow screen; numbers stand at the right */
export function table(
  caption: string,
  head: readonly string[],
  rows: readonly (readonly Cell[])[],
  { numbers = [] }: { readonly numbers?: readonly number[] } = {},
): string {
  const cell = (value: Cell, i: number) =>
    `<td${numbers.includes(i) ? ' class="number"' : ''}>${value === null ? '' : text(String(value))}</td>`;
  const heads = head.map(
    (one, i) => `<th scope="col"${numbers.includes(i) ? ' class="number"' : ''}>${text(one)}</th>`,
  );
  const body = rows.map((row) => `<tr>${row.map(cell).join('')}</tr>`).join('\n');
  return `<div class="wide" tabindex="0" role="region" aria-label="${text(caption)}"><table><caption>${text(caption)}</caption><thead><tr>${heads.join('')}</tr></thead><tbody>\n${body}\n</tbody></table></div>`;
}

export const list = (items: readonly string[]): string =>
  `<ul>${items.map((item) => `<li>${text(item)}</li>`).join('')}</ul>`;

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** RFC 4648, section 4. */
export function base64(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let i = 0; i < bytes.length; i += 3) {
    const left = bytes.length - i;
    const word = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    pieces.push(
      ALPHABET[word >> 18]! +
        ALPHABET[(word >> 12) & 63]! +
        (left > 1 ? ALPHABET[(word >> 6) & 63]! : '=') +
        (left > 2 ? ALPHABET[word & 63]! : '='),
    );
  }
  return pieces.join('');
}

export const pngData = (bytes: Uint8Array): string => `data:image/png;base64,${base64(bytes)}`;
