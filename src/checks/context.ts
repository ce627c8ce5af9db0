/** What every check is given. */
import type { Finding } from '../findings.js';
import type { Kit } from '../kit/types.js';
import type { LeafFigures } from '../layout/leaf-figures.js';
import type { LeafOff } from '../layout/leaf-off.js';
import type { LightBudget } from '../layout/light/budget.js';
import type { ThermalFigures } from '../layout/thermal.js';
import type { LeafDesign } from '../layout/types.js';
import type { MeasuringKernel } from '../solid/kernel.js';
import type { Spec } from '../spec/spec.js';
import type { FrameFigures } from './figures.js';
import { makeScene, type Scene } from './scene.js';

export interface CheckInputs {
  readonly kit: Kit;
  readonly spec: Spec;
  readonly kernel: MeasuringKernel;
  readonly leaf: LeafDesign;
  readonly leafFigures: LeafFigures;
  /** The leaf printed thinner and thicker than drawn. */
  readonly leafOff: readonly LeafOff[];
  readonly frameFigures: FrameFigures;
  readonly light: LightBudget;
  readonly thermal: ThermalFigures;
}

export interface CheckContext extends CheckInputs {
  readonly scene: Scene;
}

/** What the checks of shapes and places need: no figures of the leaf or the frame. */
export type ShapeContext = Pick<CheckContext, 'kit' | 'spec' | 'kernel' | 'scene'>;

/** One question. `codes` lists every code that `run` may return. */
export interface Check<Context = CheckContext> {
  readonly name: string;
  readonly codes: readonly string[];
  readonly run: (context: Context) => readonly Finding[];
}

/** @returns the context; its solids live as long as the kernel's scope in which it was made */
export const checkContext = (inputs: CheckInputs): CheckContext => ({
  ...inputs,
  scene: makeScene(inputs.kit, inputs.kernel),
});
