/**
 * Where the catalogue's figures come from. No standard's own text was at hand: rows are from public tables that restate
 * them unless the string says "from memory".
 */
export const PITCH = 'ISO 261/262, coarse series, as restated in public tables';
export const CLEARANCE = 'ISO 273, medium series, as restated in public tables';
export const CAP = 'ISO 4762, nominal, as restated in public tables';
export const CAP_KNURLED = 'ISO 4762, largest diameter of a knurled head, as restated in public tables';
export const SUNK =
  'ISO 10642 (M3, M4): nominal, from memory; agrees with public tables of head height and key for M3 and M4';
export const SUNK_HEAD =
  'Largest head diameter as delivered, 2 d: public tables of BS 4168-type screws give 6.00 (M3) and 8.00 (M4); ISO 10642 itself gives 6.72 and 8.96 to the sharp corner';
export const SUNK_SMALL =
  'Screw in the manner of ISO 10642, from memory: older editions start at M3; head height .62 d and head 2 d as for M3; measure the screws before use';
export const SET = 'ISO 4026, as restated in public tables';
export const NUT = 'ISO 4032, largest, as restated in public tables';
export const PILOT = 'Common practice: about .85 d for a screw that forms its thread in plastic';
export const CAP_LENGTHS = 'Range of ISO 4762 in steps of ISO 888, from memory; lengths in common stock';
export const SUNK_LENGTHS = 'Steps of ISO 888, from memory; lengths in common stock';
export const SET_LENGTHS = 'Range of ISO 4026 in steps of ISO 888, from memory; lengths in common stock';
export const KEY = 'ISO 2936, from memory';
export const PIN = 'ISO 2338 (m6), range and steps from memory';
export const BARREL = 'Generic part, from common experience with hobby parts: measure your own';
export const OUTLINE = 'Generic outline, from common experience with hobby boards: measure your own';
export const CELLS =
  'Nominal voltages as IEC 60086 (alkaline), IEC 61951-2 (nickel) and IEC 61960 (lithium) state them, from memory; capacity and current: common cells, read your own';
