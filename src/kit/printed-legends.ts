/** Labels printed on paper: how high their letters may stand in a key's cell. mm. */

/** A letter is at most about so broad, as a share of its height, in the faces that browsers take. */
export const BREADTH = 0.95;
/** Of what is written broad in its own script, and of pictographs, as multiples of that. Source: a full em is 1.39 capitals high; common practice. */
const WIDE = 1.5;
const PICTOGRAPH = 2;
const USUAL = 4.5;
/** Least height that is read at arm's length; what is longer runs out of its cell. Source: common practice. */
export const LEAST_LETTER = 1.2;

/** What the faces built into every PDF reader lack: all beyond Latin-1. */
export const BEYOND_PDF = /[^\x20-\x7e\xa0-\xff]/g;

/** @returns letters as the breadth of a usual one counts them */
const letters = (text: string): number =>
  [...text].reduce(
    (sum, letter) =>
      sum +
      (/\p{M}/u.test(letter)
        ? 0
        : /[\u{1f000}-\u{1faff}]/u.test(letter)
          ? PICTOGRAPH
          : /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]/u.test(
                letter,
              )
            ? WIDE
            : 1),
    0,
  );

/** @returns height at which the text fits its cell, at most the usual one; may be too low to read */
export const fittingHeight = (text: string, [width, depth]: readonly [number, number]): number =>
  Math.min(USUAL, (width - 3) / (BREADTH * letters(text)), depth - 4);
