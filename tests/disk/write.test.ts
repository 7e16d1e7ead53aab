import { chmod, link, lstat, readFile, readdir, rename, rm, stat, symlink, utimes, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { faultOf } from '../../server/src/disk/fault.ts';
import { isJournalName } from '../../server/src/disk/find.ts';
import { replaceFile, scratchOf } from '../../server/src/disk/replace.ts';
import { rewriteJournal, writeOurs } from '../../server/src/disk/write.ts';
import { failing, folderWith } from './helpers.ts';

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
      name: 'DiskFault', path: file, message: 'another program has changed it',
    });
    expect(await readFile(file, 'utf8')).toBe('Lot A-1\nlot B-1\n');
  });
});

describe('a journal that was found in a folder', () => {
  it('is rewritten only as a plain file there: nothing that a link leads to is touched', async () => {
    const elsewhere = await folderWith({ 'a.germ': 'Lot A-1\n' });
    const folder = await folderWith({ 'b.germ': '' });
    await symlink(path.join(elsewhere, 'a.germ'), path.join(folder, 'a.germ'));
    await symlink(elsewhere, path.join(folder, 'sub'));
    for (const name of ['a.germ', 'sub/a.germ']) {
      await expect(rewriteJournal(path.join(folder, name), 'Lot A-1\n', 'lot A-1\n', { below: folder })).rejects.toMatchObject({
        name: 'DiskFault', message: 'it is a symbolic link; name the file itself to rewrite it',
      });
    }
    expect(await readFile(path.join(elsewhere, 'a.germ'), 'utf8')).toBe('Lot A-1\n');
    await rewriteJournal(path.join(folder, 'a.germ'), 'Lot A-1\n', 'lot A-1\n');
    expect(await readFile(path.join(elsewhere, 'a.germ'), 'utf8')).toBe('lot A-1\n');
  });

  // Each time the link takes the place of the file, or of its folder, while the file is being written.
  test.each(['winter/a.germ', 'winter'])('is not followed where a link takes the place of %s in mid-run', async swapped => {
    const elsewhere = await folderWith({ 'a.germ': 'Lot A-1\n' });
    for (let turn = 0; turn < 12; turn++) {
      const folder = await folderWith({ 'winter/a.germ': 'Lot A-1\n' });
      const target = swapped === 'winter' ? elsewhere : path.join(elsewhere, 'a.germ');
      const swap = async () => {
        for (let wait = 0; wait < turn; wait++) await stat(folder);
        await rename(path.join(folder, swapped), path.join(folder, 'put by'));
        await symlink(target, path.join(folder, swapped));
      };
      await Promise.allSettled([
        rewriteJournal(path.join(folder, 'winter/a.germ'), 'Lot A-1\n', 'lot A-1\n', { below: folder }), swap(),
      ]);
      expect(await readFile(path.join(elsewhere, 'a.germ'), 'utf8')).toBe('Lot A-1\n');
      await rm(path.join(elsewhere, '.a.germ.plumule-scratch'), { force: true });
    }
  });
});

describe('a file that is protected or has other names', () => {
  it('is left alone when it may not be written, unless told', async () => {
    const folder = await folderWith({ 'a.germ': 'Lot A-1\n' });
    const file = path.join(folder, 'a.germ');
    await chmod(file, 0o444);
    await expect(rewriteJournal(file, 'Lot A-1\n', 'lot A-1\n')).rejects.toMatchObject({ message: 'it is write-protected; --force rewrites it' });
    expect(await readFile(file, 'utf8')).toBe('Lot A-1\n');
    await rewriteJournal(file, 'Lot A-1\n', 'lot A-1\n', { force: true });
    expect(await readFile(file, 'utf8')).toBe('lot A-1\n');
    expect((await stat(file)).mode & 0o777).toBe(0o444);
  });

  it('is not cut from its other names, unless told', async () => {
    const folder = await folderWith({ 'a.germ': 'Lot A-1\n' });
    const [file, other] = [path.join(folder, 'a.germ'), path.join(folder, 'b.germ')];
    await link(file, other);
    await expect(rewriteJournal(file, 'Lot A-1\n', 'lot A-1\n')).rejects.toMatchObject({
      message: 'it has 2 names (hard links), and the others would keep the old text; --force rewrites it',
    });
    expect((await stat(file)).ino).toBe((await stat(other)).ino);
    await rewriteJournal(file, 'Lot A-1\n', 'lot A-1\n', { force: true });
    expect(await readFile(other, 'utf8')).toBe('Lot A-1\n');
  });

  it('is no place for a calendar', async () => {
    const folder = await folderWith({ 'a.ics': '' });
    await chmod(path.join(folder, 'a.ics'), 0o444);
    await expect(writeOurs(path.join(folder, 'a.ics'), 'BEGIN:VCALENDAR', 'calendar')).rejects.toThrow('it is write-protected');
  });
});

describe('a disk that fails', () => {
  const steps = ['open', 'writeFile', 'chmod', 'sync', 'close', 'rename'];
  test.each(steps.flatMap(step => ['ENOSPC', 'EACCES', 'EIO'].map(code => [step, code] as const)))(
    'in %s with %s leaves the journal as it was, and nothing beside it', async (step, code) => {
      const folder = await folderWith({ 'a.germ': 'Lot A-1\n' });
      const file = path.join(folder, 'a.germ');
      const like = await stat(file);
      await expect(replaceFile(file, 'lot A-1\n', { like, edge: failing(step, code) })).rejects.toMatchObject({ code });
      expect(await readFile(file, 'utf8')).toBe('Lot A-1\n');
      expect(await readdir(folder)).toEqual(['a.germ']);
    });

  it('that does not let go of the scratch file either says what came first, and the journal is as it was', async () => {
    const folder = await folderWith({ 'a.germ': 'Lot A-1\n' });
    const file = path.join(folder, 'a.germ');
    const edge = { ...failing('rename', 'EIO'), unlink: failing('unlink', 'EACCES').unlink };
    await expect(replaceFile(file, 'lot A-1\n', { edge })).rejects.toMatchObject({ code: 'EIO' });
    expect(await readFile(file, 'utf8')).toBe('Lot A-1\n');
    expect((await readdir(folder)).filter(isJournalName)).toEqual(['a.germ']);
  });

  test.each([
    ['EFBIG', 'it is larger than a file may be here'],
    ['EBUSY', 'it cannot be written, because something else is using it'],
    ['ENAMETOOLONG', 'its name is too long'],
    ['EMFILE', 'it cannot be written, because too many files are open'],
  ])('says what is wrong without a word of the machine: %s', (code, message) => {
    const error = Object.assign(new Error(`${code}: rename '/g/.a.germ.plumule-scratch'`), { code });
    expect(faultOf('/g/a.germ', error, 'written').message).toBe(message);
  });
});

describe('a name as long as a disk allows', () => {
  test.each(['n'.repeat(250), '種'.repeat(83)])('is that of a journal like others: %s', async name => {
    const folder = await folderWith({ [`${name}.germ`]: 'Lot A-1\n' });
    await rewriteJournal(path.join(folder, `${name}.germ`), 'Lot A-1\n', 'lot A-1\n');
    expect(await readFile(path.join(folder, `${name}.germ`), 'utf8')).toBe('lot A-1\n');
  });
});

describe('what a program that was killed left behind', () => {
  const leave = async () => {
    const folder = await folderWith({ 'a.germ': 'Lot A-1\n', '.a.germ.plumule-scratch': 'lot' });
    return { folder, file: path.join(folder, 'a.germ') };
  };

  it('has no name of a journal, and is hidden', () => {
    const name = path.basename(scratchOf('/g/a.germ'));
    expect(isJournalName(name)).toBe(false);
    expect(name.startsWith('.')).toBe(true);
  });

  it('is taken away by the next one', async () => {
    const { folder, file } = await leave();
    await utimes(scratchOf(file), new Date(0), new Date(0));
    await rewriteJournal(file, 'Lot A-1\n', 'lot A-1\n');
    expect(await readFile(file, 'utf8')).toBe('lot A-1\n');
    expect(await readdir(folder)).toEqual(['a.germ']);
  });

  it('may be of one that still writes: that one is not disturbed', async () => {
    const { file } = await leave();
    await expect(rewriteJournal(file, 'Lot A-1\n', 'lot A-1\n')).rejects.toThrow('another program is writing it');
    expect(await readFile(file, 'utf8')).toBe('Lot A-1\n');
    expect(await readFile(scratchOf(file), 'utf8')).toBe('lot');
  });
});
