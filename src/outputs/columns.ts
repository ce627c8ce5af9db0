/** A table of text as wide as the terminal lets it be. */

export interface Column<T> {
  /** Heading, one word a line. */
  readonly head: readonly string[];
  readonly cell: (row: T) => string;
  /** Shorter, for a narrow terminal. */
  readonly short?: (row: T) => string;
  readonly left?: boolean;
  /** 0 is never left out; the largest goes first when there is no room. */
  readonly rank?: number;
}

export interface Table {
  readonly text: string;
  /** Headings of the columns that found no room. */
  readonly dropped: readonly string[];
}

/** @returns headings and rows; first with wide gaps, then with narrow ones and short cells, then with fewer columns */
export function tableText<T>(rows: readonly T[], columns: readonly Column<T>[], width: number): Table {
  const tries = [
    { gap: 2, brief: false },
    { gap: 1, brief: false },
    { gap: 1, brief: true },
  ] as const;
  let kept = columns;
  for (;;) {
    for (const { gap, brief } of tries) {
      const laid = lay(rows, kept, { gap, brief });
      const wide = Math.max(...laid.map((line) => line.length));
      const most = Math.max(0, ...kept.map(({ rank = 0 }) => rank));
      if (wide <= width || (most === 0 && brief))
        return {
          text: laid.join('\n'),
          dropped: columns.filter((column) => !kept.includes(column)).map(({ head }) => head.join(' ')),
        };
    }
    const most = Math.max(...kept.map(({ rank = 0 }) => rank));
    kept = kept.filter(({ rank = 0 }) => rank < most);
  }
}

function lay<T>(
  rows: readonly T[],
  columns: readonly Column<T>[],
  { gap, brief }: { readonly gap: number; readonly brief: boolean },
): readonly string[] {
  const tall = Math.max(...columns.map(({ head }) => head.length));
  // Headings stand at the bottom of their lines.
  const heads = columns.map(({ head }) => [...new Array<string>(tall - head.length).fill(''), ...head]);
  const cells = rows.map((row) => columns.map(({ cell, short }) => (brief && short ? short(row) : cell(row))));
  const lines = [...Array.from({ length: tall }, (_, i) => heads.map((head) => head[i]!)), ...cells];
  const widths = columns.map((_, k) => Math.max(...lines.map((line) => line[k]!.length)));
  return lines.map((line) =>
    line
      .map((text, k) => (columns[k]!.left ? text.padEnd(widths[k]!) : text.padStart(widths[k]!)))
      .join(' '.repeat(gap))
      .trimEnd(),
  );
}
