/** JSON Schema of a preset, for editors, and the tree in which the messages look up limits and neighbouring keys. */
import { z } from 'zod';
import { presetSchema } from './schema.js';
import type { Path } from './words.js';

/** The part of JSON Schema (draft 7) that a preset needs; `unit` is an annotation of our own. */
export interface SchemaNode {
  readonly $schema?: string;
  readonly title?: string;
  readonly description?: string;
  readonly unit?: string;
  readonly type?: 'object' | 'array' | 'string' | 'number' | 'integer' | 'boolean';
  readonly anyOf?: readonly SchemaNode[];
  readonly enum?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  /** What every entry of a mapping with free names is; false where no other name is known. */
  readonly additionalProperties?: SchemaNode | false;
  readonly items?: SchemaNode;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
}

/** @returns the JSON Schema (draft 7) of a preset, made from the same schema that reads presets */
export function presetJsonSchema(): SchemaNode {
  const { $schema, ...rest } = z.toJSONSchema(presetSchema, { target: 'draft-7', io: 'input' });
  return { $schema, title: 'beamloom preset', ...rest } as SchemaNode;
}

/** @returns the alternative that a value's kind belongs to; the node itself where there is but one; null when none fits */
export function branchFor(
  node: SchemaNode,
  value: unknown,
): { readonly node: SchemaNode; readonly index: number } | null {
  if (!node.anyOf) return { node, index: 0 };
  const index = node.anyOf.findIndex(({ type }) => type !== undefined && isOfType(type, value));
  return index < 0 ? null : { node: node.anyOf[index]!, index };
}

/** @returns the node for one step down from a node, or undefined */
function child(node: SchemaNode, step: string | number): SchemaNode | undefined {
  const alternatives = node.anyOf ?? [node];
  for (const { items, properties, additionalProperties } of alternatives) {
    if (typeof step === 'number' && items) return items;
    if (typeof step === 'string' && properties && Object.hasOwn(properties, step)) return properties[step];
    if (typeof step === 'string' && additionalProperties) return additionalProperties;
  }
  return undefined;
}

/** @returns the node that describes the value at a path, or undefined where the schema knows no such path */
export function nodeAt(root: SchemaNode, path: Path): SchemaNode | undefined {
  let node: SchemaNode | undefined = root;
  for (const step of path) node = node && child(node, step);
  return node;
}

/** @returns every dotted path of keys that a preset may hold (list entries left out), in the schema's order */
export function presetPaths(root: SchemaNode = presetJsonSchema()): readonly string[] {
  const below = (node: SchemaNode): string[] =>
    (node.anyOf ?? [node]).flatMap(({ properties = {} }) =>
      Object.entries(properties).flatMap(([key, value]) => [key, ...below(value).map((path) => `${key}.${path}`)]),
    );
  return below(root);
}

function isOfType(type: NonNullable<SchemaNode['type']>, value: unknown): boolean {
  if (type === 'array') return Array.isArray(value);
  if (type === 'object') return typeof value === 'object' && value !== null && !Array.isArray(value);
  return typeof value === (type === 'integer' ? 'number' : type);
}
