import { readFile, realpath } from 'node:fs/promises';
import writeFileAtomic from 'write-file-atomic';
import { DiskFault, faultOf } from './fault.ts';
import { decode } from './utf8.ts';

const MARK = [0xef, 0xbb, 0xbf];

/**
 * Puts a new text in place of the one that was read; a byte order mark stays. The file is written aside and then moved
 * to its place, so that a full disk or a power cut leaves the old one. Rejects with a DiskFault, among others where the
 * file no longer holds `before`.
 */
export async function rewriteJournal(path: string, before: string, after: string): Promise<void> {
  try {
    const bytes = await readFile(path);
    if (decode(path, bytes) !== before) throw new DiskFault(path, 'it was changed by another program in the meantime');
    const mark = MARK.every((byte, at) => bytes[at] === byte) ? '\uFEFF' : '';
    await writeFileAtomic(await realpath(path), mark + after);
  } catch (error) {
    throw faultOf(path, error);
  }
}
