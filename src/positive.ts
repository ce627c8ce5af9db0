/**
 * Guard of the closed forms: they hold for finite figures above zero only.
 *
 * @param formula - name for the message
 * @throws {RangeError} naming the first figure that is not a finite number above zero
 */
export function requirePositive(formula: string, figures: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(figures)) {
    if (!(value > 0 && value < Infinity)) throw new RangeError(`${formula}: ${name} must be > 0, got ${value}`);
  }
}

/** As `requirePositive`, but zero is allowed. */
export function requireNotNegative(formula: string, figures: Readonly<Record<string, number>>): void {
  for (const [name, value] of Object.entries(figures)) {
    if (!(value >= 0 && value < Infinity)) throw new RangeError(`${formula}: ${name} must be ≥ 0, got ${value}`);
  }
}
