import { realpath } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { faultOf } from './fault.ts';
import { findJournals, OUTSIDE } from './find.ts';
import { isBelow, plainFileBelow } from './plain-file.ts';
import { readJournal } from './read.ts';

/** The journals on this machine's disk, by address (`file:///...`), for a server whose client gives it none. */
export const filesOnDisk = {
  /** Addresses of the journals in a folder; none for an address of another kind. Rejects where it cannot be read. */
  async list(folder: string, deep: boolean): Promise<{ files: string[]; faults: string[] }> {
    const path = pathOf(folder);
    if (path === undefined) return { files: [], faults: [] };
    const { files, faults, outside } = await findJournals(path, deep);
    const own = faults.find(fault => fault.path === path);
    if (own) throw own;
    return {
      files: files.map(file => pathToFileURL(file).href),
      faults: [...faults.map(fault => `${fault.path}: ${fault.message}`), ...outside.map(link => `${link}: ${OUTSIDE}`)],
    };
  },

  /**
   * The text of a journal; undefined where there is none, or where it lies outside the folder that it was found in.
   * Rejects with a DiskFault where it cannot be read.
   */
  async read(address: string, folder: string): Promise<string | undefined> {
    const [path, root] = [pathOf(address), pathOf(folder)];
    if (path === undefined || root === undefined) return undefined;
    try {
      return isBelow(await realpath(root), await realpath(path)) ? await readJournal(path) : undefined;
    } catch (error) {
      const fault = faultOf(path, error);
      if (fault.gone) return undefined;
      throw fault;
    }
  },

  /** A picture below a folder, by address, if it is a plain file that no link leads to. */
  async picture(address: string, folder: string): Promise<{ address: string } | { why: 'link' | 'missing' }> {
    const [root, file] = [pathOf(folder), pathOf(address)];
    const found = root === undefined || file === undefined ? 'missing' : await plainFileBelow(root, file);
    return found === 'file' ? { address } : { why: found };
  },
};

function pathOf(address: string): string | undefined {
  try {
    return fileURLToPath(address);
  } catch {
    return undefined;
  }
}
