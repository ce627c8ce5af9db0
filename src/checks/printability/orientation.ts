/**
 * Does each part lie as it prints best? Of the six ways along its axes: first those in which a leaf's layers run in the plane in
 * which it bends, then the one with the least area in the air, then the lowest. Ways that don't stand or don't fit are left out.
 */
import type { Finding } from '../../findings.js';
import type { Part } from '../../kit/types.js';
import type { Printer } from '../../printers/printer.js';
import { usableBed } from '../../printers/usable-bed.js';
import type { MeasuringKernel, Solid } from '../../solid/kernel.js';
import { frame, translation } from '../../solid/matrix.js';
import type { Matrix, Mesh, Vec3 } from '../../solid/mesh.js';
import { meshBox, meshCentroid } from '../../solid/mesh-measures.js';
import type { Check, ShapeContext } from '../context.js';
import { figure, say } from '../say.js';
import { LEAST_AREA, SLENDER } from './first-layer.js';
import { footOf, leansOut } from './foot.js';
import { type PrintLimits, printLimits } from './limits.js';
import { partInTheAir, solidInTheAir } from './overhang.js';
import { printed, printedMesh } from './printed.js';

export const orientation: Check<ShapeContext> = {
  name: 'orientation',
  codes: ['print/orientation'],
  run(context) {
    const limits = printLimits(context.spec.printer.machine);
    return printed(context.kit).flatMap((part) => better(context, part, limits));
  },
};

/** Areas and heights closer than this are taken as equal [mm², mm]. */
const SAME = { area: 1, height: 0.1 } as const;
/** A centre of mass that moves less with the tilt stays where it is [mm]. */
const STAYS = 1e-3;

interface Way {
  /** The axis of the file that is upright, and which way. */
  readonly up: '+x' | '-x' | '+y' | '-y' | '+z' | '-z';
  readonly axis: 0 | 1 | 2;
  readonly turn: Matrix;
}

const way = (up: Way['up'], x: Vec3, y: Vec3, z: Vec3): Way => ({
  up,
  axis: 'xyz'.indexOf(up[1]!) as 0 | 1 | 2,
  turn: frame(x, y, z, [0, 0, 0]),
});
/** Columns: where the file's x, y and z go. */
const WAYS: readonly Way[] = [
  way('-z', [1, 0, 0], [0, -1, 0], [0, 0, -1]),
  way('+x', [0, 0, 1], [0, 1, 0], [-1, 0, 0]),
  way('-x', [0, 0, -1], [0, 1, 0], [1, 0, 0]),
  way('+y', [1, 0, 0], [0, 0, 1], [0, -1, 0]),
  way('-y', [1, 0, 0], [0, 0, -1], [0, 1, 0]),
];

function better(context: ShapeContext, part: Part, limits: PrintLimits): readonly Finding[] {
  const { kernel } = context;
  const { machine } = context.spec.printer;
  const bends = bendingAxis(kernel, part);
  if (bends !== null && bends !== 2) {
    const kept = 100 * context.spec.material.plastic.acrossLayers.value;
    return [
      say({
        code: 'print/orientation',
        severity: 'error',
        subject: part.id,
        measured: kept,
        limit: 100,
        unit: '%',
        message: `${part.id} lies so that its layers cut across the plane in which its leaf bends: print it with the file's ${'xyz'[bends]} axis upright. Across layers ${context.spec.material.plastic.title} holds about ${figure(kept)} % of what it holds along them, and a leaf splits there.`,
        remedies: [],
      }),
    ];
  }
  const { min, max } = kernel.box(part.solid);
  const size = [0, 1, 2].map((k) => max[k]! - min[k]!);
  const here = { area: partInTheAir(context, part, limits), height: size[2]! };
  let best: { readonly way: Way; readonly area: number; readonly height: number } | null = null;
  for (const one of WAYS) {
    const height = size[one.axis]!;
    const than = best ?? here;
    // Nothing in the air, and no higher: it can't be bettered.
    if (than.area <= SAME.area && height >= than.height - SAME.height) continue;
    if (bends !== null && one.axis !== bends) continue;
    const turned = turnedMesh(printedMesh(context, part), one.turn);
    if (!fits(size, one.axis, machine) || !stands(turned)) continue;
    const area = solidInTheAir(kernel, setDown(kernel, kernel.move(part.solid, one.turn)), { limits, mesh: turned });
    const less = area - than.area;
    if (less < -SAME.area || (less <= SAME.area && height < than.height - SAME.height))
      best = { way: one, area, height };
  }
  if (!best) return [];
  const airy = here.area - best.area > SAME.area;
  return [
    say({
      code: 'print/orientation',
      severity: 'warning',
      subject: part.id,
      measured: airy ? here.area : here.height,
      limit: airy ? best.area : best.height,
      unit: airy ? 'mm²' : 'mm',
      message: airy
        ? `${part.id} has ${figure(here.area)} mm² in the air as it lies; with the file's ${best.way.up} upright it would have ${figure(best.area)}.`
        : `${part.id} is ${figure(here.height)} mm high as it lies; with the file's ${best.way.up} upright it would be ${figure(best.height)} and have nothing more in the air.`,
      remedies: [],
    }),
  ];
}

/** The axis about which a part with a leaf bends: along it, its centre of mass stays; null for a part without one. */
function bendingAxis(kernel: MeasuringKernel, { posed, springCut }: Part): number | null {
  if (!posed || !springCut) return null;
  const centres = Object.values(posed).map((solid) => meshCentroid(kernel.mesh(solid)));
  const moves = [0, 1, 2].map((k) => Math.max(...centres.map((c) => c[k]!)) - Math.min(...centres.map((c) => c[k]!)));
  return moves.every((m) => m < STAYS) ? null : moves.indexOf(Math.min(...moves));
}

const setDown = (kernel: MeasuringKernel, solid: Solid): Solid =>
  kernel.move(solid, translation([0, 0, -kernel.box(solid).min[2]]));

/** Turned, and set down on z = 0. */
function turnedMesh({ positions, triangles }: Mesh, m: Matrix): Mesh {
  const turned = new Float32Array(positions.length);
  let low = Infinity;
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [positions[i]!, positions[i + 1]!, positions[i + 2]!];
    for (let r = 0; r < 3; r++) turned[i + r] = m[4 * r]! * x + m[4 * r + 1]! * y + m[4 * r + 2]! * z;
    if (turned[i + 2]! < low) low = turned[i + 2]!;
  }
  for (let i = 2; i < turned.length; i += 3) turned[i]! -= low;
  return { positions: turned, triangles };
}

function stands(mesh: Mesh): boolean {
  const foot = footOf(mesh);
  return foot.area >= LEAST_AREA && foot.height <= SLENDER.brim * foot.width && leansOut(foot, meshBox(mesh)) <= 0;
}

function fits(size: readonly number[], axis: number, machine: Printer): boolean {
  const sides = size.filter((_, k) => k !== axis).sort((a, b) => a - b);
  const room = [...usableBed(machine)].sort((a, b) => a - b);
  return size[axis]! <= machine.bedZ.value && sides.every((side, k) => side <= room[k]!);
}
