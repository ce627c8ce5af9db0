/** The order of assembly: each step with what it takes and a small picture of it. */
import type { Step } from '../../kit/types.js';
import { multiply, translation } from '../../solid/matrix.js';
import type { Vec3 } from '../../solid/mesh.js';
import type { OutputContext } from '../context.js';
import { type Apart, takenApart } from '../explode.js';
import { type Item, picture } from '../picture/picture.js';
import { png } from '../picture/png.js';
import { type Standing, standing } from '../standing.js';
import { pngData, tag, text } from './html.js';

const SIZE = [320, 226] as const;
/** Of what stands already, mixed with paper. */
const PALE = 0.62;
/** How far what is new stands off its place, of the way it comes. */
const OFF = 0.5;

export function stepsHtml(context: OutputContext): string {
  const items = standing(context);
  const apart = takenApart(context.kit);
  const steps = context.kit.assembly.map((step) => stepHtml(step, { items, apart, context }));
  return `<ol class="steps">\n${steps.join('\n')}\n</ol>`;
}

interface Around {
  readonly items: readonly Standing[];
  readonly apart: ReadonlyMap<string, Apart>;
  readonly context: OutputContext;
}

function stepHtml(step: Step, around: Around): string {
  const { context } = around;
  const shown = stepItems(step, around);
  const image =
    shown.length === 0
      ? ''
      : tag('img', {
          src: pngData(png(picture(shown, { size: SIZE }), context.compression)),
          width: SIZE[0],
          height: SIZE[1],
          alt: `Step ${step.step}: what is new is in full colour, a little off its place`,
        });
  const took = hardwareOf(step, context);
  const tools = [...new Set(step.moves.flatMap(({ tool }) => (tool === null ? [] : [tool])))];
  return `<li>${image}<h3>${step.step}. ${text(step.title)}</h3>${took.length > 0 ? `<p class="soft">Takes ${text(took.join(', '))}.</p>` : ''}${tools.length > 0 ? `<p class="soft">Tool: ${text(tools.join(', '))}.</p>` : ''}</li>`;
}

/** `20 × ISO 4026 M2.5 × 6` and the like, or a part's title. */
function hardwareOf({ joins, hardware }: Step, { kit }: OutputContext): string[] {
  const count = new Map<string, number>();
  const partOf = new Map(kit.placements.map(({ name, part }) => [name, part]));
  for (const name of [...joins, ...hardware]) {
    const id = partOf.get(name)!;
    count.set(id, (count.get(id) ?? 0) + 1);
  }
  return [...count].map(([id, number]) => `${number} × ${kit.parts.get(id)!.title}`);
}

/** The step's own pieces in full colour; around them what stands already, or only their sub-assembly. */
export function stepItems(step: Step, { items, apart }: Pick<Around, 'items' | 'apart'>): Item[] {
  const named = new Set([...step.joins, ...step.hardware, ...step.moves.map(({ placement }) => placement)]);
  const frame = step.moves.find(({ inFrameOf }) => inFrameOf !== null)?.inFrameOf;
  const inWhole = step.moves.length === 0 || step.moves.some(({ inFrameOf }) => inFrameOf === null);
  if (frame !== undefined && frame !== null && !inWhole) {
    const own = items.filter(({ name }) => name === frame || apart.get(name)?.ridesOn === frame);
    return own
      .filter(({ name }) => name === frame || apart.get(name)!.step <= step.step)
      .map((item) =>
        drawn(
          item,
          named.has(item.name) && item.name !== frame ? less(by(item.name), by(frame)) : null,
          item.name === frame,
        ),
      );
  }
  return items
    .filter(({ name }) => named.has(name) || standsBefore(name))
    .map((item) => drawn(item, isNew(item.name) ? by(rootOf(item.name)) : null, !isNew(item.name)));

  function by(name: string): Vec3 {
    return apart.get(name)?.by ?? [0, 0, 0];
  }
  function rootOf(name: string): string {
    const on = apart.get(name)?.ridesOn;
    return on === null || on === undefined ? name : rootOf(on);
  }
  /** What rides on a piece of this step is new with it. */
  function isNew(name: string): boolean {
    return named.has(name) || (rootOf(name) !== name && named.has(rootOf(name)) && apart.get(name)!.step <= step.step);
  }
  /** A sub-assembly stands in the whole from the step on in which it is lowered in: that is its root's last move. */
  function standsBefore(name: string): boolean {
    const root = rootOf(name);
    const lowered = apart.get(root)?.inKit ?? 0;
    return lowered <= step.step && (apart.get(name)?.step ?? 0) <= step.step;
  }
}

function drawn(item: Standing, off: Vec3 | null, pale: boolean): Item {
  const colour = pale ? (item.colour.map((c) => c + PALE * (244 - c)) as unknown as Vec3) : item.colour;
  const matrix =
    off === null ? item.matrix : multiply(translation([OFF * off[0], OFF * off[1], OFF * off[2]]), item.matrix);
  return { mesh: item.mesh, matrix, colour };
}

const less = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
