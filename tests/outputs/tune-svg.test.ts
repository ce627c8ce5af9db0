import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { escapeXml, niceStep, scale } from '../../src/outputs/svg-scale.js';
import { tuneSvg } from '../../src/outputs/tune-svg.js';
import { sampleSweep } from './tune-sample.js';

describe('ticks', () => {
  // Steps of 1, 2, 5 · 10ⁿ: common practice for axes; by hand.
  test.for([
    { span: 10, count: 5, want: 2 },
    { span: 7, count: 7, want: 1 },
    { span: 0.9, count: 4, want: 0.2 },
    { span: 130, count: 4, want: 50 },
    { span: 0.00042, count: 4, want: 0.0001 },
    { span: 95, count: 10, want: 10 },
  ])('$span in about $count: $want', ({ span, count, want }) => expect(niceStep(span, count)).toBeCloseTo(want, 12));

  test.for([
    // By hand: 3.4 / 4 is .85, nearer to 1 than to .5 by ratio.
    { values: [0, 3.4], ticks: ['0', '1', '2', '3', '4'], count: 4 },
    { values: [-8.2, 4.6], ticks: ['−10', '−5', '0', '5'], count: 4 },
    { values: [0.31, 0.74], ticks: ['0.3', '0.4', '0.5', '0.6', '0.7', '0.8'], count: 5 },
    { values: [29.2], ticks: ['26', '28', '30', '32', '34'], count: 4 },
  ])('$values → $ticks', ({ values, ticks, count }) => {
    const made = scale(values, { pixels: [0, 100], count });
    expect(made.ticks.map(made.label)).toEqual(ticks);
  });

  // 1e-9 is about eight of the last digits that double precision has at 1e6. As one value: ±10 %; 200 000 / 4 is 50 000.
  test('values that no axis can tell apart are drawn as one', () => {
    const { ticks } = scale([1e6, 1e6 + 1e-9], { pixels: [0, 100], count: 4 });
    expect(ticks).toEqual([900_000, 950_000, 1_000_000, 1_050_000, 1_100_000]);
  });

  test('whatever the values, they lie within the axis, ends are ticks, places follow the values', () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    // Far apart, or so close together that they are nearly one.
    const close = fc
      .tuple(
        value,
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 0, max: 16 }),
      )
      .map(([base, parts, power]) => [base, ...parts.map((part) => base * (1 + part / 10 ** power))]);
    fc.assert(
      fc.property(
        fc.oneof(fc.array(value, { minLength: 1, maxLength: 9 }), close),
        fc.integer({ min: 2, max: 9 }),
        (values, count) => {
          const { from, to, at, ticks } = scale(values, { pixels: [300, 20], count });
          const slack = 1e-6 * (to - from);
          for (const each of values) {
            expect(each).toBeGreaterThanOrEqual(from - slack);
            expect(each).toBeLessThanOrEqual(to + slack);
          }
          expect(ticks.length).toBeGreaterThanOrEqual(2);
          expect(ticks.length).toBeLessThanOrEqual(3 * count + 3);
          expect([at(from), at(to)]).toEqual([300, 20]);
        },
      ),
    );
  });
});

/** Every element closed in turn, attributes in quotes, no stray < or &: XML 1.0, section 2.1, as far as this figure uses it. */
function wellFormed(markup: string): void {
  const open: string[] = [];
  const rest = markup.replace(
    /<(\/?)([a-z]+)((?:\s[\w-]+="[^"<]*")*)(\/?)>/g,
    (_, close: string, name: string, attributes: string, alone: string) => {
      expect(attributes.replace(/&(amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
      if (close) expect(open.pop()).toBe(name);
      else if (!alone) open.push(name);
      return '';
    },
  );
  expect(open).toEqual([]);
  const style = rest.replace(/&(amp|lt|gt|quot|#39);/g, '');
  expect(style).not.toMatch(/[<&]/);
}

const drawn = (lines?: string, vary?: Parameters<typeof sampleSweep>[1]) =>
  new TextDecoder().decode(tuneSvg(sampleSweep(lines, vary)).bytes);

describe('tune.svg', () => {
  const markup = drawn();

  test('is well-formed, stands alone, and runs nothing', () => {
    wellFormed(markup);
    expect(markup).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    expect(markup.replace('http://www.w3.org/2000/svg', '')).not.toMatch(
      /https?:|<script|<image|<foreignObject|\son\w+=|NaN|undefined|Infinity/,
    );
  });

  test('no place lies outside the picture', () => {
    const [, width, height] = /viewBox="0 0 (\d+) (\d+)"/.exec(markup)!.map(Number);
    for (const [, name, value] of markup.matchAll(/\s(x|y|x1|x2|y1|y2|cx|cy)="(-?[\d.]+)"/g)) {
      expect(Number(value)).toBeGreaterThanOrEqual(0);
      expect(Number(value)).toBeLessThanOrEqual(name!.includes('x') ? width! : height!);
    }
    for (const [, points] of markup.matchAll(/points="([^"]+)"/g))
      for (const pair of points!.split(' ')) {
        const [x, y] = pair.split(',').map(Number);
        expect(x! >= 0 && x! <= width! && y! >= 0 && y! <= height!).toBe(true);
      }
  });

  test('has what it is for: both curves, the limit, the sweep, light and dark, and words for who can’t see it', () => {
    for (const words of [
      'Tilt of the beam [°]',
      'Force along the screw [N]',
      'Share of the limit [%]',
      'strain limit',
      'Turns of the screw',
      'Mount, front to rear [mm]',
    ])
      expect(markup).toContain(words);
    expect(markup.match(/<polyline class="line/g)!.length).toBeGreaterThanOrEqual(4);
    expect(markup).toContain('class="limit"');
    expect(markup).toContain('prefers-color-scheme: dark');
    expect(markup).toMatch(/<desc id="about">From the highest to the lowest beam the screw makes [\d.]+ turns/);
  });

  test('names the plastic of the design that it draws', () => {
    expect(drawn('material: petg\n', [{ path: 'material', text: 'asa' }])).toMatch(/Design 1 of 1: [^<]*, ASA</);
  });

  test('a title with markup in it is text', () => {
    const evil = drawn(`title: '</text><script>alert("1")</script> & <b'\n`);
    wellFormed(evil);
    expect(evil).not.toContain('<script');
    expect(evil).toContain('&lt;script&gt;');
  });

  test('a sweep of which nothing can be drawn still makes a picture', () => {
    const none = drawn('', [
      { path: 'leaf.legs', text: '3' },
      { path: 'leaf.thickness', text: '3' },
    ]);
    wellFormed(none);
    expect(none).toContain('None can be drawn');
  });

  test('one design alone, and one that fails', () => {
    for (const vary of [[{ path: 'leaf.length', text: '9' }], [{ path: 'leaf.legs', text: '1' }]])
      wellFormed(drawn('', vary));
  });
});

test('escapeXml leaves nothing that could end text or an attribute, whatever comes', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(escapeXml(text).replace(/&(amp|lt|gt|quot|#39);/g, '')).not.toMatch(/[<>&"']/);
    }),
  );
});
