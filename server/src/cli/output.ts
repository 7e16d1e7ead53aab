import { isatty } from 'node:tty';
import pc from 'picocolors';
import { plainPage, type Page } from '../report/page.ts';
import { printable } from '../report/printable.ts';
import { exits } from './exits.ts';
import type { Unread } from './names.ts';
import type { blocksWhen } from './program/choices.ts';

/** Results, to standard output. */
export function print(text: string | Uint8Array): void {
  process.stdout.write(text);
}

/** One line to the person, to standard error. */
export function complain(line: string): void {
  process.stderr.write(`plumule: ${printable(line)}\n`);
}

/** A line for each path that could not be read or written. */
export function complainOf(all: readonly Unread[]): void {
  for (const { path, message } of all) complain(`${path}: ${message}`);
}

/** Whether standard output is a terminal that shows colours; NO_COLOR and TERM=dumb are respected. */
export function wantsColours(): boolean {
  // isTTY of a pipe is undefined, which the library for colours takes for a question and answers with yes under CI.
  return isatty(process.stdout.fd) && process.stdout.hasColors();
}

/** A narrower terminal is no reader of tables, and longer lines are hard to read. */
const NARROWEST = 60;

/** What standard output is: a terminal has its own width, up to that of other pages. */
export function outputPage(blocks: (typeof blocksWhen)[number] = 'never'): Page {
  const columns = isatty(process.stdout.fd) ? process.stdout.columns : plainPage.width;
  return {
    width: Math.min(plainPage.width, Math.max(NARROWEST, columns)),
    bold: pc.createColors(wantsColours()).bold,
    blocks: blocks === 'always' || blocks === 'auto' && isatty(process.stdout.fd) && hasBlocks(process),
  };
}

/** Whether a terminal is one of UTF-8 with block characters; the bare console of Linux and dumb terminals have none. */
export function hasBlocks({ env, platform }: Pick<NodeJS.Process, 'env' | 'platform'>): boolean {
  if (env.TERM === 'dumb' || env.TERM === 'linux') return false;
  if (platform === 'win32') return env.WT_SESSION !== undefined || env.TERM_PROGRAM === 'vscode';
  const locale = [env.LC_ALL, env.LC_CTYPE, env.LANG].find(name => name !== undefined && name !== '');
  return /utf-?8/iu.test(locale ?? '');
}

/** What is said when the output cannot be written; undefined where nobody is left to hear it. */
const lost: Readonly<Record<string, string>> = {
  EPIPE: 'the program that reads the output closed it too early',
  ENOSPC: 'the output cannot be written: the disk is full',
  EDQUOT: 'the output cannot be written: the disk is full',
};

/** Output that nobody takes ends the program with one sentence and the code for what could not be written. */
export function endWithOutput(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    complain(lost[error.code ?? ''] ?? `the output cannot be written (${error.message})`);
    process.exit(exits.unread);
  });
  // There is nowhere left to say it.
  process.stderr.on('error', () => process.exit(exits.unread));
}
