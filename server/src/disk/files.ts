import { fileURLToPath, pathToFileURL } from 'node:url';
import { DiskFault } from './fault.ts';
import { findJournals } from './find.ts';
import { plainFileBelow } from './plain-file.ts';
import { readJournal } from './read.ts';

/** The journals on this machine's disk, by address (`file:///...`), for a server whose client gives it none. */
export const filesOnDisk = {
  /** Addresses of the journals in a folder; none for an address of another kind. Rejects where it cannot be read. */
  async list(folder: string, deep: boolean): Promise<string[]> {
    const path = pathOf(folder);
    if (path === undefined) return [];
    const { files, faults } = await findJournals(path, deep);
    const [fault] = faults;
    if (fault && files.length === 0) throw fault;
    return files.map(file => pathToFileURL(file).href);
  },

  /** The text of a journal; undefined where there is none. Rejects with a DiskFault where it cannot be read. */
  async read(address: string): Promise<string | undefined> {
    const path = pathOf(address);
    if (path === undefined) return undefined;
    try {
      return await readJournal(path);
    } catch (error) {
      if (error instanceof DiskFault && error.gone) return undefined;
      throw error;
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
