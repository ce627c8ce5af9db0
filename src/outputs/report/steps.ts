/** The order of assembly: each step with what it takes and a small picture of it. */
import type { Step } from '../../kit/types.js';
import type { OutputContext } from '../context.js';
import { STEP_SIZE } from '../step-pictures.js';
import { pngData, tag, text } from './html.js';

export function stepsHtml({ kit, drawn }: Pick<OutputContext, 'kit' | 'drawn'>): string {
  const images = drawn.stepPictures();
  const steps = kit.assembly.map((step, i) => stepHtml(step, images[i]!, kit));
  return `<ol class="steps">\n${steps.join('\n')}\n</ol>`;
}

function stepHtml(step: Step, shown: Uint8Array | null, kit: OutputContext['kit']): string {
  const image =
    shown === null
      ? ''
      : tag('img', {
          src: pngData(shown),
          width: STEP_SIZE[0],
          height: STEP_SIZE[1],
          alt: `Step ${step.step}: what is new is in full colour, a little off its place`,
        });
  const took = hardwareOf(step, kit);
  const tools = [...new Set(step.moves.flatMap(({ tool }) => (tool === null ? [] : [tool])))];
  return `<li>${image}<h3>${step.step}. ${text(step.title)}</h3>${took.length > 0 ? `<p class="soft">Takes ${text(took.join(', '))}.</p>` : ''}${tools.length > 0 ? `<p class="soft">Tool: ${text(tools.join(', '))}.</p>` : ''}</li>`;
}

/** `20 × ISO 4026 M2.5 × 6` and the like, or a part's title. */
function hardwareOf({ joins, hardware }: Step, kit: OutputContext['kit']): string[] {
  const count = new Map<string, number>();
  const partOf = new Map(kit.placements.map(({ name, part }) => [name, part]));
  for (const name of [...joins, ...hardware]) {
    const id = partOf.get(name)!;
    count.set(id, (count.get(id) ?? 0) + 1);
  }
  return [...count].map(([id, number]) => `${number} × ${kit.parts.get(id)!.title}`);
}
