/** `kit PRESET --watch`: the loop from save to page, and who may not read it. */
import { spawn } from 'node:child_process';
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { beamloom, PROGRAM, scratch } from './built.js';

const preset = (title: string) => `title: ${title}\ngrid: { rows: 1, columns: 2, pitch: 24 }\n`;

interface Answer {
  readonly status: number;
  readonly body: string;
  readonly headers: Readonly<Record<string, unknown>>;
}

function get(
  url: string,
  { headers = {}, method = 'GET' }: { headers?: Record<string, string>; method?: string } = {},
): Promise<Answer> {
  return new Promise((done, failed) => {
    const asked = request(url, { headers, method }, (response) => {
      let body = '';
      response.on('data', (chunk) => {
        body += chunk;
      });
      response.on('end', () => done({ status: response.statusCode!, body, headers: response.headers }));
    });
    asked.on('error', failed);
    asked.end();
  });
}

/** Resolves as soon as `is` says yes of everything read so far. */
function until(read: () => string, is: (text: string) => boolean): Promise<string> {
  return new Promise((done, failed) => {
    const started = Date.now();
    const look = () => {
      if (is(read())) done(read());
      else if (Date.now() - started > 60_000) failed(new Error(`waited in vain:\n${read()}`));
      else setTimeout(look, 50);
    };
    look();
  });
}

test('a saved preset is made again and the page told; a broken one leaves the last good kit; others may not look', async () => {
  const folder = scratch();
  const path = join(folder, 'bench-lamp.yaml');
  writeFileSync(path, preset('First lamp'));
  const child = spawn(process.execPath, [PROGRAM, 'kit', path, '--watch', '--out', join(folder, 'out')], {
    cwd: folder,
  });
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk) => {
      said += chunk;
    });
  const url = /http:\/\/\S+/.exec(
    await until(
      () => said,
      (text) => text.includes('Interrupt'),
    ),
  )![0];

  const page = await get(url);
  expect(page.status).toBe(200);
  expect(page.body).toContain('<h1>First lamp</h1>');
  expect(page.headers).not.toHaveProperty('access-control-allow-origin');
  expect(new URL(url).hostname).toBe('127.0.0.1');
  expect(new URL(url).pathname).toMatch(/^\/[0-9a-f]{32}\/report\.html$/);
  const token = url.split('/')[3]!;
  for (const [what, refused, status] of [
    ['another token', get(url.replace(token, '0'.repeat(32))), 404],
    ['a file beside it', get(url.replace('report.html', '../../kit.json')), 404],
    ['another host name', get(url, { headers: { host: 'rebound.example' } }), 403],
    ['another origin', get(url, { headers: { origin: 'http://elsewhere.example' } }), 403],
    ['a write', get(url, { method: 'POST' }), 405],
  ] as const)
    expect((await refused).status, what).toBe(status);

  let events = '';
  const listening = request(url.replace('report.html', 'events'), (response) => {
    response.on('data', (chunk) => {
      events += chunk;
    });
  });
  listening.on('error', () => {});
  listening.end();
  await until(
    () => events,
    (text) => text.includes('open'),
  );

  // As editors do: a new file beside it, renamed over the old one.
  writeFileSync(`${path}~`, preset('Second lamp'));
  renameSync(`${path}~`, path);
  await until(
    () => events,
    (text) => text.includes('data: made'),
  );
  expect((await get(url)).body).toContain('<h1>Second lamp</h1>');

  said = '';
  writeFileSync(path, preset('Third lamp').replace('pitch: 24', 'pitch: 3'));
  await until(
    () => said,
    (text) => text.includes('mistake'),
  );
  expect((await get(url)).body).toContain('<h1>Second lamp</h1>');
  expect(readFileSync(join(folder, 'out/bench-lamp/kit.json'), 'utf8')).toContain('Second lamp');

  const ended = new Promise<number | null>((done) => {
    child.on('close', (code) => done(code));
  });
  child.kill('SIGINT');
  expect(await ended).toBe(0);
}, 120_000);

test.for([
  { what: 'two presets', args: ['a.yaml', 'b.yaml'], says: /--watch takes one preset; here are 2: a, b/ },
  { what: 'JSON', args: ['a.yaml', '--json'], says: /leave out --json/ },
])('$what: refused, exit 2', async ({ args, says }) => {
  const folder = scratch();
  for (const name of ['a', 'b']) writeFileSync(join(folder, `${name}.yaml`), preset(name));
  const { code, stdout, stderr } = await beamloom(['kit', ...args, '--watch'], { cwd: folder });
  expect(code).toBe(2);
  expect(stdout + stderr).toMatch(says);
});
