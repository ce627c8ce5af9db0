/** `kit.json`: the contract with other programs. Every length mm, every angle degrees, matrices row major. */
import type { Finding } from '../findings.js';
import type { Kit, Part, Step } from '../kit/types.js';
import { wiresOf } from '../kit/wires.js';
import type { Matrix, Vec3 } from '../solid/mesh.js';
import { bayJson } from './bay-json.js';
import type { Bed } from './beds/lay-beds.js';
import { PLASTIC_ASSUMES } from './beds/plastic.js';
import { boardsJson } from './boards/boards-json.js';
import { CAUTIONS } from './cautions.js';
import { channelsJson } from './channels-csv.js';
import type { Output, OutputContext } from './context.js';
import { type Json, jsonText, tidy } from './json-text.js';
import { lightJson } from './light-json.js';
import { partFigures, quantities } from './part-figures.js';
import { shapePath } from './shapes.js';
import { specJson } from './spec-json.js';
import { wiresJson } from './wires-csv.js';

export const KIT_FORMAT = 'beamloom-kit/1';

/** The whole kit as data. Readers ignore keys that they don't know. */
export const kitJson: Output = (context) => [
  { path: 'kit.json', bytes: new TextEncoder().encode(jsonText(kitValue(context))) },
];

function kitValue(context: OutputContext): Json {
  const { spec, solved, kit, findings } = context;
  return {
    format: KIT_FORMAT,
    title: spec.title,
    preset: spec.name,
    spec: specJson(spec, solved),
    parts: partList(context),
    placements: kit.placements.map(({ name, part, matrix, touches }) => ({
      name,
      part,
      matrix: matrixJson(matrix),
      touches: [...touches],
    })),
    beams: kit.beams.map(({ name, line, index, from, to, diameter, corridor }) => ({
      name,
      line,
      index,
      from: point(from),
      to: point(to),
      diameter_mm: tidy(diameter),
      corridor_mm: tidy(corridor),
    })),
    ...bayJson(kit),
    ...boardsJson(kit),
    findings: findings.map(findingJson),
    assembly: assembly(kit),
    solved: solved.map(({ path, value, why }) => ({
      path,
      value: typeof value === 'number' ? tidy(value) : typeof value === 'string' ? value : value.map((v) => tidy(v)),
      why,
    })),
    ...channelsJson(spec, kit.boards),
    wires: wiresJson(wiresOf(context)),
    prints: printsJson(context),
    light: lightJson(context.light),
    cautions: [...CAUTIONS],
  };
}

/** @returns a finding as `kit.json` and `--json` show it; `accepted` only where it was */
export function findingJson({ remedies, accepted, measured, limit, ...rest }: Finding): {
  readonly [key: string]: Json;
} {
  return {
    code: rest.code,
    severity: rest.severity,
    subject: rest.subject,
    measured: measured === null ? null : tidy(measured),
    limit: limit === null ? null : tidy(limit),
    unit: rest.unit,
    message: rest.message,
    remedies: [...remedies],
    ...(accepted === true ? { accepted } : {}),
  };
}

/** Beds as they are printed; grams, metres and hours are rough, and `assumes` says on what they rest. */
function printsJson({ beds: { beds, atLeast, room } }: OutputContext): Json {
  const sum = (of: (bed: Bed) => number) => beds.reduce((total, bed) => total + of(bed), 0);
  return {
    assumes: PLASTIC_ASSUMES,
    usable_bed_mm: [tidy(room.width), tidy(room.depth)],
    spacing_mm: tidy(room.spacing),
    beds_at_least: atLeast,
    plastic_g: tidy(
      sum((bed) => bed.plasticG),
      1,
    ),
    filament_m: tidy(
      sum((bed) => bed.filamentM),
      2,
    ),
    hours: tidy(
      sum((bed) => bed.hours),
      1,
    ),
    beds: beds.map((bed) => ({
      file: bed.file,
      material: bed.material,
      fill: tidy(bed.fill, 3),
      plastic_g: tidy(bed.plasticG, 1),
      filament_m: tidy(bed.filamentM, 2),
      hours: tidy(bed.hours, 1),
      items: bed.items.map(({ part, spot }) => ({
        part: part.id,
        at: [tidy(spot.x, 3), tidy(spot.y, 3)],
        turn: spot.turned ? 90 : 0,
      })),
    })),
  };
}

function partList({ kit, shapes, kernel, hash }: OutputContext): Json {
  const count = quantities(kit);
  const bytes = new Map(shapes.map((shape) => [shape.path, shape.bytes]));
  return [...kit.parts.values()].map((part) => {
    const { volume, massG, size, triangles } = partFigures(part, kernel);
    const printed = part.kind === 'printed';
    const main = shapePath(printed ? 'stl' : 'bought', part);
    return {
      id: part.id,
      title: part.title,
      kind: part.kind,
      file: printed ? main : null,
      posed: printed && part.posed !== null ? shapePath('posed', part) : null,
      mesh: printed ? null : main,
      quantity: count.get(part.id) ?? 0,
      material: part.material,
      volume_mm3: tidy(volume),
      mass_g: tidy(massG),
      size_mm: point(size),
      triangles,
      sha256: hash(present(bytes.get(main), part, main)),
    };
  });
}

function present(bytes: Uint8Array | undefined, part: Part, path: string): Uint8Array {
  if (bytes === undefined) throw new Error(`kit.json: ${part.id} has no file ${path}`);
  return bytes;
}

function assembly(kit: Kit): Json {
  return kit.assembly.map(({ step, title, joins, hardware, moves }: Step) => ({
    step,
    title,
    joins: [...joins],
    hardware: [...hardware],
    moves: moves.map(({ placement, direction, travel, tool, inFrameOf }) => ({
      placement,
      direction: direction.map((v) => tidy(v, 9)),
      travel_mm: tidy(travel),
      tool,
      in_frame_of: inFrameOf,
    })),
  }));
}

const point = (v: Vec3): Json => v.map((value) => tidy(value));

/** Lengths to 1e-6 mm; turns to 1e-9, so that the matrix stays rigid: 1e-9 over a metre is a nanometre as well. */
const matrixJson = (m: Matrix): Json => m.map((value, i) => tidy(value, i % 4 === 3 && i < 12 ? 6 : 9));
