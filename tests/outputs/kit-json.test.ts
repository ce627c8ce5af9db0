import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { makeOutputs } from '../../src/outputs/make-outputs.js';
import { sampleFinding, sampleInputs } from './sample-kit.js';

async function sample() {
  const made = makeOutputs(await sampleInputs());
  const file = (path: string) => made.files.find((f) => f.path === path)!;
  const text = new TextDecoder().decode(file('kit.json').bytes);
  return { made, file, text, json: JSON.parse(text) };
}

describe('kit.json', () => {
  test('has the keys of the contract, in its order', async () => {
    const { json } = await sample();
    // The contract's own list, the channels with their scan, the beds, and the cautions.
    expect(Object.keys(json)).toEqual([
      'format',
      'title',
      'preset',
      'spec',
      'parts',
      'placements',
      'beams',
      'findings',
      'assembly',
      'solved',
      'channels',
      'scan',
      'wires',
      'prints',
      'light',
      'cautions',
    ]);
    expect(json.format).toBe('beamloom-kit/1');
    expect(json.preset).toBe('potting-shed');
    expect(json.title).toBe('=Potting, "shed" <b>panel</b>');
  });

  test('lists a printed part with its files, number, mass and hash', async () => {
    const { json, file } = await sample();
    const block = json.parts.find((p: { id: string }) => p.id === 'block');
    // by hand: 10 · 20 · 3 = 600 mm³; .6 cm³ · 1.25 g/cm³ = .75 g; a box has 12 triangles
    expect(block).toEqual({
      id: 'block',
      title: 'Block, drawn for a test',
      kind: 'printed',
      file: 'stl/block.stl',
      posed: 'posed/block.stl',
      mesh: null,
      quantity: 2,
      material: 'invented',
      volume_mm3: 600,
      mass_g: 0.75,
      size_mm: [10, 20, 3],
      triangles: 12,
      sha256: createHash('sha256').update(file('stl/block.stl').bytes).digest('hex'),
    });
  });

  test('lists a bought part by its shape, not as a print', async () => {
    const { json, made } = await sample();
    const pin = json.parts.find((p: { id: string }) => p.id === 'pin-2x7');
    expect(pin).toMatchObject({ kind: 'bought', file: null, posed: null, mesh: 'bought/pin-2x7.stl', quantity: 1 });
    // by hand: 2 · 2 · 7 = 28 mm³ at 7.85 g/cm³
    expect(pin.mass_g).toBeCloseTo(0.2198, 6);
    expect(made.files.map((f) => f.path)).toEqual([
      'bought/pin-2x7.stl',
      'stl/block.stl',
      'posed/block.stl',
      'prints/bed-1.3mf',
      'kit.3mf',
      'parts.csv',
      'channels.csv',
      'wires.csv',
      'wiring.svg',
      'crossings.json',
      'kit.json',
      'summary.txt',
      'drawings/block.svg',
      'drawings/plan.svg',
      'drawings/exploded.svg',
      'sheets/legend.svg',
      'sheets/legend.pdf',
      'sheets/legend-letter.pdf',
      'sheets/template.svg',
      'sheets/template.pdf',
      'sheets/template-letter.pdf',
      'pictures/kit.png',
      'pictures/open.png',
      'pictures/parts/block.png',
      'report.html',
    ]);
  });

  test('says which part stands where on which bed', async () => {
    const { json } = await sample();
    const { beds, beds_at_least: least } = json.prints;
    expect(least).toBe(1);
    expect(beds).toHaveLength(1);
    const [{ file, items, fill, plastic_g: grams }] = beds;
    expect(file).toBe('prints/bed-1.3mf');
    expect(items.map(({ part }: { part: string }) => part)).toEqual(['block', 'block']);
    // By hand: 2 · 10 · 20 of 210 × 210 (bed 220, 5 kept free along each edge): .009. A block 3 high with a skin of 3 · .45 all
    // round: surface 580, 580 · 1.35 = 783 is more than its 600 mm³: .75 g each.
    expect(fill).toBeCloseTo(0.009, 3);
    expect(grams).toBe(1.5);
  });

  test('every file that it names is among the files', async () => {
    const { json, made } = await sample();
    const paths = new Set(made.files.map((f) => f.path));
    for (const { file, posed, mesh } of json.parts) {
      for (const path of [file, posed, mesh]) if (path !== null) expect(paths).toContain(path);
    }
  });

  test('matrices are row major: translation in elements 4, 8, 12, rounded, without −0', async () => {
    const { json, text } = await sample();
    expect(json.placements[1]).toEqual({
      name: 'block.2',
      part: 'block',
      matrix: [1, 0, 0, 40.123457, 0, 1, 0, 0, 0, 0, 1, 0.333333, 0, 0, 0, 1],
      touches: [],
    });
    // A beam named row-0 is no number.
    expect(text).not.toMatch(/(?<![a-z])-0[,\]\s]/);
  });

  test('beams, findings and assembly as the contract spells them', async () => {
    const { json } = await sample();
    expect(json.beams).toEqual([
      {
        name: 'column.0',
        line: 'column',
        index: 0,
        from: [11, 42, 5],
        to: [11, -3, 5],
        diameter_mm: 2.5,
        corridor_mm: 3.75,
      },
    ]);
    expect(json.findings).toEqual([{ ...sampleFinding, measured: 12.345679 }]);
    expect(json.assembly).toEqual([
      {
        step: 1,
        title: 'Push the pin in',
        joins: ['block.1'],
        hardware: ['pin.1'],
        moves: [{ placement: 'pin.1', direction: [0, 0, -1], travel_mm: 12.5, tool: null, in_frame_of: 'block.1' }],
      },
    ]);
  });

  test('the spec carries defaults and solved values under the preset’s keys, figures beside their sources', async () => {
    const { json } = await sample();
    expect(json.spec.leaf).toEqual({ layout: 'folded', legs: 3, thickness: 0.86 });
    expect(json.spec.grid).toEqual({ rows: [21], columns: [22, 33], labels: [['sow', 'rest']] });
    expect(json.spec.emitters).toMatchObject({ part: 'barrel-6x12', columns_from: 'far', rows_from: 'left' });
    expect(json.spec.material.figures.density_gcm3).toBe(1.25);
    expect(json.spec.material.sources.density_gcm3).toBe('invented for the test');
    // Figures are not rounded like lengths: six decimals would make 6.2e-5 of it.
    expect(json.spec.material.figures.expansion).toBe(6.15e-5);
    expect(json.solved).toEqual([
      { path: 'beam.height', value: 5, why: 'a fingertip reaches it' },
      { path: 'leaf.thickness', value: 0.86, why: 'two printed lines' },
    ]);
  });

  test('its wires are those of wires.csv, number by number; the colour is left to the builder', async () => {
    const { json, file } = await sample();
    const [head, ...rows] = new TextDecoder().decode(file('wires.csv').bytes).trimEnd().split('\r\n');
    expect(head).toBe('wire,from,to,gauge_awg,length_mm,colour');
    expect(rows).toHaveLength(31);
    expect(rows).toEqual(
      json.wires.map((wire: Record<string, unknown>) =>
        [wire.wire, wire.from, wire.to, wire.gauge_awg, wire.length_mm, ''].join(','),
      ),
    );
    expect(rows[15]).toBe('W16,controller A0,multiplexer 0 A0,26,300,');
  });

  test('the same kit gives the same bytes', async () => {
    const [a, b] = [makeOutputs(await sampleInputs()), makeOutputs(await sampleInputs())];
    expect(a.files.map((f) => f.path)).toEqual(b.files.map((f) => f.path));
    for (const [i, { bytes }] of a.files.entries())
      expect(Buffer.from(bytes).equals(Buffer.from(b.files[i]!.bytes))).toBe(true);
  });
});

describe('makeOutputs', () => {
  const stop = { ...sampleFinding, severity: 'error' } as const;

  test('an error stops every file', async () => {
    const made = makeOutputs(await sampleInputs([stop]));
    expect(made.blocked).toBe(true);
    expect(made.files).toEqual([]);
  });

  test('an accepted error does not, and says so', async () => {
    const made = makeOutputs(await sampleInputs([{ ...stop, accepted: true }]));
    expect(made.blocked).toBe(false);
    const text = new TextDecoder().decode(made.files.find((f) => f.path === 'kit.json')!.bytes);
    expect(JSON.parse(text).findings[0]).toMatchObject({ severity: 'error', accepted: true });
  });

  test('eye safety can’t be accepted by marking it', async () => {
    const marked = { ...stop, code: 'eye-safety/class', accepted: true };
    expect(makeOutputs(await sampleInputs([marked])).blocked).toBe(true);
  });

  test('what the gate finds in a written shape stops the files too', async () => {
    const inputs = await sampleInputs([]);
    const block = inputs.kit.parts.get('block')!;
    // Printed part that floats 5 mm above the bed.
    const lifted = inputs.kernel.move(block.solid, [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 5, 0, 0, 0, 1]);
    const parts = new Map([...inputs.kit.parts, ['block', { ...block, solid: lifted }]]);
    const made = makeOutputs({ ...inputs, kit: { ...inputs.kit, parts } });
    expect(made.blocked).toBe(true);
    expect(made.context.findings.map((f) => f.code)).toEqual(['file/off-bed']);
  });
});
