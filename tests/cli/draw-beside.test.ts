/** What a second thread draws is what is drawn here, byte for byte; and a thread that fails costs time, not the kit. */
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import type { drawBeside } from '../../src/cli/draw-beside.js';
import type { Drawn } from '../../src/outputs/context.js';
import { beginOutputs } from '../../src/outputs/make-outputs.js';
import { sampleInputs } from '../outputs/sample-kit.js';
import { BUILT } from './built.js';

const KINDS = ['kit3mf', 'partSheets', 'plan', 'exploded', 'pictures', 'kitPicture', 'stepPictures'] as const;
const all = (drawn: Drawn) => KINDS.map((kind) => [kind, drawn[kind]()]);

/** As built: the thread is started from a file. */
const beside = async () => {
  const built = (await import(/* @vite-ignore */ pathToFileURL(`${BUILT}/cli/draw-beside.js`).href)) as {
    readonly drawBeside: typeof drawBeside;
  };
  const thread = built.drawBeside();
  if (thread === null) throw new Error('no second thread on this machine');
  return thread;
};

const waitUntil = async (ready: () => boolean) => {
  for (let tries = 0; !ready(); tries++) {
    if (tries > 2000) throw new Error('the thread never got ready');
    await new Promise((done) => setTimeout(done, 10));
  }
};

test('a second thread draws the same bytes, every kind', async () => {
  const inputs = await sampleInputs();
  const here = all(beginOutputs(inputs).drawn);
  const thread = await beside();
  await waitUntil(() => thread.state() === 'ready');
  const there = all(beginOutputs({ ...inputs, draw: thread.draw }).drawn);
  expect(thread.state()).toBe('done');
  thread.end();
  expect(there).toEqual(here);
});

test('a thread that ends or fails before its time: the same is drawn here', async () => {
  const inputs = await sampleInputs();
  const here = all(beginOutputs(inputs).drawn);
  const ended = await beside();
  await waitUntil(() => ended.state() === 'ready');
  const { drawn } = beginOutputs({ ...inputs, draw: ended.draw });
  ended.end();
  expect(all(drawn)).toEqual(here);

  const failing = await beside();
  await waitUntil(() => failing.state() === 'ready');
  const begun = beginOutputs({
    ...inputs,
    // A mesh that is missing there, and only there.
    draw: (context) => {
      let sent = false;
      const late = { ...context, meshOf: (path: string) => (sent ? context.meshOf(path) : (undefined as never)) };
      const drawn = failing.draw(late);
      sent = true;
      return drawn;
    },
  });
  expect(all(begun.drawn)).toEqual(here);
  expect(failing.state()).toBe('failed');
  failing.end();
});
