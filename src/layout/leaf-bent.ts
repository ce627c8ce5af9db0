/**
 * The leaf's figures by the nonlinear solver: the mount's own leaf, its screw in the arm bearing on the pin in the base, taken
 * from rest through the highest, level and lowest beam to where the stop touches at its latest.
 */
import type { Plastic } from '../materials/plastic.js';
import { pinContact } from '../mechanics/nonlinear/contact.js';
import { type LeafState, solveLeafPath } from '../mechanics/nonlinear/leaf-path.js';
import { NoEquilibrium } from '../mechanics/nonlinear/newton.js';
import type { Vec2 } from '../solid/mesh.js';
import type { Rad } from '../units.js';
import { correctionOf, figuresOf, type LeafFigures, peakFactorsOf } from './leaf-figures.js';
import { armMotion, leafPath } from './leaf-shape.js';
import type { MountLayout } from './mount.js';
import { moved } from './plane.js';
import type { LeafDemands } from './types.js';

/** A flex at which the initial stiffness is read [rad]. */
const SMALL = 1e-3 as Rad;

export interface BentOptions {
  readonly demands: LeafDemands;
  readonly plastic: Plastic;
  /** At the screw's tip; none for the nominal figures. */
  readonly friction?: number;
}

/**
 * @returns states in the order of `flexes`, each from rest
 * @throws {NoEquilibrium} where the leaf can't be brought there
 */
export function bendLeaf(
  mount: MountLayout,
  { plastic, friction = 0 }: BentOptions,
  flexes: readonly Rad[],
): readonly LeafState[] {
  const { leaf, origin, adjust, arm, pin } = mount;
  const fromOrigin = ([u, w]: Vec2): Vec2 => [u - origin[0], w - origin[1]];
  const toRest = armMotion(leaf, leaf.bias, 0 as Rad);
  return solveLeafPath({
    beam: {
      path: leafPath(leaf),
      thickness: leaf.layout === 'notch' ? notchThickness(leaf) : leaf.thickness,
      width: leaf.width,
      modulus: plastic.modulus.value,
      poisson: plastic.poisson.value,
      correction: correctionOf(leaf, plastic),
    },
    contact: pinContact({
      pin: fromOrigin(pin.at),
      radius: pin.radius,
      through: fromOrigin(moved(toRest, [adjust.at, arm.neckTop], origin)),
      axis: leaf.bias - Math.PI / 2,
    }),
    friction,
    peaks: peakFactorsOf(leaf, plastic),
    steps: flexes.map((flex) => ({ flex })),
  });
}

/** Every figure of `leafFigures`, from the nonlinear solver. */
export function bentFigures(mount: MountLayout, options: BentOptions): LeafFigures {
  const { leaf } = mount;
  const lowest = (leaf.preload + 2 * leaf.tilt) as Rad;
  const flexes = [SMALL, leaf.preload, leaf.bias, lowest, (lowest + leaf.stopLatest) as Rad];
  const states = bendLeaf(mount, options, flexes);
  const first = states[0]!;
  const [high, low] = [states[1]!, states[3]!];
  const stiffness = (first.force * leaf.lever) / SMALL;
  return figuresOf(
    {
      stiffness,
      screwStiffness: first.force / first.advance,
      turnPerAdvance: (low.flex - high.flex) / (low.advance - high.advance),
      corrected: correctionOf(leaf, options.plastic).valid,
      at: (flex) => {
        const { force, maxStrain, peakStress } = states[flexes.indexOf(flex)]!;
        return { force, strain: maxStrain, stress: peakStress };
      },
    },
    { design: leaf, demands: options.demands, plastic: options.plastic },
  );
}

/** As `bentFigures`, but undefined where no equilibrium is found, or only a pulling screw would hold the flex. */
export function bentFiguresOrNot(...args: Parameters<typeof bentFigures>): LeafFigures | undefined {
  try {
    return bentFigures(...args);
  } catch (error) {
    // A flex that only a pulling screw would hold is told as a RangeError.
    if (error instanceof NoEquilibrium || error instanceof RangeError) return undefined;
    throw error;
  }
}

/** Two half circles of radius R that leave t between them. */
const notchThickness =
  ({ length: radius, thickness }: MountLayout['leaf']) =>
  (s: number): number =>
    thickness + 2 * (radius - Math.sqrt(Math.max(0, radius ** 2 - (s - radius) ** 2)));
