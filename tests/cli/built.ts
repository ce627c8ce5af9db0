/** The built program and folders to try it in. `npm test` builds before it tests. */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative, resolve } from 'node:path';
import { onTestFinished } from 'vitest';

export const BUILT = resolve(import.meta.dirname, '../../.build');
export const PROGRAM = join(BUILT, 'cli/main.js');

if (!existsSync(PROGRAM)) throw new Error('these tests start the built program: run `npm run build` first');

/** A folder that is gone after the test. */
export function scratch(): string {
  const folder = mkdtempSync(join(tmpdir(), 'beamloom-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs node with these arguments. */
export function node(
  args: readonly string[],
  { cwd, env = {}, input }: { readonly cwd: string; readonly env?: NodeJS.ProcessEnv; readonly input?: string },
): Promise<Ended> {
  return new Promise((done, failed) => {
    const child = spawn(process.execPath, args, { cwd, env: { ...process.env, ...env } });
    let [stdout, stderr] = ['', ''];
    child.stdout.on('data', (data) => {
      stdout += data;
    });
    child.stderr.on('data', (data) => {
      stderr += data;
    });
    child.on('error', failed);
    child.on('close', (code, signal) => done({ code, signal, stdout, stderr }));
    child.stdin.on('error', () => {});
    child.stdin.end(input ?? '');
  });
}

/** Runs the built program as a user would. */
export const beamloom = (
  args: readonly string[],
  options: { readonly cwd: string; readonly env?: NodeJS.ProcessEnv; readonly input?: string },
) => node([PROGRAM, ...args], options);

/** Every file below a folder with its text, by relative path. */
export function tree(folder: string): Readonly<Record<string, string>> {
  if (!existsSync(folder)) return {};
  const paths = readdirSync(folder, { recursive: true }).map((name) => join(folder, String(name)));
  const files = paths.filter((path) => statSync(path).isFile()).sort();
  return Object.fromEntries(files.map((path) => [relative(folder, path), readFileSync(path, 'utf8')]));
}
