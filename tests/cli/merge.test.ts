import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { repositoryWith, type Repository } from './git.ts';
import { plumule } from './run.ts';

const BASE = `lot GEN-25 Gentiana lutea, 60 seeds
split GEN-25, A 24 seeds, B 24 seeds

day 2026-02-01
count GEN-25/A, 6
count GEN-25/B, 1
`;
const MINE = `${BASE}\nday 2026-02-08\ncount GEN-25/A, 5\n`;
const THEIRS = `${BASE}count GEN-25/B, 1 rotted\n`;
const BOTH = `${BASE}count GEN-25/B, 1 rotted\n\nday 2026-02-08\ncount GEN-25/A, 5\n`;

const textIn = (folder: string, name: string) => readFile(path.join(folder, name), 'utf8');

describe('plumule merge', () => {
  it('writes the merged file in place of ours, and ends with 0', async () => {
    const folder = await folderWith({ base: BASE, ours: MINE, theirs: THEIRS });
    expect(await plumule(folder, 'merge', 'base', 'ours', 'theirs')).toEqual({ code: 0, stdout: '', stderr: '' });
    expect(await textIn(folder, 'ours')).toBe(BOTH);
  });

  it('ends with 1 where a conflict is left, and says where', async () => {
    const folder = await folderWith({ base: BASE, ours: BASE.replace('A, 6', 'A, 7'), theirs: BASE.replace('A, 6', 'A, 8') });
    expect(await plumule(folder, 'merge', 'base', 'ours', 'theirs', '--marker-size', '9', '--name', 'winter.germ')).toEqual({
      code: 1, stdout: '', stderr: 'plumule: winter.germ:5: conflict, changed on both sides: count GEN-25/A, 7\n',
    });
    expect(await textIn(folder, 'ours')).toContain('<<<<<<<<< ours\ncount GEN-25/A, 7\n=========\n');
  });

  it('prints the result with --print, and leaves the file', async () => {
    const folder = await folderWith({ base: BASE, ours: MINE, theirs: THEIRS });
    expect(await plumule(folder, 'merge', '--print', 'base', 'ours', 'theirs')).toEqual({ code: 0, stdout: BOTH, stderr: '' });
    expect(await textIn(folder, 'ours')).toBe(MINE);
  });

  it('says what stands there once, and which batch both counted', async () => {
    const folder = await folderWith({
      base: BASE, ours: `${BASE}count GEN-25/A, 1\nnote GEN-25, dry\n`, theirs: `${BASE}count GEN-25/A, 2\nnote GEN-25, dry\n`,
    });
    const { code, stderr } = await plumule(folder, 'merge', 'base', 'ours', 'theirs');
    expect(code).toBe(0);
    expect(stderr).toContain('plumule: ours: both sides added “note GEN-25, dry”; kept once\n');
    expect(stderr).toContain('plumule: ours: both sides counted “GEN-25/A”.');
  });

  it('loses no byte of a file that is no UTF-8, and touches none that holds no text', async () => {
    const latin = (text: string) => Buffer.from(text, 'latin1');
    const note = 'note GEN-25, gr\u00fcn\n';
    const ours = latin(BASE + note + MINE.slice(BASE.length));
    const folder = await folderWith({ base: latin(BASE + note), ours, theirs: latin(THEIRS + note) });
    expect((await plumule(folder, 'merge', 'base', 'ours', 'theirs')).code).toBe(0);
    expect((await readFile(path.join(folder, 'ours'))).toString('latin1')).toBe(`${THEIRS}${note}${MINE.slice(BASE.length)}`);
    const other = await folderWith({ base: BASE, ours: MINE, theirs: Buffer.from(BASE, 'utf16le') });
    const { code, stderr } = await plumule(other, 'merge', 'base', 'ours', 'theirs');
    expect({ code, stderr }).toEqual({ code: 2, stderr: 'plumule: theirs: it holds no text, or text in UTF-16; save it as UTF-8; nothing was merged\n' });
    expect(await textIn(other, 'ours')).toBe(MINE);
  });
});

/** Two branches that part at BASE: `main` has MINE, `bench` has THEIRS and is checked out. */
async function parted(): Promise<Repository> {
  const repository = await repositoryWith({ 'winter.germ': BASE, '.gitattributes': '*.germ merge=plumule\n' });
  await repository.git('config', 'merge.plumule.driver', 'plumule merge %O %A %B --marker-size %L --name %P');
  await repository.git('switch', '--create', 'bench');
  await repository.commit('winter.germ', THEIRS);
  await repository.git('switch', 'main');
  await repository.commit('winter.germ', MINE);
  await repository.git('switch', 'bench');
  return repository;
}

describe('git with the merge driver', () => {
  it('merges two branches of which both went on with the journal', async () => {
    const repository = await parted();
    const { code, stderr } = await repository.git('merge', 'main');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(await textIn(repository.folder, 'winter.germ')).toBe(BOTH);
    expect((await repository.git('status', '--porcelain')).stdout).toBe('');
  });

  it('rebases, and picks a commit', async () => {
    const rebased = await parted();
    expect((await rebased.git('rebase', 'main')).code).toBe(0);
    expect(await textIn(rebased.folder, 'winter.germ')).toBe(BOTH);
    const picked = await parted();
    expect((await picked.git('cherry-pick', 'main')).code).toBe(0);
    expect(await textIn(picked.folder, 'winter.germ')).toBe(BOTH);
  });

  it('takes what was stashed back into a journal that went on', async () => {
    const repository = await parted();
    await repository.write('winter.germ', `${THEIRS}note GEN-25, watered\n`);
    await repository.git('stash');
    await repository.git('reset', '--hard', 'main');
    expect((await repository.git('stash', 'pop')).code).toBe(0);
    const below = 'count GEN-25/B, 1\n';
    expect(await textIn(repository.folder, 'winter.germ')).toBe(MINE.replace(below, `${below}note GEN-25, watered\n`));
  });

  it('leaves a conflict at one record, which git knows of, and merges the rest', async () => {
    const repository = await parted();
    await repository.commit('winter.germ', THEIRS.replace('A, 6', 'A, 7'));
    await repository.git('switch', 'main');
    await repository.commit('winter.germ', MINE.replace('A, 6', 'A, 8'));
    const { code, stdout, stderr } = await repository.git('merge', 'bench');
    expect(code).toBe(1);
    expect(stdout).toContain('Merge conflict in winter.germ');
    expect(stderr).toContain('winter.germ:5: conflict, changed on both sides');
    const block = '<<<<<<< ours\ncount GEN-25/A, 8\n=======\ncount GEN-25/A, 7\n>>>>>>> theirs';
    expect(await textIn(repository.folder, 'winter.germ')).toBe(BOTH.replace('count GEN-25/A, 6', block));
    expect((await repository.git('status', '--porcelain')).stdout).toContain('UU winter.germ');
  });

  it('merges branches that have several common versions', async () => {
    const repository = await parted();
    // Each side merges the other one's first commit, so that neither is older.
    await repository.git('tag', 'bench-1');
    await repository.git('merge', 'main');
    await repository.commit('winter.germ', `${BOTH}count GEN-25/A, 2 lost\n`);
    await repository.git('switch', 'main');
    await repository.git('merge', 'bench-1');
    await repository.commit('winter.germ', `${BOTH}\nday 2026-02-15\ncount GEN-25/A, 3\n`);
    expect((await repository.git('merge-base', '--all', 'main', 'bench')).stdout.trim().split('\n')).toHaveLength(2);
    expect((await repository.git('merge', 'bench')).code).toBe(0);
    expect(await textIn(repository.folder, 'winter.germ')).toBe(`${BOTH}count GEN-25/A, 2 lost\n\nday 2026-02-15\ncount GEN-25/A, 3\n`);
  });
});
