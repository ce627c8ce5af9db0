/** What each receiver gives: lit, dark, and beside the light around it. Currents mA, irradiance W/m², lengths mm. */
import { offsetFor } from '../../optics/aperture.js';
import { coneRadius } from '../../optics/beam.js';
import {
  ambientCurrent,
  beamCurrent,
  type Detector,
  levels,
  pullUpRange,
  responseAt,
  shareToTake,
} from '../../optics/signal.js';
import { diffuseRejection, viewAngles } from '../../optics/tube.js';
import type { Spec } from '../../spec/spec.js';
import type { LineWay } from './lines.js';

export interface LineSignal {
  readonly line: 'column' | 'row';
  /** 1/e² radius of the beam at the detector. */
  readonly w: number;
  /** Current of the whole beam, centred; what the pull-up takes is less. */
  readonly lit: number;
  /** Share of its beam that a receiver must lose before it reads dark; null: it never does. */
  readonly toTake: number | null;
  /** How far the beam may move before the receiver no longer reads lit, with a factor of two in hand; 0 where it hardly does. */
  readonly staysLit: number;
}

export interface SignalFigures {
  readonly detector: Detector;
  /** Share of its best response at the emitters' wavelength. */
  readonly response: number;
  /** Currents above which a pin reads lit and below which it reads dark. */
  readonly levels: { readonly lit: number; readonly dark: number };
  /** Pull-ups that serve both, a factor of two in hand [Ω]. */
  readonly pullUp: { readonly least: number; readonly most: number };
  /** From light around: diffuse, through the tube; direct, where its source stands in the tube's view. */
  readonly ambient: { readonly diffuse: number; readonly direct: number };
  readonly rejection: number;
  /** From here on the tube keeps off everything [rad]. */
  readonly cutOff: number;
  readonly lines: readonly [LineSignal, LineSignal];
}

/** In hand over the level at which a pin reads lit. Source: common practice. */
export const IN_HAND = 2;

export function signalFigures(spec: Spec, ways: readonly [LineWay, LineWay]): SignalFigures {
  const { emitters, receivers, light, scan } = spec;
  const part = receivers.part;
  const tube = {
    aperture: part.apertureDiameter.value,
    detector: Math.min(2 * part.detectorRadius.value, part.apertureDiameter.value),
    depth: part.apertureDepth.value,
  };
  // A lens behind a narrower tube takes what the tube lets through.
  const detector: Detector = {
    radius: tube.detector / 2,
    sensitivity: part.sensitivity.value,
    filterFromNm: part.filterFromNm.value,
  };
  const pin = levels({ supply: scan.supplyV, pullUpOhm: scan.pullUpOhm });
  const rejection = diffuseRejection(tube);
  const ambient = ambientCurrent(
    detector,
    { direct: light.ambient.directWm2.value, diffuse: light.ambient.diffuseWm2.value },
    rejection,
  );
  const { powerMw, wavelengthNm, beamDiameter, divergenceMrad } = emitters.part;
  const lines = ways.map(({ line, distance }): LineSignal => {
    const w = coneRadius({ diameter: beamDiameter.value, divergenceMrad: divergenceMrad.value }, distance);
    const lit = beamCurrent(detector, { powerMw: powerMw.value, wavelengthNm: wavelengthNm.value, w, offset: 0 });
    const share = lit > 0 ? (IN_HAND * pin.lit) / lit : Infinity;
    return {
      line,
      w,
      lit,
      toTake: lit > 0 ? shareToTake({ lit, dark: pin.dark, ambient: ambient.diffuse }) : null,
      staysLit: share < 1 ? offsetFor(share, { radius: detector.radius, w }) : 0,
    };
  });
  return {
    detector,
    response: responseAt(detector, wavelengthNm.value),
    levels: pin,
    pullUp: pullUpRange({
      supply: scan.supplyV,
      lit: Math.min(...lines.map(({ lit }) => lit)),
      ambient: ambient.diffuse,
      inHand: IN_HAND,
    }),
    ambient,
    rejection,
    cutOff: viewAngles(tube).cutOff,
    lines: [lines[0]!, lines[1]!],
  };
}
