/** Files as the command line names them: by their paths from the current folder. */
import path from 'node:path';
import { DiskFault } from '../disk/fault.ts';

/** A path that could not be read, and why. */
export interface Unread {
  readonly path: string;
  readonly message: string;
}

/** Any other error is thrown on. */
export function unreadOf(error: unknown): Unread {
  if (!(error instanceof DiskFault)) throw error;
  return { path: nameOf(error.path), message: error.message };
}

/** Example: nameOf('/home/me/journal/2026.germ') is 'journal/2026.germ' in /home/me */
export function nameOf(file: string): string {
  const name = path.relative(process.cwd(), file) || '.';
  return path.sep === '/' ? name : name.replaceAll(path.sep, '/');
}
