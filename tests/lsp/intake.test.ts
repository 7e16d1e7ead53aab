import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Found } from '../../server/src/checks/check.ts';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import type { Files } from '../../server/src/lsp/files.ts';
import { Intake } from '../../server/src/lsp/intake.ts';
import { Room } from '../../server/src/lsp/room.ts';
import { Workspace } from '../../server/src/lsp/workspace.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { line } from '../support/arbitrary-edits.ts';

const now = { day: dayOfIso('2026-02-01')!, minutes: 600 };

const mark = fc.constantFrom('<<<<<<< ours', '||||||| base', '=======', '>>>>>>> theirs');
/** The text of a file, with line ends of every kind. */
const text = fc.array(
  fc.tuple(fc.oneof({ arbitrary: line, weight: 5 }, { arbitrary: mark, weight: 1 }), fc.constantFrom('\n', '\n', '\r\n', '\r')),
  { minLength: 1, maxLength: 40 },
).map(lines => lines.flat().join(''));

/** All problems of all files. */
const problemsOf = (journal: Journal) => {
  const book = new ProblemBook(journal);
  book.update(now);
  return [...journal.files.keys()].sort().map(file => [file, ...book.of(file).map(said)]);
};

function said({ line: { number }, problem: { code, start, end, message }, related }: Found): string {
  return [number, code, start, end, message, ...related.map(place => place.line.number)].join(' ');
}

/** An intake whose turns come when they are taken. */
class Desk {
  readonly room = new Room({ kind: 'folder', folder: 'file:///g' }, {});
  readonly open = new Set<string>();
  readonly seen: string[] = [];
  readonly #turns: (() => void)[] = [];
  readonly intake: Intake;

  constructor(piece: number) {
    const later = (work: () => void) => this.#turns.push(work);
    this.intake = new Intake((_, file) => this.seen.push(file), file => this.open.has(file), later, { piece, turn: 0 });
  }

  turn(): boolean {
    const work = this.#turns.shift();
    work?.();
    return work !== undefined;
  }

  all(): void {
    while (this.turn());
  }

  textOf(file: string): string | undefined {
    return this.room.journal.files.get(file)?.text.text();
  }
}

describe('a text that is taken in slice by slice', () => {
  test('ends at the end of a line each time, and wherever slices end all is as if it was read at once', () => {
    const texts = fc.array(text, { minLength: 1, maxLength: 3 });
    fc.assert(fc.property(texts, fc.integer({ min: 1, max: 200 }), (all, piece) => {
      const desk = new Desk(piece);
      const fresh = new Journal();
      for (const [n, each] of all.entries()) {
        desk.intake.begin(desk.room, `${n}.germ`, each);
        fresh.set(`${n}.germ`, each);
      }
      do {
        for (const [n, each] of all.entries()) {
          const there = desk.textOf(`${n}.germ`)!;
          expect(each.startsWith(there)).toBe(true);
          expect(there === each || there.endsWith('\n')).toBe(true);
          expect(desk.intake.whole(`${n}.germ`) === undefined).toBe(there === each);
        }
      } while (desk.turn());
      for (const [n, each] of all.entries()) expect(desk.textOf(`${n}.germ`)).toBe(each);
      expect(problemsOf(desk.room.journal)).toEqual(problemsOf(fresh));
    }), { numRuns: 50 });
  });

  test('shows before its end no problem that it does not have in the end, whatever other files say', () => {
    let early = 0;
    fc.assert(fc.property(text, text, fc.integer({ min: 1, max: 60 }), fc.boolean(), (own, other, piece, known) => {
      const desk = new Desk(piece);
      const { room: { journal, book } } = desk;
      if (known) book.update(now);
      const shown: (readonly string[])[] = [];
      const note = () => shown.push(book.surelyIn('a.germ', 1000).map(said));
      desk.intake.begin(desk.room, 'a.germ', own);
      while (desk.intake.whole('a.germ')) {
        note();
        desk.turn();
      }
      journal.set('b.germ', other);
      book.update(now);
      const end = book.of('a.germ').map(said);
      for (const each of shown) {
        early += each.length;
        // In the same order, others between them.
        expect(end.filter(problem => each.includes(problem))).toEqual(each);
      }
    }));
    expect(early).toBeGreaterThan(9);
  });

  test('is read to its end from the first mark on that a merge may have left', () => {
    const desk = new Desk(1);
    const text = 'sowed V\n\n<<<<<<< ours\n\n\n\n';
    desk.intake.begin(desk.room, 'a.germ', text);
    while (!desk.textOf('a.germ')!.includes('<')) {
      expect(desk.intake.whole('a.germ')).toBeDefined();
      desk.turn();
    }
    expect(desk.textOf('a.germ')).toBe(text);
    expect(desk.intake.whole('a.germ')).toBeUndefined();
  });

  test('may be edited anywhere meanwhile: all is as if it was read at once and edited then', () => {
    const edit = fc.record({
      turns: fc.nat(3), from: fc.oneof(fc.constant(0), fc.nat(999)), column: fc.nat(9),
      lines: fc.constantFrom(0, 0, 1, 3), to: fc.nat(9),
      text: fc.oneof(fc.constantFrom('', 'x', '\n', '\r\n', ' '), line, mark),
    });
    let early = 0;
    const edits = fc.array(edit, { maxLength: 6 });
    fc.assert(fc.property(text, fc.integer({ min: 1, max: 60 }), edits, (own, piece, all) => {
      const desk = new Desk(piece);
      const fresh = new Journal();
      desk.intake.begin(desk.room, 'a.germ', own);
      fresh.set('a.germ', own);
      for (const { turns, from, column, lines, to, text: typed } of all) {
        for (let turn = 0; turn < turns; turn++) desk.turn();
        const count = fresh.files.get('a.germ')!.text.lineCount;
        const start = { line: from % count, character: column };
        const end = { line: start.line + lines, character: lines > 0 ? to : column + to };
        desk.intake.edit(desk.room, 'a.germ', { start, end }, typed);
        fresh.edit('a.germ', { start, end }, typed);
        if (desk.intake.whole('a.germ')) early++;
        expect(desk.intake.textOf('a.germ') ?? desk.textOf('a.germ')).toBe(fresh.files.get('a.germ')!.text.text());
      }
      desk.all();
      expect(desk.textOf('a.germ')).toBe(fresh.files.get('a.germ')!.text.text());
      expect(problemsOf(desk.room.journal)).toEqual(problemsOf(fresh));
    }));
    // Some edits were made while a part was left.
    expect(early).toBeGreaterThan(9);
  });

  test('shows the first of very many problems', () => {
    const desk = new Desk(1);
    desk.intake.begin(desk.room, 'a.germ', 'sowed V\n'.repeat(9));
    desk.all();
    expect(desk.room.book.surelyIn('a.germ', 4).map(({ line: { number } }) => number)).toEqual([0, 1, 2, 3]);
    expect(desk.room.book.surelyIn('b.germ', 4)).toEqual([]);
  });

  test('comes before others where it is open', () => {
    const desk = new Desk(1);
    const lines = 'lot L Iris\n'.repeat(3);
    for (const file of ['a.germ', 'b.germ', 'c.germ']) desk.intake.begin(desk.room, file, lines);
    desk.open.add('b.germ');
    desk.all();
    expect(desk.seen[0]).toBe('b.germ');
    expect(desk.seen.indexOf('a.germ')).toBeGreaterThan(desk.seen.lastIndexOf('b.germ'));
    expect(desk.textOf('c.germ')).toBe(lines);
  });

  test('keeps its journal unread until it is whole, and no longer when it is let go', async () => {
    const desk = new Desk(1);
    desk.intake.begin(desk.room, 'a.germ', '\n\n\n\n');
    expect(desk.room.isLoaded).toBe(false);
    desk.intake.drop('a.germ');
    await desk.room.loaded;
    expect(desk.room.isLoaded).toBe(true);
    const before = desk.textOf('a.germ');
    desk.all();
    expect(desk.textOf('a.germ')).toBe(before);
  });

  test('is there as a whole when it is asked for at once', async () => {
    const desk = new Desk(1);
    desk.intake.begin(desk.room, 'a.germ', 'lot L Iris\n\n\n');
    desk.intake.finish('a.germ');
    expect(desk.textOf('a.germ')).toBe('lot L Iris\n\n\n');
    await desk.room.loaded;
    expect(desk.intake.whole('a.germ')).toBeUndefined();
  });
});

describe('a workspace whose texts come slice by slice', () => {
  const [file, own, other] = ['file:///g/in/a.germ', 'lot A Iris\nlot B Iris\nlot C Iris\n', 'lot A Iris\nlot D Iris\nlot E Iris\n'];
  const made = (onDisk: string) => {
    const files: Files = {
      list: () => Promise.resolve({ files: [file], faults: [] }), read: () => Promise.resolve(onDisk),
      picture: () => Promise.resolve({ why: 'missing' }),
    };
    const turns: (() => void)[] = [];
    const all = new Workspace(files, () => undefined, () => undefined, work => turns.push(work), { piece: 1, turn: 0 });
    const read = async () => {
      // What waits for a file that was read goes on, and may read another one.
      for (let quiet = 0; quiet < 9; quiet++) {
        for (let work = turns.shift(); work; work = turns.shift()) work();
        await new Promise(resolve => setImmediate(resolve));
      }
    };
    const journals = () => [...all.rooms].map(({ folder, journal }) => [folder, ...journal.definedIds()]);
    return { all, read, journals };
  };

  test.each([['the same text', own, ['A', 'B', 'C']], ['another text', other, ['A', 'D', 'E']]])(
    'has of a document that is opened while its file is read from the disk what the editor has: %s', async (_, text, lots) => {
      const { all, read, journals } = made(own);
      all.changeFolders({ added: ['file:///g'], removed: [] });
      await new Promise(resolve => setImmediate(resolve));
      expect(all.isWhole(file)).toBe(false);
      all.open(file, text);
      await read();
      expect(all.isWhole(file)).toBe(true);
      expect(journals()).toEqual([['file:///g', ...lots]]);
    });

  test('moves the whole of a document into another journal', async () => {
    const { all, read, journals } = made(other);
    all.changeFolders({ added: ['file:///g'], removed: [] });
    all.open(file, own);
    expect(all.isWhole(file)).toBe(false);
    all.changeFolders({ added: ['file:///g/in'], removed: [] });
    await read();
    expect(journals()).toEqual([['file:///g'], ['file:///g/in', 'A', 'B', 'C']]);
  });

  test('has the whole of a document where its text is asked for', () => {
    const { all } = made(other);
    expect(all.open(file, own)().text()).toBe(own);
  });

  test('reads nothing else from the disk before the text of an open document is whole', async () => {
    const { all, read, journals } = made(other);
    all.changeFolders({ added: ['file:///g'], removed: [] });
    all.open('file:///g/open.germ', own);
    await new Promise(resolve => setImmediate(resolve));
    expect(journals()).toEqual([['file:///g', 'A']]);
    await read();
    expect(journals()).toEqual([['file:///g', 'A', 'D', 'E', 'B', 'C']]);
  });
});
