import fs, { type FileHandle } from 'node:fs/promises';
import path from 'node:path';
import { DiskFault } from './fault.ts';

/** A scratch file older than this (ms) was left by a program that was killed. */
const STALE = 60_000;

/** So many letters, each of up to four bytes, leave room in a name, which may have 255 bytes. */
const NAMED = 50;

/** Hidden, and with an ending of its own: nobody takes it for a journal. */
export function scratchOf(file: string): string {
  const name = Array.from(path.basename(file)).slice(0, NAMED).join('');
  return path.join(path.dirname(file), `.${name}.plumule-scratch`);
}

/** What the file that is replaced has, and the new one is to have too. */
export interface Ownership {
  readonly mode: number;
  readonly uid: number;
  readonly gid: number;
}

/** The steps that a disk can fail in. */
export type Edge = Pick<typeof fs, 'open' | 'rename' | 'stat' | 'unlink'>;

export interface Replacing {
  readonly like?: Ownership | undefined;
  /** Called just before the file is replaced; rejects where that is not to happen. */
  readonly last?: () => Promise<void>;
  readonly edge?: Edge;
  /** It need not outlast a power cut, and to wait for the disk is slow where there are many files. */
  readonly isMadeAgain?: true;
}

/**
 * Puts a new content in place of a file in one step: it is written aside and moved to its place, so that a full disk
 * or a power cut leaves the old one. What is aside is taken away again whatever fails.
 */
export async function replaceFile(
  file: string, content: string | Uint8Array, { like, last, edge = fs, isMadeAgain }: Replacing = {},
): Promise<void> {
  const scratch = scratchOf(file);
  const handle = await openScratch(file, scratch, edge);
  try {
    try {
      await handle.writeFile(content);
      if (like) await dress(handle, like);
      if (!isMadeAgain) await handle.sync();
    } finally {
      await handle.close();
    }
    await last?.();
    await edge.rename(scratch, file);
  } catch (error) {
    await edge.unlink(scratch).catch(() => undefined);
    throw error;
  }
}

async function dress(handle: FileHandle, { mode, uid, gid }: Ownership): Promise<void> {
  // Only a superuser may give a file away; anyone else's are their own already.
  await handle.chown(uid, gid).catch(() => undefined);
  await handle.chmod(mode & 0o7777);
}

/** One name for each file, so that of two programs at once one waits its turn, and what a kill left is found. */
async function openScratch(file: string, scratch: string, edge: Edge): Promise<FileHandle> {
  try {
    return await edge.open(scratch, 'wx');
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'EEXIST')) throw error;
  }
  const { mtimeMs } = await edge.stat(scratch);
  if (Date.now() - mtimeMs < STALE) throw new DiskFault(file, 'another program is writing it; try again in a minute');
  await edge.unlink(scratch);
  return edge.open(scratch, 'wx');
}
