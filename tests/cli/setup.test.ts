import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { repositoryWith } from './git.ts';
import { plumule } from './run.ts';

const JOURNAL = `lot GEN-25 Gentiana lutea, 60 seeds
split GEN-25, A 24 seeds, B 24 seeds

day 2026-01-11
sow GEN-25/A
sow GEN-25/B

day 2026-02-01
count GEN-25/A, 6
count GEN-25/B, 1
`;
const WRONG = JOURNAL.replace('A, 6', 'A, 60');

describe('plumule setup git', () => {
  it('says what it would do, does it with --yes, once, and takes it out with --undo', async () => {
    const { folder } = await repositoryWith({ 'winter.germ': JOURNAL });
    const config = path.join(folder, '.git/config');
    const before = await readFile(config, 'utf8');
    const said = await plumule(folder, 'setup', 'git');
    expect(said.code).toBe(0);
    expect(said.stdout).toContain('.gitattributes: adds “*.germ merge=plumule diff=plumule”\n.git/config: sets merge.plumule.name');
    expect(said.stdout).toContain('.git/hooks/pre-commit: is new');
    expect(said.stderr).toContain('nothing changed yet');
    expect(await readFile(config, 'utf8')).toBe(before);
    expect((await plumule(folder, 'setup', 'git', '--yes')).stdout).toBe(said.stdout);
    expect((await stat(path.join(folder, '.git/hooks/pre-commit'))).mode & 0o111).toBe(0o111);
    expect(await plumule(folder, 'setup', 'git', '--yes')).toMatchObject({ code: 0, stdout: '' });
    await plumule(folder, 'setup', 'git', '--undo', '--yes');
    expect(await readFile(config, 'utf8')).toBe(before);
    await expect(stat(path.join(folder, '.gitattributes'))).rejects.toThrow();
    await expect(stat(path.join(folder, '.git/hooks/pre-commit'))).rejects.toThrow();
  });

  it('needs a repository, and prints an example of a job without one', async () => {
    const folder = await folderWith({});
    expect(await plumule(folder, 'setup', 'git')).toMatchObject({ code: 2, stdout: '' });
    expect(await plumule(folder, 'setup', 'git', '--ci')).toMatchObject({ code: 0, stderr: '' });
    expect((await plumule(folder, 'setup', 'hg')).code).toBe(2);
  });

  it('makes git merge by records, and name the day or the lot above each change', async () => {
    const repository = await repositoryWith({ 'winter.germ': JOURNAL });
    await plumule(repository.folder, 'setup', 'git', '--yes');
    await repository.commit('notes.txt', 'With .gitattributes\n');
    await repository.git('switch', '--create', 'bench');
    await repository.commit('winter.germ', `${JOURNAL}count GEN-25/B, 1 rotted\n`);
    await repository.git('switch', 'main');
    await repository.commit('winter.germ', `${JOURNAL}\nday 2026-02-08\ncount GEN-25/A, 5\n`);
    expect((await repository.git('merge', 'bench')).code).toBe(0);
    const { stdout } = await repository.git('diff', '--unified=0', 'HEAD^1');
    expect(stdout).toMatch(/^@@ .* @@ day 2026-02-01$/m);
  });

  it('stops a commit by what is staged, not by what the work tree has', async () => {
    const repository = await repositoryWith({ 'winter.germ': JOURNAL, 'notes.txt': 'dry\n' });
    await plumule(repository.folder, 'setup', 'git', '--yes');
    await repository.write('winter.germ', WRONG);
    await repository.git('add', '--all');
    await repository.write('winter.germ', JOURNAL);
    const stopped = await repository.git('commit', '-m', 'Count');
    expect(stopped.code).toBe(1);
    expect(stopped.stdout + stopped.stderr).toContain('winter.germ:9:17: error count-exceeds-sown');
    await repository.git('reset', '--hard');
    await repository.write('winter.germ', WRONG);
    await repository.write('notes.txt', 'wet\n');
    await repository.git('add', 'notes.txt');
    expect((await repository.git('commit', '-m', 'Note')).code).toBe(0);
  });
});

describe('plumule check --staged', () => {
  it('knows the journals that stay as they are, and reports on those that change', async () => {
    const repository = await repositoryWith({ 'lots.germ': `${JOURNAL}sowed GEN-25\n`, 'deep/b.germ': 'note GEN-25 2026-02-01, dry\n' });
    expect(await plumule(repository.folder, 'check', '--staged')).toEqual({ code: 0, stdout: '', stderr: 'plumule: checked 0 files: no problems\n' });
    await repository.write('deep/b.germ', 'note GEN-25 2026-02-01, dry\nnote GEN-26 2026-02-01, dry\n');
    await repository.git('add', '--all');
    const { code, stdout } = await plumule(path.join(repository.folder, 'deep'), 'check', '--staged');
    expect(code).toBe(1);
    expect(stdout).toMatch(/^b\.germ:2:6: error unknown-id: .*\n$/);
    expect((await plumule(repository.folder, 'check', '--staged', 'lots.germ')).code).toBe(2);
  });
});
