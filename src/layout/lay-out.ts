/**
 * Solves what the preset leaves open, in the order in which one thing decides the next: beams, mount width, leaf and mount,
 * socket, cross-section, rails and their seams, deck, hood.
 */
import { type Mistake, PresetError } from '../errors.js';
import { usableBed } from '../printers/usable-bed.js';
import type { Solved, Spec } from '../spec/spec.js';
import { rad } from '../units.js';
import { aroundMistakes } from './around.js';
import { bayIn } from './bay/hold.js';
import { layBay } from './bay/lay-bay.js';
import { guidesOf } from './boards/guides.js';
import { layBoards } from './boards/lay-boards.js';
import { layCable } from './cable.js';
import { corridorOf } from './corridor.js';
import { layDeck } from './deck.js';
import { deckScrewsIn, holdDeck } from './deck-screws.js';
import { type Field, layField } from './field.js';
import { upTenth } from './fits.js';
import { layHood } from './hood.js';
import type { Layout } from './layout.js';
import { pinnedMistakes } from './leaf-size.js';
import { aimInputs } from './light/aim.js';
import { lineWays } from './light/lines.js';
import { strayError } from './light/stray.js';
import { leanWhereItHelps } from './light/wedge.js';
import { layMountWithLeaf, type MountSolution } from './mount-solve.js';
import { plugHalf } from './openings.js';
import { layRuns, type RunOptions } from './runs.js';
import { emitterWindow } from './window.js';

/**
 * @returns the kit in numbers; its `spec` has the lean that was solved
 * @throws {PresetError} when the demands can't be met together: says which, and by how much
 */
export function layOut(spec: Spec): Layout {
  const plain = layOnce(spec);
  return spec.aim.wedgeDeg === undefined ? leanWhereItHelps(plain, layOnce) : plain;
}

/** @returns the spec with the lean that its kit gives the barrels; as it is where none can be laid out */
export function withLean(spec: Spec): Spec {
  if (spec.aim.wedgeDeg !== undefined) return spec;
  try {
    return layOut(spec).spec;
  } catch (error) {
    if (!(error instanceof PresetError)) throw error;
    return spec;
  }
}

/** With the lean that the preset gives its barrels, or none. */
function layOnce(spec: Spec): Layout {
  const own = pinnedMistakes(spec);
  if (own.length > 0) throw new PresetError(spec.name, own);
  // A mount that can't be solved throws: there always is one.
  return layAround(
    spec,
    layField(spec, ({ width, tiltDeg }) => layMountWithLeaf(spec, { width, tilt: rad(tiltDeg) }))!,
  );
}

/**
 * Lays out the rest of a kit around mounts and field that are solved already.
 *
 * @throws {PresetError} when it doesn't go together
 */
export function layAround(spec: Spec, field: Field<MountSolution>): Layout {
  const { grid, ask, found, socket, frame } = field;
  const { mount, demands } = found;
  const fail = (mistakes: readonly Mistake[]): never => {
    throw new PresetError(spec.name, mistakes);
  };
  const around = aroundMistakes(spec, field);
  if (around.length > 0) fail(around);
  const solved: Solved[] = [
    ...field.solved,
    ...ask.solved,
    ...found.solved,
    {
      path: 'receivers.slide',
      value: socket.slide,
      why: 'either way across the beam, as far as neighbouring sockets leave room',
    },
  ];
  const plug = plugHalf({ spec, mount, socket, section: frame.section, pitch: grid.leastPitch });
  const bed = usableBed(spec.printer.machine);
  const longest = Math.max(...bed);
  const taken = {
    emitter: Math.max(mount.width, 2 * plug + 0.2),
    receiver: Math.max(socket.width + 2 * socket.slide, 2 * plug + 0.2),
  };
  const rails = layRuns(spec, { grid, frame, taken, longest });
  const deck = layDeck(spec, { grid, frame, bed });
  if (!rails || !deck || frame.section.width + frame.tab.reach > Math.min(...bed)) {
    const larger = largerBed(spec, { grid, frame, taken, bed });
    const cells = Math.floor(longest / 2);
    const wide = [grid.columnEdges, grid.rowEdges].some((edges) =>
      edges.slice(1).some((edge, i) => edge - edges[i]! > cells),
    );
    return fail([
      {
        code: 'preset/bed-too-small',
        path: 'printer',
        message: `the rails, ${frame.section.width} mm wide, can't be cut between beams into pieces that a bed of ${bed[0]} × ${bed[1]} mm takes`,
        hint: `a bed of at least ${larger[0]} × ${larger[1]} mm within its margins${wide ? `, or cells narrower than ${cells} mm` : ''}`,
      },
    ]);
  }
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
  const bay = layBay(spec, { grid, frame, runs: rails });
  solved.push(...(bay?.solved ?? []));
  const boards = layBoards(spec, { runs: rails, frame, socket });
  const runs = rails.map((run) => ({
    ...run,
    segments: run.segments.map((segment) => ({
      ...segment,
      deckScrews: deckScrewsIn(deckHold, run, segment),
      ...bayIn(bay?.bay ?? null, run, segment),
      ...(boards && { guides: guidesOf(boards, { run, segment }) }),
    })),
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
  const free = corridorOf(spec, grid);
  const window = emitterWindow(spec, {
    mount,
    section: frame.section,
    corridor: free,
    leastPitch: grid.leastPitch,
  });
  solved.push(window.solved);
  const ways = lineWays(spec, { grid, mount, socket, section: frame.section });
  const inputs = aimInputs(spec, { ways, tilt: mount.leaf.tilt, slide: socket.slide });
  const error = strayError(inputs);
  const { hood, solved: hoodSolved } = layHood(spec, { grid, frame, runs, ways, error, longest });
  solved.push(hoodSolved);
  return {
    spec,
    grid,
    demands,
    mount,
    socket,
    frame,
    runs,
    deck,
    ways,
    aim: inputs,
    window: window.radius,
    cable,
    bay: bay?.bay ?? null,
    deckHold,
    hood,
    ...(boards && { boards }),
    corridor: free,
    solved,
  };
}

const tenth = (value: number): number => Math.round(value * 10) / 10;

function seams(runs: Layout['runs']): Solved[] {
  return runs
    .filter((run) => run.seams.length > 0)
    .map((run) => ({
      path: `frame.seams.${run.side}`,
      value: run.seams.map((at) => Math.round(at * 100) / 100),
      why: `this rail is ${run.length} mm long, more than the bed takes: cut midway between beams, into the fewest even pieces`,
    }));
}

/** @returns the next bed, both sides longer by as much, that takes rails and deck in pieces [mm] */
function largerBed(
  spec: Spec,
  { grid, frame, taken, bed }: Omit<RunOptions, 'longest'> & { readonly bed: readonly [number, number] },
): readonly [number, number] {
  for (let more = 1; ; more++) {
    const sides = [Math.floor(bed[0]) + more, Math.floor(bed[1]) + more] as const;
    const takes =
      frame.section.width + frame.tab.reach <= Math.min(...sides) &&
      layRuns(spec, { grid, frame, taken, longest: Math.max(...sides) }) !== null &&
      layDeck(spec, { grid, frame, bed: sides }) !== null;
    // The longest field goes onto it whole.
    if (takes || more > grid.width + grid.depth) return sides;
  }
}
