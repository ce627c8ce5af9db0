/** Sizes that several files of the bay share [mm]. Common practice where nothing else is said. */

import { threads } from '../../components/index.js';
import type { Spec } from '../../spec/spec.js';
import { upTenth } from '../fits.js';

/** Between neighbouring trays. */
export const TRAYS_APART = 0.3;
/** Of every notch for wires, below the wall's top: as deep as the slots in the corner posts are high. */
export const NOTCH = 7;
/** Room of the rib that wires are tied to, along the row and outward. */
export const TIE_ROOM = [16, 8] as const;
/** That rib, and the two slits through it for a cable tie 2.5 mm wide. */
export const TIE = { height: 15, at: [4, 11], width: 3.2, slit: 1.8 } as const;
/** Between a tray's wall and the first screw that joins it to the next tray. */
const JOINT_FROM = 13;
const JOINT_APART = 12;

/** @returns where trays that stand apart from a rail are screwed to each other, outward from the inner wall's outer face */
export function jointPlaces([, depth]: readonly [number, number], wall: number): readonly number[] {
  const [first, last] = [wall + JOINT_FROM, depth - wall - JOINT_FROM];
  return last - first >= JOINT_APART ? [first, last] : [depth / 2];
}

/** Columns and bosses that screws form their thread in: breadth, and plastic past the thread, the tip's room in it. */
export const JOINT = { breadth: 8, behind: 2.2, tip: 1 } as const;

/** Room of the short arm of the key that turns them: from the wall, and across: the screw's head passes there too. */
export const KEY = { reach: 24, half: 3.4, air: 0.4 } as const;

/** @returns half of what the key and the head of its screw need */
export const keyHalf = ({ screws: { fix } }: Pick<Spec, 'screws'>): number =>
  Math.max(KEY.half, threads[fix].sunkHead.value / 2 + KEY.air);

/** Over the ribs of a battery and the posts and bars that low boards lie on. */
const OVER_POSTS = 9.6;
/** Between the heads of two screws, one over the other. */
const HEADS_APART = 0.4;

/** Heights of the screws in a tray's walls: so high that their key passes over what holds low boards, and below the notches. */
export function screwHeights(spec: Pick<Spec, 'screws'>, height: number): readonly number[] {
  const [low, high] = [OVER_POSTS + keyHalf(spec), height - NOTCH - 5];
  const apart = threads[spec.screws.fix].sunkHead.value + HEADS_APART;
  return high - low >= apart ? [low, high] : [Math.max(low, (low + high) / 2)];
}

/** A screw in a tray's inner wall stays this far from the tray's ends, at least: its key turns there. */
const FROM_END = 16;

/** @returns how far it stays there: its head passes beside the bosses of the lid */
export const fromEnd = (
  spec: Pick<Spec, 'screws'>,
  { section, boss }: { readonly section: { readonly wall: number }; readonly boss: { readonly width: number } },
): number => Math.max(FROM_END, upTenth(section.wall + boss.width + keyHalf(spec)));

/** @returns how far it stays from the left end where the rib for the wires' tie stands beside the boss */
export const fromTie = (spec: Pick<Spec, 'screws'>, { section, boss }: Parameters<typeof fromEnd>[1]): number =>
  section.wall + boss.width + TIE_ROOM[0] + keyHalf(spec);
