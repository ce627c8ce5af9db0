/** Sets single values in a preset's text. Everything else, comments and blanks included, stays as it is, byte for byte. */
import { type Document, isMap, isScalar, type Pair, parseDocument, type YAMLMap } from 'yaml';

export type PresetValues = Readonly<Record<string, number | string>>;

/**
 * @param text - of a preset that `readPreset` accepts
 * @param values - by dotted path, one or two keys deep; each replaces what is there or is added
 * @returns the new text; the caller reads it again before trusting it
 * @throws {Error} where the text is not the mapping that a preset is
 */
export function setValues(text: string, values: PresetValues): string {
  let result = text;
  for (const [path, value] of Object.entries(values)) result = setValue(result, path.split('.'), value);
  return result;
}

/** A replacement of text[from, to). */
interface Edit {
  readonly from: number;
  readonly to: number;
  readonly by: string;
}

function setValue(text: string, path: readonly string[], value: number | string): string {
  const document = parseDocument(text, { version: '1.2', schema: 'core', resolveKnownTags: false });
  const { from, to, by } = editFor(document, { text, path, value });
  return text.slice(0, from) + by + text.slice(to);
}

interface Setting {
  readonly text: string;
  readonly path: readonly string[];
  readonly value: number | string;
}

function editFor({ contents }: Document, { text, path, value }: Setting): Edit {
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const [first, second] = path as [string, string | undefined];
  if (!isMap(contents)) throw new Error('setValues: the preset is no mapping');
  const top = pairOf(contents, first);
  if (second === undefined)
    return top ? replace(text, top, { value, newline }) : add(text, contents, `${first}: ${value}`);
  if (!top) return addSection(text, contents, { first, second, value, newline });
  if (isMap(top.value)) {
    const pair = pairOf(top.value, second);
    return pair ? replace(text, pair, { value, newline }) : add(text, top.value, `${second}: ${value}`);
  }
  // `leaf:` with nothing behind it, or with a written null.
  return replace(text, top, { value: `{ ${second}: ${value} }`, newline });
}

const pairOf = (map: YAMLMap, name: string): Pair | undefined =>
  map.items.find(({ key }) => isScalar(key) && String(key.value) === name);

/** Behind the key's colon. */
const keyEnd = (text: string, { key }: Pair): number => text.indexOf(':', rangeOf(key)[1]) + 1;

function rangeOf(node: unknown): readonly [number, number, number] {
  const { range } = node as { range?: [number, number, number] | null };
  if (!range) throw new Error('setValues: a node has no place in the text');
  return range;
}

function replace(
  text: string,
  pair: Pair,
  { value, newline }: { readonly value: number | string; readonly newline: string },
): Edit {
  const node = pair.value;
  const colon = keyEnd(text, pair);
  if (node === null || (isScalar(node) && node.value === null && rangeOf(node)[0] === rangeOf(node)[1]))
    return { from: colon, to: colon, by: ` ${value}` };
  const [from, to] = rangeOf(node);
  if (!isMap(node) || node.flow) return { from, to, by: String(value) };
  // A block of figures gives way to one name: its lines stay, as comments.
  const start = text.lastIndexOf('\n', from) + 1;
  const block = text.slice(start, to).replace(/\s+$/, '');
  const kept = block.split(/\r?\n/).map((line) => (line.trim() === '' ? line : `#${line}`));
  const by = ` ${value}${text.slice(colon, start)}${kept.join(newline)}`;
  return { from: colon, to: start + block.length, by };
}

/** Adds a key at the end of a mapping. */
function add(text: string, map: YAMLMap, entry: string): Edit {
  const last = map.items.at(-1);
  if (map.flow) {
    const end = last ? rangeOf(last.value ?? last.key)[1] : text.indexOf('{', rangeOf(map)[0]) + 1;
    return { from: end, to: end, by: last ? `, ${entry}` : ` ${entry} ` };
  }
  if (!last) throw new Error('setValues: a block mapping is empty');
  const indent = columnOf(text, rangeOf(map.items[0]!.key)[0]);
  return lineAfter(text, rangeOf(last.value ?? last.key)[1], ' '.repeat(indent) + entry);
}

/** Adds `first: { second: value }` to the preset itself: as lines at its end, or within its braces. */
function addSection(
  text: string,
  root: YAMLMap,
  {
    first,
    second,
    value,
    newline,
  }: { readonly first: string; readonly second: string; readonly value: number | string; readonly newline: string },
): Edit {
  if (root.flow) return add(text, root, `${first}: { ${second}: ${value} }`);
  const indent = ' '.repeat(columnOf(text, rangeOf(root.items[0]!.key)[0]));
  const last = root.items.at(-1)!;
  return lineAfter(
    text,
    rangeOf(last.value ?? last.key)[1],
    `${indent}${first}:${newline}${indent}  ${second}: ${value}`,
  );
}

/** A byte order mark takes no column. */
function columnOf(text: string, offset: number): number {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return offset - start - (start === 0 && text.startsWith('\ufeff') ? 1 : 0);
}

/** Behind the line on which `offset` ends, its comment included. */
function lineAfter(text: string, offset: number, line: string): Edit {
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  // A block's range may reach past its last line's end.
  const inside = offset > 0 && text[offset - 1] === '\n' ? offset - 1 : offset;
  const end = text.indexOf('\n', inside);
  return end < 0
    ? { from: text.length, to: text.length, by: newline + line + newline }
    : { from: end + 1, to: end + 1, by: line + newline };
}
