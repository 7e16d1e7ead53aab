import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { shell } from './run.ts';

/** A winter of 400 lots, 10,000 lines long, and written so that `format` changes every line of a lot. */
const LONG = Array.from({ length: 400 }, (_, lot) => [
  `lot   GEN-${lot} Gentiana lutea, 60 seeds`,
  ...Array.from({ length: 24 }, (_each, week) => `note GEN-${lot} 2026-0${1 + (week % 6)}-${10 + week % 18}, week ${week}, nothing yet`),
].join('\n')).join('\n');

/** In megabytes, of what V8 keeps. */
const withMemory = (megabytes: number, line: string) => `export NODE_OPTIONS=--max-old-space-size=${megabytes}; ${line}`;

test('a program that runs out of memory before it writes leaves the journal as it was', async () => {
  const folder = await folderWith({ 'a.germ': LONG });
  const { stdout } = await shell(folder, withMemory(8, 'plumule format --write a.germ; echo ends with $?'));
  expect(stdout).toMatch(/ends with (?!0\n)\d+\n$/);
  expect(await readFile(path.join(folder, 'a.germ'), 'utf8') === LONG).toBe(true);
  expect(await readdir(folder)).toEqual(['a.germ']);
});

test('64 MB are enough for 10,000 lines', async () => {
  const folder = await folderWith({ 'a.germ': LONG });
  const { stdout, code } = await shell(folder, withMemory(64, 'plumule check a.germ --today 2026-07-01 | tail -n 1; exit ${PIPESTATUS[0]}'));
  expect(stdout).toBe('');
  expect(code).toBe(0);
});
