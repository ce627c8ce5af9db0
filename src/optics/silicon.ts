/** How well silicon sees a wavelength. */

/**
 * Relative response of a clear silicon phototransistor, 1 at its best. Source: common practice, read off the run of public
 * datasheets, from memory; single parts differ by a tenth and more.
 */
const RESPONSE: readonly (readonly [nm: number, share: number])[] = [
  [350, 0],
  [400, 0.1],
  [500, 0.3],
  [600, 0.5],
  [650, 0.6],
  [700, 0.7],
  [800, 0.9],
  [880, 1],
  [940, 0.95],
  [1000, 0.7],
  [1100, 0.1],
  [1150, 0],
];

/** @param nm - wavelength @returns relative response, 0 to 1, straight between the points; 0 outside them */
export function siliconResponse(nm: number): number {
  const i = RESPONSE.findIndex(([at]) => at >= nm);
  if (i <= 0) return 0;
  const [[a, low], [b, high]] = [RESPONSE[i - 1]!, RESPONSE[i]!];
  return low + ((high - low) * (nm - a)) / (b - a);
}

/** Sun, sky and lamps over the whole of silicon's range: a mean response. Source: common practice, no source. */
export const WHITE_RESPONSE = 0.5;

/** The same behind a filter that lets pass the infrared only: of daylight about half is left. Source: common practice, no source. */
export const FILTERED_WHITE_RESPONSE = 0.25;
