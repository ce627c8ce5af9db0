/** Does a part stay on the bed while it prints: enough of it on the bed, not so tall that it is knocked over, not so long that it curls? */
import type { Finding } from '../../findings.js';
import type { Box } from '../../solid/mesh.js';
import type { Check, ShapeContext } from '../context.js';
import { figure, say } from '../say.js';
import { type Foot, footOf, leansOut } from './foot.js';
import { place, printed, printedMesh } from './printed.js';

/** Less on the bed comes off at the nozzle's first touch [mm²]. Planning value, no source: a square of about three millimetres. */
export const LEAST_AREA = 10;
/** Stands on an edge or a tip [mm²]. */
const NOTHING = 1;
/** Height over the foot's least width. Common practice, from memory: a brim from about 5, no good without a wider foot from 10. */
export const SLENDER = { brim: 5, most: 10 } as const;
/** Bow at which a long part's ends come off the bed [mm]. Common practice: public guides allow half a millimetre on whole dimensions. */
export const MOST_BOW = 0.5;

export const firstLayer: Check<ShapeContext> = {
  name: 'first layer',
  codes: ['print/first-layer', 'print/tipping', 'print/warp'],
  run(context) {
    const { kit, spec, kernel } = context;
    const feet = printed(kit).map((part) => ({
      id: part.id,
      foot: footOf(printedMesh(context, part)),
      box: kernel.box(part.solid),
    }));
    return [...feet.flatMap(stands), ...warps(feet, spec.printer.machine.warpPer100.value)];
  },
};

function stands({
  id,
  foot,
  box,
}: {
  readonly id: string;
  readonly foot: Foot;
  readonly box: Box;
}): readonly Finding[] {
  const findings: Finding[] = [];
  const nothing = foot.area < NOTHING;
  if (foot.area < LEAST_AREA)
    findings.push(
      say({
        code: 'print/first-layer',
        severity: nothing ? 'error' : 'warning',
        subject: id,
        measured: foot.area,
        limit: LEAST_AREA,
        unit: 'mm²',
        message: `${id} has ${figure(foot.area)} mm² on the bed, less than the ${LEAST_AREA} that hold by themselves: turn it, give it a flat foot, or print it with a brim.`,
        remedies: [],
      }),
    );
  if (nothing) return findings;
  const out = leansOut(foot, box);
  const slender = foot.height / foot.width;
  if (out > 0)
    findings.push(
      say({
        code: 'print/tipping',
        severity: 'error',
        subject: id,
        measured: out,
        limit: 0,
        unit: 'mm',
        message: `${id} has its centre of mass ${place(foot.centre())}, ${figure(out)} mm outside what it stands on: turn it, or give it a wider foot.`,
        remedies: [],
      }),
    );
  else if (slender > SLENDER.brim)
    findings.push(
      say({
        code: 'print/tipping',
        severity: slender > SLENDER.most ? 'error' : 'warning',
        subject: id,
        measured: slender,
        limit: slender > SLENDER.most ? SLENDER.most : SLENDER.brim,
        unit: '',
        message: `${id} is ${figure(foot.height)} mm high on a foot ${figure(foot.width)} mm wide, ${figure(slender)} times as high as wide; up to ${SLENDER.brim} stand by themselves, up to ${SLENDER.most} with a brim: turn it, or widen its foot.`,
        remedies: [],
      }),
    );
  return findings;
}

/** Bow grows with the square of the length. One finding for all: they have one remedy. */
function warps(feet: readonly { readonly id: string; readonly foot: Foot }[], per100: number): readonly Finding[] {
  const bowed = feet
    .map(({ id, foot }) => ({ id, length: foot.length, bow: per100 * (foot.length / 100) ** 2 }))
    .filter(({ bow }) => bow > MOST_BOW)
    .sort((a, b) => b.bow - a.bow);
  const [most, ...others] = bowed;
  if (!most) return [];
  return [
    say({
      code: 'print/warp',
      severity: 'warning',
      subject: most.id,
      measured: most.bow,
      limit: MOST_BOW,
      unit: 'mm',
      message: `${most.id}, ${figure(most.length)} mm long, may bow by ${figure(most.bow)} mm on this printer and lift its ends off the bed, more than ${MOST_BOW} mm: print it with a brim on a warm bed without draught${others.length > 0 ? `, and so ${others.map(({ id }) => id).join(', ')}` : ''}.`,
      remedies: ['printer.bed_x', 'printer.warp_per_100', 'material'],
    }),
  ];
}
