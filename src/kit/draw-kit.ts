/** The whole kit: every part drawn once, placed, and brought to its place step by step. */
import type { Layout } from '../layout/layout.js';
import { poseMotion } from '../layout/mount.js';
import { planeMatrix } from '../layout/plane.js';
import type { Kernel } from '../solid/kernel.js';
import { apply, multiply } from '../solid/matrix.js';
import { placeLids } from './bay-lids.js';
import { placeModules } from './bay-modules.js';
import { placeFeet, placeTrays, wiresInto } from './bay-trays.js';
import { bench } from './bench.js';
import { boardsOf, placeBoards, supplySteps } from './boards.js';
import { placeCovers, placeHood, placePlugs } from './covers.js';
import { placeDeck } from './deck.js';
import { placeFrame } from './frame.js';
import type { Lettering } from './legends.js';
import { benchSteps, lowerMounts, mountInRail, placeEmitters } from './mounts.js';
import { carrierSteps, placeReceivers, socketInRail, socketSteps } from './sockets.js';
import type { Kit } from './types.js';

export function drawKit(
  layout: Layout,
  { kernel, lettering }: { readonly kernel: Kernel; readonly lettering: Lettering },
): Kit {
  const b = bench(kernel, layout);
  const emitting = layout.runs.filter((run) => run.kind === 'emitter');
  const receiving = layout.runs.filter((run) => run.kind === 'receiver');
  placeFrame(b);
  const withBay = layout.bay === null ? null : { ...layout, bay: layout.bay };
  if (withBay) placeTrays(b, withBay);
  const emitters = emitting.flatMap((run) => placeEmitters(b, run));
  benchSteps(b, emitters);
  lowerMounts(b, emitters);
  supplySteps(
    b,
    emitting.flatMap((run) => placeBoards(b, run)),
  );
  const receivers = receiving.flatMap((run) => placeReceivers(b, run));
  const carriers = receiving.flatMap((run) => placeBoards(b, run));
  if (carriers.length > 0) carrierSteps(b, { receivers, carriers });
  else socketSteps(b, receivers);
  placeDeck(b, lettering);
  if (withBay) placeModules(b, withBay, 'boards');
  placeHood(b, placeCovers(b));
  if (withBay) placeLids(b, withBay, 'boards');
  placePlugs(b);
  if (withBay) {
    placeFeet(b, withBay);
    placeModules(b, withBay, 'battery');
    placeLids(b, withBay, 'battery');
  }
  placeBeams();
  const boards = boardsOf(b);
  return {
    ...b.kit(),
    ...(withBay && { bay: withBay.bay, ...wiresInto(withBay) }),
    ...(boards && { boards }),
  };

  /** From each emitter's front, as it stands when aligned, to the mouth of its aperture. */
  function placeBeams(): void {
    const { mount, socket, spec } = layout;
    const aligned = planeMatrix(poseMotion(mount.leaf, 'level'), mount.origin);
    for (const from of emitting)
      for (const beam of from.beams) {
        const to = receiving.find((run) => run.beams.some((other) => other.line === beam.line))!;
        const end = to.beams.find((other) => other.index === beam.index)!;
        const stem = `${beam.line}-${beam.index}`;
        b.beam({
          name: stem,
          line: beam.line,
          index: beam.index,
          from: apply(multiply(from.matrix, mountInRail(b, beam.at), aligned), [
            mount.barrel.exit,
            mount.axis,
            mount.width / 2,
          ]),
          to: apply(multiply(to.matrix, socketInRail(b, end.at)), [socket.face, 0, socket.axis]),
          diameter: spec.emitters.part.beamDiameter.value,
          corridor: layout.corridor,
          emitter: `${stem}-barrel`,
          receiver: `${stem}-socket`,
        });
      }
  }
}
