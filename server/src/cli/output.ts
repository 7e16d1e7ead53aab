import { isatty } from 'node:tty';
import pc from 'picocolors';
import { plainPage, type Page } from '../report/page.ts';
import { printable } from '../report/printable.ts';

/** Results, to standard output. */
export function print(text: string | Uint8Array): void {
  process.stdout.write(text);
}

/** One line to the person, to standard error. */
export function complain(line: string): void {
  process.stderr.write(`plumule: ${printable(line)}\n`);
}

/** Whether standard output is a terminal that shows colours; NO_COLOR and TERM=dumb are respected. */
export function wantsColours(): boolean {
  // isTTY of a pipe is undefined, which the library for colours takes for a question and answers with yes under CI.
  return isatty(process.stdout.fd) && process.stdout.hasColors();
}

/** A narrower terminal is no reader of tables, and longer lines are hard to read. */
const NARROWEST = 60;

/** What standard output is: a terminal has its own width, up to that of other pages. */
export function outputPage(): Page {
  const columns = isatty(process.stdout.fd) ? process.stdout.columns : plainPage.width;
  return {
    width: Math.min(plainPage.width, Math.max(NARROWEST, columns)),
    bold: pc.createColors(wantsColours()).bold,
  };
}

/** A reader that closes the pipe early, as `head` does, has all it wants: no error. */
export function allowClosedPipe(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  }
}

/** Example: numbered(2, 'file') is '2 files' */
export function numbered(n: number, word: string): string {
  return `${n} ${word}${n === 1 ? '' : 's'}`;
}
