/**
 * The model part of a 3MF package, by the open 3D Manufacturing Format, core specification: objects each once, build items that
 * place them. Millimetres. A strict reader wants no exponents, no unknown metadata names and no object used before it is given.
 */
import type { Matrix, Mesh, Vec3 } from '../../solid/mesh.js';
import { joinBytes } from '../bytes.js';
import { hex } from '../colours.js';

export interface ModelObject {
  /** Key by which items name it. */
  readonly key: string;
  readonly name: string;
  readonly partNumber: string;
  readonly mesh: Mesh;
  readonly colour: Vec3;
}

export interface ModelItem {
  readonly object: string;
  /** Rigid, from the object's coordinates. */
  readonly matrix: Matrix;
  readonly partNumber: string;
}

export interface Model {
  readonly title: string;
  readonly description: string;
  readonly objects: readonly ModelObject[];
  readonly items: readonly ModelItem[];
}

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';

/** @returns text for an attribute or an element; characters that XML 1.0 can't hold become a replacement character */
export const xmlText = (text: string): string =>
  text
    .replace(/[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu, '\uFFFD')
    .replace(/[&<>"'\t\n\r]/g, (c) => `&#${c.charCodeAt(0)};`);

/** @returns UTF-8; meshes are long, so they are kept as bytes and never put together as one text */
export function modelXml({ title, description, objects, items }: Model): Uint8Array {
  const colours = [...new Set(objects.map(({ colour }) => hex(colour).toUpperCase()))];
  const materials = colours.map((colour, i) => `<base name="colour ${i + 1}" displaycolor="${colour}"/>`).join('');
  // Resource 1 holds the colours.
  const ids = new Map(objects.map(({ key }, i) => [key, i + 2]));
  const shapes = objects.flatMap(({ key, name, partNumber, mesh, colour }) => [
    utf8(
      `<object id="${ids.get(key)}" type="model" name="${xmlText(name)}" partnumber="${xmlText(partNumber)}" pid="1" pindex="${colours.indexOf(hex(colour).toUpperCase())}">\n`,
    ),
    meshXml(mesh),
    utf8('\n</object>\n'),
  ]);
  const placed = items.map(
    ({ object, matrix, partNumber }) =>
      `<item objectid="${ids.get(object)}" transform="${transform(matrix)}" partnumber="${xmlText(partNumber)}"/>`,
  );
  const head = `<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en" xmlns="${CORE}">
<metadata name="Title">${xmlText(title)}</metadata>
<metadata name="Description">${xmlText(description)}</metadata>
<metadata name="Application">beamloom</metadata>
<resources>
<basematerials id="1">${materials}</basematerials>
`;
  const foot = `</resources>
<build>
${placed.join('\n')}
</build>
</model>
`;
  return joinBytes([utf8(head), ...shapes, utf8(foot)]);
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** The same mesh stands on a bed and in the kit. */
const written = new WeakMap<Mesh, Uint8Array>();

function meshXml(mesh: Mesh): Uint8Array {
  const known = written.get(mesh);
  if (known !== undefined) return known;
  const bytes = utf8(writeMesh(mesh));
  written.set(mesh, bytes);
  return bytes;
}

function writeMesh({ positions, triangles }: Mesh): string {
  const lines: string[] = ['<mesh><vertices>'];
  // Most coordinates of a part come again and again.
  const decimals = new Map<number, string>();
  const said = (value: number): string => {
    let text = decimals.get(value);
    if (text === undefined) {
      text = decimal(value);
      decimals.set(value, text);
    }
    return text;
  };
  for (let i = 0; i < positions.length; i += 3)
    lines.push(`<vertex x="${said(positions[i]!)}" y="${said(positions[i + 1]!)}" z="${said(positions[i + 2]!)}"/>`);
  lines.push('</vertices><triangles>');
  for (let i = 0; i < triangles.length; i += 3)
    lines.push(`<triangle v1="${triangles[i]}" v2="${triangles[i + 1]}" v3="${triangles[i + 2]}"/>`);
  lines.push('</triangles></mesh>');
  return lines.join('\n');
}

/** Fewest decimals that give the same float32 back, never with an exponent. */
export function decimal(value: number): string {
  for (let digits = 3; digits <= 12; digits++) {
    const rounded = Number(value.toFixed(digits));
    if (Math.fround(rounded) === value) return plain(rounded, digits);
  }
  return plain(value, 20);
}

/** Without an exponent, which `String` writes below 1e-6, and without −0. */
const plain = (value: number, digits: number): string => {
  const text = String(value + 0);
  return text.includes('e') ? value.toFixed(digits) : text;
};

/** Row vectors, so the rotation is transposed; the last column of the matrix is left out. */
const transform = (m: Matrix): string =>
  [m[0], m[4], m[8], m[1], m[5], m[9], m[2], m[6], m[10], m[3], m[7], m[11]]
    .map((value) => plain(Number(value!.toFixed(9)), 9))
    .join(' ');
