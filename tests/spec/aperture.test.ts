/** The tube before a receiver, solved: by hand. */
import { describe, expect, test } from 'vitest';
import { ambients } from '../../src/ambients/index.js';
import { receivers } from '../../src/components/index.js';
import { settleAperture } from '../../src/spec/aperture.js';

const pin = { supply: 5, pullUpOhm: 10_000 };
const settle = (receiver: keyof typeof receivers, ambient: keyof typeof ambients = 'lamps', ohm = 10_000) =>
  settleAperture({ receiver: receivers[receiver], ambient: ambients[ambient], pin: { ...pin, pullUpOhm: ohm } });

describe('a bare detector 1 mm wide', () => {
  test('under lamps: deep enough to keep off what comes from 10° on', () => {
    // Diameter 1 + 2 (l tan 1.5° + .25): 1.97 at 9, so 2; then (2 + 1)/(2 · 9) = tan 9.5°, and 3/16 = tan 10.6°.
    const { diameter, depth, solved } = settle('three-leg');
    expect([diameter, depth]).toEqual([2, 9]);
    expect(solved.map(({ path }) => path)).toEqual([
      'receivers.part.aperture_diameter',
      'receivers.part.aperture_depth',
    ]);
  });
  test('by a window: .2 mA per W/m², half of white light, 45 W/m² must be cut to .05 mA', () => {
    // .2 · .5 · 45 = 4.5 mA bare; a third of .15 mA asks for 1/90. Disc to disc: about (d/2)²/(l² + (d/2)²) = 1/90 at l = 11.8.
    const { diameter, depth } = settle('three-leg', 'window');
    expect(diameter).toBe(2.5);
    expect(depth).toBe(12);
  });
  test('a stiffer pull-up takes more light from around: the tube may be as short as under lamps', () => {
    expect(settle('three-leg', 'window', 2000).depth).toBe(9);
  });
});

test('a lens 3.5 wide: as long as a socket may be, and as wide as the body holds', () => {
  // 3.5 + 2 (14 tan 1.5° + .25) = 4.73, but the body, 4.5 wide, keeps a rim of .5 in all: 4.
  expect(settle('side-looker')).toMatchObject({ diameter: 4, depth: 14 });
});

test('what the preset gives is not solved', () => {
  const given = {
    ...receivers['three-leg'],
    apertureDiameter: { value: 3, source: 'the preset' },
  };
  const { diameter, depth, solved } = settleAperture({ receiver: given, ambient: ambients.lamps, pin });
  expect(diameter).toBe(3);
  // (3 + 1)/(2 · 12) = tan 9.5°; at 11 it is 10.3°.
  expect(depth).toBe(12);
  expect(solved.map(({ path }) => path)).toEqual(['receivers.part.aperture_depth']);
});
