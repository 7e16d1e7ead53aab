import { mkdir, readFile, readdir, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { LIST, writeFolder } from '../../server/src/disk/own-folder.ts';
import { folderWith } from './helpers.ts';

const files = (...names: string[]) => names.map(name => ({ name, content: `${name}\n` }));

async function contentsOf(folder: string): Promise<string[]> {
  return (await readdir(folder, { recursive: true })).sort();
}

describe('a folder that Plumule writes as a whole', () => {
  it('is made where there is none, and filled where it is empty', async () => {
    const base = await folderWith({});
    await mkdir(path.join(base, 'empty'));
    for (const name of ['new', 'empty']) {
      const folder = path.join(base, name);
      await writeFolder(folder, 'tables', files('a.csv', 'deep/er/b.csv'));
      expect(await contentsOf(folder)).toEqual(['a.csv', 'deep', 'deep/er', 'deep/er/b.csv', LIST].sort());
      expect(await readFile(path.join(folder, 'deep/er/b.csv'), 'utf8')).toBe('deep/er/b.csv\n');
    }
  });

  it('is written again, without what the new run does not have, and with what somebody else put there', async () => {
    const folder = await folderWith({});
    await writeFolder(folder, 'tables', files('a', 'old/b', 'old/c', 'kept/d'));
    await writeFile(path.join(folder, 'mine.txt'), 'mine');
    await writeFile(path.join(folder, 'kept/mine.txt'), 'mine');
    await writeFolder(folder, 'tables', files('a', 'e'));
    expect(await contentsOf(folder)).toEqual(['a', 'e', 'kept', 'kept/mine.txt', 'mine.txt', LIST].sort());
  });

  it('is left alone if it holds other things, or what is of another kind', async () => {
    const other = await folderWith({ 'winter.germ': 'lot A' });
    const pages = await folderWith({});
    await writeFolder(pages, 'pages', files('index.html'));
    const torn = await folderWith({ [LIST]: '{ "plumule": "tables", ' });
    for (const folder of [other, pages, torn]) {
      const before = await contentsOf(folder);
      await expect(writeFolder(folder, 'tables', files('a'))).rejects.toThrow('this folder holds other things than tables of Plumule');
      expect(await contentsOf(folder)).toEqual(before);
    }
  });

  it('keeps a file that it did not write, even if it is called like one that it would', async () => {
    const folder = await folderWith({});
    await writeFolder(folder, 'tables', files('a'));
    await writeFile(path.join(folder, 'b'), 'mine');
    await expect(writeFolder(folder, 'tables', files('a', 'b'))).rejects.toThrow('Plumule did not write this file');
    expect(await readFile(path.join(folder, 'b'), 'utf8')).toBe('mine');
  });

  it('writes through no link inside it, and removes nothing behind one or outside', async () => {
    const base = await folderWith({ 'outside/a': 'precious', 'precious': 'precious' });
    const folder = path.join(base, 'out');
    await writeFolder(folder, 'tables', files('x', 'sub/a'));
    const list = { plumule: 'tables', files: ['x', 'sub/a', '../precious', '..', '', 'link/a'] };
    await writeFile(path.join(folder, LIST), JSON.stringify(list));
    await symlink(path.join(base, 'outside'), path.join(folder, 'link'));
    await expect(writeFolder(folder, 'tables', files('link/a'))).rejects.toThrow('it is a symbolic link, or behind one');
    await writeFolder(folder, 'tables', files('x'));
    expect(await readFile(path.join(base, 'precious'), 'utf8')).toBe('precious');
    expect(await readFile(path.join(base, 'outside/a'), 'utf8')).toBe('precious');
    expect(await contentsOf(folder)).toEqual(['link', 'link/a', LIST, 'x'].sort());
  });

  it('is written where a link that the user names leads', async () => {
    const base = await folderWith({});
    await mkdir(path.join(base, 'real'));
    await symlink(path.join(base, 'real'), path.join(base, 'link'));
    await writeFolder(path.join(base, 'link'), 'tables', files('a'));
    expect(await contentsOf(path.join(base, 'real'))).toEqual(['a', LIST].sort());
  });

  it('is refused if it is a file, or if nothing is where it would be', async () => {
    const base = await folderWith({ file: 'x' });
    await expect(writeFolder(path.join(base, 'file'), 'tables', [])).rejects.toThrow('it is not a folder');
    await expect(writeFolder(path.join(base, 'gone/out'), 'tables', [])).rejects.toThrow('the folder that it would be in does not exist');
  });
});
