import { chmod, link, readFile, symlink } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const ROUGH = '# Winter\r\nlot  A-1 Adonis vernalis,60 seeds\r\n  My  own words.\r\nsowed  A-1\r\n';
const SMOOTH = '# Winter\r\nlot A-1 Adonis vernalis, 60 seeds\r\n  My  own words.\r\nsowed  A-1\r\n';
const LEFT = '1 line with a mistake left as it is';

describe('plumule format', () => {
  it('prints one file formatted, and touches nothing', async () => {
    const folder = await folderWith({ 'a.germ': ROUGH });
    expect(await plumule(folder, 'format', 'a.germ')).toEqual({ code: 0, stdout: SMOOTH, stderr: '' });
    expect(await readFile(path.join(folder, 'a.germ'), 'utf8')).toBe(ROUGH);
  });

  it('does not print several files one after the other', async () => {
    const folder = await folderWith({ 'a.germ': ROUGH, 'b.germ': ROUGH });
    const { code, stdout, stderr } = await plumule(folder, 'format', '.');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('use --check or --write');
  });

  it('names the files that are not formatted with --check, and ends with 1 if there are any', async () => {
    const folder = await folderWith({ 'a.germ': ROUGH, 'b.germ': SMOOTH });
    expect(await plumule(folder, 'format', '--check', '.')).toEqual({
      code: 1, stdout: 'a.germ\n', stderr: 'plumule: 1 of 2 files not formatted; 2 lines with a mistake left as they are\n',
    });
    expect(await readFile(path.join(folder, 'a.germ'), 'utf8')).toBe(ROUGH);
    expect(await plumule(folder, 'format', '--check', 'b.germ')).toEqual({
      code: 0, stdout: '', stderr: `plumule: 0 of 1 file not formatted; ${LEFT}\n`,
    });
  });

  it('puts facts in the order of the reference with --fact-order alone', async () => {
    const folder = await folderWith({ 'a.germ': 'lot A-1 Adonis vernalis, from own bed, 60 seeds\n' });
    const printed = async (...options: string[]) => (await plumule(folder, 'format', ...options, 'a.germ')).stdout;
    expect(await printed()).toBe('lot A-1 Adonis vernalis, from own bed, 60 seeds\n');
    expect(await printed('--fact-order')).toBe('lot A-1 Adonis vernalis, 60 seeds, from own bed\n');
    expect(await printed('--fact-order', '--check')).toBe('a.germ\n');
  });

  it('rewrites the files with --write: line ends, remarks and lines with a mistake stay', async () => {
    const folder = await folderWith({ 'a.germ': `\uFEFF${ROUGH}`, 'b.germ': SMOOTH });
    const { code, stdout } = await plumule(folder, 'format', '--write', '.');
    expect({ code, stdout }).toEqual({ code: 0, stdout: 'a.germ\n' });
    expect(await readFile(path.join(folder, 'a.germ'), 'utf8')).toBe(`\uFEFF${SMOOTH}`);
    expect((await plumule(folder, 'format', '--check', '.')).code).toBe(0);
  });

  it('needs a path, names one that cannot be read, and does not both check and write', async () => {
    const folder = await folderWith({ 'a.germ': ROUGH });
    expect((await plumule(folder, 'format', '--check')).code).toBe(2);
    expect((await plumule(folder, 'format', '--check', '--write', '.')).code).toBe(2);
    const { code, stdout, stderr } = await plumule(folder, 'format', '--write', 'gone.germ', 'a.germ');
    expect({ code, stdout }).toEqual({ code: 2, stdout: 'a.germ\n' });
    expect(stderr).toContain('plumule: gone.germ: there is no such file or folder\n');
  });

  it('leaves alone what lies outside the folder, what is protected, and what has other names, and says so', async () => {
    const elsewhere = await folderWith({ 'c.germ': ROUGH });
    const folder = await folderWith({ 'a.germ': ROUGH, 'b.germ': ROUGH, 'd.germ': ROUGH });
    await symlink(elsewhere, path.join(folder, 'linked'));
    await chmod(path.join(folder, 'b.germ'), 0o444);
    await link(path.join(folder, 'd.germ'), path.join(elsewhere, 'd.germ'));
    const { code, stdout, stderr } = await plumule(folder, 'format', '--write', '.');
    expect({ code, stdout }).toEqual({ code: 2, stdout: 'a.germ\n' });
    expect(stderr).toBe([
      'linked: Plumule does not follow a symbolic link out of the folder',
      'b.germ: it is write-protected; --force rewrites it',
      'd.germ: it has 2 names (hard links), and the others would keep the old text; --force rewrites it',
      '1 of 3 files formatted; 3 lines with a mistake left as they are',
    ].map(line => `plumule: ${line}\n`).join(''));
    expect(await readFile(path.join(elsewhere, 'c.germ'), 'utf8')).toBe(ROUGH);
    expect((await plumule(folder, 'format', '--write', '--force', '.')).stdout).toBe('b.germ\nd.germ\n');
    expect((await plumule(folder, 'format', '--write', 'linked/c.germ')).code).toBe(0);
    expect(await readFile(path.join(elsewhere, 'c.germ'), 'utf8')).toBe(SMOOTH);
  });

  it('ends with what the file that was named deserves, whatever lies beside it', async () => {
    const folder = await folderWith({ 'a.germ': SMOOTH, 'b.germ': Buffer.from([0xff]) });
    await symlink(path.join(folder, 'gone'), path.join(folder, 'c.germ'));
    expect((await plumule(folder, 'format', '--check', 'a.germ')).code).toBe(0);
  });
});
