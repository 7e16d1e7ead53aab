import fs, { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import type { Edge } from '../../server/src/disk/replace.ts';

/** A new folder with these files (by path in it), gone after the test. Gives the folder's path. */
export async function folderWith(files: Readonly<Record<string, string | Uint8Array>>): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'journal-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    const file = path.join(folder, name);
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, content);
  }
  return folder;
}

/** A disk that fails in one step of writing a file aside and moving it to its place; every other step is real. */
export function failing(step: string, code: string): Edge {
  const fail = () => Promise.reject(Object.assign(new Error(`${code}: ${step}`), { code }));
  const real = { ...fs };
  const open: Edge['open'] = async (file, flags, mode) => {
    if (!String(file).endsWith('.plumule-scratch')) return real.open(file, flags, mode);
    if (step === 'open') return fail();
    const handle = await real.open(file, flags, mode);
    return new Proxy(handle, {
      get: (target, name) => {
        if (name === step && name === 'writeFile') {
          // A short write: part of it is on the disk.
          return async (content: string | Uint8Array) => {
            await target.writeFile(content.slice(0, 3));
            return fail();
          };
        }
        const value: unknown = Reflect.get(target, name, target);
        if (name === step) return name === 'close' ? () => target.close().then(fail) : fail;
        return typeof value === 'function' ? value.bind(target) as unknown : value;
      },
    });
  };
  return {
    open, stat: real.stat, rename: step === 'rename' ? fail : real.rename, unlink: step === 'unlink' ? fail : real.unlink,
  };
}
