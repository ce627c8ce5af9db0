/**
 * The report in a real browser (Debian's chromium by playwright-core): offline, without errors, every control by keyboard, and an
 * accessibility run (axe-core) in both themes and at a phone's width. Left out where no chromium is installed.
 */
import { existsSync, mkdtempSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { decode } from 'fast-png';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { beamloom } from '../cli/built.js';

const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser'].find((path) => existsSync(path));
const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

describe.skipIf(CHROMIUM === undefined)('report.html in chromium', () => {
  let browser: Browser;
  let url: string;
  beforeAll(async () => {
    const folder = mkdtempSync(join(tmpdir(), 'beamloom-page-'));
    const preset = join(folder, 'try-page.yaml');
    writeFileSync(
      preset,
      'title: "Try <b> & \'page\'"\ngrid: { rows: 2, columns: 3, pitch: 24, labels: [[A, B, C], [D, E, F]] }\n',
    );
    const { code, stderr } = await beamloom(['kit', preset, '--out', folder], { cwd: folder });
    expect(code, stderr).toBe(0);
    url = pathToFileURL(join(folder, 'try-page', 'report.html')).href;
    browser = await chromium.launch({
      executablePath: CHROMIUM!,
      args: ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader'],
    });
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
  });

  const errors: string[] = [];
  async function open(options: Parameters<Browser['newContext']>[0] = {}): Promise<Page> {
    const context = await browser.newContext({ viewport: { width: 1200, height: 900 }, ...options });
    await context.setOffline(true);
    const page = await context.newPage();
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    page.on('pageerror', (error) => errors.push(String(error)));
    await page.goto(url);
    await page.waitForFunction(() => document.documentElement.dataset.view === 'ready', undefined, { timeout: 30_000 });
    return page;
  }
  /** How many different colours the view shows, and a fingerprint to tell two pictures apart. */
  async function seen(page: Page): Promise<{ readonly colours: number; readonly print: string }> {
    const { data, channels } = decode(await page.locator('#stage canvas').screenshot());
    const colours = new Set<number>();
    let sum = 0;
    for (let i = 0; i < data.length; i += channels) {
      const colour = (data[i]! << 16) | (data[i + 1]! << 8) | data[i + 2]!;
      colours.add(colour);
      sum = (Math.imul(sum, 31) + colour) | 0;
    }
    return { colours: colours.size, print: String(sum) };
  }

  test('loads offline without an error, shows a view that is not blank, and fits a phone without scrolling sideways', async () => {
    const page = await open({ viewport: { width: 390, height: 844 }, isMobile: true, hasTouch: true });
    expect((await seen(page)).colours).toBeGreaterThan(30);
    const { scroll, width } = await page.evaluate(() => ({
      scroll: document.documentElement.scrollWidth,
      width: document.documentElement.clientWidth,
    }));
    expect(scroll).toBeLessThanOrEqual(width);
    expect(errors).toEqual([]);
    await page.context().close();
  }, 60_000);

  test('every control works by keyboard: turn, zoom, take apart, covers, beams, views, part', async () => {
    const page = await open();
    let last = (await seen(page)).print;
    const changed = async (what: string) => {
      const { print } = await seen(page);
      expect(print, what).not.toBe(last);
      last = print;
    };
    const canvas = page.locator('#stage canvas');
    await canvas.focus();
    for (const key of ['ArrowLeft', 'ArrowUp', '+', '-', '-']) {
      await page.keyboard.press(key);
      await changed(key);
    }
    await page.locator('#apart').focus();
    await page.keyboard.press('End');
    await changed('taken apart');
    for (const box of ['#covers', '#beams']) {
      await page.locator(box).focus();
      await page.keyboard.press('Space');
      await changed(box);
    }
    for (const name of ['Above', 'Below', 'Back', 'Closer', 'Farther']) {
      await page.getByRole('button', { name, exact: true }).focus();
      await page.keyboard.press('Enter');
      await changed(name);
    }
    await page.locator('#pick').selectOption({ label: 'column-0-mount' });
    await changed('picked');
    expect(await page.locator('#picked').textContent()).toMatch(
      /^column-0-mount: tilt mount, printed, petg, .* g if solid, 5 in the kit, /,
    );
    await page.context().close();
  }, 60_000);

  test('a press on the view picks what is under it', async () => {
    const page = await open();
    const box = (await page.locator('#stage canvas').boundingBox())!;
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    expect(await page.locator('#picked').textContent()).toMatch(/: .*, (printed|bought), /);
    expect(await page.locator('#pick').inputValue()).not.toBe('');
    await page.context().close();
  }, 60_000);

  test.for([
    ['light', 1200],
    ['dark', 1200],
    ['light', 390],
    ['dark', 390],
  ] as const)('axe finds nothing, %s, %i wide', { timeout: 60_000 }, async ([colorScheme, width]) => {
    const page = await open({ colorScheme, viewport: { width, height: 900 }, bypassCSP: true });
    await page.addScriptTag({ path: AXE });
    const violations = await page.evaluate(async () => {
      const { axe } = window as unknown as {
        axe: { run: () => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      };
      return (await axe.run()).violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`);
    });
    expect(violations).toEqual([]);
    await page.context().close();
  });
});
