import { expect, test } from 'vitest';
import { PresetError } from '../../src/errors.js';
import { FROM_PRESET } from '../../src/spec/catalogue.js';
import { placeMistakes, readPreset } from '../../src/spec/read-preset.js';

const LEAST = 'grid: { rows: 2, columns: 3, pitch: 22 }\n';

test('three keys are enough; everything else is defaulted with a reason, or left to be solved', () => {
  const spec = readPreset(LEAST, 'some/where/bench-two.yaml');
  expect(spec.name).toBe('bench-two');
  expect(spec.title).toBe('Bench two');
  expect(spec.grid).toEqual({ rows: [22, 22], columns: [22, 22, 22], labels: null });
  expect(spec.emitters.part.diameter.value).toBe(6);
  expect(spec.leaf).toEqual({
    layout: undefined,
    legs: undefined,
    length: undefined,
    thickness: undefined,
    width: undefined,
  });
  expect(spec.aim.tiltDeg).toBeUndefined();
  expect(spec.frame).toEqual({ wall: undefined, deck: undefined, margin: undefined });
  expect(spec.chosen.map(({ path }) => path)).toEqual([
    'title',
    'grid.labels',
    'emitters.part',
    'emitters.columns_from',
    'emitters.rows_from',
    'receivers.part',
    'aim.mount_error',
    'aim.confidence',
    'finger.least',
    'finger.most',
    'light.ambient',
    'surroundings.coldest',
    'surroundings.warmest',
    'material',
    'printer',
    'screws.adjust',
    'screws.clamp',
    'screws.fix',
    'scan.channels',
    'scan.address',
    'scan.spare_pins',
    'scan.address_us',
    'scan.settle_us',
    'scan.read_us',
    'scan.light_us',
    'scan.debounce',
    'scan.pull_up_ohm',
    'scan.supply_v',
    'scan.lit_level',
    'supply.gauge',
    'supply.logic_ma',
    'receivers.part.aperture_diameter',
    'receivers.part.aperture_depth',
    'beam.height',
  ]);
  for (const { why } of spec.chosen) expect(why.length).toBeGreaterThan(10);
});

test('what the preset says is not reported as chosen', () => {
  const text = `${LEAST}beam: { height: 7 }\nscrews: { fix: M4 }\nmaterial: asa\ntitle: Own\n`;
  const { chosen, beam, screws, material, title } = readPreset(text, 'a.yml');
  expect([beam.height, screws.fix, material.name, title]).toEqual([7, 'M4', 'asa', 'Own']);
  const paths = chosen.map(({ path }) => path);
  for (const path of ['beam.height', 'screws.fix', 'material', 'title']) expect(paths).not.toContain(path);
  expect(paths).toContain('screws.adjust');
});

test('the first row of labels is the far one; the spec counts rows from the near side', () => {
  const { grid } = readPreset(
    'grid:\n  rows: 2\n  columns: 3\n  pitch: 22\n  labels:\n    - [a, b, c]\n    - [d, e, f]\n',
    'a.yaml',
  );
  expect(grid.labels).toEqual([
    ['d', 'e', 'f'],
    ['a', 'b', 'c'],
  ]);
});

test('further sets of labels: any printable letters, text as written, first row the far one, in the order given', () => {
  const { grid } = readPreset(
    'grid:\n  rows: 2\n  columns: 1\n  pitch: 22\n  label_sets:\n    winter: [[größer], [007]]\n    dress: [[Ω], [""]]\n',
    'a.yaml',
  );
  expect(grid.labelSets).toEqual([
    { name: 'winter', labels: [['007'], ['größer']] },
    { name: 'dress', labels: [[''], ['Ω']] },
  ]);
});

test('labels and title are text as written, whatever YAML makes of it', () => {
  const { grid, title } = readPreset(
    'title: 2.50\ngrid: {rows: 1, columns: 5, pitch: 22, labels: [[1.10, 007, true, ~, ""]]}',
    'a.yaml',
  );
  expect(title).toBe('2.50');
  expect(grid.labels).toEqual([['1.10', '007', 'true', '~', '']]);
});

test('lists give cells; two pitches give the axes that are counted', () => {
  const lists = readPreset('grid: { rows: [30, 24], columns: 2, pitch: { x: 21 } }', 'a.yaml').grid;
  expect([lists.rows, lists.columns]).toEqual([
    [30, 24],
    [21, 21],
  ]);
  const both = readPreset('grid: { rows: 2, columns: 1, pitch: { x: 21, y: 19 } }', 'a.yaml').grid;
  expect([both.rows, both.columns]).toEqual([[19, 19], [21]]);
});

test('a base with changes keeps every other figure and says which are the preset’s', () => {
  const text = `${LEAST}emitters: { part: { base: barrel-6x12, length: 14, boresight_sigma_deg: 0.7 } }\nprinter: { base: bed-180, warp_per_100: 0.3 }\nmaterial: { base: petg, density_gcm3: 1.3 }`;
  const { emitters, printer, material } = readPreset(text, 'a.yaml');
  expect(emitters.name).toBe('barrel-6x12-changed');
  expect(emitters.part.length).toEqual({ value: 14, source: FROM_PRESET });
  expect(emitters.part.boresightSigmaDeg.value).toBe(0.7);
  expect(emitters.part.diameter.value).toBe(6);
  expect(emitters.part.diameter.source).not.toBe(FROM_PRESET);
  expect([printer.machine.warpPer100.value, printer.machine.bedX.value]).toEqual([0.3, 180]);
  expect(material.plastic.densityGcm3.value).toBe(1.3);
});

test('a receiver may be spelled out in full', () => {
  const figures =
    'width: 5, height: 6, depth: 3, sensor_from_top: 2, legs: 2, leg_width: 0.5, leg_pitch: 2.54, detector_radius: 0.6, sensitivity: 0.3, filter_from_nm: 0, aperture_diameter: 2.5, aperture_depth: 14, mass_g: 0.4';
  const { receivers } = readPreset(`${LEAST}receivers: { part: { title: Own sensor, ${figures} } }`, 'a.yaml');
  expect(receivers.name).toBe('own-receiver');
  expect(receivers.part.title).toBe('Own sensor');
  expect(receivers.part.apertureDepth).toEqual({ value: 14, source: FROM_PRESET });
});

test('a section whose keys are all commented out counts as left out', () => {
  const { beam } = readPreset(`${LEAST}beam:\n  # height: 9\nleaf:\nmaterial:\n`, 'a.yaml');
  expect(beam.height).toBe(5);
});

test('markup and path characters may stand in titles and labels', () => {
  const text =
    'title: "<b>../../etc & more</b>"\ngrid: { rows: 1, columns: 2, pitch: 22, labels: [["<go>", "../up"]] }';
  const { name, title, grid } = readPreset(text, 'safe.yaml');
  expect([name, title, grid.labels]).toEqual(['safe', '<b>../../etc & more</b>', [['<go>', '../up']]]);
});

test('a mistake of a later stage gets its place in the text', () => {
  const text = 'title: T\ngrid:\n  rows: 2\n  columns: [22, 9]\n  pitch: 22\n';
  const placed = placeMistakes(text, [
    { code: 'layout/pitch', path: 'grid.pitch', message: 'too small' },
    { code: 'layout/cell', path: 'grid.columns.1', message: 'too small' },
    { code: 'layout/bed', path: 'printer.bed_x', message: 'too small' },
  ]);
  // Lines and columns counted by hand; the printer is not in the text, so the answer is where the text begins.
  expect(placed.map(({ path, line, column }) => [path, line, column])).toEqual([
    ['printer.bed_x', 1, 1],
    ['grid.columns.1', 4, 17],
    ['grid.pitch', 5, 10],
  ]);
});

test('a finger’s range written backwards is one mistake, named where it is written', () => {
  const mistakes = (finger: string) => {
    try {
      readPreset(`${LEAST}\nfinger: ${finger}\n`, 'x.yaml');
    } catch (error) {
      return (error as PresetError).mistakes.map(({ path, message }) => `${path}: ${message}`);
    }
    return [];
  };
  expect(mistakes('{ least: 21, most: 18 }')).toEqual([
    'finger.least: the narrowest finger, 21 mm, is broader than the broadest, 18 mm',
  ]);
  // Against the default of the other.
  expect(mistakes('{ most: 10 }')).toHaveLength(1);
  expect(mistakes('{ least: 14, most: 14 }')).toEqual([]);
});

test('the light around is a name, a name with changes, or figures', () => {
  const ambient = (text: string) => readPreset(`${LEAST}\nlight: { ambient: ${text} }\n`, 'x.yaml').light;
  expect(ambient('sun').ambient.directWm2.value).toBe(1000);
  expect(ambient('{ base: window, diffuse_wm2: 20 }').ambient.diffuseWm2).toEqual({ value: 20, source: FROM_PRESET });
  expect(() => ambient('moon')).toThrow(PresetError);
});

test('the beams run as low as a fingertip allows: by hand', () => {
  const height = (text: string) => readPreset(`${LEAST}\n${text}\n`, 'x.yaml').beam.height;
  // 2 √(h (f − h)) = .98 f at h = f/2 (1 − √(1 − .98²)) = .4005 f: 4.81 for 12, 6.41 for 16; then up to a half.
  expect(height('')).toBe(5);
  expect(height('finger: { least: 16 }')).toBe(6.5);
  // A beam 4 mm across keeps 4 mm from the deck: 6.
  expect(height('emitters: { part: { base: barrel-6x12, beam_diameter: 4 } }')).toBe(6);
  expect(height('beam: { height: 8 }')).toBe(8);
});
