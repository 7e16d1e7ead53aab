/** Three versions of a file, as a merge is given them: any bytes, and no byte of them lost. */
import { readFile, stat } from 'node:fs/promises';
import { DiskFault, faultOf } from './fault.ts';
import { putFile } from './write.ts';

export interface Versions {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
  readonly encoding: Encoding;
}

/** Bytes that are no UTF-8 go through the merge one by one: it works on lines, and lines end alike in both. */
export type Encoding = 'utf8' | 'latin1';

/** Rejects with a DiskFault, among others for a file that holds no text. */
export async function readVersions(base: string, ours: string, theirs: string): Promise<Versions> {
  const [b, o, t] = [await bytesOf(base), await bytesOf(ours), await bytesOf(theirs)];
  const encoding = [b, o, t].every(isUtf8) ? 'utf8' : 'latin1';
  return { base: b.toString(encoding), ours: o.toString(encoding), theirs: t.toString(encoding), encoding };
}

/** Puts a merged text in place of a version. Rejects with a DiskFault. */
export async function writeVersion(path: string, text: string, encoding: Encoding): Promise<void> {
  await putFile(path, Buffer.from(text, encoding));
}

async function bytesOf(path: string): Promise<Buffer> {
  try {
    // A pipe or a device would be waited for without end; git and `diff` give /dev/null for a file that was not there.
    if (path === '/dev/null') return Buffer.alloc(0);
    if (!(await stat(path)).isFile()) throw new DiskFault(path, 'it is not a regular file');
    const bytes = await readFile(path);
    if (bytes.includes(0)) throw new DiskFault(path, 'it holds no text, or text in UTF-16; save it as UTF-8');
    return bytes;
  } catch (error) {
    throw faultOf(path, error);
  }
}

function isUtf8(bytes: Buffer): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}
