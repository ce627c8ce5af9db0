/**
 * How much plastic a part takes and how long it prints, roughly: solid walls around, sparse fill inside. What a printer's own
 * program says is nearer; this is to buy a spool and plan an evening.
 */
import type { Datum } from '../../data.js';
import type { Printer } from '../../printers/printer.js';

const PRACTICE = 'common practice, no source';
export const ASSUMED = {
  /** Lines of wall all round, floors and roofs as thick. */
  wallLines: { value: 3, source: PRACTICE },
  /** Share of the inside that is filled. */
  fill: { value: 0.2, source: PRACTICE },
  /** Filament [mm]. */
  filament: { value: 1.75, source: `${PRACTICE}: the size most printers of this kind take` },
  /** Along a line [mm/s]. */
  speed: { value: 60, source: PRACTICE },
  /** Share of the time in which plastic flows: the rest is travel, corners and short lines. */
  flowing: { value: 0.6, source: PRACTICE },
  /** Change of layer [s]. */
  perLayer: { value: 3, source: PRACTICE },
  /** Heating and cooling of a bed [min]. */
  perBedMin: { value: 10, source: PRACTICE },
} as const satisfies Record<string, Datum>;

/**
 * Volume of plastic in a part: its skin, 3 lines thick, and a fifth of what lies inside. Skin ≈ surface × thickness, at most all
 * of it: right for plates and blocks, somewhat much where inner corners share it.
 *
 * @param volume - of the solid [mm³] @param area - of its surface [mm²]
 * @returns [mm³]
 */
export function plasticVolume(
  { volume, area }: { readonly volume: number; readonly area: number },
  { lineWidth }: Pick<Printer, 'lineWidth'>,
): number {
  const skin = Math.min(volume, area * ASSUMED.wallLines.value * lineWidth.value);
  return skin + ASSUMED.fill.value * (volume - skin);
}

/** @returns length of filament that holds a volume [m] */
export const filamentM = (plastic: number): number => plastic / ((Math.PI / 4) * ASSUMED.filament.value ** 2) / 1000;

/**
 * Time of one bed: plastic at line width × layer × speed for the share of time that it flows, a pause at each layer, heating.
 *
 * @param plastic - on the bed [mm³] @param height - of its tallest part [mm]
 * @returns [h]
 */
export function printHours(
  { plastic, height }: { readonly plastic: number; readonly height: number },
  { lineWidth, layer }: Pick<Printer, 'lineWidth' | 'layer'>,
): number {
  const flow = lineWidth.value * layer.value * ASSUMED.speed.value * ASSUMED.flowing.value;
  const seconds = plastic / flow + (height / layer.value) * ASSUMED.perLayer.value;
  return seconds / 3600 + ASSUMED.perBedMin.value / 60;
}

/** One sentence with everything that grams, metres and hours rest on. */
export const PLASTIC_ASSUMES = `Rough: walls, floors and roofs of ${ASSUMED.wallLines.value} lines, ${100 * ASSUMED.fill.value} % fill, filament of ${ASSUMED.filament.value} mm, ${ASSUMED.speed.value} mm/s for ${100 * ASSUMED.flowing.value} % of the time, ${ASSUMED.perLayer.value} s a layer, ${ASSUMED.perBedMin.value} min to heat a bed (${PRACTICE}).`;
