/** What is written to the terminal, and how wide it is. Nothing depends on colour: only headings are made bold. */

/** Columns to wrap at: the terminal's, but no wider than reads well; 80 where there is none. */
export const width = (): number => Math.min(100, Math.max(50, process.stdout.columns ?? 80));

/** Columns for a table: all that the terminal has; 100 where there is none. */
export const tableWidth = (): number => Math.max(60, process.stdout.columns ?? 100);

/** Writes a line, or several, to standard output. */
export const say = (text: string): void => {
  process.stdout.write(`${text}\n`);
};

/** Writes a line, or several, to standard error: progress and mistakes, so that a result can be piped. */
export const warn = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

/** Writes a result as JSON. */
export const sayJson = (value: unknown): void => say(JSON.stringify(value, null, 2));

/** Bold on a terminal that wants it; NO_COLOR, a pipe or a dumb terminal get plain text. */
export function strong(text: string, stream: NodeJS.WriteStream = process.stdout): string {
  const { NO_COLOR, TERM } = process.env;
  const plain = !stream.isTTY || (NO_COLOR !== undefined && NO_COLOR !== '') || TERM === 'dumb';
  return plain ? text : `\u001b[1m${text}\u001b[22m`;
}

/** A reader that has seen enough (`| head`) closes the pipe: that is no failure of ours. */
export function endQuietlyOnClosedPipe(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit();
    throw error;
  });
}
