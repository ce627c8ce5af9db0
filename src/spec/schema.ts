/** What a preset may say. Limits stand here once: messages, editors' completion and the documentation all read them. */
import { z } from 'zod';
import { ambients } from '../ambients/index.js';
import { emitters, receivers, threads } from '../components/index.js';
import { plastics } from '../materials/index.js';
import { printers } from '../printers/index.js';
import { baySchema } from './bay-schema.js';
import {
  ambientFigures,
  emitterFigures,
  type Figure,
  type Figures,
  plasticFigures,
  presetKey,
  printerFigures,
  receiverFigures,
} from './figures.js';
import { UNPRINTABLE } from './words.js';

/** Lines per axis, and size of a cell along an axis [mm]. */
export const MOST_LINES = 64;
export const PITCH = { least: 8, most: 100 } as const;
export const CELL = { least: 8, most: 200 } as const;
/** Longest field along an axis [mm]: beams of hobby parts can't be aimed further. */
export const MOST_FIELD = 2000;
export const MOST_LABEL = 24;
/** Sets of labels beside the engraved one; each makes a legend of its own, in a folder of its name. */
export const MOST_SETS = 12;
export const SET_NAME = { pattern: '^[a-z0-9]+(-[a-z0-9]+)*$', most: 24 } as const;
export const MOST_TITLE = 80;

const quantity = ({ least, most, unit, what, whole }: Figure) => {
  const number = whole ? z.int() : z.number();
  return number
    .min(least)
    .max(most)
    .meta({ description: unit ? `${what} [${unit}]` : what, ...(unit && { unit }) });
};
const mm = (least: number, most: number, what: string) => quantity({ least, most, unit: 'mm', what });
const oneOf = <T extends string>(names: readonly T[], description: string) => z.enum(names).meta({ description });
const namesOf = <T extends object>(catalogue: T) => Object.keys(catalogue) as (keyof T & string)[];

/**
 * One line of text. Path characters and markup are allowed: no path is made of it (the folder's name is the preset's
 * file name) and every output escapes it.
 */
const title = z
  .string()
  .min(1)
  .max(MOST_TITLE)
  .refine((text) => text.search(UNPRINTABLE) < 0, {
    error: 'control, invisible and line-break characters are not allowed',
  })
  .refine((text) => text.trim() !== '', { error: 'blanks alone are no title' });

/** The engraver's alphabet is ASCII; everything in it may stand in a label. */
const label = z
  .string()
  .max(MOST_LABEL)
  .regex(/^[ -~]*$/, { error: 'labels are engraved, and the engraved alphabet is plain ASCII (space to ~)' });

/** Printed on paper, not engraved: any letters. */
const printedLabel = z
  .string()
  .max(MOST_LABEL)
  .refine((text) => text.search(UNPRINTABLE) < 0, {
    error: 'control, invisible and line-break characters are not allowed',
  });

const labelRows = (one: z.ZodString, description: string) =>
  z
    .array(z.array(one).max(MOST_LINES).meta({ description: 'One row of labels, left to right; "" for none' }))
    .max(MOST_LINES)
    .meta({ description });

/** NAME, or a mapping: `base: NAME` with some figures changed, or every figure spelled out. */
function entry<T extends object, N extends string>(what: string, from: { names: readonly N[]; figures: Figures<T> }) {
  const figures = Object.fromEntries(
    Object.entries<Figure>(from.figures).map(([name, figure]) => [presetKey(name), quantity(figure).optional()]),
  );
  const base = oneOf(
    from.names,
    `The ${what} whose figures hold unless changed here; leave it out and give every figure`,
  );
  return z
    .union([
      oneOf(from.names, `A ${what} of the catalogue`),
      z.strictObject({ base: base.optional(), title: title.optional(), ...figures }),
    ])
    .meta({
      description: `The ${what}: a name of the catalogue, or { base: NAME, figures to change }, or every figure`,
    });
}

const axis = (cells: string, lines: string) =>
  z
    .union([
      quantity({ least: 1, most: MOST_LINES, unit: '', what: `Number of ${lines}, all at the pitch`, whole: true }),
      z
        .array(mm(CELL.least, CELL.most, `Cell ${cells}`))
        .min(1)
        .max(MOST_LINES)
        .meta({ description: `Cell ${cells}s [mm]; each beam stands at its cell's middle` }),
    ])
    .meta({ description: `How many ${lines}, or a list of cell ${cells}s` });

const screw = (job: string) => oneOf(namesOf(threads), job);

export const presetSchema = z.strictObject({
  title: title.optional().meta({ description: "The kit's title; default: from the file name" }),
  grid: z
    .strictObject({
      rows: axis('depth', 'rows'),
      columns: axis('width', 'columns'),
      pitch: z
        .union([
          mm(PITCH.least, PITCH.most, 'Between neighbouring beams, along both axes'),
          z.strictObject({
            x: mm(PITCH.least, PITCH.most, 'Between neighbouring columns').optional(),
            y: mm(PITCH.least, PITCH.most, 'Between neighbouring rows').optional(),
          }),
        ])
        .meta({ description: 'Pitch of every axis that is given as a number of lines [mm]' }),
      labels: labelRows(label, 'Key labels, engraved: the first row is the far one').optional(),
      // Names are judged in cross-checks, where they can be put into words.
      label_sets: z
        .record(z.string(), labelRows(printedLabel, 'Labels of this set: the first row is the far one'))
        .optional()
        .meta({
          description: 'Further sets of labels by name, printed as legends and not engraved',
          propertyNames: { type: 'string', pattern: SET_NAME.pattern, maxLength: SET_NAME.most },
        }),
    })
    .meta({ description: 'The grid of crossing beams; a key is a crossing' }),
  beam: z
    .strictObject({ height: mm(3, 30, "Of all beams above the deck's top").optional() })
    .optional()
    .meta({ description: 'The plane of the beams' }),
  emitters: z
    .strictObject({
      part: entry('emitter', { names: namesOf(emitters), figures: emitterFigures }).optional(),
      columns_from: oneOf(['far', 'near'], 'Side on which the emitters of the columns stand').optional(),
      rows_from: oneOf(['left', 'right'], 'Side on which the emitters of the rows stand').optional(),
    })
    .optional()
    .meta({ description: 'One a line' }),
  receivers: z
    .strictObject({ part: entry('receiver', { names: namesOf(receivers), figures: receiverFigures }).optional() })
    .optional()
    .meta({ description: 'One a line' }),
  aim: z
    .strictObject({
      tilt: quantity({
        least: 0.2,
        most: 10,
        unit: '°',
        what: 'Tilt that each mount reaches either way from level',
      }).optional(),
      wedge: quantity({
        least: 0,
        most: 4,
        unit: '°',
        what: 'Lean given to every barrel on purpose, in a sleeve bored askew; 0: none',
      }).optional(),
      mount_error: quantity({
        least: 0.01,
        most: 3,
        unit: '°',
        what: 'Standard deviation of how a printed mount stands, in yaw and in tilt',
      }).optional(),
      confidence: quantity({
        least: 0.5,
        most: 0.999,
        unit: '',
        what: 'Chance wanted that the emitters bought are enough for every line, as a fraction',
      }).optional(),
    })
    .optional()
    .meta({ description: 'What the mounts must correct; what is left out is solved or usual' }),
  finger: z
    .strictObject({
      least: mm(6, 30, 'Breadth of the narrowest finger that must be seen').optional(),
      most: mm(6, 40, 'Breadth of the broadest finger that must not touch two keys').optional(),
    })
    .optional()
    .meta({ description: 'Whose fingers' }),
  light: z
    .strictObject({
      ambient: entry('light', { names: namesOf(ambients), figures: ambientFigures }).optional(),
    })
    .optional()
    .meta({ description: 'Where the panel stands' }),
  surroundings: z
    .strictObject({
      coldest: quantity({ least: -20, most: 40, unit: '°C', what: 'Coldest that the panel gets' }).optional(),
      warmest: quantity({ least: 0, most: 90, unit: '°C', what: 'Warmest that the panel gets' }).optional(),
    })
    .optional()
    .meta({ description: 'Temperatures around the panel; it is aligned at about 20 °C' }),
  leaf: z
    .strictObject({
      layout: oneOf(['in-line', 'upright', 'folded', 'notch'], 'How the leaf lies').optional(),
      legs: quantity({ least: 1, most: 3, unit: '', what: 'Legs: 1, or 2 to 3 when folded', whole: true }).optional(),
      length: mm(0.5, 60, "Straight length of one leg; a notch's radius").optional(),
      thickness: mm(0.4, 4, 'Thickness in the bending plane').optional(),
      width: mm(4, 40, 'Width across the beam').optional(),
    })
    .optional()
    .meta({ description: "The mount's leaf spring; what is left out is solved" }),
  material: entry('plastic', { names: namesOf(plastics), figures: plasticFigures }).optional(),
  printer: entry('printer', { names: namesOf(printers), figures: printerFigures }).optional(),
  screws: z
    .strictObject({
      adjust: screw('Turns the tilt').optional(),
      clamp: screw('Holds the barrel').optional(),
      fix: screw('Holds mounts, sockets and the frame').optional(),
    })
    .optional()
    .meta({ description: 'ISO metric threads' }),
  frame: z
    .strictObject({
      wall: mm(1.2, 6, 'Wall thickness').optional(),
      deck: mm(1.2, 8, 'Deck thickness').optional(),
      margin: mm(12, 100, "From the outermost beams to the field's walls").optional(),
    })
    .optional()
    .meta({ description: 'Rails, deck and bezel; what is left out is solved' }),
  scan: z
    .strictObject({
      channels: z.literal([8, 16]).meta({ description: 'Channels of a multiplexer' }).optional(),
      address: oneOf(['shared', 'single'], 'One address for all multiplexers, or one multiplexer at a time').optional(),
      spare_pins: quantity({ least: 0, most: 64, unit: '', what: 'Input pins free for lines', whole: true }).optional(),
      address_us: quantity({ least: 0, most: 1000, unit: 'µs', what: 'Setting an address' }).optional(),
      settle_us: quantity({ least: 0, most: 10_000, unit: 'µs', what: 'Settling after it' }).optional(),
      read_us: quantity({ least: 0.1, most: 10_000, unit: 'µs', what: 'One reading' }).optional(),
      light_us: quantity({
        least: 0,
        most: 10_000,
        unit: 'µs',
        what: 'Until a receiver follows its light, where emitters are lit line by line; 0: always lit',
      }).optional(),
      debounce: quantity({
        least: 1,
        most: 100,
        unit: '',
        what: 'Equal scans in a row that make a change count',
        whole: true,
      }).optional(),
      pull_up_ohm: quantity({ least: 100, most: 1e6, unit: 'Ω', what: 'Pull-up of each receiver' }).optional(),
      supply_v: quantity({ least: 1.8, most: 12, unit: 'V', what: 'Supply of the pull-ups' }).optional(),
      lit_level: oneOf(['low', 'high'], "Level of a receiver's output while it is lit").optional(),
    })
    .optional()
    .meta({ description: 'How the receivers are read' }),
  supply: z
    .strictObject({
      gauge: quantity({
        least: 16,
        most: 36,
        unit: '',
        what: 'American wire gauge of the wires',
        whole: true,
      }).optional(),
      logic_ma: quantity({
        least: 0,
        most: 5000,
        unit: 'mA',
        what: 'Controller, radio, display and multiplexers',
      }).optional(),
      battery_mah: quantity({ least: 10, most: 100_000, unit: 'mAh', what: 'Battery, as printed on it' }).optional(),
      battery_v: quantity({ least: 0.9, most: 30, unit: 'V', what: 'Battery, mean voltage' }).optional(),
    })
    .optional()
    .meta({ description: 'Wires, logic and battery' }),
  bay: baySchema({ quantity, title }).optional(),
  boards: z
    .strictObject({
      receivers: z.boolean().meta({ description: 'Carriers that the receivers are plugged into' }).optional(),
      emitters: z.boolean().meta({ description: 'Boards that supply the emitters' }).optional(),
      panel: z
        .strictObject({
          x: mm(20, 600, 'Longest panel along x').optional(),
          y: mm(20, 600, 'Longest panel along y').optional(),
        })
        .optional()
        .meta({ description: "The board maker's limit" }),
      thickness: mm(0.8, 2.4, 'Thickness of the boards').optional(),
    })
    .optional()
    .meta({ description: 'Boards to order: outline and drill; left out: none' }),
});

/** A preset as written, once it has passed. */
export type Preset = z.infer<typeof presetSchema>;
