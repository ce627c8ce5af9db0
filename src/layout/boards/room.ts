/**
 * Room for boards in a rail's cross-section. A board stands upright along the rail, its front toward the field, behind what is plugged into
 * it; behind it pass the wires, and the tabs and plates on the outer wall. Rail coordinates, mm.
 */

import { threads } from '../../components/index.js';
import type { Spec } from '../../spec/spec.js';
import { downTenth, side, upTenth } from '../fits.js';
import type { RailKind } from '../sides.js';
import type { SocketLayout } from '../socket.js';
import {
  BACK_GAP,
  COVER_AIR,
  EDGE_WEB,
  FRONT_GAP,
  GUIDE,
  legDrill,
  MOUNT_RING,
  RASTER,
  RESISTOR_DRILL,
  RESISTOR_ROW,
  SOCKET,
  SOLDER,
  WAY_BELOW,
} from './sizes.js';

/**
 * Where boards stand. Carriers and supply boards share heights, not the plane: mounts reach farther back than sockets do, and a receiver's
 * legs are short.
 */
export interface BoardPlane {
  /** y of the boards' fronts. */
  readonly front: Readonly<Record<RailKind, number>>;
  readonly thickness: number;
  /** z of its lower edge and of its upper edge. */
  readonly low: number;
  readonly top: number;
  /** Above the lower edge: the middle row of sockets, where the legs come; and the mounting holes. */
  readonly legs: number;
  readonly mounts: number;
}

export interface BoardRoom extends Omit<BoardPlane, 'top'> {
  /** Least z of the cover's underside, and least y of the outer wall's inner face. */
  readonly cover: number;
  readonly wall: number;
}

/** ISO 273, medium: M2.5 in every kit, so that boards are alike. */
export const mountDrill = (): number => threads['M2.5'].clearance.value;
const mountReach = (): number => mountDrill() / 2 + MOUNT_RING;

export interface RoomOptions {
  readonly socket: SocketLayout;
  readonly floor: number;
  /** y of the rear of what stands in the receiver rail; and of wires that swing behind the mounts. */
  readonly sockets: number;
  readonly wires: number;
  /** What stands on the outer wall, its gap included. */
  readonly onWall: number;
}

/** @returns undefined where the preset asks for no boards */
export function boardRoom(
  { boards, ...spec }: Spec,
  { socket, floor, sockets, wires, onWall }: RoomOptions,
): BoardRoom | undefined {
  if (!boards) return undefined;
  const cheek = GUIDE.cheek + side(spec, 'slide');
  const front = {
    receiver: upTenth(sockets + FRONT_GAP + SOCKET.height),
    // Mounts are lowered past the guides, wires first.
    emitter: upTenth(wires + FRONT_GAP + cheek),
  };
  const farthest = Math.max(boards.receivers ? front.receiver : 0, boards.emitters ? front.emitter : 0);
  const drill = legDrill(spec.receivers.part.legPitch.value) / 2;
  const half = RASTER + Math.max(SOCKET.breadth / 2, drill + EDGE_WEB);
  const least = RESISTOR_ROW + RESISTOR_DRILL / 2 + mountReach();
  const comes = floor + socket.legs.top - socket.legs.bent / 2;
  // No lower than resistors, mounting holes and sockets need: four such strips lie on a common panel.
  const low = Math.max(floor + WAY_BELOW, downTenth(comes - half - mountReach() - least));
  const legs = Math.round(1000 * (comes - low)) / 1000;
  const most = legs - half - mountReach();
  // Between resistors and sockets, or over the sockets where those stand too low for that.
  const mounts = least <= most ? Math.round(50 * (least + most)) / 100 : upTenth(legs + half + mountReach());
  const top = Math.max(legs + half, mounts + mountReach());
  return {
    front,
    thickness: boards.thickness,
    low,
    legs,
    mounts,
    cover: upTenth(low + top + COVER_AIR),
    wall: farthest + boards.thickness + SOLDER + BACK_GAP + onWall,
  };
}
