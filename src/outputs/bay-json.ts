/** The electronics bay as `kit.json` shows it: lengths mm in its trays' coordinates, which the trays' placements carry. */
import type { Kit } from '../kit/types.js';
import type { BayModule, BaySpec } from '../spec/bay.js';
import { type Json, tidy } from './json-text.js';

const list = (values: readonly number[]): Json => values.map((value) => tidy(value));

/** @returns the key `bay`, or nothing where the kit has none */
export function bayJson({ bay }: Kit): { readonly bay?: Json } {
  if (bay === undefined) return {};
  return {
    bay: {
      place: bay.place,
      height_mm: tidy(bay.height + bay.lid),
      heat_w: tidy(bay.heat.watts, 3),
      warmth_k: { closed: tidy(bay.heat.closed, 1), as_drawn: tidy(bay.heat.drawn, 1) },
      vents_mm2: tidy(bay.heat.vents, 0),
      fill: tidy(bay.fill, 3),
      trays: bay.units.map(({ kind, size, modules }, i) => ({
        placement: `bay-tray-${i + 1}`,
        holds: kind,
        size_mm: list(size),
        modules: modules.map(({ module, outline, turn, z, fixing }) => ({
          placement: `bay-${module.id}`,
          title: module.part.title,
          outline_mm: list(outline),
          underside_mm: tidy(z),
          turn,
          held_by: fixing.kind,
          connectors: module.part.connectors.value.map(({ what, side, access }) => ({ what, side, access })),
        })),
      })),
    },
  };
}

/** @returns the bay as a preset may say it, every figure of its outlines filled in, with its source */
export const baySpecJson = ({ place, cable, modules }: BaySpec): Json => ({
  ...(place !== undefined && { place }),
  cable: tidy(cable),
  modules: modules.map(({ id, name, part }) => ({ id, part: name, ...outline(part) })),
});

function outline(part: BayModule['part']): { readonly [key: string]: Json } {
  const { length, width, thickness, above, below, holes, holeDiameter, massG, heatMw } = part;
  return {
    title: part.title,
    length: length.value,
    width: width.value,
    thickness: thickness.value,
    above: above.value,
    below: below.value,
    holes: holes.value.map((at) => list(at)),
    ...(holeDiameter && { hole_diameter: holeDiameter.value }),
    mass_g: massG.value,
    heat_mw: heatMw.value,
    ...(part.cell && {
      cell: {
        voltage: part.cell.voltage.value,
        capacity_mah: part.cell.capacityMah.value,
        most_ma: part.cell.mostMa.value,
        lithium: part.cell.lithium,
      },
    }),
    source: length.source,
  };
}
