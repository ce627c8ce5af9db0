/** The report's 3D view, as the build bundled it. */
import { readFileSync } from 'node:fs';

let script: string | undefined;

export function viewerScript(): string {
  script ??= readFileSync(new URL('../viewer/viewer.js', import.meta.url), 'utf8');
  return script;
}
