/** `pictures/`: the kit, closed and with its covers off, and every printed part as it is printed, as PNG. */
import type { Kit } from '../kit/types.js';
import { colourOf } from './colours.js';
import type { Output, OutputContext } from './context.js';
import { picture } from './picture/picture.js';
import { png } from './picture/png.js';
import { shapePath } from './shapes.js';
import { standing, withoutCovers } from './standing.js';

export const KIT_SIZE = [780, 520] as const;
const OPEN = [600, 400] as const;
const PART = [216, 162] as const;

/** The report shows the same one. */
const drawn = new WeakMap<Kit, Uint8Array>();

export function kitPicture(context: OutputContext): Uint8Array {
  const known = drawn.get(context.kit);
  if (known) return known;
  const bytes = png(picture(standing(context), { size: KIT_SIZE }), context.compression);
  drawn.set(context.kit, bytes);
  return bytes;
}

export const pictures: Output = (context) => {
  const { kit, meshOf, compression } = context;
  const open = withoutCovers(standing(context));
  return [
    { path: 'pictures/kit.png', bytes: kitPicture(context) },
    { path: 'pictures/open.png', bytes: png(picture(open, { size: OPEN }), compression) },
    ...[...kit.parts.values()]
      .filter(({ kind }) => kind === 'printed')
      .map((part) => ({
        path: `pictures/parts/${part.id}.png`,
        bytes: png(
          picture([{ mesh: meshOf(shapePath('stl', part)), colour: colourOf(part) }], { size: PART }),
          compression,
        ),
      })),
  ];
};
