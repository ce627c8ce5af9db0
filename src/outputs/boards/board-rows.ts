/** What `parts.csv` lists for boards besides the boards themselves: panels, socket strips, resistors. */
import type { BoardsOfKit } from '../../kit/types.js';
import { supplyFigures } from '../../layout/supply.js';
import type { Spec } from '../../spec/spec.js';

type Row = Readonly<Record<string, string | number>>;

/** @returns cells by the table's column names */
export function boardRows({ boards, places, panels }: BoardsOfKit, spec: Spec): readonly Row[] {
  const { legs, legPitch } = spec.receivers.part;
  const lines = (kind: 'emitter' | 'receiver') =>
    places
      .filter(({ board }) => boards.find(({ id }) => id === board)?.kind === kind)
      .reduce((sum, { beams }) => sum + beams.length, 0);
  const [receivers, emitters] = [lines('receiver'), lines('emitter')];
  const resistor = supplyFigures(spec, 0).resistor;
  return [
    ...panels.designs.map(
      ({ id, order, width, height, spots }): Row => ({
        id,
        title: `panel to order: ${spots.map((spot) => spot.id).join(' ')}`,
        quantity: order,
        material: 'FR-4',
        x_mm: width,
        y_mm: height,
        z_mm: boards[0]!.thickness,
        file: `boards/${id}.dxf`,
      }),
    ),
    ...(receivers > 0
      ? [
          {
            id: 'socket-strip',
            title: `turned-pin socket strip of ${legs.value} ways, ${legPitch.value} mm apart`,
            quantity: 3 * receivers,
            material: 'as bought',
          },
          {
            id: 'pull-up',
            title: `resistor ${spec.scan.pullUpOhm} Ω, a quarter watt`,
            quantity: receivers,
            material: 'as bought',
          },
        ]
      : []),
    ...(emitters > 0 && resistor > 0
      ? [
          {
            id: 'series-resistor',
            title: `resistor of ${Math.ceil(resistor)} Ω or the next above it`,
            quantity: emitters,
            material: 'as bought',
          },
        ]
      : []),
  ];
}
