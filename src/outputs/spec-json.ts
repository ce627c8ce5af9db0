/** The spec as `kit.json` shows it: the preset's own keys, every default and solved value filled in. */
import type { Datum } from '../data.js';
import { presetKey } from '../spec/figures.js';
import { scanKeys } from '../spec/scan.js';
import type { Solved, Spec } from '../spec/spec.js';
import { baySpecJson } from './bay-json.js';
import { type Json, tidy } from './json-text.js';

type Tree = { [key: string]: Json | Tree };

/**
 * @param spec - validated preset
 * @param solved - what was chosen for it; a value goes where its path says
 * @returns plain values in mm, degrees and the unit in each figure's name, with the catalogues' sources beside them
 */
export function specJson(spec: Spec, solved: readonly Solved[]): Json {
  const { grid, emitters, receivers, material, printer } = spec;
  const tree: Tree = {
    title: spec.title,
    grid: {
      rows: grid.rows.map((v) => tidy(v)),
      columns: grid.columns.map((v) => tidy(v)),
      labels: grid.labels === null ? null : fromFar(grid.labels),
      ...(grid.labelSets !== undefined && {
        label_sets: Object.fromEntries(grid.labelSets.map(({ name, labels }) => [name, fromFar(labels)])),
      }),
    },
    beam: { height: tidy(spec.beam.height) },
    emitters: {
      part: emitters.name,
      columns_from: emitters.columnsFrom,
      rows_from: emitters.rowsFrom,
      ...figures(emitters.part),
    },
    receivers: { part: receivers.name, ...figures(receivers.part) },
    aim: given({
      tilt: spec.aim.tiltDeg,
      wedge: spec.aim.wedgeDeg,
      mount_error: spec.aim.mountErrorDeg,
      confidence: spec.aim.confidence,
    }),
    finger: { ...spec.finger },
    surroundings: { ...spec.surroundings },
    light: { ambient: spec.light.name, ...figures(spec.light.ambient) },
    leaf: given(spec.leaf),
    material: { name: material.name, ...figures(material.plastic) },
    printer: { name: printer.name, ...figures(printer.machine) },
    screws: { ...spec.screws },
    frame: given(spec.frame),
    scan: { ...scanKeys(spec.scan) },
    supply: given({
      gauge: spec.supply.gauge,
      logic_ma: spec.supply.logicMa,
      battery_mah: spec.supply.batteryMah,
      battery_v: spec.supply.batteryV,
    }),
    ...(spec.bay && { bay: baySpecJson(spec.bay) as Tree }),
    ...(spec.boards && { boards: { ...spec.boards, panel: { ...spec.boards.panel } } }),
  };
  // Only what the spec leaves out: a default that is already a list of cells is not put back as a count.
  for (const { path, value } of solved) put(tree, path.split('.'), plain(value));
  return tree;
}

/** Labels from the far row down, as a preset writes them. */
const fromFar = (labels: readonly (readonly string[])[]): Json => labels.toReversed().map((row) => [...row]);

const plain = (value: Solved['value']): Json =>
  typeof value === 'number' ? tidy(value) : typeof value === 'string' ? value : value.map((v) => tidy(v));

/** Drops what is still open. */
function given(values: Readonly<Record<string, number | string | undefined>>): Tree {
  const entries = Object.entries(values).filter(([, value]) => value !== undefined) as [string, number | string][];
  return Object.fromEntries(entries.map(([key, value]) => [key, plain(value)]));
}

/** A catalogue entry split into its figures and where each comes from. */
function figures(entry: object): Tree {
  const values: Tree = {};
  const sources: Tree = {};
  for (const [key, datum] of Object.entries(entry) as [string, string | Datum<number | readonly number[]>][]) {
    if (typeof datum === 'string') values[presetKey(key)] = datum;
    else {
      // As the catalogue or the preset spells it: an expansion of 6.15e-5 must not be rounded like a length.
      values[presetKey(key)] = datum.value;
      sources[presetKey(key)] = datum.source;
    }
  }
  return { figures: values, sources };
}

function put(tree: Tree, [key, ...rest]: readonly string[], value: Json): void {
  if (key === undefined) return;
  if (rest.length === 0) {
    if (!(key in tree)) tree[key] = value;
    return;
  }
  const below = tree[key];
  if (below === undefined) tree[key] = {};
  else if (below === null || typeof below !== 'object' || Array.isArray(below)) return;
  put(tree[key] as Tree, rest, value);
}
