/** Which printed part stands where on which bed, and what each bed takes. */
import type { Kit, Part } from '../../kit/types.js';
import { usableBed } from '../../printers/usable-bed.js';
import type { MeasuringKernel } from '../../solid/kernel.js';
import type { Box } from '../../solid/mesh.js';
import { meshArea } from '../../solid/mesh-measures.js';
import type { Spec } from '../../spec/spec.js';
import { quantities } from '../part-figures.js';
import { leastBeds, packBeds, type Room, type Spot } from './pack.js';
import { filamentM, plasticVolume, printHours } from './plastic.js';

export interface BedItem {
  readonly part: Part;
  readonly spot: Spot;
  /** Of the solid in print orientation. */
  readonly box: Box;
}

export interface Bed {
  /** From 1. */
  readonly number: number;
  readonly file: string;
  readonly material: string;
  readonly items: readonly BedItem[];
  /** Share of the usable bed that the parts' rectangles cover. */
  readonly fill: number;
  readonly plasticG: number;
  readonly filamentM: number;
  readonly hours: number;
}

export interface Beds {
  readonly beds: readonly Bed[];
  /** By area alone no packing needs fewer. */
  readonly atLeast: number;
  readonly room: Room;
  /** Of one piece of each printed part [g]. */
  readonly plasticG: ReadonlyMap<string, number>;
}

export const NO_BEDS: Beds = {
  beds: [],
  atLeast: 0,
  room: { width: 0, depth: 0, spacing: 0 },
  plasticG: new Map(),
};

/** @returns the beds by material, in the kit's order */
export function layBeds({
  kit,
  kernel,
  spec,
}: {
  readonly kit: Kit;
  readonly kernel: MeasuringKernel;
  readonly spec: Spec;
}): Beds {
  const { machine } = spec.printer;
  const edge = machine.edgeMargin.value;
  const [width, depth] = usableBed(machine);
  const room: Room = { width, depth, spacing: machine.spacing.value };
  const count = quantities(kit);
  const printed = [...kit.parts.values()].filter(({ kind }) => kind === 'printed');
  const facts = new Map(
    printed.map((part) => {
      const volume = kernel.volume(part.solid);
      const plastic = plasticVolume({ volume, area: meshArea(kernel.mesh(part.solid)) }, machine);
      return [part.id, { part, box: kernel.box(part.solid), plastic }] as const;
    }),
  );
  const beds: Bed[] = [];
  let atLeast = 0;
  for (const material of new Set(printed.map((part) => part.material))) {
    const pieces = printed
      .filter((part) => part.material === material)
      .flatMap((part) => {
        const { min, max } = facts.get(part.id)!.box;
        const piece = { id: part.id, width: max[0] - min[0], depth: max[1] - min[1] };
        return Array.from({ length: count.get(part.id) ?? 0 }, () => piece);
      });
    atLeast += leastBeds(pieces, room);
    for (const spots of packBeds(pieces, room)) {
      const items = spots.map((spot) => {
        const { part, box } = facts.get(spot.id)!;
        return { part, box, spot: { ...spot, x: spot.x + edge, y: spot.y + edge } };
      });
      const plastic = items.reduce((sum, { part }) => sum + facts.get(part.id)!.plastic, 0);
      const height = Math.max(...items.map(({ box }) => box.max[2]));
      const covered = items.reduce((sum, { box: { min, max } }) => sum + (max[0] - min[0]) * (max[1] - min[1]), 0);
      const number = beds.length + 1;
      beds.push({
        number,
        file: `prints/bed-${number}.3mf`,
        material,
        items,
        fill: covered / (room.width * room.depth),
        plasticG: (plastic / 1000) * items[0]!.part.densityGcm3,
        filamentM: filamentM(plastic),
        hours: printHours({ plastic, height }, machine),
      });
    }
  }
  const plasticG = new Map(
    [...facts.values()].map(({ part, plastic }) => [part.id, (plastic / 1000) * part.densityGcm3] as const),
  );
  return { beds, atLeast, room, plasticG };
}
