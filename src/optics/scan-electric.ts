/** The electric side of a scan: how long a node takes to settle, and what a pull-up has to carry. */
import { requireNotNegative, requirePositive } from '../positive.js';

/**
 * Time in which a node behind a resistance settles to within one step of a converter: t = R C ln(2^bits).
 *
 * @param node - resistance R [Ω], capacitance C [F] (wire, multiplexer and converter's own together), bits of the converter; a plain
 *   digital input: 1 or more bits, 3 settle to an eighth
 * @returns t [s] @throws {RangeError} unless all > 0
 * Source: Analog Devices AN-1024 (settling of a multiplexer), as restated; first-order response.
 */
export function settlingTime(node: {
  readonly resistance: number;
  readonly capacitance: number;
  readonly bits: number;
}): number {
  requirePositive('settlingTime', node);
  return node.resistance * node.capacitance * node.bits * Math.LN2;
}

/**
 * Current that a lit receiver must sink through its pull-up to be read as low: I = (V − V_low) / R.
 *
 * @param options - supply V, low level V_low [V], 0 ≤ V_low < V; pull-up R [Ω]
 * @returns I [A] @throws {RangeError} on figures out of range
 * Source: Ohm's law.
 */
export function pullUpCurrent(options: {
  readonly supply: number;
  readonly low: number;
  readonly resistance: number;
}): number {
  const { supply, low, resistance } = options;
  requirePositive('pullUpCurrent', { supply, resistance });
  requireNotNegative('pullUpCurrent', { low });
  if (!(low < supply)) throw new RangeError(`pullUpCurrent: low must lie below the supply of ${supply} V, got ${low}`);
  return (supply - low) / resistance;
}

/**
 * The smallest pull-up against which a receiver still reads as low: R = (V − V_low) / I.
 *
 * @param options - supply V, low level V_low [V], what the receiver sinks when lit, I > 0 [A]
 * @returns R [Ω] @throws {RangeError} on figures out of range
 * Source: Ohm's law.
 */
export function leastPullUp(options: {
  readonly supply: number;
  readonly low: number;
  readonly current: number;
}): number {
  requirePositive('leastPullUp', { current: options.current });
  return pullUpCurrent({ supply: options.supply, low: options.low, resistance: options.current });
}
