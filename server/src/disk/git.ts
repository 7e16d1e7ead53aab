/** What git says of a repository. */
import { execFile, spawn } from 'node:child_process';
import path from 'node:path';
import { promisify } from 'node:util';
import { DiskFault } from './fault.ts';

const run = promisify(execFile);

/** More than any list of journals takes. */
const MOST_BYTES = 256 * 1024 * 1024;

/** What git prints. Rejects with a DiskFault that says why git would not. */
export async function git(folder: string, ...args: string[]): Promise<string> {
  try {
    const { stdout } = await run('git', args, { cwd: folder, maxBuffer: MOST_BYTES });
    return stdout;
  } catch (error) {
    const { code, stderr = '' } = error as { code?: unknown; stderr?: string };
    if (code === 'ENOENT') throw new DiskFault(folder, 'git is not installed', false, { cause: error });
    const [line = 'git failed'] = stderr.trim().split('\n');
    throw new DiskFault(folder, line.replace(/^fatal: /, ''), false, { cause: error });
  }
}

/** The same; undefined where git ends with an exit code other than 0. */
export async function askGit(folder: string, ...args: string[]): Promise<string | undefined> {
  return git(folder, ...args).catch(() => undefined);
}

/** The top folder of the work tree that a folder is in. */
export async function topFolder(folder: string): Promise<string> {
  return path.resolve((await git(folder, 'rev-parse', '--show-toplevel')).replace(/\r?\n$/, ''));
}

export interface Blob {
  /** From the top folder, parts divided by `/`. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The journals as they are staged. */
export async function stagedJournals(top: string): Promise<Blob[]> {
  const listed = await git(top, 'ls-files', '--stage', '-z', '--', ...JOURNALS);
  return blobsOf(top, listed.split('\0').flatMap(entry => {
    const parts = /^100\d{3} ([0-9a-f]+) 0\t(.*)$/s.exec(entry);
    return parts ? [{ id: parts[1]!, name: parts[2]! }] : [];
  }));
}

/** The journals as they were committed. */
export async function committedJournals(top: string, revision: string): Promise<Blob[]> {
  const commit = (await git(top, 'rev-parse', '--verify', '--end-of-options', `${revision}^{commit}`)).trim();
  const listed = await git(top, 'ls-tree', '-r', '-z', commit);
  return blobsOf(top, listed.split('\0').flatMap(entry => {
    const parts = /^100\d{3} blob ([0-9a-f]+)\t(.*)$/s.exec(entry);
    return parts && /\.germ$/i.test(parts[2]!) ? [{ id: parts[1]!, name: parts[2]! }] : [];
  }));
}

/** Journals of which something else is staged than was committed. */
export async function namesStaged(top: string): Promise<string[]> {
  const options = ['--cached', '--name-only', '--no-renames', '--diff-filter=d', '-z'];
  const listed = await git(top, 'diff', ...options, '--', ...JOURNALS);
  return listed.split('\0').filter(name => name !== '');
}

const JOURNALS = [':(icase)*.germ'];

async function blobsOf(top: string, files: readonly { id: string; name: string }[]): Promise<Blob[]> {
  const output = await catFiles(top, files.map(({ id }) => id));
  let at = 0;
  return files.map(({ name }) => {
    const head = output.indexOf(10, at);
    const size = Number(output.subarray(at, head).toString().split(' ')[2]);
    if (head < 0 || !Number.isSafeInteger(size)) throw new DiskFault(path.join(top, name), 'git does not have its content');
    at = head + 1 + size + 1;
    return { name, bytes: output.subarray(head + 1, head + 1 + size) };
  });
}

async function catFiles(top: string, ids: readonly string[]): Promise<Buffer> {
  if (ids.length === 0) return Buffer.alloc(0);
  const child = spawn('git', ['cat-file', '--batch'], { cwd: top, stdio: ['pipe', 'pipe', 'ignore'] });
  const parts: Buffer[] = [];
  child.stdin.end(ids.map(id => `${id}\n`).join(''));
  for await (const part of child.stdout) parts.push(part as Buffer);
  return Buffer.concat(parts);
}
