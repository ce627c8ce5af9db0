/** Does the electronics bay do: plugs reach in, displays are seen, nothing gets too warm, and the battery carries the panel? */
import type { Finding } from '../findings.js';
import { WARMTH } from '../layout/bay/air.js';
import { layScan } from '../layout/scan.js';
import { CONVERTER, supplyFigures } from '../layout/supply.js';
import { batteryOf } from '../spec/bay.js';
import type { Check, CheckContext } from './context.js';
import { SHARED } from './limits.js';
import { figure, say } from './say.js';
import { boxDistance } from './vectors.js';

/** A converter asks for this much of the battery, at least; without one the battery must give the supply's voltage. [V] Source: common practice, 3.0 to start. */
const CONVERTER_LEAST = 2.5;

type Context = Pick<CheckContext, 'kit' | 'spec' | 'scene'>;

export const bay: Check<Context> = {
  name: 'bay',
  codes: [
    'bay/plug',
    'bay/face',
    'bay/warm',
    'bay/battery-voltage',
    'bay/battery-current',
    'bay/lithium',
    'bay/multiplexers',
    'bay/fill',
  ],
  run: (context) =>
    context.spec.bay === undefined
      ? []
      : [...reaches(context), ...warmth(context), ...battery(context), ...multiplexers(context), ...fill(context)],
};

/** The finished kit stands around each room that must be free, lids on. */
function reaches({ kit, scene }: Context): Finding[] {
  return (kit.reaches ?? []).flatMap(({ kind, what, placement, room }) => {
    const body = scene.byName.get(placement)!;
    const block = scene.block(room, body.at.level.matrix);
    return scene.bodies.flatMap((other): Finding[] => {
      if (other === body || boxDistance(block.box, other.at.level.box) > 0) return [];
      const volume = scene.overlap(other.at.level, block);
      if (volume <= SHARED) return [];
      return [
        say({
          code: kind === 'plug' ? 'bay/plug' : 'bay/face',
          severity: 'error',
          subject: placement,
          measured: volume,
          limit: SHARED,
          unit: 'mm³',
          message:
            kind === 'plug'
              ? `${other.name} takes ${figure(volume)} mm³ of the room that the ${what} and its wires need.`
              : `${other.name} covers ${figure(volume)} mm³ of the room over the ${what}: it can't be seen or touched.`,
          remedies: ['bay.modules', 'bay.place'],
        }),
      ];
    });
  });
}

function warmth({ spec, kit: { bay: laid } }: Context): Finding[] {
  const drawn = laid?.heat.drawn ?? 0;
  if (laid === undefined || drawn <= WARMTH * 1.01) return [];
  return [
    say({
      code: 'bay/warm',
      severity: 'warning',
      subject: 'bay',
      measured: drawn,
      limit: WARMTH,
      unit: 'K',
      message: `${figure(laid.heat.watts)} W warm the bay to about ${figure(drawn)} K over the air around, ${figure(spec.surroundings.warmest + drawn)} °C at the warmest; ${WARMTH} K are what boards and plastic are spared, and there is no room for more vents.`,
      remedies: ['bay.modules', 'bay.place', 'surroundings.warmest'],
    }),
  ];
}

function battery({ spec }: Context): Finding[] {
  const cells = batteryOf(spec.bay);
  if (cells === null) return [];
  const findings: Finding[] = [];
  const converts = spec.bay!.modules.some(({ part }) => part.converts?.value === true);
  const least = converts ? CONVERTER_LEAST : spec.scan.supplyV;
  if (cells.voltage < least - 1e-9)
    findings.push(
      say({
        code: 'bay/battery-voltage',
        severity: 'error',
        subject: 'battery',
        measured: cells.voltage,
        limit: least,
        unit: 'V',
        message: converts
          ? `The battery gives ${figure(cells.voltage)} V, a converter asks for ${figure(least)} V to start.`
          : `The battery gives ${figure(cells.voltage)} V, the panel's supply is ${figure(least)} V, and no module converts: put a converter in the bay, or take a battery of more cells.`,
        remedies: ['bay.modules', 'scan.supply_v'],
      }),
    );
  const drawn = 1000 * supplyFigures(spec, 0).all * (converts ? spec.scan.supplyV / cells.voltage / CONVERTER : 1);
  if (drawn > cells.mostMa)
    findings.push(
      say({
        code: 'bay/battery-current',
        severity: 'error',
        subject: 'battery',
        measured: drawn,
        limit: cells.mostMa,
        unit: 'mA',
        message: `The panel draws ${figure(drawn)} mA from the battery, which gives ${figure(cells.mostMa)} mA at most: light the lines one at a time, or take a stronger one.`,
        remedies: ['scan.light_us', 'bay.modules', 'supply.logic_ma'],
      }),
    );
  if (cells.lithium)
    findings.push(
      say({
        code: 'bay/lithium',
        severity: 'warning',
        subject: 'battery',
        message:
          'A lithium cell stands in the bay: charge and protect it only as its maker says, with a charger made for it and never unattended; keep its tray free of screws’ tips and sharp edges; a swollen or damaged cell is waste. Local rules for fire, carriage and disposal come first.',
        remedies: [],
      }),
    );
  return findings;
}

/** Does the bay hold as many multiplexers as the scan plan asks for? Only where it holds any: they may stand elsewhere. */
function multiplexers({ spec }: Context): Finding[] {
  const has = spec.bay!.modules.filter(({ name }) => name.startsWith('multiplexer')).length;
  const needs = layScan(spec).multiplexers.length;
  if (has === 0 || has >= needs) return [];
  return [
    say({
      code: 'bay/multiplexers',
      severity: 'warning',
      subject: 'bay',
      measured: has,
      limit: needs,
      unit: '',
      message: `The bay holds ${has} of the ${needs} multiplexers that the scan plan asks for, one for the receivers of each side at least.`,
      remedies: ['bay.modules', 'scan.spare_pins', 'scan.channels'],
    }),
  ];
}

function fill({ kit: { bay: laid } }: Context): Finding[] {
  if (laid === undefined) return [];
  const trays = laid.units.length;
  const count = laid.units.reduce((sum, { modules }) => sum + modules.length, 0);
  return [
    say({
      code: 'bay/fill',
      severity: 'note',
      subject: 'bay',
      measured: 100 * laid.fill,
      unit: '%',
      message: `The bay holds ${count} modules in ${trays === 1 ? 'one tray' : `${trays} trays`} ${laid.place === 'apart' ? 'apart from the panel' : `along the ${laid.place} rail`}; with the room they need they take ${figure(100 * laid.fill)} % of its floor.`,
      remedies: [],
    }),
  ];
}
