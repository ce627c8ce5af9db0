/** How a panel's receivers are read: which line on which channel, and how long a finger waits. */
import type { ScanLine } from '../optics/scan-channels.js';
import { planScan, type ScanPlan } from '../optics/scan-plan.js';
import type { Spec } from '../spec/spec.js';

/** Level that still reads as low [V]. Common practice: what a saturated phototransistor leaves, with some to spare. */
const LOW = 0.5;

/** Every line, columns first as they are numbered; the receivers of a side are on one board. */
export function scanLines({ grid, emitters }: Spec): readonly ScanLine[] {
  const boards = {
    column: emitters.columnsFrom === 'far' ? 'near' : 'far',
    row: emitters.rowsFrom === 'left' ? 'right' : 'left',
  };
  return (['column', 'row'] as const).flatMap((line) =>
    (line === 'column' ? grid.columns : grid.rows).map((_, index) => ({
      name: `${line}-${index}`,
      line,
      index,
      board: boards[line],
    })),
  );
}

/** @returns the scan of a panel, times in s */
export function layScan(spec: Spec): ScanPlan {
  const { scan } = spec;
  return planScan({
    lines: scanLines(spec),
    channels: scan.channels,
    address: scan.address,
    sparePins: scan.sparePins,
    addressTime: 1e-6 * scan.addressUs,
    settleTime: 1e-6 * scan.settleUs,
    readTime: 1e-6 * scan.readUs,
    lightTime: 1e-6 * scan.lightUs,
    debounce: scan.debounce,
    pullUp: { resistance: scan.pullUpOhm, supply: scan.supplyV, low: LOW },
    lowWhileLit: scan.litLevel === 'low',
  });
}
