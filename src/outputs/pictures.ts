/** `pictures/`: the kit, closed and with its covers off, and every printed part as it is printed, as PNG. */
import { colourOf } from './colours.js';
import type { OutputFile, ShownContext } from './context.js';
import { picture } from './picture/picture.js';
import { png } from './picture/png.js';
import { shapePath } from './shapes.js';
import { standing, withoutCovers } from './standing.js';

export const KIT_SIZE = [780, 520] as const;
const OPEN = [600, 400] as const;
const PART = [216, 162] as const;

export const kitPicture = (context: ShownContext): Uint8Array =>
  png(picture(standing(context), { size: KIT_SIZE }), context.compression);

/** All but the closed kit's, which the report shows, too. */
export const pictures = (context: ShownContext): readonly OutputFile[] => {
  const { kit, meshOf, compression } = context;
  const open = withoutCovers(standing(context));
  return [
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
