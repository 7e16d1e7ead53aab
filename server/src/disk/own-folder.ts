/** Folders that Plumule writes as a whole: it replaces and removes what it wrote there itself, and nothing else. */
import { lstat, mkdir, readFile, readdir, realpath, rmdir, unlink } from 'node:fs/promises';
import path from 'node:path';
import { DiskFault, faultOf } from './fault.ts';
import { isBelow, plainFileBelow } from './plain-file.ts';
import { replaceFile } from './replace.ts';

export interface FileInFolder {
  /** Its path in the folder, parts divided by `/`. */
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** What a folder holds, as its list says. */
export type FolderKind = 'tables' | 'pages';

/** In each such folder lies a list of what Plumule wrote there. */
export const LIST = 'plumule-files.json';

/**
 * Makes the folder hold these files; what an earlier run wrote and this one does not is removed. A folder with
 * other things in it and no list of ours, a file that is not in the list, and whatever lies behind a link are left
 * alone. Rejects with a DiskFault.
 */
export async function writeFolder(folder: string, kind: FolderKind, files: readonly FileInFolder[]): Promise<void> {
  let at = folder;
  try {
    const root = await rootOf(folder);
    const old = await listedIn(root, kind, folder);
    const names = files.map(({ name }) => name);
    for (const name of names) {
      at = path.join(folder, name);
      await expectOurs(root, name, old, at);
    }
    at = path.join(folder, LIST);
    // First, so that files of a run that is broken off are known to the next one.
    await replaceFile(path.join(root, LIST), listText(kind, [...new Set([...old, ...names])]), { isMadeAgain: true });
    for (const { name, content } of files) {
      at = path.join(folder, name);
      await mkdir(path.join(root, path.dirname(name)), { recursive: true });
      await replaceFile(path.join(root, name), content, { isMadeAgain: true });
    }
    for (const name of old.filter(each => !names.includes(each))) {
      at = path.join(folder, name);
      await remove(root, name);
    }
    at = path.join(folder, LIST);
    await replaceFile(path.join(root, LIST), listText(kind, names), { isMadeAgain: true });
  } catch (error) {
    throw faultOf(at, error, 'written');
  }
}

async function rootOf(folder: string): Promise<string> {
  try {
    await mkdir(folder);
  } catch (error) {
    const fault = faultOf(folder, error, 'written');
    if (fault.gone) throw new DiskFault(folder, 'the folder that it would be in does not exist', true, { cause: error });
    if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw fault;
  }
  const root = await realpath(folder);
  if (!(await lstat(root)).isDirectory()) throw new DiskFault(folder, 'it is not a folder');
  return root;
}

/** What Plumule wrote there; nothing in an empty folder. */
async function listedIn(root: string, kind: FolderKind, folder: string): Promise<string[]> {
  if ((await readdir(root)).length === 0) return [];
  const isListed = await plainFileBelow(root, path.join(root, LIST)) === 'file';
  const list = isListed ? listOf(await readFile(path.join(root, LIST), 'utf8')) : undefined;
  if (list?.kind !== kind) {
    throw new DiskFault(folder, `this folder holds other things than ${kind} of Plumule; choose a new or an empty one`);
  }
  // Whoever changes the list must not lead us out of the folder.
  return list.files.filter(name => isBelow(root, path.join(root, name)) && path.join(root, name) !== root);
}

function listOf(text: string): { readonly kind: unknown; readonly files: readonly string[] } | undefined {
  try {
    const { plumule, files } = JSON.parse(text) as { plumule?: unknown; files?: unknown };
    return Array.isArray(files) ? { kind: plumule, files: files.filter(file => typeof file === 'string') } : undefined;
  } catch {
    return undefined;
  }
}

function listText(kind: FolderKind, files: readonly string[]): string {
  return `${JSON.stringify({ plumule: kind, files: [...files].sort() }, undefined, 2)}\n`;
}

async function expectOurs(root: string, name: string, old: readonly string[], shown: string): Promise<void> {
  const found = await plainFileBelow(root, path.join(root, name));
  if (found === 'link') throw new DiskFault(shown, 'it is a symbolic link, or behind one');
  if (found === 'file' && !old.includes(name)) throw new DiskFault(shown, 'Plumule did not write this file; move it away first');
}

/** With the folders that it leaves empty. */
async function remove(root: string, name: string): Promise<void> {
  if (await plainFileBelow(root, path.join(root, name)) !== 'file') return;
  await unlink(path.join(root, name));
  for (let folder = path.dirname(name); folder !== '.'; folder = path.dirname(folder)) {
    if (await rmdir(path.join(root, folder)).then(() => false, () => true)) return;
  }
}
