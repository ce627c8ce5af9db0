/** Alignment, step by step, for the person at the bench: which way, which screw, how many turns for how many millimetres. */
import type { Screw } from '../../kit/types.js';
import { VISIBLE } from '../../optics/safety-limits.js';
import { deg } from '../../units.js';
import type { OutputContext } from '../context.js';
import { list, table, tag, text } from './html.js';

const mm = (value: number) => `${value.toFixed(value < 1 ? 2 : 1)} mm`;

export function alignHtml(context: OutputContext): string {
  const { kit, light, spec } = context;
  const { signal } = light;
  const key = (suffix: string): string => toolOf(kit.screws.find(({ placement }) => placement.endsWith(suffix)));
  const roll = kit.handling?.[0]?.tool ?? key('-clamp-screw');
  const infrared = spec.emitters.part.wavelengthNm.value > VISIBLE.to;
  const low = spec.scan.litLevel === 'low';
  const pinVolts = (milliamp: number) => {
    const volts = Math.max(0.1, spec.scan.supplyV - (milliamp * spec.scan.pullUpOhm) / 1000);
    return `${volts.toFixed(1)} V`;
  };
  const lean = deg(light.aim.inputs.wedge);
  const lines = light.aim.lines.map(({ line, count, distance, step, tolerance }, i) => {
    const { lit, staysLit } = signal.lines[i]!;
    const over = lit / signal.levels.lit;
    return [
      `${line}s`,
      count,
      mm(distance),
      mm(step.perTurn),
      mm(step.perTurn / 4),
      mm(tolerance),
      mm(staysLit),
      `${over < 10 ? over.toFixed(1) : Math.round(over)} ×`,
    ];
  });
  const steps = [
    `Covers and hood on. Power the one line at reduced drive. ${infrared ? 'Its light can’t be seen: find the spot with a viewing card held before the receiver, never by eye.' : 'Look at the spot on the receiver’s side, never along the beam.'}`,
    `Find out whether barrel or mount is crooked: ease the clamp screw (${key('-clamp-screw')}) and roll the barrel by its collar, ${roll} through the slot in the cover. ${
      lean > 0
        ? `Every barrel leans by ${lean.toFixed(1)}° on purpose, so that rolling it can undo its mount’s yaw; the mark on the collar, the flat between two of its notches, shows the way. Its spot runs round a circle: the circle’s middle is where the mount points, its radius is lean and barrel’s error together. Begin with the mark up, the arm tilted down as far.`
        : 'A spot that runs round a circle belongs to a crooked barrel; one that stays, to a crooked mount or seat. Most do a little of both: the circle’s middle is where the mount points, its radius is the barrel’s error.'
    }`,
    'Roll until the spot stands straight above or below the target on the socket’s face: the error then lies in the plane that the screw tilts. Of the two such places take the one nearer to the target’s height. Hold the barrel with the clamp screw.',
    `Turn the adjusting screw (${key('-adjust-screw')}): in (clockwise) lowers the beam, out raises it. The table says how far a turn moves the spot. If it reaches the end before the target, roll the barrel half round, so that its error comes from the other side, and try again; if that fails as well, exchange the barrel.`,
    `Slide the socket sideways across what is left (${key('-socket-screw')}), and hold it.`,
    `Read the receiver: its pin must be ${low ? 'low' : 'high'} while lit (under ${pinVolts(signal.levels.lit)} counts as lit, with ${spec.scan.pullUpOhm / 1000} kΩ to ${spec.scan.supplyV} V; with the light on it goes close to 0) and ${low ? `high, near ${pinVolts(signal.ambient.diffuse)},` : 'low'} with a card in the beam. Turn the screw a little both ways: the middle between the two places where it drops out is where to leave it.`,
    'Lock the adjusting screw with a drop of lacquer; its push alone does not hold it. Go on to the next line. After the last one press the plugs in and lift the hood off.',
  ];
  const dark = [
    'All lines dark at once: supply, ground or the multiplexers’ address lines.',
    'Every line of one board, or every eighth: that board’s or that multiplexer’s supply or output; channels.csv says which lines share one.',
    'One line dark, its spot on the target: cover and uncover its receiver with the lamp of the room; a pin that does not move has a lead swapped or a cold joint. Swap receiver leads before receivers.',
    'One line dark, no spot: its emitter. Measure its supply at the leads before you exchange it; look for the spot on the hood, above or beside the target, with the hood on.',
    'A line that comes and goes: tap its mount; then warm it with the hand. A loose clamp screw, a mount with play between its ribs, or a beam that sits at the edge of its aperture: repeat the last two steps of its alignment.',
    'A line that reads lit with its emitter off: light of the room, or a neighbour; shade it with a hand to tell which.',
  ];
  return [
    `<ol>${steps.map((step) => tag('li', {}, text(step))).join('')}</ol>`,
    table(
      'What a turn of the adjusting screw does, and how far off a beam may end',
      [
        'line',
        'number',
        'beam',
        'spot per turn',
        'per quarter turn',
        'half its light left at',
        'still lit at',
        'light, of what it takes to read lit',
      ],
      lines,
      { numbers: [1, 2, 3, 4, 5, 6, 7] },
    ),
    '<h3>The one line that is off</h3>',
    list(dark),
  ].join('\n');
}

const toolOf = (screw: Screw | undefined): string => screw?.tool.name ?? 'its key';
