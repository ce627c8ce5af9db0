/** Kits for tests: laid out, drawn and checked in memory. */
import { readFileSync } from 'node:fs';
import { makeScene } from '../../src/checks/scene.js';
import { compression } from '../../src/cli/compression.js';
import type { Finding } from '../../src/findings.js';
import { drawKit } from '../../src/kit/draw-kit.js';
import type { Kit } from '../../src/kit/types.js';
import { layOut } from '../../src/layout/lay-out.js';
import type { Layout } from '../../src/layout/layout.js';
import type { OutputContext } from '../../src/outputs/context.js';
import { makeKit } from '../../src/pipeline.js';
import type { MeasuringKernel } from '../../src/solid/kernel.js';
import { loadManifold } from '../../src/solid/manifold-kernel.js';
import { shellCount } from '../../src/solid/mesh-measures.js';
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
export const findingsOf = (workshop: Workshop, preset: string): readonly Finding[] => said(workshop, preset).findings;

export interface Said {
  readonly findings: readonly Finding[];
  /** Parts, bought ones too, that are not one shell as drawn or at a pose. */
  readonly inPieces: readonly string[];
}

/** What a run makes of a preset in memory, without files; its solids live as long as the kernel's scope. */
export const made = ({ kernel, profiles }: Workshop, preset: string): OutputContext =>
  makeKit(readPreset(preset, 'tested.yaml'), {
    kernel,
    profiles,
    hash: () => '',
    outputs: null,
    compression,
    viewer: '',
    progress: () => {},
    accept: [],
  }).context;

/** What a run says of a preset, and what it would not see; its solids are freed again. */
export function said({ kernel, profiles }: Workshop, preset: string): Said {
  return kernel.scope(() => {
    const { kit, findings } = made({ kernel, profiles }, preset);
    const inPieces = [...kit.parts.values()]
      .filter(({ solid, posed }) =>
        [solid, ...Object.values(posed ?? {})].some((one) => shellCount(kernel.mesh(one)) !== 1),
      )
      .map(({ id }) => id);
    return { keep: [], value: { findings, inPieces } };
  });
}

export const sceneOf = ({ kernel }: Workshop, kit: Kit) => makeScene(kit, kernel);
