import { copyFile, mkdir, readFile, readdir, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { barePhoto } from '../../server/src/publish/photos/bare.ts';
import { plumule } from './run.ts';

const JOURNAL = `# The bench
lot GEN-25 Gentiana lutea, 60 seeds, from Anna
sow GEN-25 2026-01-11, at shelf
photo GEN-25 2026-01-20, photos/bench.PNG
photo GEN-25 2026-01-21, ../secret.jpg
photo GEN-25 2026-01-22, photos/link.jpg
photo GEN-25 2026-01-23, photos/notes.txt
photo GEN-25 2026-01-24, photos/damaged.jpg
count GEN-25 2026-01-25, 3
`;
const PHOTO = fileURLToPath(new URL('../../samples/photos/penstemon-tray.png', import.meta.url));
const TODAY = ['--today', '2026-02-10'];

async function journalFolder(): Promise<string> {
  const base = await folderWith({
    'secret.jpg': 'secret', 'mine/winter.germ': JOURNAL, 'mine/photos/damaged.jpg': '\xff\xd8', 'mine/photos/notes.txt': 'notes',
  });
  await copyFile(PHOTO, path.join(base, 'mine/photos/bench.PNG'));
  await symlink(path.join(base, 'secret.jpg'), path.join(base, 'mine/photos/link.jpg'));
  return path.join(base, 'mine');
}

describe('plumule publish', () => {
  it('writes pages and tables into a folder, and writes them again', async () => {
    const folder = await journalFolder();
    for (let run = 0; run < 2; run++) {
      expect(await plumule(folder, 'publish', '-o', '../site', ...TODAY)).toEqual({
        code: 0, stdout: '', stderr: 'plumule: wrote 4 pages to ../site; open ../site/index.html\n',
      });
    }
    const site = path.join(folder, '../site');
    expect((await readdir(site)).sort()).toEqual([
      'index.html', 'lot-GEN-25.html', 'plant-gentiana_lutea.html', 'plumule-files.json', 'tables', 'tables.html',
    ]);
    expect(await readdir(path.join(site, 'tables'))).not.toContain('left_out.csv');
    expect(await readFile(path.join(site, 'lot-GEN-25.html'), 'utf8')).not.toMatch(/Anna|shelf|photo/i);
  });

  it('copies photos if they are asked for: pictures in the folder of the journal, under names that say nothing', async () => {
    const folder = await journalFolder();
    const { code, stderr } = await plumule(folder, 'publish', '-o', '../site', '--with', 'photos', '--with', 'sources', ...TODAY);
    expect(code).toBe(0);
    for (const left of ['../secret.jpg', 'photos/link.jpg', 'photos/notes.txt']) {
      expect(stderr).toContain(`plumule: ${left}: left out, because it is not a picture in the folder of the journal\n`);
    }
    expect(stderr).toContain('plumule: photos/damaged.jpg: left out, because it is damaged or no jpg file\n');
    const site = path.join(folder, '../site');
    expect(await readdir(path.join(site, 'photos'))).toEqual(['1.png']);
    expect(await readFile(path.join(site, 'photos/1.png'))).toEqual(Buffer.from(barePhoto(await readFile(PHOTO))!));
    expect(await readFile(path.join(site, 'lot-GEN-25.html'), 'utf8')).toMatch(/from Anna[^]*<img src="photos\/1\.png"/);
  });

  it('writes to no folder with other things in it', async () => {
    const folder = await journalFolder();
    await mkdir(path.join(folder, '../site'));
    await writeFile(path.join(folder, '../site/index.html'), 'mine');
    for (const where of ['.', '../site']) {
      expect(await plumule(folder, 'publish', '-o', where, ...TODAY)).toMatchObject({
        code: 2, stderr: `plumule: ${where}: this folder holds other things than pages of Plumule; choose a new or an empty one\n`,
      });
    }
    expect(await readFile(path.join(folder, '../site/index.html'), 'utf8')).toBe('mine');
  });

  it('publishes one journal at a time, and knows what it can show', async () => {
    const folder = await folderWith({ 'a/1.germ': JOURNAL, 'b/1.germ': JOURNAL });
    expect(await plumule(folder, 'publish', 'a', 'b', '-o', 'site')).toMatchObject({
      code: 2, stderr: 'plumule: these are 2 journals; publish one at a time\n',
    });
    const wrong = await plumule(folder, 'publish', 'a', '-o', 'site', '--with', 'secrets');
    expect(wrong.code).toBe(2);
    expect(wrong.stderr).toContain('Write one of places, remarks, sources, people, photos.');
    expect(await readdir(folder)).toEqual(['a', 'b']);
  });
});
