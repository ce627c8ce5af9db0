/** What people and other programs are told of barrels that lean on purpose. */
import { beforeAll, expect, test } from 'vitest';
import { aimText } from '../../src/outputs/aim-text.js';
import type { OutputContext } from '../../src/outputs/context.js';
import { lightJson } from '../../src/outputs/light-json.js';
import { alignHtml } from '../../src/outputs/report/align.js';
import { specJson } from '../../src/outputs/spec-json.js';
import { made, openWorkshop } from '../kit/make.js';

let leaned: OutputContext;
let plain: OutputContext;
beforeAll(async () => {
  const shop = await openWorkshop();
  const context = (aim: string) =>
    shop.kernel.scope(() => {
      const preset = `grid: { rows: 1, columns: 2, pitch: 30 }\nemitters: { part: { base: barrel-6x12, boresight_sigma_deg: 0.2 } }\naim: { mount_error: 0.8${aim} }\n`;
      return { keep: [], value: made(shop, preset) };
    });
  leaned = context('');
  plain = context(', wedge: 0');
}, 120_000);

const aimOf = ({ spec, solved }: OutputContext) => (specJson(spec, solved) as { aim: { wedge: number } }).aim;

test('the spec holds the lean that was solved, in degrees, and the light’s budget counts it', () => {
  const { wedge } = aimOf(leaned);
  expect(wedge).toBe(leaned.solved.find(({ path }) => path === 'aim.wedge')!.value);
  expect(wedge).toBeGreaterThanOrEqual(1);
  expect(lightJson(leaned.light)).toMatchObject({ lean_deg: wedge });
  expect(aimOf(plain).wedge).toBe(0);
  expect(lightJson(plain.light)).toMatchObject({ lean_deg: 0 });
});

test('the budget has a row for it: what it comes to at the receiver, by hand', () => {
  const { wedge } = aimOf(leaned);
  const { distance } = leaned.light.aim.lines.toSorted((a, b) => b.lever - a.lever)[0]!;
  const mm = distance * Math.tan((wedge * Math.PI) / 180);
  const [row] = aimText(leaned.light, { width: 100 })
    .split('\n')
    .filter((line) => line.includes('lean, on purpose'));
  expect(row!.replaceAll(/ +/g, ' ')).toContain(`${wedge.toFixed(2)}° ${mm.toFixed(1)} mm`);
  expect(aimText(plain.light, { width: 100 })).not.toContain('on purpose');
});

test('alignment tells what the mark on the collar is', () => {
  expect(alignHtml(leaned)).toMatch(
    /leans by 1\.5° on purpose.*the mark on the collar, the flat between two of its notches/,
  );
  expect(alignHtml(plain)).not.toContain('on purpose');
});
