import { chmod, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Where an editor that nobody here wrote is tried. */
export interface EditorPlace {
  /** The home of the editor. */
  readonly place: string;
  /** The journal. */
  readonly folder: string;
  /** The set-up as the page on other editors has it. */
  readonly setup: string;
  /** A path on which `plumule` is the built command line. */
  readonly searchPath: string;
}

/** Makes a place with a journal, and removes it afterwards. `language` is that of the set-up on that page. */
export async function inEditorPlace<Result>(
  language: 'elisp' | 'lua', files: Readonly<Record<string, string>>, work: (at: EditorPlace) => Promise<Result>,
): Promise<Result> {
  const place = await mkdtemp(path.join(tmpdir(), `plumule-${language}-`));
  try {
    const [bin, folder] = [path.join(place, 'bin'), path.join(place, 'journal')];
    await mkdir(bin);
    await mkdir(folder);
    const plumule = path.join(bin, 'plumule');
    await writeFile(plumule, `#!/bin/sh\nexec ${process.execPath} ${path.join(ROOT, 'dist/plumule.cjs')} "$@"\n`);
    await chmod(plumule, 0o755);
    const page = await readFile(path.join(ROOT, 'syntaxes/editors.md'), 'utf8');
    const setup = new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\`$`, 'ms').exec(page)?.[1];
    if (setup === undefined) throw new Error(`syntaxes/editors.md has no set-up in ${language}`);
    for (const [name, text] of Object.entries(files)) await writeFile(path.join(folder, name), text);
    return await work({ place, folder, setup, searchPath: `${bin}:${process.env.PATH ?? ''}` });
  } finally {
    await rm(place, { recursive: true, force: true, maxRetries: 5 });
  }
}
