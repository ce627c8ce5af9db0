/** The electronics bay: what stands where, how it is held, and what goes in from outside. */
import type { PlacedModule } from '../../layout/bay/types.js';
import type { OutputContext } from '../context.js';
import { table, text } from './html.js';

const HELD: Readonly<Record<PlacedModule['fixing']['kind'], (placed: PlacedModule) => string>> = {
  screws: ({ fixing }) =>
    fixing.kind === 'screws' ? `${fixing.at.length} screws ${fixing.size} × ${fixing.length}, own thread` : '',
  clips: ({ fixing }) => (fixing.kind === 'clips' ? `${fixing.bars.length} clips, a screw each` : ''),
  ribs: () => 'ribs around it, the door above',
};

/** @returns the chapter; empty where the kit has no bay */
export function bayHtml({ kit: { bay }, spec }: OutputContext): string {
  if (bay === undefined) return '';
  const rows = bay.units.flatMap(({ modules }, i) =>
    modules.map((placed) => {
      const { module } = placed;
      const { part } = module;
      const seen = [
        ...part.connectors.value
          .filter(({ access }) => access === 'outside')
          .map(({ what }) => `${what} through the wall`),
        ...(part.window ? ['its picture through the lid'] : []),
        ...(part.knobs ? [`${part.knobs.value.length > 1 ? 'knobs' : 'knob'} through the lid`] : []),
        ...(part.lamps ? [`${part.lamps.value.length > 1 ? 'lamps' : 'lamp'} through the lid`] : []),
      ];
      return [module.id, part.title, i + 1, HELD[placed.fixing.kind](placed), seen.join(', ')];
    }),
  );
  const { heat } = bay;
  const where =
    bay.place === 'apart'
      ? `The bay is a case of its own, on a cable of ${spec.bay?.cable ?? 0} mm from the panel.`
      : `The bay hangs on the ${bay.place} rail; the wires come over a notch in that rail’s wall.`;
  const warm =
    heat.watts === 0
      ? ''
      : ` ${heat.watts.toFixed(2)} W warm it by about ${heat.drawn.toFixed(1)} K over the air around${heat.vents > 0 ? `, through ${Math.round(heat.vents)} mm² of slots below and as much above` : ', closed'}: an estimate by common heat transfer figures.`;
  const lithium = bay.units.some(({ modules }) => modules.some(({ module }) => module.part.cell?.lithium))
    ? '<p class="cautions">A lithium cell is in it: charge and protect it only as its maker says and never unattended; a swollen or damaged cell is waste; local rules for fire, carriage and disposal come first. The door is screwed on: keep it so.</p>'
    : '';
  return `<p>${text(where + warm)} Measure your boards before you print: outlines from the catalogue are generic.</p>
${lithium}
${table('What the bay holds', ['name', 'what', 'tray', 'held by', 'reached from outside'], rows, { numbers: [2] })}`;
}
