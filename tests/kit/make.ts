/** Kits for tests: laid out, drawn and checked in memory. */
import { readFileSync } from 'node:fs';
import { makeScene } from '../../src/checks/scene.js';
import type { Finding } from '../../src/findings.js';
import { drawKit } from '../../src/kit/draw-kit.js';
import type { Kit } from '../../src/kit/types.js';
import { layOut } from '../../src/layout/lay-out.js';
import type { Layout } from '../../src/layout/layout.js';
import { makeKit } from '../../src/pipeline.js';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifold } from '../../src/solid/manifold-kernel.js';
import type { Profiles } from '../../src/solid/profiles.js';
import { text } from '../../src/solid/text.js';
import { readPreset } from '../../src/spec/read-preset.js';

export interface Workshop {
  readonly kernel: MeasuringKernel;
  readonly profiles: Profiles;
}

export const openWorkshop = (): Promise<Workshop> => loadManifold();

export const shipped = (name: string): string => readFileSync(`presets/${name}.yaml`, 'utf8');

export interface Drawn {
  readonly layout: Layout;
  readonly kit: Kit;
}

export function draw({ kernel, profiles }: Workshop, preset: string): Drawn {
  const layout = layOut(readPreset(preset, 'tested.yaml'));
  return { layout, kit: drawKit(layout, { kernel, lettering: (line, options) => text(profiles, line, options) }) };
}

/** Everything a run would say of a preset, the file gate included; its solids are freed again. */
export function findingsOf({ kernel, profiles }: Workshop, preset: string): readonly Finding[] {
  return kernel.scope(() => ({
    keep: [],
    value: makeKit(readPreset(preset, 'tested.yaml'), {
      kernel,
      profiles,
      hash: () => '',
      progress: () => {},
      accept: [],
    }).context.findings,
  }));
}

export const sceneOf = ({ kernel }: Workshop, kit: Kit) => makeScene(kit, kernel);
