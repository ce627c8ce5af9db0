/** The progress bar on standard error, alike in every command. */
import { SingleBar } from 'cli-progress';

/** @param format - what stands beside the bar, in the library's placeholders */
export const newBar = (format: string): SingleBar =>
  new SingleBar({
    format: `{bar} ${format}`,
    barCompleteChar: '■',
    barIncompleteChar: '·',
    barsize: 24,
    // Hidden, it would stay so after Ctrl-C.
    hideCursor: false,
    clearOnComplete: true,
    linewrap: false,
    stream: process.stderr,
  });
