/** What a preset may say of the electronics bay. */
import { z } from 'zod';
import { modules } from '../components/index.js';

/** Boards and batteries in all, and of one kind. */
export const MOST_MODULES = 24;
export const MOST_ALIKE = 12;

/** A number with its limits; the schema hands in its own way of saying them, and its kind of title. */
export interface Words {
  readonly quantity: (figure: {
    readonly least: number;
    readonly most: number;
    readonly unit: string;
    readonly what: string;
    readonly whole?: boolean;
  }) => z.ZodNumber;
  readonly title: z.ZodString;
}

const SIDES = ['far', 'near', 'left', 'right', 'apart'] as const;
const EDGES = ['left', 'right', 'front', 'back'] as const;
const NAMES = Object.keys(modules) as (keyof typeof modules)[];

export function baySchema({ quantity, title }: Words) {
  const mm = (least: number, most: number, what: string) => quantity({ least, most, unit: 'mm', what });
  const point = z.tuple([mm(0, 200, 'From the left edge'), mm(0, 200, 'From the front edge')]);
  const patch = z.strictObject({
    x: mm(0, 200, 'Middle, from the left edge'),
    y: mm(0, 200, 'Middle, from the front edge'),
    width: mm(0.5, 200, 'Along the length'),
    depth: mm(0.5, 200, 'Along the width'),
  });
  const connector = z.strictObject({
    what: title.meta({ description: 'What is plugged or wired there' }),
    side: z.enum(EDGES).meta({ description: 'Edge of the board that it looks over' }),
    at: mm(0, 200, 'Middle along that edge, from the left or front corner'),
    width: mm(1, 100, "The plug's body, along the edge"),
    height: mm(1, 60, "The plug's body, up"),
    up: mm(-20, 60, "The plug's middle above the board's underside"),
    room: mm(0, 150, "From the board's edge outward: plug and bend of its cable"),
    access: z.enum(['outside', 'inside']).meta({ description: 'Plugged from outside the bay, or wired within it' }),
  });
  const name = z.enum(NAMES).meta({ description: 'A board or battery of the catalogue' });
  const own = z.strictObject({
    base: name.optional(),
    title: title.optional(),
    length: mm(5, 200, 'Outline, left to right').optional(),
    width: mm(5, 200, 'Outline, front to back').optional(),
    thickness: mm(0.4, 60, "The board's; of a battery its height").optional(),
    above: mm(0, 60, "Tallest part over the board's top").optional(),
    below: mm(0, 30, 'Lowest part under its underside').optional(),
    holes: z.array(point).max(8).meta({ description: 'Middles of the mounting holes; []: held by clips' }).optional(),
    hole_diameter: mm(1, 6, 'Of the mounting holes').optional(),
    connectors: z.array(connector).max(12).meta({ description: 'Where plugs and wires come in' }).optional(),
    window: patch.optional().meta({ description: 'Seen through the lid: the picture of a display' }),
    lamps: z.array(point).max(16).meta({ description: 'Lamps that shine up through the lid' }).optional(),
    knobs: z
      .array(patch)
      .max(8)
      .meta({ description: 'Knobs worked through the lid, their travel included' })
      .optional(),
    mass_g: quantity({ least: 0.1, most: 2000, unit: 'g', what: 'Mass' }).optional(),
    heat_mw: quantity({ least: 0, most: 50_000, unit: 'mW', what: 'Heat given off, on average' }).optional(),
    converts: z.boolean().meta({ description: "Brings the battery's voltage to the supply's" }).optional(),
    cell: z
      .strictObject({
        voltage: quantity({ least: 0.9, most: 30, unit: 'V', what: 'Mean voltage' }),
        capacity_mah: quantity({ least: 10, most: 100_000, unit: 'mAh', what: 'Capacity' }),
        most_ma: quantity({ least: 1, most: 50_000, unit: 'mA', what: 'Largest current' }),
        lithium: z.boolean().meta({ description: 'Any kind of lithium cell' }),
      })
      .optional()
      .meta({ description: 'A battery' }),
  });
  const part = z
    .union([name, own])
    .meta({ description: 'A name of the catalogue, or { base: NAME, changes }, or all figures' });
  const placed = z.strictObject({
    part,
    count: quantity({ least: 1, most: MOST_ALIKE, unit: '', what: 'How many of it', whole: true }).optional(),
    at: point.optional().meta({
      description:
        "Left and inner edge of its outline in its tray, from the tray's inner corner [mm]; solved if left out",
    }),
    turn: z.literal([0, 90, 180, 270]).optional().meta({ description: 'Turned to the left [°]; solved if left out' }),
  });
  return z
    .strictObject({
      place: z
        .enum(SIDES)
        .meta({ description: 'Along which rail the bay hangs, or apart in a case of its own' })
        .optional(),
      cable: mm(50, 3000, 'Cable between panel and case, where it stands apart').optional(),
      modules: z
        .array(z.union([name, placed]))
        .min(1)
        .max(MOST_MODULES)
        .meta({ description: 'What the bay holds' }),
    })
    .meta({ description: 'A home for controller, boards, display and battery' });
}
