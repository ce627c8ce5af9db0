/** What a printer can and can't print, in the figures that these checks compare with. */
import { printedThickness } from '../../mechanics/printed-thickness.js';
import type { Printer } from '../../printers/printer.js';

export interface PrintLimits {
  readonly layer: number;
  readonly line: number;
  /** Largest angle of an underside from the vertical [rad]. */
  readonly overhang: number;
  /** How far a layer may reach beyond the one beneath, by that angle [mm]. */
  readonly step: number;
  /** What a single layer may reach beyond that: half of its outer line still lies on something [mm]. */
  readonly ledge: number;
  readonly bridge: number;
  /** Two lines side by side, in whole hundredths as parts are drawn [mm]. */
  readonly wall: number;
  /** A gap that may come out closed [mm]. */
  readonly gap: number;
  /** A standing hole that may come out closed: it prints small besides [mm]. */
  readonly hole: number;
}

/**
 * Letters, marks, grooves and small ribs: what is lower, shallower or shorter than this is relief. It may lose an edge, and
 * carries nothing [mm]. Common practice: letters are cut .4 to 1 deep.
 */
export const RELIEF = 1;
/** The lip of such a groove may hang out so far over its ground [mm]: it sags onto that at worst. */
export const RELIEF_REACH = 0.6;

export function printLimits(printer: Printer): PrintLimits {
  const [layer, line] = [printer.layer.value, printer.lineWidth.value];
  const overhang = (printer.overhangDeg.value * Math.PI) / 180;
  return {
    layer,
    line,
    overhang,
    step: layer * Math.tan(overhang),
    ledge: line / 2,
    bridge: printer.bridge.value,
    wall: Math.floor(100 * printedThickness(2, line, layer) + 1e-6) / 100,
    gap: printer.gapTolerance.value,
    hole: printer.gapTolerance.value + printer.holeGrowth.value,
  };
}
