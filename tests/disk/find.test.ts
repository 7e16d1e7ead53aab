import { mkdir, symlink } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { findJournals } from '../../server/src/disk/find.ts';
import { folderWith } from './helpers.ts';

async function found(folder: string, deep?: boolean) {
  const { files, faults } = await findJournals(folder, deep);
  return {
    files: files.map(file => path.relative(folder, file).replaceAll('\\', '/')),
    faults: faults.map(({ path: where, message }) => `${path.relative(folder, where)}: ${message}`),
  };
}

describe('journals in a folder', () => {
  it('are found in subfolders too, sorted, whatever the case of their ending', async () => {
    const folder = await folderWith({
      'b.germ': '', 'a.germ': '', 'winter/c.GERM': '', 'winter/2026/d.germ': '', 'notes.txt': '', 'x.germ.bak': '', germ: '',
    });
    expect(await found(folder)).toEqual({ files: ['a.germ', 'b.germ', 'winter/2026/d.germ', 'winter/c.GERM'], faults: [] });
  });

  it('are only those of the folder itself where the search does not go deep', async () => {
    const folder = await folderWith({ 'a.germ': '', 'winter/c.germ': '' });
    expect(await found(folder, false)).toEqual({ files: ['a.germ'], faults: [] });
  });

  it('are not looked for in node_modules and hidden folders, and hidden files are none', async () => {
    const folder = await folderWith({
      'a.germ': '', '.git/b.germ': '', '.stversions/c.germ': '', 'node_modules/d.germ': '', '._a.germ': '', 'x/node_modules/e.germ': '',
    });
    expect((await found(folder)).files).toEqual(['a.germ']);
  });

  it('are found in a folder that is itself hidden when it was asked for', async () => {
    const folder = await folderWith({ '.journal/a.germ': '' });
    expect((await found(path.join(folder, '.journal'))).files).toEqual(['a.germ']);
  });

  it('are found through symbolic links that stay in the folder, and a circle of links ends', async () => {
    const folder = await folderWith({ 'a.germ': '', 'sub/b.germ': '', '.store/c.germ': '', '.store/d.germ': '' });
    await symlink(path.join(folder, '.store'), path.join(folder, 'linked'));
    await symlink(path.join(folder, '.store/d.germ'), path.join(folder, 'd.germ'));
    await symlink(folder, path.join(folder, 'sub', 'up'));
    await symlink(folder, path.join(folder, 'again'));
    expect(await found(folder)).toEqual({ files: ['a.germ', 'd.germ', 'linked/c.germ', 'sub/b.germ'], faults: [] });
  });

  it('are not looked for behind a link that leads out, be it to the root of the disk', async () => {
    const elsewhere = await folderWith({ 'c.germ': '', 'sub/d.germ': '' });
    const folder = await folderWith({ 'a.germ': '', 'b/b.germ': '' });
    const links = { all: '/', up: path.dirname(folder), 'b/other': elsewhere, 'notes.txt': path.join(elsewhere, 'c.germ') };
    for (const [name, target] of Object.entries(links)) await symlink(target, path.join(folder, name));
    await symlink(path.join(elsewhere, 'c.germ'), path.join(folder, 'c.germ'));
    expect(await found(folder)).toEqual({
      files: ['a.germ', 'b/b.germ'],
      faults: ['c.germ: Plumule does not follow a symbolic link out of the folder; name the file itself to read it'],
    });
    const { outside } = await findJournals(folder);
    expect(outside).toEqual(['all', 'b/other', 'up'].map(name => path.join(folder, name)));
    // Beside a file that was opened by itself, neither.
    expect((await found(folder, false)).files).toEqual(['a.germ']);
  });

  it('are found in a folder that is itself a link', async () => {
    const [elsewhere, folder] = [await folderWith({ 'sub/c.germ': '' }), await folderWith({})];
    await symlink(elsewhere, path.join(folder, 'here'));
    expect(await found(path.join(folder, 'here'))).toEqual({ files: ['sub/c.germ'], faults: [] });
  });

  it('are found once where a link leads to one of them, under their own name', async () => {
    const folder = await folderWith({ 'z.germ': '' });
    await symlink(path.join(folder, 'z.germ'), path.join(folder, 'a.germ'));
    expect(await found(folder)).toEqual({ files: ['z.germ'], faults: [] });
  });

  it('leave a fault where a link is broken, but only if it has the name of a journal', async () => {
    const folder = await folderWith({ 'a.germ': '' });
    await symlink(path.join(folder, 'gone'), path.join(folder, 'b.germ'));
    await symlink(path.join(folder, 'gone'), path.join(folder, 'other'));
    expect(await found(folder)).toEqual({ files: ['a.germ'], faults: ['b.germ: there is no such file or folder'] });
  });

  it('may lie in a folder whose name ends like a journal', async () => {
    const folder = await folderWith({ 'old.germ/a.germ': '' });
    expect((await found(folder)).files).toEqual(['old.germ/a.germ']);
  });

  it('are none in a folder that does not exist, which is a fault', async () => {
    const folder = await folderWith({});
    const { files, faults } = await findJournals(path.join(folder, 'gone'));
    expect(files).toEqual([]);
    expect(faults).toMatchObject([{ message: 'there is no such file or folder', gone: true }]);
  });

  it('are none in an empty folder, which is no fault of the disk', async () => {
    const folder = await folderWith({});
    await mkdir(path.join(folder, 'empty'));
    expect(await found(folder)).toEqual({ files: [], faults: [] });
  });
});
