/** A kit of two blocks and a pin, with figures that nobody would mistake for one another. */

import { createHash } from 'node:crypto';
import { compression } from '../../src/cli/compression.js';
import type { Finding } from '../../src/findings.js';
import type { Kit, Part } from '../../src/kit/types.js';
import { OUTPUTS } from '../../src/outputs/index.js';
import type { OutputInputs } from '../../src/outputs/make-outputs.js';
import { loadManifoldKernel } from '../../src/solid/manifold-kernel.js';
import { translation } from '../../src/solid/matrix.js';
import { box } from '../../src/solid/shapes.js';
import type { Spec } from '../../src/spec/spec.js';
import { light, spec } from '../checks/sound-figures.js';

const from = (value: number) => ({ value, source: 'invented for the test' });

export const sampleSpec: Spec = {
  ...spec,
  name: 'potting-shed',
  title: '=Potting, "shed" <b>panel</b>',
  grid: { columns: [22, 33], rows: [21], labels: [['sow', 'rest']] },
  leaf: { layout: 'folded', legs: 3, length: undefined, thickness: undefined, width: undefined },
  material: {
    name: 'invented',
    plastic: {
      title: 'Invented plastic',
      modulus: from(1900),
      poisson: from(0.38),
      strength: from(45),
      acrossLayers: from(0.3),
      yieldStrain: from(0.035),
      shortTermStrain: from(0.015),
      sustainedStrain: from(0.006),
      creepA: from(0.12),
      creepN: from(0.22),
      softensC: from(78),
      expansion: from(6.15e-5),
      densityGcm3: from(1.25),
      friction: from(0.27),
    },
  },
  chosen: [{ path: 'beam.height', value: 5, why: 'a fingertip reaches it' }],
};

export const sampleFinding: Finding = {
  code: 'flexure/stress',
  severity: 'warning',
  subject: 'block.1',
  measured: 12.34567891,
  limit: 12,
  unit: 'MPa',
  message: 'The leaf of block.1 bears 12.3 MPa; 12 is allowed.',
  remedies: ['leaf.thickness', 'material'],
};

/** Block 10 × 20 × 3 with a posed twin 10 × 20 × 4; a steel pin 2 × 2 × 7. */
export async function sampleInputs(findings: readonly Finding[] = [sampleFinding]): Promise<OutputInputs> {
  const kernel = await loadManifoldKernel();
  const block: Part = {
    id: 'block',
    title: 'Block, drawn for a test',
    kind: 'printed',
    material: 'invented',
    densityGcm3: 1.25,
    solid: box(kernel, [0, 0, 0], [10, 20, 3]),
    posed: {
      lowest: box(kernel, [0, 0, 0], [10, 20, 3.5]),
      level: box(kernel, [0, 0, 0], [10, 20, 4]),
      highest: box(kernel, [0, 0, 0], [10, 20, 4.5]),
    },
    order: null,
  };
  const pin: Part = {
    id: 'pin-2x7',
    title: 'Pin',
    kind: 'bought',
    material: 'steel',
    densityGcm3: 7.85,
    solid: box(kernel, [-1, -1, 0], [1, 1, 7]),
    posed: null,
    order: { standard: 'ISO 2338', size: '2 m6', lengthMm: 7 },
  };
  const at = (x: number) => translation([x, -0, 1 / 3]);
  const place = { rides: null, overlaps: [] };
  const kit: Kit = {
    parts: new Map([
      ['pin-2x7', pin],
      ['block', block],
    ]),
    placements: [
      { name: 'block.1', part: 'block', matrix: at(0), touches: ['pin.1'], ...place },
      { name: 'block.2', part: 'block', matrix: at(40.1234567), touches: [], ...place },
      { name: 'pin.1', part: 'pin-2x7', matrix: at(-30), touches: ['block.1'], ...place },
    ],
    beams: [
      {
        name: 'column.0',
        line: 'column',
        index: 0,
        from: [11, 42, 5],
        to: [11, -3, 5],
        diameter: 2.5,
        corridor: 3.75,
        emitter: 'block.1',
        receiver: 'block.2',
      },
    ],
    screws: [],
    fits: [],
    assembly: [
      {
        step: 1,
        title: 'Push the pin in',
        joins: ['block.1'],
        hardware: ['pin.1'],
        moves: [{ placement: 'pin.1', direction: [0, 0, -1], travel: 12.5, tool: null, inFrameOf: 'block.1' }],
      },
    ],
  };
  return {
    spec: sampleSpec,
    solved: [...sampleSpec.chosen, { path: 'leaf.thickness', value: 0.86, why: 'two printed lines' }],
    kit,
    light,
    findings,
    kernel,
    travel: undefined,
    outputs: OUTPUTS,
    compression,
    viewer: '',
    hash: (bytes) => createHash('sha256').update(bytes).digest('hex'),
    listing: () => {},
  };
}
