/** The wiring diagram, as an XML parser reads it. */
import { DOMParser } from 'linkedom';
import { expect, test } from 'vitest';
import { netsOf } from '../../src/kit/wires.js';
import { wiringDiagram } from '../../src/outputs/wiring-diagram/diagram.js';
import { readPreset } from '../../src/spec/read-preset.js';

const PRESETS = {
  '4 × 6': 'grid: { rows: 4, columns: 6, pitch: 22 }\n',
  '1 × 7': 'grid: { rows: 1, columns: 7, pitch: 22 }\n',
  '1 × 1': 'grid: { rows: 1, columns: 1, pitch: 22 }\nscan: { spare_pins: 2 }\n',
  '12 × 24': 'grid: { rows: 12, columns: 24, pitch: 22 }\n',
  '4 × 20, one at a time, battery, LEDs, two legs, pins to spare':
    'grid: { rows: 4, columns: 20, pitch: 22 }\nscan: { address: single, light_us: 150, spare_pins: 4, pull_up_ohm: 4700 }\nsupply: { battery_mah: 100000, battery_v: 3.75 }\nemitters: { part: led-5-red }\nreceivers: { part: side-looker }\n',
  '64 × 64': 'grid: { rows: 64, columns: 64, pitch: 22 }\nscan: { light_us: 150 }\n',
} as const;
const every = Object.entries(PRESETS).map(([grid, text]) => ({ grid, text }));

const specOf = (text: string) => readPreset(text, 'panel.yaml');
function drawn(text: string) {
  const svg = wiringDiagram(specOf(text), { alone: true });
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').querySelector('svg')!;
  const texts = [...root.querySelectorAll('text')].map((node) => ({
    text: node.textContent!,
    x: Number(node.getAttribute('x')),
    y: Number(node.getAttribute('y')),
    anchor: node.getAttribute('text-anchor') ?? 'start',
  }));
  return { svg, root, texts };
}

/** A text's box by its length: letters .6 of their size broad on average, .75 above the line they stand on, .2 below. */
function boxOf({ text, x, y, anchor }: ReturnType<typeof drawn>['texts'][number]) {
  const [size, wide] = [13, 13 * 0.6 * text.length];
  const left = x - { start: 0, middle: 0.5, end: 1 }[anchor as 'start' | 'middle' | 'end'] * wide;
  return { text, left, right: left + wide, top: y - 0.75 * size, bottom: y + 0.2 * size };
}
type Box = ReturnType<typeof boxOf>;
const overlaps = (a: Box, b: Box) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
const overlapping = (boxes: readonly Box[]) =>
  boxes.flatMap((a, i) => boxes.slice(i + 1).flatMap((b) => (overlaps(a, b) ? [`${a.text} / ${b.text}`] : [])));

test('the test’s own ruler: texts on one line that touch are found, one under the other at 13 are not', () => {
  const at = (text: string, x: number, y: number) => boxOf({ text, x, y, anchor: 'start' });
  expect(overlapping([at('W100', 0, 20), at('W101', 30, 20)])).toEqual(['W100 / W101']);
  expect(overlapping([at('W100', 0, 20), at('W101', 0, 33)])).toEqual([]);
});

test.for(every)('$grid: every line once, no two texts on each other, all within the sheet', ({ text }) => {
  const { root, texts } = drawn(text);
  const { rows, columns } = specOf(text).grid;
  const names = [...columns.map((_, i) => `column-${i}`), ...rows.map((_, i) => `row-${i}`)];
  expect([...root.querySelectorAll('[data-line]')].map((node) => node.getAttribute('data-line')).sort()).toEqual(
    [...names].sort(),
  );
  expect(
    texts
      .map((one) => one.text)
      .filter((one) => names.includes(one))
      .sort(),
  ).toEqual([...names].sort());
  const boxes = texts.map(boxOf);
  expect(overlapping(boxes)).toEqual([]);
  const [width, height] = ['width', 'height'].map((key) => Number(root.getAttribute(key)));
  expect(width).toBeLessThanOrEqual(1056);
  for (const { left, right, top, bottom } of boxes)
    expect(left >= 0 && top >= 0 && right <= width! && bottom <= height!).toBe(true);
});

test.for(every)(
  '$grid: the numbers of its wires are those of the list; both ends of a wire led by a flag carry it',
  ({ text }) => {
    const { texts } = drawn(text);
    const nets = netsOf(specOf(text));
    const numbers = texts.map((one) => one.text).filter((one) => /^W\d+$/.test(one));
    expect([...new Set(numbers)].sort()).toEqual(nets.map(({ id }) => id).sort());
    const common = /address: single/.test(text);
    const flagged = (name: string) =>
      / EN$/.test(name) || (/ Z$/.test(name) && !common) || (/emitter minus$/.test(name) && /light_us/.test(text));
    for (const { id, name } of nets) expect(numbers.filter((one) => one === id)).toHaveLength(flagged(name) ? 2 : 1);
  },
);

test.for(every)('$grid: a line’s part carries that line’s wires, its channel and its pull-up', ({ text }) => {
  const { root } = drawn(text);
  const spec = specOf(text);
  const nets = netsOf(spec);
  for (const part of root.querySelectorAll('[data-line]')) {
    const beam = part.getAttribute('data-line')!;
    const said = [...part.querySelectorAll('text')].map((node) => node.textContent!);
    const own = nets.filter(({ name }) => name.startsWith(`${beam} `));
    expect(said.filter((one) => /^W\d+$/.test(one)).sort()).toEqual(own.map(({ id }) => id).sort());
    const channel = own
      .find(({ name }) => name.endsWith('signal'))!
      .to.split(' ')
      .at(-1);
    expect(said).toContain(channel);
    expect(said).toContain(spec.scan.pullUpOhm === 4700 ? '4.7 kΩ' : '10 kΩ');
  }
});

test('4 × 6 by hand: wires that run past are joined once at the first multiplexer, a dot for each pull-up and two at the capacitor', () => {
  const { root } = drawn(PRESETS['4 × 6']);
  expect(root.querySelectorAll('circle')).toHaveLength(3 + 10 + 2);
  const titles = [...root.querySelectorAll('[data-part]')].map((node) => node.getAttribute('data-part'));
  expect(titles).toEqual([
    'Supply',
    'Controller',
    'Multiplexer 0: 6 of 8 channels, receivers on the near side',
    'Multiplexer 1: 4 of 8 channels, receivers on the right side',
  ]);
});

test('battery, fuse, converter, resistors and switches stand there only where there are some', () => {
  const words = (text: string) => drawn(text).texts.map((one) => one.text);
  const plain = words(PRESETS['4 × 6']);
  const rich = words(PRESETS['4 × 20, one at a time, battery, LEDs, two legs, pins to spare']);
  for (const word of ['fuse', 'converter', 'battery 3.75 V, 100000 mAh', '150 Ω', 'switch 0 Q0', 'data on', 'P3']) {
    expect(rich).toContain(word);
    expect(plain).not.toContain(word);
  }
  expect(rich.filter((word) => word === '150 Ω')).toHaveLength(24);
});

test('for screen readers a title and what it shows; in either theme the colour of the text around it', () => {
  const svg = wiringDiagram(readPreset('title: "<b> & co"\ngrid: { rows: 1, columns: 2, pitch: 22 }\n', 'a.yaml'), {
    alone: false,
  });
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').querySelector('svg')!;
  for (const key of ['aria-labelledby', 'aria-describedby'])
    expect(root.querySelector(`#${root.getAttribute(key)}`)!.textContent!.length).toBeGreaterThan(10);
  expect(root.querySelector('title')!.textContent).toBe('<b> & co: wiring diagram');
  const colours = [...root.querySelectorAll('*'), root].flatMap((node) =>
    ['fill', 'stroke'].flatMap((key) => node.getAttribute(key) ?? []),
  );
  expect([...new Set(colours)].sort()).toEqual(['currentColor', 'none']);
  expect(root.querySelector('style')).toBeNull();
});
