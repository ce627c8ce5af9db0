#!/usr/bin/env node
/** Draws the README's pictures anew from made kits: node tests/tools/readme-pictures.mjs out */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const out = process.argv[2] ?? 'out';
const above = ['--view=-0.45,-1,1.25', '--size', '1000x720', '--zoom', '1.04'];
const PICTURES = {
  closed: [...above, '--hide', 'hood'],
  open: [...above, '--hide', 'cover,hood,plug', '--beams'],
  'tilt-mount': [
    '--only=^column-2-,far-rail,far-cover,^deck',
    '--hide=socket,receiver,lid',
    '--cut=x<62',
    '--beams',
    '--view=-1,-0.3,0.22',
    '--size=1000x560',
    '--focus=column-2-mount,column-2-wires',
    '--zoom=0.82',
  ],
  bay: ['--view=0.4,1,1.2', '--size=1000x640', '--hide=cover,hood,plug,bay-lid,bay-door', '--zoom=1.04'],
};

for (const [name, options] of Object.entries(PICTURES)) {
  const picture = here(`../pictures/${name}.png`);
  const kit = `${out}/${name === 'bay' ? 'glaze-selector' : 'greenhouse-bench'}`;
  execFileSync(process.execPath, [here('render.mjs'), kit, ...options, '-o', picture], { stdio: 'inherit' });
}
