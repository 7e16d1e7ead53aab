import { spawnSync } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { inEditorPlace } from './editor-place.ts';

/** Eglot, set up as `editors.md` says. Emacs has it from version 29 on; before that it is a package of its own. */
const present = spawnSync('emacs', ['--batch', '--eval', "(require 'eglot)"]).status === 0;
if (!present && process.env.CI === 'true') throw new Error('Emacs with Eglot is not installed; .ci/run does that');

function inEmacs(files: Readonly<Record<string, string>>): Promise<Record<string, unknown>> {
  return inEditorPlace('elisp', files, async ({ place, folder, setup, searchPath }) => {
    await writeFile(path.join(place, 'init.el'), setup);
    const env = { ...process.env, PATH: searchPath, HOME: place, PLUMULE_SETUP: place };
    const script = fileURLToPath(new URL('emacs.el', import.meta.url));
    const options = { cwd: folder, env, encoding: 'utf8', timeout: 100_000 } as const;
    const { status, stderr } = spawnSync('emacs', ['--batch', '-l', script], options);
    if (status !== 0) throw new Error(stderr);
    return Object.fromEntries([...stderr.matchAll(/^([a-z]+) (["[].*)$/gm)].map(([, word, json]): [string, unknown] =>
      [word!, JSON.parse(json!)]));
  });
}

test.skipIf(!present)('Emacs shows problems, hovers, leads to the lot, completes, formats and renames in every file', async () => {
  const told = await inEmacs({
    'lots.germ': 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds, B 24 seeds\n  VER-24 is the tall one.\n',
    'bench.germ': 'soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 30 h\nsow VER-24/A   2026-01-12,24 seeds\ncount VER-24/A 2026-1-19, 3\n',
  });
  expect(told).toEqual({
    mode: 'plumule-mode',
    problems: expect.arrayContaining([expect.stringContaining('[soak-too-long]'), expect.stringContaining('[bad-date]')]),
    hover: expect.stringContaining('Veratrum nigrum'),
    definition: ['lots.germ', 1],
    formatted: 'sow VER-24/A 2026-01-12, 24 seeds',
    completions: ['VER-24/A', 'VER-24/B', 'VER-24'],
    completed: 'count VER-24/A',
    renamed: [
      'soak VER-25/A 2026-01-10 19:00, GA3 500 ppm, 30 h\nsow VER-25/A 2026-01-12, 24 seeds\ncount VER-25/A 2026-1-19, 3\n',
      'lot VER-25 Veratrum nigrum, 60 seeds\nsplit VER-25, A 24 seeds, B 24 seeds\n  VER-24 is the tall one.\n',
    ],
    refused: expect.stringContaining('GA3 is the name of an agent'),
  });
});
