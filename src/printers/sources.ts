/** Where the printers' figures come from. */
export const BED = 'A common size of desktop filament printers; generic, not a maker’s figure';
export const LINE = 'Common practice: a line a little wider than the nozzle';
export const LAYER = 'Common practice: half the nozzle';
export const CLEARANCE =
  'Common practice, middle of the usual range (press 0–0.1, snug 0.15–0.2, slide 0.25–0.3, free 0.4–0.5); calibrate';
export const CLEARANCE_LOW =
  'Common practice, low end of the usual range (press 0–0.1, snug 0.15–0.2, slide 0.25–0.3, free 0.4–0.5), for thin lines; calibrate';
export const HOLE = 'Common practice: vertical holes print small, start at +0.2 on the diameter; calibrate';
export const GAP = 'Common practice, well under the ± 0.5 mm that public guides allow for whole dimensions; calibrate';
export const WARP = 'Planning value, no source: bow of a 100 mm bar of PETG after it left the bed; calibrate';
export const EDGE = 'Common practice: clips, purge line and brim';
export const OVERHANG =
  'Common practice: 45° from the vertical, where half of a line still lies on the one beneath; calibrate';
export const BRIDGE = 'Common practice: printing guides give 5 to 10 mm with the fan on, from memory; calibrate';
export const SPACING = 'Common practice: room for a brim on both neighbours and for a scraper between them';
