/** Receivers: each socket with its receiver and lid, slid and fixed from above. */

import { threads } from '../components/index.js';
import { side } from '../layout/fits.js';
import type { RailRun } from '../layout/runs.js';
import { drawReceiver } from '../parts/bought.js';
import { drawReceiverSocket, drawSocketLid } from '../parts/receiver-socket.js';
import { frame, multiply, translation } from '../solid/matrix.js';
import type { Matrix } from '../solid/mesh.js';
import { type Bench, formedOverlap, hexKey, move } from './bench.js';
import { boardAt, type PlacedBoard, plugMoves } from './boards.js';
import { railName } from './mounts.js';

export interface PlacedReceiver {
  /** `column-3`. */
  readonly beam: string;
  readonly socket: string;
  readonly receiver: string;
  readonly lid: string;
  readonly screw: string;
}

/** From a socket's coordinates (w from the rail's floor) to its rail's. */
export function socketInRail(b: Bench, at: number): Matrix {
  const { section } = b.layout.frame;
  return frame([0, -1, 0], [1, 0, 0], [0, 0, 1], [at, section.socketFront, section.floor]);
}

export function placeReceivers(b: Bench, run: RailRun): PlacedReceiver[] {
  const { k, layout } = b;
  const { socket: s, spec } = layout;
  return run.beams.map((beam) => {
    const stem = `${beam.line}-${beam.index}`;
    const base = multiply(run.matrix, socketInRail(b, beam.at));
    const rail = railName(run, beam.at);
    const socket = b.place({
      name: `${stem}-socket`,
      part: b.printed('receiver-socket', 'receiver socket', () => drawReceiverSocket(k, spec, s)),
      matrix: multiply(base, translation([0, 0, s.bottom])),
      touches: [rail],
    });
    const receiver = b.place({
      name: `${stem}-receiver`,
      part: b.bought(
        {
          id: spec.receivers.name,
          title: spec.receivers.part.title,
          material: 'epoxy',
          densityGcm3: 1.8,
          order: { standard: '', size: '', lengthMm: null },
        },
        () => drawReceiver(k, spec.receivers.part, s),
      ),
      matrix: multiply(base, translation([s.tube.end - side(spec, 'slide'), 0, s.axis])),
      touches: [socket, ...boardAt(b, run, stem)],
    });
    b.fit({
      a: socket,
      b: receiver,
      what: 'the receiver in its pocket',
      fitClass: 'slide',
      drawn: side(spec, 'slide'),
    });
    const lid = b.place({
      name: `${stem}-lid`,
      part: b.printed('socket-lid', 'lid of a receiver socket', () => drawSocketLid(k, spec, s)),
      matrix: multiply(base, frame([1, 0, 0], [0, -1, 0], [0, 0, -1], [0, 0, s.top + s.lid.thickness])),
      touches: [socket],
    });
    b.fit({
      a: socket,
      b: lid,
      what: "the lid's plug between the cheeks",
      fitClass: 'press',
      drawn: side(spec, 'press'),
    });
    const head = threads[spec.screws.fix].capHeight.value;
    const screw = b.screw({
      name: `${stem}-socket-screw`,
      head: 'cap',
      size: spec.screws.fix,
      length: s.screwLength,
      matrix: multiply(base, translation([s.foot.screwAt, 0, s.foot.top + head])),
      overlaps: [formedOverlap(layout, { with: rail, engaged: s.engaged, standing: true })],
      into: { kind: 'formed', part: rail, engaged: s.engaged },
      tipRoom: 1,
      when: 'covers on',
      through: [socket],
    });
    return { beam: stem, socket, receiver, lid, screw };
  });
}

export function socketSteps(b: Bench, receivers: readonly PlacedReceiver[]): void {
  const { section } = b.layout.frame;
  b.step(
    'Solder the wires to each receiver away from the plastic, drop it into its socket, legs up, bend them back over the stop, and press the lid on',
    {
      joins: receivers.flatMap((r) => [r.socket, r.lid]),
      hardware: receivers.map((r) => r.receiver),
      moves: receivers.flatMap((r) => [
        move(r.receiver, [0, 0, -1], 14, { inFrameOf: r.socket }),
        move(r.lid, [0, 0, -1], 10, { inFrameOf: r.socket }),
      ]),
    },
  );
  b.step('Set each socket on its ridge, in the middle of its slide, and hold it with a screw from above', {
    joins: [],
    hardware: receivers.map((r) => r.screw),
    moves: receivers.flatMap((r) => [
      move(r.socket, [0, 0, -1], section.height + 5),
      move(r.screw, [0, 0, -1], section.height + 5, { tool: hexKey(b.layout.spec.screws.fix, 'cap').name }),
    ]),
  });
}

/** With carriers: sockets first, then each carrier with all its receivers, then the lids. */
export function carrierSteps(
  b: Bench,
  { receivers, carriers }: { readonly receivers: readonly PlacedReceiver[]; readonly carriers: readonly PlacedBoard[] },
): void {
  const travel = b.layout.frame.section.height + 5;
  b.step('Set each socket on its ridge, in the middle of its slide, and hold it with a screw from above', {
    joins: receivers.map((r) => r.socket),
    hardware: receivers.map((r) => r.screw),
    moves: receivers.flatMap((r) => [
      move(r.socket, [0, 0, -1], travel),
      move(r.screw, [0, 0, -1], travel, { tool: hexKey(b.layout.spec.screws.fix, 'cap').name }),
    ]),
  });
  const of = new Map(receivers.map((r) => [r.beam, r.receiver]));
  const plugged = carriers.map((carrier) => ({ carrier, own: carrier.beams.map((beam) => of.get(beam)!) }));
  b.step(
    'Solder socket strips, pull-ups and wires to each carrier; bend each receiver’s legs up and back, cut them to length and plug them into the middle row: the row above is for a socket slid to the right, the row below for one slid to the left, seen from the field',
    {
      joins: [],
      hardware: plugged.flatMap(({ carrier, own }) => [carrier.name, ...own]),
      moves: plugged.flatMap(({ carrier, own }) => plugMoves(carrier, own)),
    },
  );
  b.step('Lower each carrier with its receivers: they drop into their sockets, its lower edge into the guides', {
    joins: [],
    hardware: [],
    moves: carriers.map(({ name }) => move(name, [0, 0, -1], travel)),
  });
  b.step('Press a lid on each socket', {
    joins: receivers.map((r) => r.lid),
    hardware: [],
    moves: receivers.map((r) => move(r.lid, [0, 0, -1], 10, { inFrameOf: r.socket })),
  });
}
