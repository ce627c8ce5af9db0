/** The frame's stiffness in figures, from its layout and the kit's masses. mm, N, rad. */

import type { Kit } from '../kit/types.js';
import { side } from '../layout/fits.js';
import type { Layout } from '../layout/layout.js';
import type { LightBudget } from '../layout/light/budget.js';
import type { RailRun } from '../layout/runs.js';
import { leastSocketPitch } from '../layout/socket.js';
import { closedTorsion, openTorsion, sectionFigures } from '../mechanics/section.js';
import type { MeasuringKernel } from '../solid/kernel.js';
import { GRAVITY, TONNES_PER_GRAM } from '../units.js';
import type { FrameFigures, RailFigures } from './figures.js';

/** Share of a closed box's torsion that a cover on single screws brings. Source: common practice, on the careful side. */
const TIED = 0.25;
/** Least rib between neighbouring mounts [mm]: two printed lines with something to spare. */
const RIB = 1.2;

export interface FrameInputs {
  readonly layout: Layout;
  readonly kit: Kit;
  readonly kernel: MeasuringKernel;
  readonly light: LightBudget;
}

/**
 * Each rail stands free between its corners, though most panels lie on a table: supported at its ends, held there against
 * turning: a box where its cover is screwed down along both walls, else an open channel; the whole kit's weight is spread evenly
 * over the four rails and, like a hand, acts at half a rail's width beside the axis of twist.
 */
export function frameFigures({ layout, kit, kernel, light }: FrameInputs): FrameFigures {
  const { spec, mount, runs } = layout;
  const { modulus } = spec.material.plastic;
  const around = runs.reduce((sum, run) => sum + run.length, 0);
  const weight = (kitMass(kit, kernel) * TONNES_PER_GRAM * GRAVITY) / around;
  const depth = Math.min(mount.base.front, mount.base.rear);
  return {
    rails: runs.map((run) => railFigures(layout, run, { weight })),
    baseArm: {
      length: Math.abs(mount.adjust.at - mount.fix.at),
      bending: (modulus.value * mount.width * depth ** 3) / 12,
    },
    tolerance: Math.min(...light.signal.lines.map(({ staysLit }) => staysLit)),
    needs: [
      { what: 'mounts', least: mount.width + 2 * side(spec, 'snug') + RIB, remedies: ['leaf.width', 'emitters.part'] },
      { what: 'sockets', least: leastSocketPitch(spec), remedies: ['receivers.part', 'screws.fix'] },
    ],
  };
}

function railFigures(layout: Layout, run: RailRun, { weight }: { readonly weight: number }): RailFigures {
  const { spec, frame, runs, grid } = layout;
  const { wall, floor, width, height } = frame.section;
  const { modulus, poisson } = spec.material.plastic;
  const wallHeight = height - floor;
  const uprights = [wall / 2, width - wall / 2].map((y) => ({
    y,
    z: floor + wallHeight / 2,
    breadth: wall,
    height: wallHeight,
  }));
  const section = sectionFigures([{ y: width / 2, z: floor / 2, breadth: width, height: floor }, ...uprights]);
  const channel = [
    { length: width, thickness: floor },
    { length: wallHeight, thickness: wall },
    { length: wallHeight, thickness: wall },
  ];
  // Screwed down along both walls the cover closes the box; single screws pass on only part of the shear.
  const tied = run.segments.every(({ fieldBosses }) => fieldBosses.length >= 2);
  const torsion = tied
    ? TIED * closedTorsion((width - wall) * height, [...channel, { length: width, thickness: frame.section.cover }])
    : openTorsion(channel);
  const shear = modulus.value / (2 * (1 + poisson.value));
  const across = runs.find((other) => other.side !== run.side && other.beams[0]?.line === run.beams[0]?.line);
  const alongX = run.side === 'far' || run.side === 'near';
  return {
    name: `${run.side} rail`,
    span: run.length,
    ends: 'supported',
    bending: modulus.value * section.bendingInZ,
    torsion: shear * torsion,
    weight,
    weightLever: width / 2,
    pressLever: width / 2,
    piece: Math.max(...run.segments.map((segment) => segment.length)),
    reach: (alongX ? grid.depth : grid.width) + (across === undefined ? 0 : 2 * frame.section.socketFront),
  };
}

/** Everything that is placed [g], printed parts as if solid. */
function kitMass(kit: Kit, kernel: MeasuringKernel): number {
  const masses = new Map(
    [...kit.parts].map(([id, part]) => [id, (kernel.volume(part.solid) / 1000) * part.densityGcm3]),
  );
  return kit.placements.reduce((sum, { part }) => sum + (masses.get(part) ?? 0), 0);
}
