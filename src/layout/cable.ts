/** Where the wires leave: a slot below in each corner post's wall, and two slits beside it for a cable tie. */
import type { Spec } from '../spec/spec.js';
import { upTenth } from './fits.js';
import { type SectionLayout, TAB_ROOT } from './frame.js';
import type { RailRun } from './runs.js';

export interface CableLayout {
  /** Share of the wires of the two rails that meet at the fullest corner which the slot takes; 1: all of them. */
  readonly takes: number;
  /** Of the slot, along the wall and up. */
  readonly width: number;
  readonly height: number;
  /** Slits for a tie, one over the other: size along the wall and up, from the slot's edge, heights of their middles. */
  readonly tie: {
    readonly width: number;
    readonly height: number;
    readonly aside: number;
    readonly at: readonly [number, number];
  };
}

/** Bundle of a receiver's three wires [mm]: 1 mm each over the insulation; common practice, no source. */
const RECEIVER_BUNDLE = 2.2;
/** Share of a bundle's circle or slot that round wires fill; common practice, no source. */
const FILL = 0.6;
const HEIGHT = 7;
const WIDTH_LEAST = 8;
/** A tie 2.5 mm wide and 1.1 thick, with play: common practice, no source. */
const TIE = { width: 3.2, height: 1.8, aside: 3 } as const;
/** Between the slot and the tab's root. */
const ROOT_AIR = 1;
/** Wall above the floor's edge below the lower slit; a bundle lies between the two. */
const TIE_FROM = 2.5;

/** @returns cross-section of all wires of a rail [mm²] */
function wiresArea(spec: Spec, run: RailRun): number {
  const bundle = run.kind === 'emitter' ? spec.emitters.part.wireDiameter.value : RECEIVER_BUNDLE;
  return run.beams.length * (Math.PI / 4) * bundle ** 2;
}

/** @returns breadth of an opening this high that all wires of these rails pass [mm] */
export const openingFor = (spec: Spec, { runs, height }: { runs: readonly RailRun[]; height: number }): number =>
  upTenth(Math.max(WIDTH_LEAST, runs.reduce((sum, run) => sum + wiresArea(spec, run), 0) / FILL / height));

/** Between the slot and the outer corner: the tie's slits stand there. */
export const CABLE_FROM_CORNER = 14;

/**
 * The wires of the two rails at the corner where most meet may all leave there, as far as its wall is long enough.
 */
export function layCable(
  spec: Spec,
  { runs, section }: { readonly runs: readonly RailRun[]; readonly section: SectionLayout },
): CableLayout {
  const room = Math.floor(10 * (section.width - CABLE_FROM_CORNER - TAB_ROOT - ROOT_AIR)) / 10;
  const area = (run: RailRun) => wiresArea(spec, run);
  const along = (sides: readonly string[]) => Math.max(...runs.filter(({ side }) => sides.includes(side)).map(area));
  const wanted = (along(['far', 'near']) + along(['left', 'right'])) / FILL;
  const width = Math.min(room, upTenth(Math.max(WIDTH_LEAST, wanted / HEIGHT)));
  const takes = Math.min(1, (width * HEIGHT) / wanted);
  const bundle = Math.sqrt((4 * wanted * takes) / Math.PI);
  const low = TIE_FROM + TIE.height / 2;
  return { takes, width, height: HEIGHT, tie: { ...TIE, at: [low, upTenth(low + Math.min(bundle, 10) + TIE.height)] } };
}
