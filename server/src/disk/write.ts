import { readFile, realpath, stat } from 'node:fs/promises';
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

/** How a file begins that may give way to a new one of its kind, and what it is called. */
const kinds = {
  calendar: { begins: /^BEGIN:VCALENDAR/i, name: 'calendar' },
  svg: { begins: /^<svg/, name: 'picture' },
  html: { begins: /^<!DOCTYPE html>/i, name: 'page' },
  md: { begins: /^# Report/, name: 'report' },
} as const;

export type WrittenKind = keyof typeof kinds;

/**
 * Writes a file of our own making, aside first as above. A file that is there already and is neither of this kind nor
 * empty is left alone: a slip of the hand must not cost a journal. Rejects with a DiskFault.
 */
export async function writeOurs(path: string, text: string, kind: WrittenKind): Promise<void> {
  const { begins, name } = kinds[kind];
  try {
    const there = await realpathIfThere(path);
    if (there !== undefined) {
      if (!(await stat(there)).isFile()) throw new DiskFault(path, 'it is not a regular file');
      const old = (await readFile(there, 'latin1')).trimStart();
      if (old !== '' && !begins.test(old.replace(/^\u00EF\u00BB\u00BF/, ''))) {
        throw new DiskFault(path, `it is there already and is no ${name}; give another name`);
      }
    }
    await writeFileAtomic(there ?? path, text);
  } catch (error) {
    throw writeFaultOf(path, error);
  }
}

async function realpathIfThere(path: string): Promise<string | undefined> {
  try {
    return await realpath(path);
  } catch (error) {
    if (faultOf(path, error).gone) return undefined;
    throw error;
  }
}

function writeFaultOf(path: string, error: unknown): DiskFault {
  const fault = faultOf(path, error);
  if (!fault.gone) return fault;
  return new DiskFault(path, 'there is no such folder to write it to', true, { cause: error });
}
