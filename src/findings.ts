/**
 * What a check says of a kit that can be drawn. A kit that can't be drawn is an error (`errors.ts`) instead.
 */
export type Severity = 'error' | 'warning' | 'note';

export interface Finding {
  /** `question/detail`, stable: the name under which it can be accepted. */
  readonly code: string;
  readonly severity: Severity;
  /** Placement, part or grid line that it is about. */
  readonly subject: string;
  readonly measured: number | null;
  readonly limit: number | null;
  /** Unit of both figures, as printed: mm, mm³, °, N, MPa, %, Hz. */
  readonly unit: string;
  /** One sentence with both figures in words. */
  readonly message: string;
  /** What to change: preset paths, best first. */
  readonly remedies: readonly string[];
  /** Set when the user accepted this code by name. */
  readonly accepted?: boolean;
}
