/**
 * Solves what the preset leaves open, in the order in which one thing decides the next: beams, mount width, leaf and mount,
 * socket, cross-section, rails and their seams, deck, hood.
 */
import { type Mistake, PresetError } from '../errors.js';
import type { Solved, Spec } from '../spec/spec.js';
import { rad } from '../units.js';
import { layCable } from './cable.js';
import { layDeck } from './deck.js';
import { deckScrewsIn, holdDeck } from './deck-screws.js';
import { upTenth } from './fits.js';
import { layFrame, layJoint, sunkRim, WALL } from './frame.js';
import { type Grid, layGrid } from './grid.js';
import { layHood } from './hood.js';
import type { Layout } from './layout.js';
import { askMount } from './mount-ask.js';
import { layMountWithLeaf, type MountSolution } from './mount-solve.js';
import { plugHalf } from './openings.js';
import { layRuns } from './runs.js';
import { laySocket } from './socket.js';
import { emitterWindow } from './window.js';

/** Free space around a beam [mm], in all. */
const AROUND_BEAM = 1;

/** @throws {PresetError} when the demands can't be met together: says which, and by how much */
export function layOut(spec: Spec): Layout {
  const { grid, solved: fromGrid } = gridOf(spec);
  const ask = askMount(spec, grid);
  const found = layMountWithLeaf(spec, { width: ask.width, tilt: rad(ask.tiltDeg) });
  return layAround(spec, {
    grid,
    tiltDeg: ask.tiltDeg,
    ...found,
    solved: [...fromGrid, ...ask.solved, ...found.solved],
  });
}

/** Where the beams cross: the same whatever the mounts are. */
export const gridOf = (spec: Spec): ReturnType<typeof layGrid> =>
  layGrid(spec, 2 * layJoint(spec, spec.frame.wall ?? WALL).leg + 1);

export interface Around extends MountSolution {
  readonly grid: Grid;
  readonly tiltDeg: number;
}

/**
 * Lays out the rest of a kit around a mount that is solved already.
 *
 * @throws {PresetError} when it doesn't go together
 */
export function layAround(spec: Spec, { grid, tiltDeg, mount, demands, solved: before }: Around): Layout {
  const solved: Solved[] = [...before];
  const fail = (mistakes: readonly Mistake[]): never => {
    throw new PresetError(spec.name, mistakes);
  };
  const socket = laySocket(spec, { axis: mount.axis, pitch: grid.leastPitch });
  solved.push({
    path: 'receivers.slide',
    value: socket.slide,
    why: 'either way across the beam, as far as neighbouring sockets leave room',
  });
  const frame = layFrame(spec, { mount, socket });
  // The sill under the deck holds the brackets' screw heads: beams too high leave it too low.
  const sillLeast = 2 * sunkRim(spec) + 0.8;
  if (frame.section.sillTop < sillLeast) {
    const most = Math.floor(10 * (spec.beam.height - (sillLeast - frame.section.sillTop))) / 10;
    fail([
      {
        code: 'preset/beam-too-high',
        path: 'beam.height',
        message: `beams ${spec.beam.height} mm above a deck ${frame.section.deck} mm thick leave no sill for the screws under it`,
        hint: `at most ${most} mm, or a thinner deck`,
      },
    ]);
  }
  const outermost = Math.min(
    grid.columns[0]!,
    grid.rows[0]!,
    grid.width - grid.columns.at(-1)!,
    grid.depth - grid.rows.at(-1)!,
  );
  const plug = plugHalf({ spec, mount, socket, section: frame.section, pitch: grid.leastPitch });
  const marginLeast = upTenth(frame.tab.reach + 0.4 + plug);
  if (outermost < marginLeast - 1e-9)
    fail([
      {
        code: 'preset/margin-too-small',
        path: 'frame.margin',
        message: `${upTenth(outermost)} mm from the outermost beam to the field's wall bring the openings over its mount under a corner post`,
        hint: `at least ${marginLeast} mm`,
      },
    ]);
  const bed = usableBed(spec);
  const longest = Math.max(...bed);
  const rails = layRuns(spec, {
    grid,
    frame,
    taken: {
      emitter: Math.max(mount.width, 2 * plug + 0.2),
      receiver: Math.max(socket.width + 2 * socket.slide, 2 * plug + 0.2),
    },
    longest,
  });
  const deck = layDeck(spec, { grid, frame, bed });
  if (!rails || !deck || frame.section.width > Math.min(...bed))
    return fail([
      {
        code: 'preset/bed-too-small',
        path: 'printer',
        message: `the rails, ${frame.section.width} mm wide, can't be cut between beams into pieces that a bed of ${bed[0]} × ${bed[1]} mm takes`,
        hint: `a larger bed, or cells narrower than ${Math.floor(longest / 2)} mm`,
      },
    ]);
  const lowest = deck.splices.length > 0 ? frame.section.deck + deck.ribDepth + deck.plate.thickness : 0;
  if (lowest > -frame.section.bottom) {
    const most = Math.floor(10 * (spec.beam.height - lowest - frame.section.bottom)) / 10;
    fail([
      {
        code: 'preset/beam-too-high',
        path: 'beam.height',
        message: `beams ${spec.beam.height} mm above a deck in pieces bring its splice plates ${upTenth(lowest + frame.section.bottom)} mm below the rails, which stand on the table`,
        hint: `at most ${most} mm, a thinner deck, or a bed that takes it whole`,
      },
    ]);
  }
  const deckHold = holdDeck(spec, { grid, frame, runs: rails, deck });
  const runs = rails.map((run) => ({
    ...run,
    segments: run.segments.map((segment) => ({ ...segment, deckScrews: deckScrewsIn(deckHold, run, segment) })),
  }));
  solved.push(...seams(runs), {
    path: 'frame.height',
    value: tenth(frame.section.height + frame.section.cover),
    why: `rail with cover: the beam's axis stands ${tenth(mount.axis)} mm above the rail's floor, the cover's top ${tenth(frame.section.coverBottom + frame.section.cover)} mm above the deck`,
  });
  const cable = layCable(spec, { runs, section: frame.section });
  solved.push({
    path: 'frame.cable_slot',
    value: cable.width,
    why:
      cable.takes === 1
        ? `${cable.height} mm high, it takes all wires of the two rails that meet at a corner`
        : `as long as a corner post's wall allows: ${Math.floor(100 * cable.takes)} % of the wires of the two rails that meet there; lead the rest out at another corner`,
  });
  const free = corridor(spec, grid);
  const window = emitterWindow(spec, { mount, section: frame.section, corridor: free });
  solved.push(window.solved);
  const hood = layHood(spec, { grid, frame, runs, tiltDeg, longest });
  return {
    spec,
    grid,
    demands,
    mount,
    socket,
    frame,
    runs,
    deck,
    window: window.radius,
    cable,
    deckHold,
    hood,
    corridor: free,
    solved,
  };
}

/** The beam at the far aperture, taken as a cone from the emitter, as far as the aperture takes it, with air around it. */
function corridor(spec: Spec, grid: Grid): number {
  const { beamDiameter, divergenceMrad } = spec.emitters.part;
  const across = Math.max(grid.width, grid.depth);
  const beam = beamDiameter.value + (divergenceMrad.value / 1000) * across;
  // What is wider than the aperture never reaches the receiver.
  return upTenth(Math.min(beam, spec.receivers.part.apertureDiameter.value) + AROUND_BEAM);
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

function usableBed({ printer: { machine } }: Spec): readonly [number, number] {
  const edge = 2 * machine.edgeMargin.value;
  return [machine.bedX.value - edge, machine.bedY.value - edge];
}

function seams(runs: Layout['runs']): Solved[] {
  return runs
    .filter((run) => run.seams.length > 0)
    .map((run) => ({
      path: `frame.seams.${run.side}`,
      value: run.seams.map((at) => Math.round(at * 100) / 100),
      why: `this rail is ${run.length} mm long, more than the bed takes: cut midway between beams, into the fewest even pieces`,
    }));
}
