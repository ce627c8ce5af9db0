/** Numbers in [0, 1) that are the same in every run. Source: mulberry32, public domain, from memory; good enough to draw test cases. */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** @returns a pair of independent draws of the standard normal (Box & Muller 1958) */
export function normals(next: () => number): readonly [number, number] {
  const radius = Math.sqrt(-2 * Math.log(1 - next()));
  const turn = 2 * Math.PI * next();
  return [radius * Math.cos(turn), radius * Math.sin(turn)];
}
