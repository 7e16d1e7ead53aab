import type { Stats } from 'node:fs';
import { access, constants, readFile, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import { DiskFault, faultOf } from './fault.ts';
import { plainFileBelow } from './plain-file.ts';
import { replaceFile } from './replace.ts';
import { decode } from './utf8.ts';

const MARK = [0xef, 0xbb, 0xbf];

export interface Rewriting {
  /** The folder in which the file was found: it is written only as a plain file in it, to which no link leads. */
  readonly below?: string | undefined;
  /** Also what is protected against writing, or has other names. */
  readonly force?: boolean | undefined;
}

/**
 * Puts a new text in place of the one that was read, in one step; a byte order mark and the permissions stay. Rejects
 * with a DiskFault, among others where the file no longer holds `before`, or may not be written without `force`.
 */
export async function rewriteJournal(
  file: string, before: string, after: string, { below, force = false }: Rewriting = {},
): Promise<void> {
  try {
    const real = below === undefined ? await realpath(file) : file;
    const place = await realpath(path.dirname(file));
    const like = await stat(file);
    if (!force) {
      if (!await isWritable(file, like.mode)) throw new DiskFault(file, 'it is write-protected; --force rewrites it');
      if (like.nlink > 1) {
        const others = `it has ${like.nlink} names (hard links), and the others would keep the old text`;
        throw new DiskFault(file, `${others}; --force rewrites it`);
      }
    }
    // Others may change the file, or put a link in its place, until the very moment in which it is replaced.
    const unchanged = async () => {
      const isPlain = below === undefined
        || (await plainFileBelow(below, file) === 'file' && await realpath(path.dirname(file)) === place);
      if (!isPlain) {
        throw new DiskFault(file, 'it is a symbolic link; name the file itself to rewrite it');
      }
      if (await hold(file) !== before) throw new DiskFault(file, 'another program has changed it');
    };
    await unchanged();
    const bytes = await readFile(file);
    const mark = MARK.every((byte, at) => bytes[at] === byte) ? '\uFEFF' : '';
    await replaceFile(real, mark + after, { like, last: unchanged });
  } catch (error) {
    throw faultOf(file, error, 'written');
  }
}

async function hold(file: string): Promise<string> {
  return decode(file, await readFile(file));
}

/** By the file's own mark, which a superuser would pass over. */
async function isWritable(file: string, mode: number): Promise<boolean> {
  return (mode & 0o222) !== 0 && await access(file, constants.W_OK).then(() => true, () => false);
}

/** Writes a journal that is not there yet. Rejects with a DiskFault, also where something has its name by now. */
export async function createJournal(file: string, text: string): Promise<void> {
  const free = async () => {
    if (await realpathIfThere(file) !== undefined) throw new DiskFault(file, 'another program has written it');
  };
  try {
    await free();
    await replaceFile(file, text, { last: free });
  } catch (error) {
    throw writeFaultOf(file, error);
  }
}

/** How a file begins that may give way to a new one of its kind, and what it is called. */
const kinds = {
  calendar: { begins: /^BEGIN:VCALENDAR/i, name: 'calendar' },
  svg: { begins: /^<svg/, name: 'picture' },
  png: { begins: /^\u0089PNG/, name: 'picture' },
  html: { begins: /^<!DOCTYPE html>/i, name: 'page' },
  md: { begins: /^# Report/, name: 'report' },
  mapping: { begins: /^\{[^]*"columns"/, name: 'mapping' },
} as const;

export type WrittenKind = keyof typeof kinds;

/**
 * Writes a file of our own making, aside first as above. A file that is there already and is neither of this kind nor
 * empty is left alone: a slip of the hand must not cost a journal. Rejects with a DiskFault.
 */
export async function writeOurs(file: string, content: string | Uint8Array, kind: WrittenKind): Promise<void> {
  const { begins, name } = kinds[kind];
  try {
    const there = await thereAt(file);
    const old = there ? (await readFile(there.real, 'latin1')).trimStart() : '';
    if (old !== '' && !begins.test(old.replace(/^\u00EF\u00BB\u00BF/, ''))) {
      throw new DiskFault(file, `this file exists and is not a ${name}; choose another name`);
    }
    await replaceFile(there?.real ?? file, content, { like: there?.like });
  } catch (error) {
    throw writeFaultOf(file, error);
  }
}

/**
 * Puts a content in place of what a path leads to, in one step, with the permissions that it has; it may be new.
 * Rejects with a DiskFault.
 */
export async function putFile(file: string, content: string | Uint8Array): Promise<void> {
  try {
    const there = await thereAt(file);
    await replaceFile(there?.real ?? file, content, { like: there?.like });
  } catch (error) {
    throw writeFaultOf(file, error);
  }
}

/** The file that a path leads to, which may be written; undefined where there is none yet. */
async function thereAt(file: string): Promise<{ readonly real: string; readonly like: Stats } | undefined> {
  const real = await realpathIfThere(file);
  if (real === undefined) return undefined;
  const like = await stat(real);
  if (!like.isFile()) throw new DiskFault(file, 'it is not a regular file');
  if (!await isWritable(real, like.mode)) throw new DiskFault(file, 'it is write-protected');
  return { real, like };
}

async function realpathIfThere(file: string): Promise<string | undefined> {
  try {
    return await realpath(file);
  } catch (error) {
    if (faultOf(file, error).gone) return undefined;
    throw error;
  }
}

function writeFaultOf(file: string, error: unknown): DiskFault {
  const fault = faultOf(file, error, 'written');
  if (!fault.gone) return fault;
  return new DiskFault(file, 'its folder does not exist', true, { cause: error });
}
