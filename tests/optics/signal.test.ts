import { describe, expect, test } from 'vitest';
import {
  ambientCurrent,
  beamCurrent,
  irradiance,
  levels,
  pullUpRange,
  responseAt,
  shareToTake,
} from '../../src/optics/signal.js';
import { siliconResponse } from '../../src/optics/silicon.js';

const detector = { radius: 0.5, sensitivity: 0.2, filterFromNm: 0 };

test('irradiance is the power through the detector over its area: 1 mW, w 2.5', () => {
  // Through R .5: 1 − exp(−2 · .25/6.25) = .0768837; 76.88 µW over .785398 mm² (worked out for this project).
  const e = irradiance({ powerMw: 1, w: 2.5, offset: 0 }, 0.5);
  expect((e * Math.PI * 0.25) / 1000).toBeCloseTo(0.07688, 5);
});

test('full sun on a 1 mm detector is 785 µW: current by hand', () => {
  // 1000 W/m² · .2 mA per W/m² · .5 (white light) = 100 mA; 100 W/m² of sky behind a tube of 65.1: .154 mA.
  const { direct, diffuse } = ambientCurrent(detector, { direct: 1000, diffuse: 100 }, 65.109);
  expect(direct).toBeCloseTo(100, 9);
  expect(diffuse).toBeCloseTo(0.1536, 4);
});

test('levels of a pin with 10 kΩ to 5 V: 3.5 V over it when low, 1.5 V when high', () => {
  const { lit, dark } = levels({ supply: 5, pullUpOhm: 10_000 });
  expect(lit).toBeCloseTo(0.35, 12);
  expect(dark).toBeCloseTo(0.15, 12);
});

describe('wavelength', () => {
  test('best in the near infrared, .6 in the red, nothing beyond its range', () => {
    expect(siliconResponse(880)).toBe(1);
    expect(siliconResponse(650)).toBeCloseTo(0.6, 12);
    expect(siliconResponse(675)).toBeCloseTo(0.65, 12);
    expect(siliconResponse(300)).toBe(0);
    expect(siliconResponse(1200)).toBe(0);
  });
  test('a part filtered for infrared is blind at 650 nm', () => {
    const filtered = { ...detector, filterFromNm: 780 };
    expect(responseAt(filtered, 650)).toBe(0);
    expect(beamCurrent(filtered, { powerMw: 5, wavelengthNm: 650, w: 1, offset: 0 })).toBe(0);
    expect(responseAt(filtered, 850)).toBeGreaterThan(0.9);
  });
});

describe('what a finger must take', () => {
  test('a receiver that is lit a hundred times over flips only when nearly all is gone', () => {
    expect(shareToTake({ lit: 15, dark: 0.15, ambient: 0 })).toBeCloseTo(0.99, 12);
  });
  test('ambient light asks for more, and in the end for more than there is', () => {
    expect(shareToTake({ lit: 15, dark: 0.15, ambient: 0.1 })).toBeCloseTo(1 - 0.05 / 15, 12);
    expect(shareToTake({ lit: 15, dark: 0.15, ambient: 0.15 })).toBeNull();
  });
  test('one that is barely lit reads dark at once', () => {
    expect(shareToTake({ lit: 0.1, dark: 0.15, ambient: 0 })).toBe(0);
  });
});

test('pull-ups by Ohm’s law: lit pulls the pin to 0.3, the light around leaves it at 0.7 of the supply, a factor of two in hand', () => {
  // 5 V: 3.5 V over 7 mA / 2 is 1000 Ω; 1.5 V over 2 · 0.005 mA is 150 kΩ.
  const { least, most } = pullUpRange({ supply: 5, lit: 7, ambient: 0.005, inHand: 2 });
  expect(least).toBeCloseTo(1000, 9);
  expect(most).toBeCloseTo(150_000, 6);
  expect(pullUpRange({ supply: 5, lit: 7, ambient: 0, inHand: 2 }).most).toBe(Infinity);
  expect(pullUpRange({ supply: 5, lit: 0, ambient: 0.005, inHand: 2 }).least).toBe(Infinity);
});
