import { mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { filesOnDisk } from '../../server/src/disk/files.ts';
import { keyOf } from '../../server/src/lsp/addresses.ts';
import type { Files } from '../../server/src/lsp/files.ts';
import { Workspace } from '../../server/src/lsp/workspace.ts';

const folders = ['.', 'a', 'a/b', 'c'] as const;
const places = [
  'x.germ', 'a/x.germ', 'a/b/x.germ', 'a/b/y.germ', 'c/x.germ', 'd/x.germ', 'a/.past/x.germ', 'c/node_modules/x.germ', 'a/x.txt',
] as const;

const later = (work: () => void) => void setImmediate(work);

type Step =
  | { readonly do: 'folders'; readonly added: readonly string[]; readonly removed: readonly string[] }
  | { readonly do: 'open' | 'save'; readonly place: string; readonly lots: number }
  | { readonly do: 'edit' | 'close' | 'delete'; readonly place: string }
  | { readonly do: 'rename'; readonly from: string; readonly to: string }
  | { readonly do: 'wait' };

const place = fc.constantFrom(...places);
const lots = fc.nat({ max: 3 });
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 3, arbitrary: fc.record({
    do: fc.constant('folders' as const), added: fc.subarray([...folders], { maxLength: 2 }), removed: fc.subarray([...folders], { maxLength: 2 }),
  }) },
  { weight: 3, arbitrary: fc.record({ do: fc.constantFrom('open' as const, 'save' as const), place, lots }) },
  { weight: 3, arbitrary: fc.record({ do: fc.constantFrom('edit' as const, 'close' as const, 'delete' as const), place }) },
  { weight: 1, arbitrary: fc.record({
    do: fc.constant('rename' as const), from: fc.constantFrom('a', 'a/b', 'c'), to: fc.constantFrom('d', 'c/e', '.put-by'),
  }) },
  { weight: 1, arbitrary: fc.constant({ do: 'wait' as const }) },
);

/** A journal with so many lots, named after its place. */
const textOf = (where: string, n: number) => Array.from({ length: n }, (_, i) => `lot L${i}-${where.length} Iris\n`).join('');

const emptied = (all: Workspace) => Promise.all([...all.rooms].map(room => room.loaded));

/** Every journal: its folder, and the text and the lots that it has. */
function journals(all: Workspace): unknown {
  return [...all.rooms].filter(({ journal }) => journal.files.size > 0).map(({ kind, folder, journal }) => ({
    kind, folder, lots: [...journal.lots()].map(({ id }) => id).sort(),
    files: [...journal.files].map(([name, { text }]) => [name, text.text()]).sort(),
  })).sort((one, other) => (one.folder < other.folder ? -1 : 1));
}

test('whatever comes and goes, each document has one owner at every moment, and all is as if it were built anew', async () => {
  const pieces = fc.oneof(fc.constant(4096), fc.integer({ min: 1, max: 30 }));
  await fc.assert(fc.asyncProperty(fc.array(step, { minLength: 4, maxLength: 14 }), pieces, async (steps, piece) => {
    const root = await mkdtemp(path.join(tmpdir(), 'plumule-owners-'));
    try {
      await replay(root, steps, piece);
    } finally {
      await rm(root, { recursive: true, force: true });
    }
  }), { numRuns: 60 });
});

/** The real disk, and a wait until nothing is being read from it any more, whoever asked. */
function awaitedDisk(): { files: Files; quiet: () => Promise<void> } {
  const pending = new Set<Promise<unknown>>();
  const noted = <Answer>(answer: Promise<Answer>): Promise<Answer> => {
    const done: Promise<unknown> = answer.then(() => pending.delete(done), () => pending.delete(done));
    pending.add(done);
    return answer;
  };
  const quiet = async () => {
    while (pending.size > 0) {
      await Promise.all(pending);
      // What waits for the answers goes on, and may ask for more.
      await new Promise(resolve => setTimeout(resolve, 0));
    }
  };
  const files: Files = {
    list: (...of) => noted(filesOnDisk.list(...of)),
    read: (...of) => noted(filesOnDisk.read(...of)),
    picture: (...of) => noted(filesOnDisk.picture(...of)),
  };
  return { files, quiet };
}

/** Long texts come slice by slice, of so many characters and up to the end of a line. */
async function replay(root: string, steps: readonly Step[], piece: number): Promise<void> {
  const at = (where: string) => path.join(root, where);
  const uri = (where: string) => pathToFileURL(path.resolve(root, where)).href;
  const disk = awaitedDisk();
  const make = () => new Workspace(disk.files, () => undefined, () => undefined, later, { piece, turn: 0 });
  const all = make();
  const named = new Set<string>();
  const open = new Map<string, string>();

  const owned = (when: string) => {
    for (const [where, text] of open) {
      const key = keyOf(uri(where));
      const there = all.findText(uri(where))?.room.journal.files.get(key)?.text.text() ?? '';
      expect(all.isWhole(key) ? there : text.slice(0, there.length), when).toBe(all.isWhole(key) ? text : there);
      expect([...all.rooms].filter(({ journal }) => journal.files.has(key)).length, when).toBe(all.find(key) ? 1 : 0);
    }
  };

  const does = async (each: Step): Promise<void> => {
    switch (each.do) {
      case 'folders':
        for (const name of each.removed) named.delete(name);
        for (const name of each.added) named.add(name);
        all.changeFolders({ added: each.added.map(uri), removed: each.removed.map(uri) });
        return;
      case 'open':
        if (open.has(each.place)) return;
        open.set(each.place, textOf(each.place, each.lots));
        all.open(uri(each.place), open.get(each.place)!);
        return;
      case 'edit': {
        const text = open.get(each.place);
        if (text === undefined) return;
        open.set(each.place, `lot NEW Iris\n${text}`);
        const start = { line: 0, character: 0 };
        all.edit(uri(each.place), { start, end: start }, 'lot NEW Iris\n');
        return;
      }
      case 'close':
        if (open.delete(each.place)) all.close(uri(each.place));
        return;
      case 'save':
        await mkdir(path.dirname(at(each.place)), { recursive: true });
        await writeFile(at(each.place), textOf(each.place, each.lots));
        all.followDisk(uri(each.place));
        return;
      case 'delete':
        await rm(at(each.place), { force: true });
        all.followDisk(uri(each.place));
        return;
      case 'rename':
        await rename(at(each.from), at(each.to)).catch(() => undefined);
        for (const name of [each.from, each.to]) all.followFolder(uri(name));
        return;
      case 'wait': await emptied(all);
    }
  };

  for (const each of steps) {
    await does(each);
    owned(JSON.stringify(each));
  }
  await emptied(all);
  // Nobody waits for the reads of files that changed or were closed.
  await disk.quiet();
  await emptied(all);
  for (const where of open.keys()) await all.whole(uri(where));
  owned('in the end');
  const fresh = make();
  fresh.changeFolders({ added: [...named].map(uri), removed: [] });
  for (const [where, text] of open) fresh.open(uri(where), text);
  await emptied(fresh);
  for (const where of open.keys()) await fresh.whole(uri(where));
  expect(journals(all)).toEqual(journals(fresh));
}

test('what a folder held is gone with it, though it cannot be looked into any more', async () => {
  const root = await mkdtemp(path.join(tmpdir(), 'plumule-owners-'));
  try {
    const at = (where: string) => path.join(root, where);
    await mkdir(at('a/b'), { recursive: true });
    await writeFile(at('a/b/x.germ'), textOf('x', 2));
    const all = new Workspace(filesOnDisk, () => undefined, () => undefined, later);
    all.changeFolders({ added: [pathToFileURL(at('a/b')).href], removed: [] });
    await emptied(all);
    expect(journals(all)).toHaveLength(1);
    await rename(at('a'), at('d'));
    all.followFolder(pathToFileURL(at('a')).href);
    await emptied(all);
    expect(journals(all)).toEqual([]);
  } finally {
    await rm(root, { recursive: true, force: true });
  }
});

test('of two reads of a file that are under way the later one counts, whichever ends first', async () => {
  const waiting: ((text: string) => void)[] = [];
  const slow: Files = {
    list: () => Promise.resolve({ files: [], faults: [] }), picture: () => Promise.resolve({ why: 'missing' as const }),
    read: () => new Promise<string>(resolve => waiting.push(resolve)),
  };
  const all = new Workspace(slow, () => undefined, () => undefined, later);
  all.changeFolders({ added: ['file:///g'], removed: [] });
  for (let n = 0; n < 3; n++) all.followDisk('file:///g/a.germ');
  // A disk on the network: the second answer comes first, then the third, then the first.
  waiting[1]!('lot SECOND Iris');
  await Promise.resolve();
  waiting[2]!('lot THIRD Iris');
  await new Promise(resolve => setTimeout(resolve, 0));
  waiting[0]!('lot FIRST Iris');
  await new Promise(resolve => setTimeout(resolve, 0));
  expect([...all.rooms].flatMap(({ journal }) => [...journal.lots()].map(({ id }) => id))).toEqual(['THIRD']);
});

/** A disk that lists and never reads. */
const dead: Files = {
  list: () => Promise.resolve({ files: ['file:///g/a.germ', 'file:///g/.git/a.germ', 'file:///g/b.germ'], faults: ['/g/all: a link'] }),
  read: uri => (uri.endsWith('a.germ') ? Promise.reject(new Error('the disk fails')) : new Promise(() => undefined)),
  picture: () => Promise.resolve({ why: 'missing' }),
};

test('what cannot be read or followed is said once, however often the folder is looked into', async () => {
  const said: string[] = [];
  const all = new Workspace(dead, () => undefined, message => said.push(message), later);
  all.changeFolders({ added: ['file:///g'], removed: [] });
  for (let n = 0; n < 3; n++) {
    all.followFolder('file:///g/sub');
    await new Promise(resolve => setTimeout(resolve, 0));
  }
  expect(said).toEqual(['/g/all: a link', 'file:///g/a.germ: the disk fails']);
  expect([...all.rooms].map(({ isLoaded }) => isLoaded)).toEqual([false]);
});
