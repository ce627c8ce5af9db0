/** From what the schema refuses to mistakes in words: what was found, what is allowed, what may have been meant. */
import type { z } from 'zod';
import { branchFor, nodeAt, presetPaths, type SchemaNode } from './json-schema.js';
import { clean, dotted, list, nearest, type Path, quote, show } from './words.js';

/** A mistake whose place in the text is still to be looked up. */
export interface Unplaced {
  readonly code: string;
  readonly path: Path;
  readonly message: string;
  readonly hint?: string;
  /** Which of the two to point at. */
  readonly at: 'key' | 'value';
}

type Issue = z.core.$ZodIssue;

/**
 * @param issues - what the schema found
 * @param data - the preset as read
 * @param root - the JSON Schema of the same schema
 */
export function explain(
  issues: readonly Issue[],
  { data, root }: { data: unknown; root: SchemaNode },
): readonly Unplaced[] {
  const found = issues.flatMap((issue) => explainOne(issue, { path: issue.path as Path, data, root }));
  // A value outside two limits (1e300 rows: no safe integer, too large) is one mistake.
  const seen = new Set<string>();
  return found.filter(({ path, at, code }) => {
    const key = JSON.stringify([path, at, at === 'key' && code]);
    return !seen.has(key) && seen.add(key);
  });
}

interface Context {
  readonly path: Path;
  readonly data: unknown;
  readonly root: SchemaNode;
}

function explainOne(issue: Issue, context: Context): readonly Unplaced[] {
  const { path, data, root } = context;
  const value = valueAt(data, path);
  const node = nodeAt(root, path) ?? {};

  if (issue.code === 'unrecognized_keys') return issue.keys.map((key) => unknownKey(key, context));
  if (value === undefined) {
    return [
      {
        code: 'preset/missing',
        path,
        message: `${dotted(path)} is missing`,
        hint: `give ${expected(node)}`,
        at: 'key',
      },
    ];
  }
  const branch = branchFor(node, value);
  if (issue.code === 'invalid_union' && branch) {
    const inner = issue.errors[branch.index] ?? [];
    return inner.flatMap((each) => explainOne(each, { ...context, path: [...path, ...(each.path as Path)] }));
  }
  const fit = branch?.node ?? node;
  const mistake = (code: string, message: string, hint?: string): readonly Unplaced[] => [
    { code, path, message, ...(hint && { hint }), at: 'value' },
  ];
  if (typeof value === 'number' && fit.maximum !== undefined) {
    const found = `found ${show(value)}`;
    const limits = `allowed is ${expected(fit)}`;
    if (!Number.isFinite(value)) return mistake('preset/not-finite', `${found}, which is no usable number`, limits);
    if (value < fit.minimum!)
      return mistake('preset/too-small', `${found}, less than the least allowed, ${amount(fit.minimum!, fit)}`, limits);
    if (value > fit.maximum)
      return mistake('preset/too-large', `${found}, more than the most allowed, ${amount(fit.maximum, fit)}`, limits);
    return mistake('preset/wrong-type', found, limits);
  }
  if (issue.code === 'invalid_value' && typeof value === 'string' && fit.enum)
    return mistake(...unknownName(value, fit.enum));
  if (issue.code === 'too_small' || issue.code === 'too_big') {
    return mistake(
      issue.code === 'too_small' ? 'preset/too-short' : 'preset/too-long',
      `found ${size(value)}`,
      `allowed is ${expected(fit)}`,
    );
  }
  if (issue.code === 'custom' || issue.code === 'invalid_format') {
    return mistake('preset/text', `found ${show(value)}: ${issue.message}`, `allowed is ${expected(fit)}`);
  }
  const withUnit = typeof value === 'string' && /^\s*[-+.\d]/.test(value) && hasNumber(node);
  return mistake(
    'preset/wrong-type',
    `found ${show(value)}`,
    `allowed is ${expected(node)}${withUnit ? '; write a number bare, without quotes or unit' : ''}`,
  );
}

function unknownKey(key: string, { path: parent, data, root }: Context): Unplaced {
  const node = branchFor(nodeAt(root, parent) ?? {}, valueAt(data, parent))?.node;
  const known = Object.keys(node?.properties ?? {});
  const inside = parent.length > 0 ? ` in ${dotted(parent)}` : '';
  const near = nearest(key, known);
  // A key that is right, but stands elsewhere.
  const elsewhere = presetPaths(root).filter((path) => path.split('.').at(-1) === key);
  const hint =
    near.length > 0
      ? `did you mean ${list(near)}?`
      : elsewhere.length > 0
        ? `did you mean ${list(elsewhere.slice(0, 3))}?`
        : `known here: ${list(known, 'and')}`;
  return {
    code: 'preset/unknown-key',
    path: [...parent, key],
    message: `there is no key ${quote(key)}${inside}`,
    hint,
    at: 'key',
  };
}

function unknownName(name: string, names: readonly string[]): [string, string, string] {
  const near = nearest(name, names);
  const hint =
    near.length > 0 ? `did you mean ${list(near)}? known: ${list(names, 'and')}` : `known: ${list(names, 'and')}`;
  return ['preset/unknown-name', `there is no ${quote(name)}`, hint];
}

/** @returns what a node allows, in words with its limits */
export function expected(node: SchemaNode): string {
  const { type, minimum, maximum, unit } = node;
  if (node.anyOf) return list(node.anyOf.map(expected), ', or').replace(' , or', ', or');
  if (node.enum) return node.enum.length > 1 ? `one of ${list(node.enum)}` : `${node.enum[0]}`;
  if (type === 'integer' || type === 'number') {
    return `a ${type === 'integer' ? 'whole ' : ''}number from ${minimum} to ${maximum}${unit ? ` ${unit}` : ''}`;
  }
  if (type === 'boolean') return 'true or false';
  if (type === 'string') return `text of ${node.minLength ?? 0} to ${node.maxLength} characters`;
  if (type === 'array')
    return `a list of ${node.minItems ?? 0} to ${node.maxItems}, each ${expected(node.items ?? {})}`;
  if (type === 'object' && node.additionalProperties)
    return `a mapping of names, each to ${expected(node.additionalProperties)}`;
  if (type === 'object') {
    const keys = Object.keys(node.properties ?? {});
    return `a mapping with ${keys.length > 6 ? `keys such as ${list(keys.slice(0, 3), 'and')}` : list(keys, 'and')}`;
  }
  return 'a value';
}

const amount = (value: number, { unit }: SchemaNode) => (unit ? `${value} ${unit}` : String(value));

function size(value: unknown): string {
  if (typeof value === 'string') return value.length === 0 ? 'empty text' : `text of ${value.length} characters`;
  return Array.isArray(value) ? `a list of ${value.length}` : clean(show(value));
}

const hasNumber = (node: SchemaNode): boolean =>
  node.type === 'number' || node.type === 'integer' || (node.anyOf?.some(hasNumber) ?? false);

/** @returns the value at a path, or undefined where there is none */
export function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}
