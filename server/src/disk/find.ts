import { readdir, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import { DiskFault, faultOf } from './fault.ts';
import { isBelow } from './plain-file.ts';

export interface Search {
  /** Paths of journals, the folder's own path in front; sorted by UTF-16 units. */
  readonly files: readonly string[];
  /** Folders and links that could not be followed. */
  readonly faults: readonly DiskFault[];
  /** Links to folders outside, which are not followed: what lies behind them may be the whole disk. */
  readonly outside: readonly string[];
}

/** What is said of a link that leads out of the folder in which it was found. */
export const OUTSIDE = 'Plumule does not follow a symbolic link out of the folder';

/** Whether a file's name is that of a journal. */
export function isJournalName(name: string): boolean {
  return /\.germ$/i.test(name);
}

/** Hidden files are the scraps of other programs, and `node_modules` holds other people's files. */
function isPassedOver(name: string): boolean {
  return name.startsWith('.') || name === 'node_modules';
}

/**
 * The journals in a folder and, if `deep`, in its subfolders. A symbolic link is followed where it stays in the folder
 * and leads to what was not found already, so that circles end and no journal is read twice. Never rejects: what fails
 * becomes a fault.
 */
export async function findJournals(folder: string, deep = true): Promise<Search> {
  const files: string[] = [];
  const faults: DiskFault[] = [];
  const outside: string[] = [];
  const seen = new Set<string>();
  const links: string[] = [];

  const attempt = async (where: string, work: () => Promise<void>) => {
    try {
      await work();
    } catch (error) {
      faults.push(faultOf(where, error));
    }
  };

  const walk = (shown: string): Promise<void> => attempt(shown, async () => {
    const real = await realpath(shown);
    if (seen.has(real)) return;
    seen.add(real);
    for (const entry of await readdir(shown, { withFileTypes: true })) {
      if (isPassedOver(entry.name)) continue;
      const where = path.join(shown, entry.name);
      if (entry.isSymbolicLink()) links.push(where);
      else if (entry.isDirectory()) {
        if (deep) await walk(where);
      } else if (isJournalName(entry.name)) {
        const own = path.join(real, entry.name);
        if (!seen.has(own)) files.push(where);
        seen.add(own);
      }
    }
  });

  const follow = (root: string, link: string): Promise<void> => attempt(link, async () => {
    const isJournal = isJournalName(link);
    if (!deep && !isJournal) return;
    const real = await realpath(link).catch((error: unknown) => {
      // A broken link is a fault only where a journal was to be found.
      if (isJournal) throw error;
    });
    if (real === undefined || seen.has(real)) return;
    const isFolder = (await stat(real)).isDirectory();
    if (!isFolder && !isJournal) return;
    if (!isBelow(root, real)) {
      if (isFolder) outside.push(link);
      else throw new DiskFault(link, `${OUTSIDE}; name the file itself to read it`);
    } else if (!isFolder) {
      seen.add(real);
      files.push(link);
    } else if (deep) await walk(link);
  });

  await walk(folder);
  // Last, so that a journal goes by its own path where it has one in this folder; a followed link may lead to more.
  const root = await realpath(folder).catch(() => undefined);
  links.sort();
  for (const link of links) if (root !== undefined) await follow(root, link);
  return { files: files.sort(), faults, outside: outside.sort() };
}
