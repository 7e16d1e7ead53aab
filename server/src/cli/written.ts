import { writeOurs, type WrittenKind } from '../disk/write.ts';
import { unreadOf } from './names.ts';
import { complain, complainOf } from './output.ts';

export interface FileToWrite {
  readonly path: string;
  readonly content: string | Uint8Array;
  readonly kind: WrittenKind;
}

/** Writes files, and says so; false where one could not be written: the reason has been said. */
export async function wroteFiles(files: readonly FileToWrite[], said: string): Promise<boolean> {
  try {
    for (const { path, content, kind } of files) await writeOurs(path, content, kind);
  } catch (error) {
    complainOf([unreadOf(error)]);
    return false;
  }
  complain(said);
  return true;
}
