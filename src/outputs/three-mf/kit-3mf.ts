/** `kit.3mf`: the assembled kit, bought parts too, to look at and measure. */
import { colourOf } from '../colours.js';
import type { OutputFile, ShownContext } from '../context.js';
import { picture } from '../picture/picture.js';
import { png } from '../picture/png.js';
import { standing } from '../standing.js';
import { THUMBNAIL } from './bed-3mf.js';
import { modelXml } from './model-xml.js';
import { threeMf } from './package.js';

export const kit3mf = (context: ShownContext): readonly OutputFile[] => {
  const { kit, spec } = context;
  const items = standing(context);
  const parts = [...kit.parts.values()].filter(({ id }) => items.some(({ part }) => part.id === id));
  const model = modelXml({
    title: spec.title,
    description: 'The assembled kit, every mount at level; bought parts are simple shapes. Not for printing.',
    objects: parts.map((part) => ({
      key: part.id,
      name: part.title,
      partNumber: part.id,
      mesh: items.find((item) => item.part.id === part.id)!.mesh,
      colour: colourOf(part),
    })),
    items: items.map(({ part, matrix }) => ({ object: part.id, partNumber: part.id, matrix })),
  });
  return [
    {
      path: 'kit.3mf',
      bytes: threeMf(
        { model, thumbnail: png(picture(items, { size: THUMBNAIL }), context.compression) },
        context.compression,
      ),
    },
  ];
};
