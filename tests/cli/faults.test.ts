import { spawnSync } from 'node:child_process';
import fs, { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { isJournalName } from '../../server/src/disk/find.ts';
import { failing, folderWith } from '../disk/helpers.ts';
import { plumule, shell, type Outcome } from './run.ts';

/** Longer than a block of the disk, so that part of it fits where all does not. */
const REMARKS = '# dry and cold\n'.repeat(400);
const OLD = `lot   GEN-25 Gentiana lutea, 60 seeds\n${REMARKS}`;
const SHEET = `Lot,Plant,Seeds\n${Array.from({ length: 60 }, (_, i) => `ADO-${i},Adonis vernalis,20\n`).join('')}`;
const TODAY = ['--today', '2026-02-08'];

interface Writing {
  readonly args: readonly string[];
  /** Beside `a.germ`, which holds OLD. */
  readonly files?: Readonly<Record<string, string>>;
  /** The first file that it writes aside. */
  readonly first: string;
  readonly isRepository?: true;
}

/** Every command that writes files. */
const WRITINGS: Readonly<Record<string, Writing>> = {
  'format --write': { args: ['format', '--write', 'a.germ'], first: 'a.germ' },
  'format --write of a folder': { args: ['format', '--write', '.'], first: 'a.germ' },
  'import': { args: ['import', 's.csv', '-o', 'a.germ'], files: { 's.csv': SHEET }, first: 's.csv.mapping.json' },
  'merge': { args: ['merge', 'base', 'a.germ', 'theirs'], files: { base: OLD, theirs: `${OLD}# mould\n` }, first: 'a.germ' },
  'setup git': { args: ['setup', 'git', '--yes'], files: { '.gitattributes': REMARKS }, first: '.gitattributes', isRepository: true },
  'publish': { args: ['publish', '-o', 'out', 'a.germ', ...TODAY], first: 'out/plumule-files.json' },
  'export --tables': { args: ['export', '--tables', '-o', 'out', 'a.germ', ...TODAY], first: 'out/plumule-files.json' },
  'export --ics': { args: ['export', '--ics', '-o', 'a.ics', 'a.germ', ...TODAY], first: 'a.ics' },
  'round': { args: ['round', '-o', 'a.html', 'a.germ', ...TODAY], first: 'a.html' },
};

const SAYS = {
  ENOSPC: 'the disk is full', EACCES: 'permission is denied', EIO: 'it cannot be written, because of a disk error',
} as const;

async function folderOf({ files, isRepository }: Writing): Promise<string> {
  const folder = await folderWith({ 'a.germ': OLD, ...files });
  if (isRepository) spawnSync('git', ['init', '--quiet', folder]);
  return folder;
}

/** Runs a command in this process, on a disk that fails in one step. */
async function onFailing(step: string, code: string, folder: string, args: readonly string[]): Promise<Outcome> {
  const { open, rename, stat: statOf, unlink } = fs;
  Object.assign(fs, failing(step, code));
  try {
    return await plumule(folder, ...args);
  } finally {
    Object.assign(fs, { open, rename, stat: statOf, unlink });
  }
}

/** All that was there is as it was, and nothing beside it is taken for a journal or left half written. */
async function expectAsItWas(folder: string, { files }: Writing): Promise<void> {
  for (const [name, text] of Object.entries({ 'a.germ': OLD, ...files })) {
    expect(await readFile(path.join(folder, name), 'utf8') === text, name).toBe(true);
  }
  const names = await readdir(folder, { recursive: true });
  expect(names.filter(isJournalName)).toEqual(['a.germ']);
  expect(names.filter(name => name.endsWith('scratch'))).toEqual([]);
}

describe('a disk that fails while a command writes', () => {
  const steps = [
    ['open', 'EACCES'], ['writeFile', 'ENOSPC'], ['writeFile', 'EIO'], ['sync', 'EIO'], ['close', 'EIO'], ['rename', 'EACCES'],
  ] as const;
  // What holds no journal and can be made again needs no more than one step that fails.
  const cases = Object.keys(WRITINGS).flatMap(name => steps.map(([step, code]) => [name, step, code] as const))
    .filter(([name, , code]) => code === 'ENOSPC' || !/^publish|^export|^round/.test(name));

  test.each(cases)('%s: in %s with %s, the journal stays as it was, one sentence says why, and it ends with 2', async (name, step, code) => {
    const writing = WRITINGS[name]!;
    const folder = await folderOf(writing);
    const { code: exit, stderr } = await onFailing(step, code, folder, writing.args);
    expect(exit).toBe(2);
    expect(stderr.split('\n').filter(line => line.includes(SAYS[code]))).toEqual([
      expect.stringMatching(`^plumule: ${writing.first}: ${SAYS[code]}(; nothing was merged)?$`),
    ]);
    await expectAsItWas(folder, writing);
  });

  it('leaves the journal as it was where the mapping beside the sheet is there and the journal was not written', async () => {
    const writing = WRITINGS.import!;
    const folder = await folderOf(writing);
    await plumule(folder, 'import', 's.csv');
    for (const [step, code] of steps) {
      expect(await onFailing(step, code, folder, writing.args)).toMatchObject({ code: 2, stderr: `plumule: a.germ: ${SAYS[code]}\n` });
      await expectAsItWas(folder, writing);
    }
  });

  it('leaves no journal where one was to be new', async () => {
    const folder = await folderWith({ 's.csv': SHEET });
    await plumule(folder, 'import', 's.csv');
    for (const [step, code] of steps) {
      const { stderr } = await onFailing(step, code, folder, ['import', 's.csv', '-o', 'new.germ']);
      expect(stderr).toBe(`plumule: new.germ: ${SAYS[code]}\n`);
      expect(await readdir(folder)).toEqual(['s.csv', 's.csv.mapping.json']);
    }
  });
});

describe('a machine that lets nobody write so much', () => {
  // The first block fits and the rest does not: Linux answers with a short write, then with EFBIG.
  it('leaves each file as it was, whatever writes it', async () => {
    const names = ['format --write', 'import', 'merge', 'setup git'];
    const folders = await Promise.all(names.map(name => folderOf(WRITINGS[name]!)));
    await plumule(folders[1]!, 'import', 's.csv');
    const lines = names.map((name, i) => `cd ${folders[i]!}; plumule ${WRITINGS[name]!.args.join(' ')}; echo ends with $?`);
    const { stdout, stderr } = await shell(folders[0]!, `ulimit -f 1; ${lines.join('; ')}`);
    expect(stdout.match(/ends with \d+/g)).toEqual(names.map(() => 'ends with 2'));
    expect(stderr.match(/^plumule: .*larger.*$/gm)).toEqual([
      'a.germ: it is larger than a file may be here', 'a.germ: it is larger than a file may be here',
      'a.germ: it is larger than a file may be here; nothing was merged', '.gitattributes: it is larger than a file may be here',
    ].map(text => `plumule: ${text}`));
    for (const [i, name] of names.entries()) await expectAsItWas(folders[i]!, WRITINGS[name]!);
  });
});

/** A disk of 24 kB over a folder, seen by one shell alone and gone with it. */
const onSmallDisk = (work: string) =>
  `export -f plumule; unshare --mount bash -c 'mount -t tmpfs -o size=24k none disk && cd disk && { ${work}; }'`;
const MOUNTED = spawnSync('unshare', ['--mount', 'bash', '-c', 'mount -t tmpfs none /mnt']).status === 0;

// Many a container lets not even a superuser mount anything; what is above is tried there too.
describe.skipIf(!MOUNTED)(`a small disk${MOUNTED ? '' : ' (none can be mounted here: nothing was tried)'}`, () => {
  it('leaves the journal as it was when it is full, read-only, or when the journal is mounted by itself', async () => {
    const folder = await folderWith({ 'a.germ': OLD, 'disk/under': '' });
    const { stdout, stderr, code } = await shell(folder, onSmallDisk([
      'cp ../a.germ .', 'head -c 30000 /dev/zero > full 2> /dev/null', 'plumule format --write a.germ', 'ls -A', 'cmp a.germ ../a.germ',
      'rm full', 'mount -o remount,ro .', 'plumule format --write --force a.germ', 'ls -A', 'cmp a.germ ../a.germ',
      'mount -o remount,rw .', 'cp a.germ b.germ', 'mount --bind b.germ a.germ', 'plumule format --write a.germ', 'ls -A', 'cmp a.germ ../a.germ',
    ].join('; ')));
    expect({ stdout, code }).toEqual({ stdout: 'a.germ\nfull\na.germ\na.germ\nb.germ\n', code: 0 });
    expect(stderr.split('\n').filter(line => line.includes('a.germ'))).toEqual([
      'plumule: a.germ: the disk is full', 'plumule: a.germ: the disk is read-only',
      'plumule: a.germ: it cannot be written, because something else is using it',
    ]);
  });
});
