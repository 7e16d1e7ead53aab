import { readFile, stat } from 'node:fs/promises';
import { DiskFault, faultOf } from './fault.ts';
import { decode } from './utf8.ts';

/** The largest file that is read, in bytes: some 300,000 records. A larger one is no journal that anyone writes. */
export const MOST_BYTES = 16 * 1024 * 1024;

const TOO_LARGE = 'it is larger than 16 MiB, the most that Plumule reads; split it into several files';

/** The text of a journal, without a byte order mark. Rejects with a DiskFault. */
export async function readJournal(path: string): Promise<string> {
  return decode(path, await readBytes(path));
}

/** The bytes of a regular file that is not too large. Rejects with a DiskFault. */
export async function readBytes(path: string): Promise<Uint8Array> {
  try {
    // A pipe or a device would be waited for without end.
    const found = await stat(path);
    if (!found.isFile()) throw new DiskFault(path, 'it is not a regular file');
    if (found.size > MOST_BYTES) throw new DiskFault(path, TOO_LARGE);
    return await readFile(path);
  } catch (error) {
    throw faultOf(path, error);
  }
}
