/** A board with its socket strips, as a simple solid: x along it, y up from its lower edge, its front at z = 0, sockets toward +z. */
import { SOCKET } from '../layout/boards/sizes.js';
import type { Board, SocketStrip } from '../layout/boards/types.js';
import type { Kernel, Solid } from '../solid/kernel.js';
import { asHoles, circle, rectangle, together } from '../solid/outlines.js';
import { prism } from '../solid/shapes.js';

/** How far a strip's body is drawn into the board: what only touched would be no one solid. */
const INTO = 0.1;
/** Around a leg in its socket, each side; a strip's body beyond its last hole. */
const LEG_PLAY = 0.12;
const BEYOND = 0.25;

/** @param leg - thickness of a receiver's leg, which goes into a socket [mm] */
export function drawBoard(k: Kernel, board: Board, leg: number): Solid {
  const { length, height, thickness, holes, strips } = board;
  // Socket pins fill their holes.
  const open = holes.filter(({ use }) => use !== 'leg').map(({ x, y, d }) => circle([x, y], d / 2, { fit: 'hole' }));
  const plate = together(rectangle(0, 0, length, height), ...open.map(asHoles));
  return k.union([
    prism(k, plate, { axis: 'z', from: -thickness, to: 0 }),
    ...strips.map((strip) => prism(k, stripOutline(strip, leg), { axis: 'z', from: -INTO, to: SOCKET.height })),
  ]);
}

function stripOutline({ x, y, holes, pitch }: SocketStrip, leg: number) {
  const bore = leg / 2 + LEG_PLAY;
  const half = ((holes - 1) * pitch) / 2 + bore + BEYOND;
  const up = SOCKET.breadth / 2;
  const bores = Array.from({ length: holes }, (_, i) => {
    const at = x + (i - (holes - 1) / 2) * pitch;
    return asHoles(rectangle(at - bore, y - bore, at + bore, y + bore));
  });
  return together(rectangle(x - half, y - up, x + half, y + up), ...bores);
}
