/** What every output is made from, and what it gives back. */
import type { Finding } from '../findings.js';
import type { Kit, Part } from '../kit/types.js';
import type { LightBudget } from '../layout/light/budget.js';
import type { MeasuringKernel, Solid } from '../solid/kernel.js';
import type { Mesh } from '../solid/mesh.js';
import type { Solved, Spec } from '../spec/spec.js';
import type { Travel } from '../tune/travel.js';
import type { Beds } from './beds/lay-beds.js';
import type { PartCut } from './drawings/section.js';

/** A file of the kit; `path` is relative to the kit's folder, with forward slashes. */
export interface OutputFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** Where a part's shape goes: `stl` to print, `posed` as it stands in the assembly, `bought` only to look at. */
export type ShapeFolder = 'stl' | 'posed' | 'bought';

/** A shape file together with the solid that it must hold. */
export interface ShapeFile extends OutputFile {
  readonly folder: ShapeFolder;
  readonly part: Part;
  readonly solid: Solid;
}

/** Handed in, because the fast ones are the edge's; each gives the same bytes for the same bytes. */
export interface Compression {
  /** RFC 1951. */
  readonly deflateRaw: (bytes: Uint8Array) => Uint8Array<ArrayBuffer>;
  /** RFC 1950. */
  readonly deflate: (bytes: Uint8Array) => Uint8Array<ArrayBuffer>;
  readonly crc32: (bytes: Uint8Array) => number;
}

/** A part without its solids, and a kit of such parts: plain data, which another thread can be sent. */
export type ShownPart = Omit<Part, 'solid' | 'posed' | 'springCut'> & { readonly posed: object | null };
export type ShownKit = Omit<Kit, 'parts'> & { readonly parts: ReadonlyMap<string, ShownPart> };

/** What is drawn of meshes alone takes no more than this. */
export interface ShownContext {
  readonly spec: Spec;
  readonly kit: ShownKit;
  readonly meshOf: OutputContext['meshOf'];
  /** Of each printed part: what its sheet needs of the solid. */
  readonly cuts: ReadonlyMap<string, PartCut>;
  readonly compression: Compression;
}

/** Everything that is drawn of meshes alone: it asks for no finding, so it can be made while the kit is still checked. */
export interface Drawings {
  readonly kit3mf: readonly OutputFile[];
  readonly partSheets: readonly OutputFile[];
  readonly plan: readonly OutputFile[];
  readonly exploded: readonly OutputFile[];
  readonly pictures: readonly OutputFile[];
  /** PNG of the closed kit, and of each step of the assembly; null where a step shows nothing. */
  readonly kitPicture: Uint8Array;
  readonly stepPictures: readonly (Uint8Array | null)[];
}

/** Each is made, or waited for, when it is first asked for. */
export type Drawn = { readonly [K in keyof Drawings]: () => Drawings[K] };

export interface OutputContext {
  readonly spec: Spec;
  /** What was defaulted and what was solved, in that order. */
  readonly solved: readonly Solved[];
  readonly kit: Kit;
  readonly light: LightBudget;
  /** Every finding, the file gate's included, those that were accepted marked so. */
  readonly findings: readonly Finding[];
  readonly shapes: readonly ShapeFile[];
  /** The mesh that a shape's file holds, read back from its bytes. @throws {Error} where there is no such file */
  readonly meshOf: (path: string) => Mesh;
  readonly drawn: Drawn;
  /** What is printed together. */
  readonly beds: Beds;
  /** The mount's leaf along its screw; undefined where it can't be bent that far. */
  readonly travel: Travel | undefined;
  /** Script of the report's 3D view; handed in, because reading files is the edge's. */
  readonly viewer: string;
  readonly kernel: MeasuringKernel;
  readonly compression: Compression;
  /** SHA-256 as lower-case hex; handed in, because hashing is the edge's. */
  readonly hash: (bytes: Uint8Array) => string;
}

/** One kind of output: the files that it adds to the kit. */
export type Output = (context: OutputContext) => readonly OutputFile[];

/** By name, in the order in which they are made. */
export type Outputs = Readonly<Record<string, Output>>;
