import { readFile, stat } from 'node:fs/promises';
import { DiskFault, faultOf } from './fault.ts';
import { decode } from './utf8.ts';

/** The text of a journal, without a byte order mark. Rejects with a DiskFault. */
export async function readJournal(path: string): Promise<string> {
  try {
    // A pipe or a device would be waited for without end.
    if (!(await stat(path)).isFile()) throw new DiskFault(path, 'it is not a regular file');
    return decode(path, await readFile(path));
  } catch (error) {
    throw faultOf(path, error);
  }
}
