/** Every question, in the order in which it is asked. */
import type { Finding } from '../findings.js';
import { aim } from './aim.js';
import { bay } from './bay.js';
import { bed } from './bed.js';
import { boards } from './boards.js';
import { clearance } from './clearance.js';
import { type Check, type CheckInputs, checkContext } from './context.js';
import { corridors } from './corridors.js';
import { declarations } from './declarations.js';
import { eyeSafety } from './eye-safety.js';
import { finger } from './finger.js';
import { fits } from './fits.js';
import { flexure } from './flexure.js';
import { freeAsPrinted } from './free-as-printed.js';
import { handling } from './handling.js';
import { insertion } from './insertion.js';
import { interference } from './interference.js';
import { labels } from './labels.js';
import { neighbours } from './neighbours.js';
import { pitch } from './pitch.js';
import { firstLayer } from './printability/first-layer.js';
import { orientation } from './printability/orientation.js';
import { overhang } from './printability/overhang.js';
import { walls } from './printability/walls.js';
import { printedThickness } from './printed-thickness.js';
import { scan } from './scan.js';
import { signal } from './signal.js';
import { stiffness } from './stiffness.js';
import { stray } from './stray.js';
import { supply } from './supply.js';
import { temperature } from './temperature.js';
import { threads } from './threads.js';
import { toolAccess } from './tool-access.js';

export const CHECKS: readonly Check[] = [
  declarations,
  eyeSafety,
  stray,
  aim,
  signal,
  neighbours,
  finger,
  flexure,
  printedThickness,
  temperature,
  stiffness,
  pitch,
  scan,
  supply,
  bay,
  boards,
  labels,
  bed,
  overhang,
  walls,
  firstLayer,
  orientation,
  freeAsPrinted,
  interference,
  clearance,
  fits,
  corridors,
  threads,
  toolAccess,
  handling,
  insertion,
];

/** Every code that a check may return, for `--accept`. */
export const CODES: readonly string[] = CHECKS.flatMap((check) => check.codes);

/**
 * Asks every question of the kit. A kit whose declarations don't hold together is refused: nothing else is asked then.
 *
 * @returns findings in the order of the checks, and within a check in the kit's order
 */
export function runChecks(inputs: CheckInputs): readonly Finding[] {
  const refused = declarations.run(inputs);
  if (refused.length > 0) return refused;
  return inputs.kernel.scope(() => {
    const context = checkContext(inputs);
    return { keep: [], value: CHECKS.flatMap((check) => (check.name === declarations.name ? [] : check.run(context))) };
  });
}
