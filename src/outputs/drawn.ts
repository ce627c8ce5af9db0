/** What is drawn of meshes alone, each kind once and when it is first asked for. */
import type { Drawings, Drawn, ShownContext } from './context.js';
import { exploded } from './drawings/exploded.js';
import { partSheets } from './drawings/part-sheet.js';
import { plan } from './drawings/plan.js';
import { kitPicture, pictures } from './pictures.js';
import { stepPictures } from './step-pictures.js';
import { kit3mf } from './three-mf/kit-3mf.js';

const DRAW: { readonly [K in keyof Drawings]: (context: ShownContext) => Drawings[K] } = {
  kit3mf,
  partSheets,
  plan,
  exploded,
  pictures,
  kitPicture,
  stepPictures,
};

export const KINDS = Object.keys(DRAW) as readonly (keyof Drawings)[];

/** @returns drawings of which each is made by `make` when it is first asked for */
export const drawn = (make: <K extends keyof Drawings>(kind: K) => Drawings[K]): Drawn =>
  Object.fromEntries(KINDS.map((kind) => [kind, once(() => make(kind))])) as unknown as Drawn;

/** @returns drawings that are made here, as they are asked for */
export const drawHere = (context: ShownContext): Drawn => drawn((kind) => DRAW[kind](context));

/** @returns all of them */
export const drawAll = (context: ShownContext): Drawings =>
  Object.fromEntries(KINDS.map((kind) => [kind, DRAW[kind](context)])) as unknown as Drawings;

/** @returns a function that computes when it is first called */
export function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
