import { describe, expect, test } from 'vitest';
import { foldPath } from '../../src/mechanics/fold.js';
import { newBand } from '../../src/mechanics/nonlinear/banded.js';
import { assemble, type Frame, newScratch, strainEnergy } from '../../src/mechanics/nonlinear/frame.js';
import { type LeafBeam, meshLeaf } from '../../src/mechanics/nonlinear/leaf-mesh.js';
import { straight } from './nonlinear-frames.js';

const beams: Record<string, LeafBeam> = {
  straight: { path: [straight([1, 2], 0.7, 9)], thickness: 1.3, width: 11, modulus: 2600, poisson: 0.36 },
  folded: { path: foldPath({ legs: 3, length: 7, pitch: 3 }), thickness: 1.2, width: 11, modulus: 2600, poisson: 0.36 },
};

/** Displacements as large as the leaf's own lengths, from a fixed list: no luck involved. */
const shaken = (frame: Frame, size: number) =>
  Float64Array.from({ length: 3 * frame.nodes.length }, (_, i) =>
    frame.equation[i]! < 0 ? 0 : size * Math.sin(1.7 * i * i + 0.3 * i),
  );

function forceAt(frame: Frame, q: Float64Array) {
  const band = newBand(frame.equations, frame.half);
  const force = new Float64Array(frame.equations);
  assemble(frame, q, band, force, newScratch());
  const { values, half } = band;
  const at = (i: number, j: number) => {
    const [high, low] = i >= j ? [i, j] : [j, i];
    return high - low > half ? 0 : values[low * half + high]!;
  };
  return { force, at };
}

describe.for(Object.entries(beams))('%s leaf, moved at will', ([, beam]) => {
  const { frame } = meshLeaf({ ...beam, mesh: { straight: 2, halfCircle: 2 } });
  const free = [...frame.equation.keys()].filter((i) => frame.equation[i]! >= 0);
  const q = shaken(frame, 0.4);
  const step = 1e-5;
  const moved = (i: number, by: number) => q.map((value, k) => (k === i ? value + by : value));

  // Central differences err by step² times the third derivative: 1e-7 or so of the largest entry, rounding less.
  test('the tangent is the slope of the forces', () => {
    const { at } = forceAt(frame, q);
    const largest = Math.max(...free.map((_, i) => Math.abs(at(i, i))));
    for (const [j, place] of free.entries()) {
      const up = forceAt(frame, moved(place, step)).force;
      const down = forceAt(frame, moved(place, -step)).force;
      for (const [i] of free.entries())
        expect(Math.abs((up[i]! - down[i]!) / (2 * step) - at(i, j)) / largest, `${i} ${j}`).toBeLessThan(2e-7);
    }
  });

  test('the forces are the slope of the energy', () => {
    const { force } = forceAt(frame, q);
    const largest = Math.max(...force.map(Math.abs));
    for (const [i, place] of free.entries()) {
      const slope = (strainEnergy(frame, moved(place, step)) - strainEnergy(frame, moved(place, -step))) / (2 * step);
      expect(Math.abs(slope - force[i]!) / largest, `${i}`).toBeLessThan(2e-7);
    }
  });
});

test('moved and turned as a whole by any angle, a leaf stores nothing', () => {
  const { frame } = meshLeaf(beams.folded!);
  for (const angle of [0.4, 2.9, -7.3]) {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const q = Float64Array.from(frame.nodes.flatMap(([x, y]) => [c * x - s * y + 3 - x, s * x + c * y - 5 - y, angle]));
    // Rounding: E A L times the square of 1e-15.
    expect(strainEnergy(frame, q)).toBeLessThan(1e-20);
  }
});

describe('refuses', () => {
  const leaf = beams.straight!;
  test.for<[string, LeafBeam, string]>([
    ['no path', { ...leaf, path: [] }, 'empty'],
    ['no thickness', { ...leaf, thickness: 0 }, 'thickness'],
    ['a modulus that is no number', { ...leaf, modulus: Number.NaN }, 'modulus'],
    ['a turn tighter than half the thickness', { ...beams.folded!, thickness: 3.1 }, 'radius'],
    [
      'end corrections on a leaf that begins with a turn',
      { ...beams.folded!, path: beams.folded!.path.slice(1), correction: { plate: 1.1, length: 0.3, valid: true } },
      'corrections',
    ],
    [
      'a correction that eats the leaf',
      { ...leaf, correction: { plate: 1, length: -9, valid: true } },
      'correctedLength',
    ],
    ['no elements', { ...leaf, mesh: { straight: 0, halfCircle: 1 } }, 'straight'],
  ])('%s', ([, beam, word]) => expect(() => meshLeaf(beam)).toThrow(word));
});
