/**
 * A small invented kit that passes every check of shapes: a base with a bracket on a nut, a lid on a formed thread, an arm
 * that tilts with a weight on it, a free peg, and one beam from a barrel to a receiver and its stop.
 */

import { type CheckContext, checkContext } from '../../src/checks/context.js';
import { threads } from '../../src/components/index.js';
import type { Kit, Part, Placement, Screw, Step } from '../../src/kit/types.js';
import { bed220 } from '../../src/printers/bed-220.js';
import type { MeasuringKernel, Solid } from '../../src/solid/kernel.js';
import { multiply, rotation, translation } from '../../src/solid/matrix.js';
import { IDENTITY, type Matrix, type Vec3 } from '../../src/solid/mesh.js';
import { hexagon } from '../../src/solid/outlines.js';
import { box, cylinder, prism } from '../../src/solid/shapes.js';
import { rad } from '../../src/units.js';
import { frameFigures, leaf, leafFigures, light, spec, thermal } from './sound-figures.js';

const M = threads['M2.5'];
const TILT = rad(3);
/** Half of the printer's clearances, a side. */
const SLIDE = bed220.slide.value / 2;
const FREE = bed220.free.value / 2;

export const part = (id: string, solid: Solid, more: Partial<Part> = {}): Part => ({
  id,
  title: id,
  kind: 'printed',
  material: 'test plastic',
  densityGcm3: 1.25,
  solid,
  posed: null,
  order: null,
  ...more,
});

export const placement = (name: string, partId: string, matrix: Matrix, more: Partial<Placement> = {}): Placement => ({
  name,
  part: partId,
  matrix,
  rides: null,
  touches: [],
  overlaps: [],
  ...more,
});

/** Cap screw whose head's underside is at the origin, shank down. */
export const capScrew = (k: MeasuringKernel, length: number): Solid =>
  k.union([
    cylinder(k, { from: [0, 0, -length], to: [0, 0, 0.1], radius: M.diameter.value / 2, fit: 'pin' }),
    cylinder(k, { from: [0, 0, 0], to: [0, 0, M.capHeight.value], radius: M.capHead.value / 2, fit: 'pin' }),
  ]);

const down: Vec3 = [0, 0, -1];
const up: Vec3 = [0, 0, 1];
export const BRACKET_AT: Vec3 = [12, 20, 0];
export const LID_AT: Vec3 = [60, 12, 0];
const hole = (k: MeasuringKernel, [x, y]: Vec3, diameter: number, from: number, to: number) =>
  cylinder(k, { from: [x, y, from], to: [x, y, to], radius: diameter / 2, fit: 'hole' });

export function soundKit(k: MeasuringKernel): Kit {
  const base = k.subtract(box(k, [0, 0, 0], [80, 40, 6]), [
    k.union([
      hole(k, BRACKET_AT, M.clearance.value, 1, 7),
      prism(k, hexagon([BRACKET_AT[0], BRACKET_AT[1]], M.nutFlats.value + 2 * SLIDE, { along: 'x' }), {
        axis: 'z',
        from: -1,
        to: 2.2,
      }),
    ]),
    hole(k, LID_AT, M.pilot.value, 0.5, 7),
    hole(k, [70, 32, 0], 4 + 2 * FREE, -1, 7),
  ]);
  const bracket = k.subtract(box(k, [-8, -8, 0], [8, 8, 4]), [hole(k, [0, 0, 0], M.clearance.value, -1, 5)]);
  const lid = k.subtract(box(k, [-6, -6, 0], [6, 6, 3]), [hole(k, [0, 0, 0], M.clearance.value, -1, 4)]);
  const nut = k.subtract(
    prism(k, hexagon([0, 0], M.nutFlats.value, { along: 'x' }), { axis: 'z', from: 0, to: M.nutHeight.value }),
    [hole(k, [0, 0, 0], M.diameter.value, -1, 3)],
  );
  const arm = box(k, [-10, -4, 0], [10, 4, 3]);
  const tilted = (angle: number) => rotation('y', angle);
  const posed = {
    lowest: k.move(arm, tilted(TILT)),
    level: arm,
    highest: k.move(arm, tilted(-TILT)),
  };
  const parts = [
    part('base', base),
    part('bracket', bracket),
    part('lid', lid),
    part('peg', cylinder(k, { from: [0, 0, 0], to: [0, 0, 6], radius: 2, fit: 'pin' })),
    part('arm', arm, { posed }),
    // It prints lying and stands in the kit.
    part('stop', box(k, [0, -8, 0], [20, 8, 3])),
    part('nut', nut, { kind: 'bought', order: { standard: 'ISO 4032', size: 'M2.5', lengthMm: null } }),
    ...[8, 12].map((length) =>
      part(`screw-${length}`, capScrew(k, length), {
        kind: 'bought',
        order: { standard: 'ISO 4762', size: 'M2.5', lengthMm: length },
      }),
    ),
    part('weight', box(k, [-2, -2, 0], [2, 2, 2]), { kind: 'bought' }),
    part('barrel', cylinder(k, { from: [-12, 0, 0], to: [0, 0, 0], radius: 3, fit: 'pin' }), { kind: 'bought' }),
    part('receiver', box(k, [0, -2, -2], [4, 2, 2]), { kind: 'bought' }),
  ];

  const armAt = translation([40, 30, 2]);
  const weightAt = (angle: number) => multiply(armAt, tilted(angle), translation([5, 0, 3]));
  const [bx, by] = BRACKET_AT;
  const [lx, ly] = LID_AT;
  const placements = [
    placement('base', 'base', translation([0, 0, -6])),
    placement('bracket', 'bracket', translation(BRACKET_AT), { touches: ['base', 'bracket-screw'] }),
    placement('bracket-nut', 'nut', translation([bx, by, -5.8]), { touches: ['base', 'bracket-screw'] }),
    placement('bracket-screw', 'screw-12', translation([bx, by, 4]), { touches: ['base', 'bracket'] }),
    placement('lid', 'lid', translation(LID_AT), { touches: ['base', 'lid-screw'] }),
    placement('lid-screw', 'screw-8', translation([lx, ly, 3]), {
      touches: ['lid'],
      overlaps: [{ with: 'base', most: 9, why: 'thread formed in the pilot' }],
    }),
    placement('peg', 'peg', translation([70, 32, -6])),
    placement('arm', 'arm', armAt),
    placement('weight', 'weight', weightAt(0), {
      rides: { lowest: weightAt(TILT), highest: weightAt(-TILT) },
      touches: ['arm'],
    }),
    placement('barrel', 'barrel', translation([30, 4, 12])),
    placement('receiver', 'receiver', translation([70, 4, 12])),
    placement('stop', 'stop', multiply(translation([79, 4, 0.5]), rotation('y', -Math.PI / 2))),
  ];
  const tool = { name: 'hex key 2', diameter: 2.3, reach: 20, when: 'at its step' } as const;
  const screws: Screw[] = [
    {
      placement: 'bracket-screw',
      size: 'M2.5',
      lengthMm: 12,
      head: [bx, by, 6.5],
      direction: down,
      into: { kind: 'nut', nut: 'bracket-nut', beyond: 2.2 },
      tipRoom: 5,
      tool,
    },
    {
      placement: 'lid-screw',
      size: 'M2.5',
      lengthMm: 8,
      head: [lx, ly, 5.5],
      direction: down,
      into: { kind: 'formed', part: 'base', engaged: 5 },
      tipRoom: 0.5,
      tool: { ...tool, when: 'covers on' },
    },
  ];
  const move = (name: string, direction: Vec3, travel: number, inFrameOf: string | null = null) => ({
    placement: name,
    direction,
    travel,
    tool: null,
    inFrameOf,
  });
  const assembly: Step[] = [
    { step: 1, title: 'base', joins: ['base'], hardware: [], moves: [] },
    {
      step: 2,
      title: 'bracket and lid',
      joins: ['bracket', 'lid'],
      hardware: ['bracket-nut', 'bracket-screw', 'lid-screw'],
      moves: [
        move('bracket-nut', up, 12),
        move('bracket', down, 15),
        move('bracket-screw', down, 25),
        move('lid', down, 15),
        move('lid-screw', down, 20),
      ],
    },
    {
      step: 3,
      title: 'arm',
      joins: ['arm', 'peg'],
      hardware: ['weight'],
      moves: [move('weight', down, 10, 'arm'), move('arm', down, 20), move('peg', up, 15)],
    },
    {
      step: 4,
      title: 'light',
      joins: ['stop'],
      hardware: ['barrel', 'receiver'],
      moves: [
        move('stop', down, 10),
        move('barrel', [1, 0, 0], 5),
        move('receiver', [0, 0, 1], 3),
        move('receiver', [1, 0, 0], 4),
      ],
    },
  ];
  return {
    parts: new Map(parts.map((one) => [one.id, one])),
    placements,
    beams: [
      {
        name: 'row-0',
        line: 'row',
        index: 0,
        from: [30, 4, 12],
        to: [70, 4, 12],
        diameter: 2,
        corridor: 4,
        emitter: 'barrel',
        receiver: 'receiver',
      },
    ],
    screws,
    fits: [
      { a: 'base', b: 'bracket-nut', what: 'the bracket nut', fitClass: 'slide', drawn: SLIDE, wanted: SLIDE },
      { a: 'base', b: 'peg', what: 'the peg', fitClass: 'free', drawn: FREE, wanted: FREE },
    ],
    assembly,
  };
}

/** The kit with one placement changed. */
export const change = (kit: Kit, name: string, patch: Partial<Placement>): Kit => {
  if (!kit.placements.some((p) => p.name === name)) throw new Error(`nothing is called ${name}`);
  return { ...kit, placements: kit.placements.map((p) => (p.name === name ? { ...p, ...patch } : p)) };
};

/** The kit with a placement moved by v. */
export const shifted = (kit: Kit, name: string, v: Vec3): Kit => {
  const { matrix } = kit.placements.find((p) => p.name === name)!;
  return change(kit, name, { matrix: multiply(translation(v), matrix) });
};

/** The kit with a part and a placement of it added, brought last. */
export const withThing = (kit: Kit, name: string, solid: Solid, more: Partial<Placement> = {}): Kit => ({
  ...kit,
  parts: new Map([...kit.parts, [name, part(name, solid)]]),
  placements: [...kit.placements, placement(name, name, IDENTITY, more)],
});

export const changeScrew = (kit: Kit, name: string, patch: Partial<Screw>): Kit => ({
  ...kit,
  screws: kit.screws.map((screw) => (screw.placement === name ? { ...screw, ...patch } : screw)),
});

export const contextOf = (kernel: MeasuringKernel, kit: Kit, more: Partial<CheckContext> = {}): CheckContext => ({
  ...checkContext({ kit, spec, kernel, leaf, leafFigures, frameFigures, light, thermal, leafOff: [] }),
  ...more,
});
