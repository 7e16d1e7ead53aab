import { chmod, lstat, readFile, readdir, stat, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { rewriteJournal } from '../../server/src/disk/write.ts';
import { folderWith } from './helpers.ts';

describe('rewriting a journal', () => {
  it('puts the new text in place of the old, and leaves nothing else behind', async () => {
    const folder = await folderWith({ 'a.germ': 'Lot A-1 種\r\n' });
    await rewriteJournal(path.join(folder, 'a.germ'), 'Lot A-1 種\r\n', 'lot A-1 種\r\n');
    expect(await readFile(path.join(folder, 'a.germ'), 'utf8')).toBe('lot A-1 種\r\n');
    expect(await readdir(folder)).toEqual(['a.germ']);
  });

  it('keeps a byte order mark, the permissions, and a link that leads to the file', async () => {
    const folder = await folderWith({ 'a.germ': '\uFEFFLot A-1\n' });
    const file = path.join(folder, 'a.germ');
    await chmod(file, 0o640);
    await symlink(file, path.join(folder, 'b.germ'));
    await rewriteJournal(path.join(folder, 'b.germ'), 'Lot A-1\n', 'lot A-1\n');
    expect(await readFile(file, 'utf8')).toBe('\uFEFFlot A-1\n');
    expect((await stat(file)).mode & 0o777).toBe(0o640);
    expect((await lstat(path.join(folder, 'b.germ'))).isSymbolicLink()).toBe(true);
  });

  it('does not touch a file that another program changed in the meantime', async () => {
    const folder = await folderWith({ 'a.germ': 'Lot A-1\n' });
    const file = path.join(folder, 'a.germ');
    await writeFile(file, 'Lot A-1\nlot B-1\n');
    await expect(rewriteJournal(file, 'Lot A-1\n', 'lot A-1\n')).rejects.toMatchObject({
      name: 'DiskFault', path: file, message: 'it was changed by another program in the meantime',
    });
    expect(await readFile(file, 'utf8')).toBe('Lot A-1\nlot B-1\n');
  });
});
