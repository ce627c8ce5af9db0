/** Does anything print into the air: slopes too flat, ledges, bridges too long, pieces that begin with nothing under them? */
import type { Finding } from '../../findings.js';
import type { Part } from '../../kit/types.js';
import type { MeasuringKernel, Solid } from '../../solid/kernel.js';
import type { Mesh } from '../../solid/mesh.js';
import type { Check, ShapeContext } from '../context.js';
import { figure, say } from '../say.js';
import { type Hanging, hangings } from './layers.js';
import { type PrintLimits, printLimits } from './limits.js';
import { place, printed, printedMesh } from './printed.js';
import type { Unsupported } from './unsupported.js';

export const overhang: Check<ShapeContext> = {
  name: 'overhang',
  codes: ['print/overhang', 'print/ledge', 'print/bridge', 'print/island'],
  run(context) {
    const limits = printLimits(context.spec.printer.machine);
    return printed(context.kit).flatMap((part) =>
      told(faultsOf(context, part, limits)).map((fault) => tell(part.id, fault, limits)),
    );
  },
};

/** Of a part as it lies; the orientation's check asks again. */
const faultsOf = (context: ShapeContext, part: Part, limits: PrintLimits): readonly Fault[] =>
  context.scene.once(`overhang ${part.id}`, () =>
    faults(hangings(context.kernel, part.solid, { limits, mesh: printedMesh(context, part) }), limits),
  );

/** Area that would need support as a part lies [mm²]. */
export const partInTheAir = (context: ShapeContext, part: Part, limits: PrintLimits): number =>
  inTheAir(faultsOf(context, part, limits));

/** The same of any solid that stands on z = 0, with its mesh. */
export const solidInTheAir = (
  kernel: MeasuringKernel,
  solid: Solid,
  { limits, mesh }: { readonly limits: PrintLimits; readonly mesh: Mesh },
): number => inTheAir(faults(hangings(kernel, solid, { limits, mesh }), limits));

const inTheAir = (all: readonly Fault[]): number =>
  all.filter(({ long }) => !long).reduce((sum, { area }) => sum + area, 0);

/** Spans come out of facets in single precision [mm]. */
const ROUNDING = 0.005;

interface Fault {
  readonly kind: Unsupported['kind'];
  /** The piece that is worst; `size` as in it. */
  readonly worst: Unsupported;
  /** Layers on which it goes on. */
  readonly layers: number;
  readonly area: number;
  /** A bridge within the limit, told because it is more than half of it. */
  readonly long: boolean;
}

/** Of the bridges within the limit, the longest alone. */
function told(all: readonly Fault[]): readonly Fault[] {
  const longest = Math.max(...all.filter(({ long }) => long).map(({ worst }) => worst.size));
  const one = all.find(({ long, worst }) => long && worst.size === longest);
  return all.filter((fault) => !fault.long || fault === one);
}

/** Slopes are hanging pieces that lie on hanging pieces: by themselves small, together they sag. */
function faults(found: readonly Hanging[], limits: PrintLimits): readonly Fault[] {
  const single: Fault[] = [];
  const slopes: { last: number; boxes: Unsupported['box'][]; pieces: Unsupported[] }[] = [];
  for (const { layer, pieces } of found) {
    const begun = slopes.filter(({ last }) => last === layer - 1);
    const onThis = new Map<(typeof slopes)[number], Unsupported[]>();
    for (const piece of pieces) {
      if (piece.kind !== 'hang') {
        const long = piece.kind === 'bridge' && piece.size <= limits.bridge + ROUNDING;
        if (!long || piece.size > limits.bridge / 2)
          single.push({ kind: piece.kind, worst: piece, layers: 1, area: piece.area, long });
        continue;
      }
      const slope = begun.find(({ boxes }) => boxes.some((box) => near(box, piece.box, limits.line + piece.size)));
      if (slope) onThis.set(slope, [...(onThis.get(slope) ?? []), piece]);
      else slopes.push({ last: layer, boxes: [piece.box], pieces: [piece] });
    }
    for (const [slope, more] of onThis) {
      slope.last = layer;
      slope.boxes = more.map(({ box }) => box);
      slope.pieces.push(...more);
    }
  }
  const hanging = slopes.flatMap(({ pieces }): readonly Fault[] => {
    const heights = new Set(pieces.map(({ at }) => at[2]));
    const worst = pieces.reduce((most, one) => (one.size > most.size ? one : most));
    // What lies beyond the limit, in all: the largest of each layer.
    const sum = [...heights].reduce(
      (all, z) => all + Math.max(...pieces.filter(({ at }) => at[2] === z).map(({ size }) => size - limits.step)),
      0,
    );
    if (worst.size - limits.step <= limits.ledge && sum <= limits.line) return [];
    const area = pieces.reduce((all, one) => all + one.area, 0);
    return [{ kind: 'hang', worst, layers: heights.size, area, long: false }];
  });
  return [...single, ...hanging].sort((a, b) => a.worst.at[2] - b.worst.at[2]);
}

const near = (a: Unsupported['box'], b: Unsupported['box'], by: number): boolean =>
  [0, 1].every((k) => a.min[k]! - by <= b.max[k]! && b.min[k]! - by <= a.max[k]!);

function tell(id: string, { kind, worst, layers, long }: Fault, limits: PrintLimits): Finding {
  const where = place(worst.at);
  const { size } = worst;
  if (kind === 'island')
    return say({
      code: 'print/island',
      severity: 'error',
      subject: id,
      measured: size,
      limit: 0,
      unit: 'mm',
      message: `${id} begins in the air ${where}, ${figure(size)} mm wide with no layer beneath: let it grow out of a wall at no more than ${degrees(limits.overhang)}° from the vertical, or turn the part.`,
      remedies: [],
    });
  if (kind === 'bridge')
    return say({
      code: 'print/bridge',
      severity: long ? 'note' : 'error',
      subject: id,
      measured: size,
      limit: limits.bridge,
      unit: 'mm',
      message: long
        ? `${id} bridges ${figure(size)} mm ${where}, within this printer's ${figure(limits.bridge)} mm: print it with the fan on, and look whether it sags.`
        : `${id} bridges ${figure(size)} mm ${where}, more than this printer's ${figure(limits.bridge)} mm: shorten it, roof it at ${degrees(limits.overhang)}°, or turn the part.`,
      remedies: ['printer.bridge'],
    });
  if (layers === 1)
    return say({
      code: 'print/ledge',
      severity: 'error',
      subject: id,
      measured: size,
      limit: limits.step + limits.ledge,
      unit: 'mm',
      message: `${id} has a ledge ${where} that reaches ${figure(size)} mm out over nothing and is held on one side; ${figure(limits.step + limits.ledge)} mm still lie on the layer beneath: chamfer it at ${degrees(limits.overhang)}° from below, or turn the part.`,
      remedies: ['printer.layer'],
    });
  const angle = (Math.atan(size / limits.layer) * 180) / Math.PI;
  return say({
    code: 'print/overhang',
    severity: 'error',
    subject: id,
    measured: angle,
    limit: (limits.overhang * 180) / Math.PI,
    unit: '°',
    message: `${id} overhangs ${where} at ${figure(angle)}° from the vertical over ${layers} layers, more than this printer's ${degrees(limits.overhang)}°: make the underside steeper, or turn the part.`,
    remedies: ['printer.overhang_deg'],
  });
}

const degrees = (angle: number): string => figure((angle * 180) / Math.PI);
