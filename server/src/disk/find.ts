import { readdir, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import { faultOf, type DiskFault } from './fault.ts';

export interface Search {
  /** Paths of journals, the folder's own path in front; sorted by UTF-16 units. */
  readonly files: readonly string[];
  /** Folders and links that could not be followed. */
  readonly faults: readonly DiskFault[];
}

/** Whether a file's name is that of a journal. */
export function isJournalName(name: string): boolean {
  return /\.germ$/i.test(name);
}

/** Hidden files are the scraps of other programs, and `node_modules` holds other people's files. */
function isPassedOver(name: string): boolean {
  return name.startsWith('.') || name === 'node_modules';
}

/**
 * The journals in a folder and, if `deep`, in its subfolders. A symbolic link is followed unless what it leads to was
 * found already, so that circles end and no journal is read twice. Never rejects: what fails becomes a fault.
 */
export async function findJournals(folder: string, deep = true): Promise<Search> {
  const files: string[] = [];
  const faults: DiskFault[] = [];
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
        seen.add(path.join(real, entry.name));
        files.push(where);
      }
    }
  });

  const follow = (link: string): Promise<void> => attempt(link, async () => {
    if (!deep && !isJournalName(link)) return;
    const target = await stat(link).catch((error: unknown) => {
      // A broken link is a fault only where a journal was to be found.
      if (isJournalName(link)) throw error;
    });
    if (target?.isDirectory()) return deep ? walk(link) : undefined;
    if (!target || !isJournalName(link)) return;
    const real = await realpath(link);
    if (seen.has(real)) return;
    seen.add(real);
    files.push(link);
  });

  await walk(folder);
  // Last, so that a journal goes by its own path where it has one in this folder; a followed link may lead to more.
  for (const link of links) await follow(link);
  return { files: files.sort(), faults };
}
