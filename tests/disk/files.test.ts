import { symlink } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { filesOnDisk } from '../../server/src/disk/files.ts';
import { folderWith } from './helpers.ts';

const addressOf = (...parts: string[]) => pathToFileURL(path.join(...parts)).href;

describe('journals by address', () => {
  it('are listed and read, blanks and other letters in their names included', async () => {
    const folder = await folderWith({ 'winter 2026/käfig #1.germ': '# here' });
    const { files: [address = ''] } = await filesOnDisk.list(addressOf(folder), true);
    expect(address).toBe(`${addressOf(folder)}/winter%202026/k%C3%A4fig%20%231.germ`);
    expect(await filesOnDisk.read(address, addressOf(folder))).toBe('# here');
  });

  it('are not looked for deeper than told', async () => {
    const folder = await folderWith({ 'a/b.germ': '' });
    expect(await filesOnDisk.list(addressOf(folder), false)).toEqual({ files: [], faults: [] });
  });

  it('are undefined when gone, and a fault when they cannot be read', async () => {
    const folder = await folderWith({ 'a.germ': Buffer.from([0x23, 0xe4]) });
    expect(await filesOnDisk.read(addressOf(folder, 'b.germ'), addressOf(folder))).toBeUndefined();
    await expect(filesOnDisk.read(addressOf(folder, 'a.germ'), addressOf(folder))).rejects.toThrow('not UTF-8');
  });

  it('are a fault in a folder that is not there, and none at an address that is no file', async () => {
    const folder = await folderWith({});
    await expect(filesOnDisk.list(addressOf(folder, 'gone'), true)).rejects.toThrow('there is no such file or folder');
    expect(await filesOnDisk.list('untitled:Untitled-1', false)).toEqual({ files: [], faults: [] });
    expect(await filesOnDisk.read('https://example.org/a.germ', 'https://example.org')).toBeUndefined();
  });

  it('are gone where a link leads to them out of the folder, and what is not followed is said', async () => {
    const [folder, elsewhere] = [await folderWith({ 'a.germ': '' }), await folderWith({ 'b.germ': '# b' })];
    await symlink(path.join(elsewhere, 'b.germ'), path.join(folder, 'b.germ'));
    await symlink('/', path.join(folder, 'all'));
    expect(await filesOnDisk.list(addressOf(folder), true)).toEqual({
      files: [addressOf(folder, 'a.germ')],
      faults: [
        `${path.join(folder, 'b.germ')}: Plumule does not follow a symbolic link out of the folder; name the file itself to read it`,
        `${path.join(folder, 'all')}: Plumule does not follow a symbolic link out of the folder`,
      ],
    });
    expect(await filesOnDisk.read(addressOf(folder, 'b.germ'), addressOf(folder))).toBeUndefined();
    expect(await filesOnDisk.read(addressOf(elsewhere, 'b.germ'), addressOf(elsewhere))).toBe('# b');
  });
});
