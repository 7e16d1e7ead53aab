import { access, copyFile, mkdir, readFile, readdir, symlink, writeFile } from 'node:fs/promises';
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

  it('gives each of several journals a folder, and lists them all on one page', async () => {
    const base = await folderWith({
      'anna/1.germ': JOURNAL, 'old/anna/1.germ': JOURNAL.replace('lutea', 'alba'), 'ben/index.html/1.germ': JOURNAL, 'ben/here/a.txt': '',
    });
    const here = path.join(base, 'ben/here');
    expect(await plumule(here, 'publish', '../../anna', '../../old/anna', '../index.html', '-o', '../../site', '--title', 'All', ...TODAY)).toEqual({
      code: 0, stdout: '', stderr: 'plumule: wrote 13 pages to ../../site; open ../../site/index.html\n',
    });
    const site = path.join(base, 'site');
    expect((await readdir(site)).sort()).toEqual(['anna', 'anna-2', 'index.html', 'index.html-2', 'plumule-files.json']);
    const top = await readFile(path.join(site, 'index.html'), 'utf8');
    expect(links(top).slice(0, 3)).toEqual(['anna/index.html', 'index.html-2/index.html', 'anna-2/index.html']);
    expect(top).toContain('3 journals. Each was kept, counted and judged by itself.');
    expect(links(top).slice(3)).toEqual([
      'anna-2/plant-gentiana_alba.html', 'anna/plant-gentiana_lutea.html', 'index.html-2/plant-gentiana_lutea.html',
      'anna/lot-GEN-25.html', 'index.html-2/lot-GEN-25.html', 'anna-2/lot-GEN-25.html',
    ]);
    for (const link of links(top)) await access(path.join(site, link));
    for (const name of await readdir(path.join(site, 'anna-2'))) {
      if (!name.endsWith('.html')) continue;
      const page = await readFile(path.join(site, 'anna-2', name), 'utf8');
      expect(links(page)[0]).toBe('../index.html');
      for (const link of links(page)) await access(path.join(site, 'anna-2', link));
    }
  });

  it('calls a journal that is reached by dots alone by its folder, and writes nothing beside the pages', async () => {
    const base = await folderWith({ 'in/1.germ': JOURNAL, 'in/deep/a.txt': '', 'other/1.germ': JOURNAL });
    await plumule(path.join(base, 'in/deep'), 'publish', '..', '../../other', '-o', '../../site', ...TODAY);
    expect((await readdir(path.join(base, 'site'))).sort()).toEqual(['in', 'index.html', 'other', 'plumule-files.json']);
    expect((await readdir(base)).sort()).toEqual(['in', 'other', 'site']);
  });

  it('knows what it can show', async () => {
    const folder = await folderWith({ 'a/1.germ': JOURNAL });
    const wrong = await plumule(folder, 'publish', 'a', '-o', 'site', '--with', 'secrets');
    expect(wrong.code).toBe(2);
    expect(wrong.stderr).toContain('Write one of places, remarks, sources, people, photos.');
    expect(await readdir(folder)).toEqual(['a']);
  });
});

function links(page: string): string[] {
  return [...page.matchAll(/href="([^"#]+)"/g)].map(([, link]) => decodeURIComponent(link!));
}
