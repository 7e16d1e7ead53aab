import { lstat } from 'node:fs/promises';
import path from 'node:path';

/** What a path below a folder leads to without following any link; the folder itself may be one. */
export async function plainFileBelow(folder: string, file: string): Promise<'file' | 'link' | 'missing'> {
  const parts = path.relative(folder, file).split(path.sep);
  let at = folder;
  for (const [i, part] of parts.entries()) {
    at = path.join(at, part);
    const found = await lstat(at).catch(() => undefined);
    if (found?.isSymbolicLink()) return 'link';
    const isRight = i < parts.length - 1 ? found?.isDirectory() : found?.isFile();
    if (isRight !== true) return 'missing';
  }
  return 'file';
}

/** Whether a path is that of a folder or of something below it. */
export function isBelow(folder: string, file: string): boolean {
  const way = path.relative(folder, file);
  return way !== '..' && !way.startsWith(`..${path.sep}`) && !path.isAbsolute(way);
}
