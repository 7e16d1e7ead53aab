import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** A new folder with these files (by path in it), gone after the test. Gives the folder's path. */
export async function folderWith(files: Readonly<Record<string, string | Uint8Array>>): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'journal-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    const file = path.join(folder, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, content);
  }
  return folder;
}
