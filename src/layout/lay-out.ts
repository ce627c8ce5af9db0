/**
 * Solves what the preset leaves open, in the order in which one thing decides the next: beams, mount width, leaf and mount,
 * socket, cross-section, rails and their seams, deck, hood.
 */
import { type Mistake, PresetError } from '../errors.js';
import type { Solved, Spec } from '../spec/spec.js';
import { rad } from '../units.js';
import { layDeck } from './deck.js';
import { side, upTenth } from './fits.js';
import { layFrame, layJoint, WALL } from './frame.js';
import { type Grid, layGrid } from './grid.js';
import { layHood } from './hood.js';
import type { Layout } from './layout.js';
import { collarRadius, LEAST_BARREL, leastMountWidth } from './mount-room.js';
import { layMountWithLeaf } from './mount-solve.js';
import { plugHalf } from './openings.js';
import { layRuns } from './runs.js';
import { laySocket, leastSocketPitch } from './socket.js';

/** Width of a mount where the pitch leaves room: stiffer in yaw and easier to hold than the least. */
const MOUNT_WIDTH = 12;
/** Rib between two mounts, at least. */
const RIB = 1.2;
/** Tilt wanted, in Rayleigh parameters of the boresight error: 99 barrels in 100 are within 3.03. */
const TILT_SIGMAS = 3;
/** Free space around a beam [mm], in all. */
const AROUND_BEAM = 1;

/** @throws {PresetError} when the demands can't be met together: says which, and by how much */
export function layOut(spec: Spec): Layout {
  const { grid, solved: fromGrid } = layGrid(spec, 2 * layJoint(spec, spec.frame.wall ?? WALL).leg + 1);
  const solved: Solved[] = [...fromGrid];
  const fail = (mistakes: readonly Mistake[]): never => {
    throw new PresetError(spec.name, mistakes);
  };

  if (spec.emitters.part.length.value < LEAST_BARREL)
    fail([
      {
        code: 'preset/emitter-too-short',
        path: 'emitters.part',
        message: `a body of ${spec.emitters.part.length.value} mm is too short for seat, clamp and collar`,
        hint: `at least ${LEAST_BARREL} mm: push a shorter one into a sleeve of that length and give the sleeve's figures`,
      },
    ]);
  const widthLeast = Math.max(spec.leaf.width ?? 0, leastMountWidth(spec));
  const between = 2 * side(spec, 'snug') + RIB;
  const collars = 2 * collarRadius(spec) + 0.4;
  const least = upTenth(Math.max(widthLeast + between, collars, leastSocketPitch(spec)));
  if (grid.leastPitch < least - 1e-9)
    fail([
      {
        code: 'preset/pitch-too-small',
        path: 'grid.pitch',
        message: `beams ${grid.leastPitch} mm apart leave no room for mounts and sockets side by side`,
        hint: `the least pitch for this emitter and receiver is ${least} mm`,
      },
    ]);
  const width = spec.leaf.width ?? Math.min(MOUNT_WIDTH, Math.floor((grid.leastPitch - between) * 10) / 10);
  if (spec.leaf.width === undefined)
    solved.push({
      path: 'leaf.width',
      value: width,
      why: `the mount's width: ${MOUNT_WIDTH} mm where the pitch allows it, never less than the ${widthLeast} mm that barrel, nuts and pin need`,
    });

  const tiltDeg = spec.aim.tiltDeg ?? Math.ceil(2 * TILT_SIGMAS * spec.emitters.part.boresightSigmaDeg.value) / 2;
  if (spec.aim.tiltDeg === undefined)
    solved.push({
      path: 'aim.tilt',
      value: tiltDeg,
      why: `either way from level: three times the boresight error's Rayleigh parameter of ${spec.emitters.part.boresightSigmaDeg.value}°, which 99 barrels in 100 stay within`,
    });

  const { mount, demands, solved: fromLeaf } = layMountWithLeaf(spec, { width, tilt: rad(tiltDeg) });
  solved.push(...fromLeaf);
  const socket = laySocket(spec, { axis: mount.axis, pitch: grid.leastPitch });
  solved.push({
    path: 'receivers.slide',
    value: socket.slide,
    why: 'either way across the beam, as far as neighbouring sockets leave room',
  });
  const frame = layFrame(spec, { mount, socket });
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
  const runs = layRuns(spec, {
    grid,
    frame,
    taken: {
      emitter: Math.max(mount.width, 2 * plug + 0.2),
      receiver: Math.max(socket.width + 2 * socket.slide, 2 * plug + 0.2),
    },
    longest,
  });
  const deck = layDeck(spec, { grid, frame, bed });
  if (!runs || !deck || frame.section.width > Math.min(...bed))
    return fail([
      {
        code: 'preset/bed-too-small',
        path: 'printer',
        message: `the rails, ${frame.section.width} mm wide, can't be cut between beams into pieces that a bed of ${bed[0]} × ${bed[1]} mm takes`,
        hint: `a larger bed, or cells narrower than ${Math.floor(longest / 2)} mm`,
      },
    ]);
  solved.push(...seams(runs), {
    path: 'frame.height',
    value: tenth(frame.section.height + frame.section.cover),
    why: `rail with cover: the beam's axis stands ${tenth(mount.axis)} mm above the rail's floor, the cover's top ${tenth(frame.section.coverBottom + frame.section.cover)} mm above the deck`,
  });
  const hood = layHood(spec, { grid, frame, runs, tiltDeg, longest });
  return { spec, grid, demands, mount, socket, frame, runs, deck, hood, corridor: corridor(spec, grid), solved };
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
