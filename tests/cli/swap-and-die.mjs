/** Swaps a kit in and is killed, as by a power cut, right after the step named: module, folder, kit, content, step. */
const [, , module, out, kit, content, last] = process.argv;
const { swapIn } = await import(module);
const text = (value) => new TextEncoder().encode(value);
const files = [
  { path: 'stl/a.stl', bytes: text(`${content} a`) },
  { path: 'stl/b.stl', bytes: text(`${content} b`) },
  { path: 'kit.json', bytes: text(`{\n  "format": "beamloom-kit/1", "content": "${content}"\n}\n`) },
];
await swapIn({
  out,
  kit,
  files,
  after(step) {
    if (step === last) process.kill(process.pid, 'SIGKILL');
  },
});
