/** A preset's text as YAML 1.2: the plain data, what is wrong with the text, and where each path stands. */
import {
  type CST,
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  Parser,
  parseDocument,
  visit,
} from 'yaml';
import type { Mistake } from '../errors.js';
import { clean, type Path, quote } from './words.js';

/** A preset of 64 × 64 long labels has about 120 000 characters. */
export const MOST_CHARACTERS = 200_000;
/** A preset nests five deep. Deeper text is refused before the recursive part of the parser sees it: it would exhaust the stack. */
export const MOST_DEPTH = 32;

/** Line and column, counted from 1. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

export interface YamlSource {
  /** Plain objects, lists and scalars; undefined when the text has no usable meaning. Keys without a value are left out. */
  readonly data: unknown;
  readonly mistakes: readonly Mistake[];
  /** Where the value (or the key) of a path stands; the nearest part of the path that exists when it doesn't. */
  readonly locate: (path: Path, what: 'key' | 'value') => Position;
}

/**
 * Reads the text of a preset. Anchors and aliases are refused, so text can't grow by being read; so are unknown tags.
 *
 * @param text - the whole file
 * @param asWritten - true for the path of each scalar that is text even where it looks like a number (`1.10` as a label)
 */
export function readYaml(text: string, asWritten: (path: Path) => boolean): YamlSource {
  const start = { line: 1, column: 1 };
  const refuse = (mistake: Mistake): YamlSource => ({ data: undefined, mistakes: [mistake], locate: () => start });
  if (text.length > MOST_CHARACTERS) {
    const message = `the file has ${text.length} characters; a preset has at most ${MOST_CHARACTERS}`;
    return refuse({ code: 'preset/too-long', path: '', message, ...start });
  }
  const lines = new LineCounter();
  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  const at = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const deep = firstTooDeep(tokens);
  if (deep !== null) {
    const message = `lists and mappings are nested more than ${MOST_DEPTH} deep here`;
    return refuse({ code: 'preset/too-deep', path: '', message, ...at(deep) });
  }

  const document = parseDocument(text, {
    version: '1.2',
    schema: 'core',
    resolveKnownTags: false,
    prettyErrors: false,
  });
  const keys = new Map<number, string>();
  const mistakes: Mistake[] = [];
  visit(document, {
    Pair(_, { key }) {
      const offset = offsetOf(key);
      if (offset !== undefined) keys.set(offset, keyName(key));
    },
    Alias(_, node) {
      const message = `anchors and aliases (*${clean(node.source).slice(0, 40)}) are not read in a preset: write the value out`;
      mistakes.push({ code: 'preset/alias', path: '', message, ...at(node.range?.[0] ?? 0) });
    },
  });
  for (const { code, message, pos } of [...document.errors, ...document.warnings]) {
    const repeated = code === 'DUPLICATE_KEY';
    const words = repeated
      ? `the key ${quote(keys.get(pos[0]) ?? '')} is given twice`
      : code === 'MULTIPLE_DOCS'
        ? 'a preset is one document: nothing may follow its end'
        : clean(message);
    mistakes.push({ code: repeated ? 'preset/duplicate-key' : 'preset/yaml', path: '', message: words, ...at(pos[0]) });
  }
  // A repeated key is wrong, but the rest of the file still means something and is worth checking in the same answer.
  const usable = mistakes.every(({ code }) => code === 'preset/duplicate-key');
  return {
    data: usable ? toData(document.contents, [], asWritten) : undefined,
    mistakes,
    locate: (path, what) => locate(document, { path, what, at }),
  };
}

/** Offset of the first token nested deeper than allowed, or null. Walks its own stack. */
function firstTooDeep(tokens: readonly CST.Token[]): number | null {
  const todo: [CST.Token, number][] = tokens.map((token) => [token, 0]);
  for (let next = todo.pop(); next; next = todo.pop()) {
    const [token, depth] = next;
    if (depth > MOST_DEPTH) return token.offset;
    if (token.type === 'document' && token.value) todo.push([token.value, depth]);
    if (!('items' in token)) continue;
    for (const { key, value } of token.items) {
      if (key) todo.push([key, depth + 1]);
      if (value) todo.push([value, depth + 1]);
    }
  }
  return null;
}

/** Plain data. Written here, not by the library, so that text stays as written and a key without value counts as left out. */
function toData(node: unknown, path: Path, asWritten: (path: Path) => boolean): unknown {
  if (isScalar(node)) {
    if (asWritten(path) && typeof node.value !== 'string') return node.source ?? '';
    return node.value ?? undefined;
  }
  if (isSeq(node)) return node.items.map((item, index) => toData(item, [...path, index], asWritten) ?? null);
  if (!isMap(node)) return undefined;
  // Without a prototype a key named `__proto__` is a key like any other.
  const data: Record<string, unknown> = Object.create(null);
  for (const { key, value } of node.items) {
    const name = keyName(key);
    const read = toData(value, [...path, name], asWritten);
    // Of a repeated key the first one counts; the repetition is a mistake already.
    if (read !== undefined && !(name in data)) data[name] = read;
  }
  return data;
}

const keyName = (key: unknown) => (isScalar(key) ? (key.source ?? String(key.value)) : String(key));

function locate(
  document: Document,
  { path, what, at }: { path: Path; what: 'key' | 'value'; at: (offset: number) => Position },
): Position {
  let node: unknown = document.contents;
  let found = offsetOf(node) ?? 0;
  for (const [depth, step] of path.entries()) {
    const last = depth === path.length - 1;
    if (isMap(node)) {
      const pair = node.items.find(({ key }) => keyName(key) === step);
      if (!pair) break;
      node = pair.value;
      const keyAt = offsetOf(pair.key) ?? found;
      // An unfinished path points at the key that lacks something, not into its value.
      found = last && what === 'value' && !isEmpty(node) ? (offsetOf(node) ?? keyAt) : keyAt;
    } else if (isSeq(node) && typeof step === 'number') {
      if (!(step in node.items)) break;
      node = node.items[step];
      found = offsetOf(node) ?? found;
    } else break;
  }
  return at(found);
}

const isEmpty = (node: unknown) => node === null || (isScalar(node) && node.value === null);

function offsetOf(node: unknown): number | undefined {
  if (isScalar(node) || isMap(node) || isSeq(node) || isAlias(node)) return node.range?.[0];
  return undefined;
}
