/** What keeps rails, sockets and covers from going together around the mounts, each with the figure that would do. mm. */
import { threads } from '../components/index.js';
import type { Mistake } from '../errors.js';
import type { Spec } from '../spec/spec.js';
import { corridorOf } from './corridor.js';
import { type Field, marginMistakes } from './field.js';
import { downTenth, upTenth } from './fits.js';
import { sunkRim } from './frame.js';
import { openingsHalf, PLUG_APART } from './openings.js';
import { GROOVE_ROOF, TUBE_HELD } from './socket.js';
import { ABOVE_DECK, windowWeb } from './window.js';

/** Between the beam's way and the window's edge over the deck: facets. */
const OVER_DECK = 0.1;
/** The bore is drawn with facets. */
const IN_BORE = 0.1;
/** Between the beam's way and the head of the screw below it. */
const OVER_HEAD = 0.2;

export function aroundMistakes(spec: Spec, field: Field<unknown>): readonly Mistake[] {
  return [
    ...beamHeight(spec, field),
    ...marginMistakes(spec, field),
    ...openingsApart(spec, field),
    ...windowsApart(spec, field),
    ...receiver(spec, field),
    ...overScrew(spec, field),
    ...wallHoldsHead(spec, field),
    ...throughSeat(spec, field),
  ];
}

/** Countersunk heads in the rails' outer walls end there: behind the wall the screw forms its thread. */
function wallHoldsHead(spec: Spec, { frame: { section, tab } }: Field<unknown>): Mistake[] {
  const head = threads[spec.screws.fix].sunkHeight.value;
  if (section.wall + tab.gap >= head - 1e-9) return [];
  return [
    {
      code: 'preset/wall-too-thin',
      path: 'frame.wall',
      message: `walls ${section.wall} mm thick don't hold the countersunk heads of ${spec.screws.fix}, ${head} mm high`,
      hint: `at least ${upTenth(head - tab.gap)} mm, or a smaller screws.fix`,
    },
  ];
}

function beamHeight(spec: Spec, { frame: { section }, grid }: Field<unknown>): Mistake[] {
  const { height } = spec.beam;
  // The sill under the deck holds the brackets' screw heads: beams too high leave it too low.
  const sillLeast = 2 * sunkRim(spec) + 0.8;
  if (section.sillTop < sillLeast)
    return [
      {
        code: 'preset/beam-too-high',
        path: 'beam.height',
        message: `beams ${height} mm above a deck ${section.deck} mm thick leave no sill for the screws under it`,
        hint: `at most ${downTenth(height - (sillLeast - section.sillTop))} mm, or a thinner deck`,
      },
    ];
  const corridor = corridorOf(spec, grid);
  const heightLeast = upTenth(corridor / 2 + ABOVE_DECK + OVER_DECK);
  if (height >= heightLeast - 1e-9) return [];
  return [
    {
      code: 'preset/beam-too-low',
      path: 'beam.height',
      message: `beams ${height} mm above the deck graze it: the way of a beam is ${corridor} mm wide`,
      hint: `at least ${heightLeast} mm, or a receivers.part.aperture_diameter or beam that is narrower`,
    },
  ];
}

/** The openings over neighbouring mounts or sockets, and their plugs, lie side by side. */
function openingsApart(spec: Spec, { mount, socket, frame, grid }: Field<unknown>): Mistake[] {
  const web = Math.max(PLUG_APART, 2 * spec.printer.machine.lineWidth.value);
  const least = upTenth(2 * openingsHalf({ spec, mount, socket, section: frame.section }) + web);
  if (grid.leastPitch >= least - 1e-9) return [];
  const high = upTenth(frame.section.height - frame.section.floor - mount.axis);
  return [
    {
      code: 'preset/pitch-too-small',
      path: 'grid.pitch',
      message: `beams ${grid.leastPitch} mm apart leave no web between the openings in the cover, which lies ${high} mm above the beams`,
      hint: `at least ${least} mm, or a lower receivers.part: the openings widen with the cover's height`,
    },
  ];
}

/** The windows of neighbouring emitters leave the beams' ways free and a web between. */
function windowsApart(spec: Spec, { grid }: Field<unknown>): Mistake[] {
  const corridor = corridorOf(spec, grid);
  const least = upTenth(corridor + OVER_DECK + windowWeb(spec) + 0.2);
  if (grid.leastPitch >= least - 1e-9) return [];
  return [
    {
      code: 'preset/pitch-too-small',
      path: 'grid.pitch',
      message: `beams ${grid.leastPitch} mm apart leave no wall between their windows: the way of a beam is ${corridor} mm wide`,
      hint: `at least ${least} mm, or a receivers.part.aperture_diameter or beam that is narrower`,
    },
  ];
}

function receiver(spec: Spec, { socket }: Field<unknown>): Mistake[] {
  const { sensorFromTop, apertureDiameter, width, height } = spec.receivers.part;
  const mistakes: Mistake[] = [];
  const floor = socket.bottom + socket.groove.depth + GROOVE_ROOF;
  if (socket.pocket.floor < floor - 1e-9)
    mistakes.push({
      code: 'preset/receiver-too-deep',
      path: 'receivers.part.sensor_from_top',
      message: `a body that reaches ${sensorFromTop.value} mm below the beam, with its legs up, comes through the floor of its socket`,
      hint: `at most ${downTenth(socket.axis - floor)} mm: the beam stands ${upTenth(socket.axis - socket.bottom)} mm above the socket's underside`,
    });
  const corner = Math.min(
    ...[sensorFromTop.value, height.value - sensorFromTop.value].map((along) => Math.hypot(width.value / 2, along)),
  );
  const most = downTenth(2 * (corner - TUBE_HELD));
  if (apertureDiameter.value > most + 1e-9)
    mistakes.push({
      code: 'preset/aperture-too-wide',
      path: 'receivers.part.aperture_diameter',
      message: `an aperture ${apertureDiameter.value} mm wide does not hold a body ${width.value} mm wide and ${height.value} mm high, which rests against its rim`,
      hint: `at most ${most} mm`,
    });
  return mistakes;
}

/** A short body stands back in its seat, so that the clamp's nut finds room over it: the beam passes the rest of the bore. */
function throughSeat(spec: Spec, { mount, grid }: Field<unknown>): Mistake[] {
  const corridor = corridorOf(spec, grid);
  const back = -mount.barrel.front;
  const bore = 2 * mount.barrel.radius - IN_BORE;
  if (back <= 0 || corridor <= bore + 1e-9) return [];
  const { length } = spec.emitters.part;
  return [
    {
      code: 'preset/emitter-too-short',
      path: 'emitters.part.length',
      message: `a body ${length.value} mm long stands ${upTenth(back)} mm back in its seat, where the way of a beam, ${corridor} mm wide, has no room`,
      hint: `at least ${upTenth(length.value + back)} mm, or a beam narrower than ${downTenth(bore - 1)} mm`,
    },
  ];
}

/** The beam passes over the head of the screw by which its socket slides. */
function overScrew(spec: Spec, { socket, grid }: Field<unknown>): Mistake[] {
  const corridor = corridorOf(spec, grid);
  const room = 2 * (socket.axis - socket.foot.top - threads[spec.screws.fix].capHeight.value - OVER_HEAD);
  if (corridor <= room + 1e-9) return [];
  const { apertureDiameter } = spec.receivers.part;
  return [
    {
      code: 'preset/aperture-too-wide',
      path: 'receivers.part.aperture_diameter',
      message: `the way of a beam, ${corridor} mm wide with an aperture of ${apertureDiameter.value} mm, meets the screw that holds its socket`,
      hint: `at most ${downTenth(apertureDiameter.value - (corridor - room))} mm, or a smaller screws.fix`,
    },
  ];
}
