/** The emitters' windows in the field wall: as large as a beam still to be aligned needs, no larger, so that little light gets in. */
import type { Solved, Spec } from '../spec/spec.js';
import { rad } from '../units.js';
import { downTenth, upTenth } from './fits.js';
import { type MountLayout, poseMotion } from './mount.js';
import { moved } from './plane.js';

/** Largest boresight error to plan for, in its Rayleigh parameters: 99 barrels in 100 stay below 3.03. */
export const WORST_BORESIGHT = 3;
/** Around the beam [mm]. */
const PLAY = 0.3;
/** Wall left above the deck's top below a window [mm]. */
export const ABOVE_DECK = 0.3;

export interface WindowOptions {
  readonly mount: MountLayout;
  /** y of a mount's front. */
  readonly section: { readonly mountFront: number };
  /** Free diameter of the aligned beam [mm]. */
  readonly corridor: number;
  /** Between neighbouring beams [mm]; left out: no window stands in another's way. */
  readonly leastPitch?: number;
}

/** @returns the least plastic between two windows [mm] */
export const windowWeb = ({ printer }: Pick<Spec, 'printer'>): number => 2.1 * printer.machine.lineWidth.value;

/** @returns radius of every emitter's window [mm], with the reason */
export function emitterWindow(
  spec: Spec,
  { mount, section, corridor, leastPitch = Infinity }: WindowOptions,
): { readonly radius: number; readonly solved: Solved } {
  const { beamDiameter, divergenceMrad, boresightSigmaDeg } = spec.emitters.part;
  const lean = mount.sleeve?.lean ?? 0;
  const error = rad(WORST_BORESIGHT * boresightSigmaDeg.value) + lean;
  const face = section.mountFront;
  // Where the middle of a crooked barrel's beam leaves the wall, at either end of the tilt: above or below the straight one.
  const strays = (['lowest', 'highest'] as const).map((pose) => {
    const motion = poseMotion(mount.leaf, pose);
    const [u, w] = moved(motion, [mount.barrel.exit, mount.axis], mount.origin);
    const angle = motion.angle + Math.sign(motion.angle) * error;
    return { off: Math.abs(w + (face - u) * Math.tan(angle) - mount.axis), way: face - u };
  });
  const off = Math.max(...strays.map((stray) => stray.off));
  const way = Math.max(...strays.map((stray) => stray.way));
  const beam = beamDiameter.value + (divergenceMrad.value / 1000) * way;
  const wanted = upTenth(Math.max(corridor / 2, beam / 2 + off) + PLAY);
  const high = spec.beam.height - ABOVE_DECK;
  const apart = downTenth((leastPitch - windowWeb(spec)) / 2);
  const most = Math.min(high, apart);
  const radius = Math.min(wanted, most);
  return {
    radius,
    solved: {
      path: 'frame.window',
      value: radius,
      why:
        wanted <= most
          ? `radius: lets a beam out that leaves by the tilt's end${lean > 0 ? ', the barrel’s lean' : ''} and ${WORST_BORESIGHT} σ of boresight error together, ${upTenth(off)} mm off at the wall, and stays dark otherwise`
          : `radius: as large as ${apart < high ? 'its neighbours allow beside it' : 'the deck allows below it'}; ${wanted} would let the most crooked beam out at both ends of its tilt`,
    },
  };
}
