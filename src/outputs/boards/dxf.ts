/**
 * DXF, release 12, ASCII: the oldest form that every program reads. Groups of two lines, a code and a value; closed polylines and circles,
 * each on the layer of its use. Lengths are mm; release 12 has no header variable that says so, hence the comment.
 */
import { LAYERS, type Layer, type Sheet } from './sheet.js';

type Group = readonly [code: number, value: string | number];

/** Indexed colours of the standard palette: white, yellow, red, cyan. */
const COLOUR: Readonly<Record<Layer, number>> = { OUTLINE: 7, CUT: 2, 'DRILL-PLATED': 1, 'DRILL-UNPLATED': 4 };

export function dxf({ id, rings, holes, width, height }: Sheet): string {
  const groups: readonly Group[] = [
    [999, `${id}, millimetres`],
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1009'],
      [9, '$EXTMIN'],
      ...at(10, 0, 0),
      [9, '$EXTMAX'],
      ...at(10, width, height),
    ]),
    ...section('TABLES', [
      ...table('LTYPE', 1, [
        [0, 'LTYPE'],
        [2, 'CONTINUOUS'],
        [70, 0],
        [3, 'Solid line'],
        [72, 65],
        [73, 0],
        [40, real(0)],
      ]),
      ...table(
        'LAYER',
        LAYERS.length,
        LAYERS.flatMap((name): Group[] => [
          [0, 'LAYER'],
          [2, name],
          [70, 0],
          [62, COLOUR[name]],
          [6, 'CONTINUOUS'],
        ]),
      ),
    ]),
    ...section('ENTITIES', [
      ...rings.flatMap(({ layer, points }): Group[] => [
        [0, 'POLYLINE'],
        [8, layer],
        [66, 1],
        ...at(10, 0, 0),
        [70, 1],
        ...points.flatMap(([x, y]): Group[] => [[0, 'VERTEX'], [8, layer], ...at(10, x, y)]),
        [0, 'SEQEND'],
        [8, layer],
      ]),
      ...holes.flatMap(({ layer, x, y, d }): Group[] => [
        [0, 'CIRCLE'],
        [8, layer],
        ...at(10, x, y),
        [40, real(d / 2)],
      ]),
    ]),
    [0, 'EOF'],
  ];
  return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
}

const section = (name: string, groups: readonly Group[]): readonly Group[] => [
  [0, 'SECTION'],
  [2, name],
  ...groups,
  [0, 'ENDSEC'],
];

const table = (name: string, count: number, groups: readonly Group[]): readonly Group[] => [
  [0, 'TABLE'],
  [2, name],
  [70, count],
  ...groups,
  [0, 'ENDTAB'],
];

/** A point's three groups. */
const at = (code: number, x: number, y: number): readonly Group[] => [
  [code, real(x)],
  [code + 10, real(y)],
  [code + 20, real(0)],
];

/** A real has a point in it, also a whole one. */
const real = (value: number): string => {
  const text = String(Number(value.toFixed(4)));
  return text.includes('.') ? text : `${text}.0`;
};
