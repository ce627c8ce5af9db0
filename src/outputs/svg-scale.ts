/** Scales and ticks of a drawn figure, and text that is safe in markup. */

export interface Scale {
  readonly from: number;
  readonly to: number;
  /** Drawn place of a value [px]. */
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
  /** A tick as it is written: all of one axis with the same decimals. */
  readonly label: (tick: number) => string;
}

/** Values this close, as a share of their size, count as one: ticks apart by a tenth of that are still told apart in double precision. */
const ALIKE = 1e-7;

/** @returns a step of 1, 2 or 5 times a power of ten that cuts a span into about `count` parts */
export function niceStep(span: number, count: number): number {
  const raw = span / count;
  const power = 10 ** Math.floor(Math.log10(raw));
  const share = raw / power;
  return power * (share < Math.SQRT2 ? 1 : share < Math.sqrt(10) ? 2 : share < Math.sqrt(50) ? 5 : 10);
}

/**
 * A linear scale, opened to whole ticks at both ends.
 *
 * @param values - what must be seen; at least one, all finite
 * @param pixels - drawn place of the lower and the upper end
 */
export function scale(
  values: readonly number[],
  { pixels, count }: { readonly pixels: readonly [number, number]; readonly count: number },
): Scale {
  const [low, high] = values.reduce(
    ([least, most], value) => [Math.min(least, value), Math.max(most, value)],
    [Infinity, -Infinity],
  );
  // A single value gets room around it, and so do values that no axis could tell apart: ticks that close lose their last digits.
  const size = Math.max(Math.abs(low), Math.abs(high));
  const pad = high - low > Math.max(1e-12, ALIKE * size) ? 0 : Math.max(size * 0.1, 0.5);
  const step = niceStep(high - low + 2 * pad, count);
  const first = Math.floor((low - pad) / step + 1e-9);
  const last = Math.ceil((high + pad) / step - 1e-9);
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const ticks = Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
  const [from, to] = [first * step, last * step];
  const [start, end] = pixels;
  return {
    from,
    to,
    at: (value) => start + ((value - from) / (to - from)) * (end - start),
    ticks,
    label: (tick) =>
      (tick + 0)
        .toFixed(digits)
        .replace(/^-(0(\.0+)?)$/, '$1')
        .replace('-', '\u2212'),
  };
}

/** @returns a drawn place in tenths of a pixel: short, and the same on every machine */
export const px = (value: number): string => String(Math.round(value * 10) / 10 + 0);

/** @returns text as it may stand in markup, in an element or in an attribute; control characters become blanks */
export const escapeXml = (text: string): string =>
  text
    // biome-ignore lint/suspicious/noControlCharactersInRegex: XML doesn't allow them
    .replace(/[\u0000-\u001f\u007f\ufffe\uffff]|\p{Surrogate}/gu, ' ')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
