/** What a panel draws, and what that asks of battery, wires and capacitor. A, V, Ω, s, F. */
import { requirePositive } from '../positive.js';

/** @returns resistor in front of an LED that the supply would burn out: R = (V − V_f) / I [Ω]; 0 where there is nothing to drop */
export function seriesResistor(
  supply: number,
  { voltage, current }: { readonly voltage: number; readonly current: number },
): number {
  requirePositive('seriesResistor', { supply, voltage, current });
  return Math.max(0, (supply - voltage) / current);
}

/**
 * Hours on a battery: usable share of the capacity over the current. Cells give less when they are cold, old or drained fast.
 *
 * @param capacity - as printed on it [A·h] @param share - of it that can be used @param current - mean [A]
 */
export function batteryHours({
  capacity,
  share,
  current,
}: {
  readonly capacity: number;
  readonly share: number;
  readonly current: number;
}): number {
  requirePositive('batteryHours', { capacity, share, current });
  return (capacity * share) / current;
}

/**
 * Capacitor that carries a step of current until the supply follows: C = I t / ΔV.
 *
 * @param step - of the current [A] @param time - until the supply follows [s] @param sag - allowed [V] @returns [F]
 */
export function reservoir({
  step,
  time,
  sag,
}: {
  readonly step: number;
  readonly time: number;
  readonly sag: number;
}): number {
  requirePositive('reservoir', { step, time, sag });
  return (step * time) / sag;
}

/** Preferred values: the E12 series of IEC 60063. */
const E12 = [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2] as const;

/** @returns the next value of the E12 series at or above */
export function preferredAbove(value: number): number {
  requirePositive('preferredAbove', { value });
  const decade = 10 ** Math.floor(Math.log10(value));
  const share = value / decade;
  const step = E12.find((one) => one >= share - 1e-9) ?? 10;
  return step * decade;
}
