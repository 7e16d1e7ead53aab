import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { rename, renameTarget } from '../../server/src/features/rename.ts';
import { thingAt } from '../../server/src/features/thing.ts';
import type { Journal } from '../../server/src/journal/journal.ts';
import { journal as arbitraryJournal } from '../support/arbitrary-journal.ts';
import { anyLine } from '../support/arbitrary-lines.ts';
import { applied, journalIn } from './actions/applied.ts';
import { livesOf } from './actions/lives.ts';

type Texts = Readonly<Record<string, string>>;

/** Every place in the journal where a name may stand: each word of each line. */
function wordsOf(journal: Journal): { file: string; line: number; character: number }[] {
  return [...journal.files].flatMap(([file, { text }]) => [...text].flatMap(line =>
    [...line.text.matchAll(/[^\s,/]+/g)].map(({ index }) => ({ file, line: line.number, character: index + 1 }))));
}

/** What is known of every batch, without its name; agents are called as `named` says. */
function knownOf(journal: Journal, named?: (agent: string) => string): unknown[] {
  return Object.values(livesOf(journal, named));
}

function codesOf(journal: Journal, today: number): string[][] {
  const book = new ProblemBook(journal);
  book.update({ day: today, minutes: undefined });
  return [...journal.files.keys()].map(name => book.of(name).map(({ problem }) => problem.code));
}

test('a name changes wherever it stands and nothing else does; all that is known stays; and back it is as it was', () => {
  const named = fc.constantFrom(
    ['lot LOT-1', 'LOT-1', 'X-9', /(?<![\w-])LOT-1(?![\w-])/g], ['stock ', 'G1', 'ÖL', /\bG1\b/g],
    ['regime ', 'twowinters', 'spring', /\btwowinters\b/g], ['dilute ', 'G1', 'G-1', /\bG1\b/g],
  ) as fc.Arbitrary<[string, string, string, RegExp]>;
  fc.assert(fc.property(arbitraryJournal, named, ({ files, today }, [line, from, to, word]) => {
    const texts = Object.fromEntries(files.map(({ name, text }) => [name, text]));
    const journal = journalIn(texts);
    const there = renamed(journal, texts, line, from, to);
    expect(there).toEqual(Object.fromEntries(files.map(({ name, text }) => [name, text.replaceAll(word, to)])));
    const after = journalIn(there);
    expect(knownOf(after)).toEqual(knownOf(journal));
    expect(codesOf(after, today)).toEqual(codesOf(journal, today));
    expect(renamed(after, there, line.replace(from, to), to, from)).toEqual(texts);
  }), { numRuns: 60 });
});

test('a batch changes in its split and in every path', () => {
  fc.assert(fc.property(arbitraryJournal, ({ files }) => {
    const texts = Object.fromEntries(files.map(({ name, text }) => [name, text]));
    const split = /^split LOT-1, A /m.exec(Object.values(texts).join(''));
    fc.pre(split !== null);
    const journal = journalIn(texts);
    const there = renamed(journal, texts, 'split LOT-1, A', 'A', 'Nord');
    expect(there).toEqual(Object.fromEntries(files.map(({ name, text }) =>
      [name, text.replaceAll('LOT-1/A', 'LOT-1/Nord').replace(/^split LOT-1, A /m, 'split LOT-1, Nord ')])));
    expect(knownOf(journalIn(there))).toEqual(knownOf(journal));
    expect(renamed(journalIn(there), there, 'split LOT-1, Nord', 'Nord', 'A')).toEqual(texts);
  }), { numRuns: 40 });
});

/** Renames what stands in the first line that begins so, at the end of a word. */
function renamed(journal: Journal, texts: Texts, begin: string, from: string, to: string): Record<string, string> {
  const [file, text] = Object.entries(texts).find(([, each]) => each.startsWith(begin) || each.includes(`\n${begin}`))!;
  const line = text.split('\n').findIndex(each => each.startsWith(begin));
  const character = text.split('\n')[line]!.indexOf(from, begin.indexOf(' ')) + from.length;
  const result = rename(journal, file, { line, character }, to);
  if ('refused' in result) throw new Error(`${from}: ${result.refused}`);
  return applied(journal, result.edits);
}

test('in any journal a rename is refused with a reason, or goes there and back and changes no problem', () => {
  const definitions = [
    'lot VER-24 Veratrum nigrum, 60 seeds', 'lot PRI_25 Primula', 'lot a Iris', 'stock G1 2026-01-09, GA3 20 mg, 20 mL',
    'lot Ö.1 Crocus', 'lot 種-1 Iris', 'regime बीज, chill 4 C 90 days', 'agent kelp, seaweed', 'split VER-24, A 9 seeds',
  ];
  const lines = fc.array(fc.oneof(anyLine, fc.constantFrom(...definitions)), { minLength: 1, maxLength: 12 });
  const name = fc.constantFrom('X', 'X-2', 'at', 'from', '9', 'warm', 'GA3', 'water', 'VER-24', 'A', 'बी', '', 'a b', 'until', 'kelp');
  const end = fc.constantFrom('\n', '\r\n');
  let done = 0;
  fc.assert(fc.property(lines, lines, name, end, fc.nat(), (one, two, to, eol, which) => {
    const texts = { 'a.germ': [...definitions, ...one].join(eol), 'b.germ': two.join(eol) };
    const journal = journalIn(texts);
    const words = wordsOf(journal);
    const { file, ...position } = words[which % words.length]!;
    const result = rename(journal, file, position, to);
    if ('refused' in result) {
      expect(result.refused).toMatch(/\S.*\.$/su);
      return;
    }
    if (result.edits.length === 0) return;
    done++;
    const there = applied(journal, result.edits);
    const after = journalIn(there);
    const old = renameTarget(journal, file, position)!;
    if ('refused' in old) throw new Error(old.refused);
    // A treatment names its agents: there the new name stands, as it does nowhere else.
    const isAgent = thingAt(journal, file, position)?.kind === 'agent';
    const called = (agent: string): string => (isAgent && agent === old.text ? to : agent);
    expect(codesOf(after, 20_000)).toEqual(codesOf(journal, 20_000));
    expect(knownOf(after)).toEqual(knownOf(journal, called));
    // Each line is changed once, and only where a name stood.
    const places = result.edits.map(edit => `${edit.file}:${edit.line}`);
    expect(new Set(places).size).toBe(places.length);
    const [first] = result.edits;
    const back = rename(after, first!.file, { line: first!.line, character: first!.start + 1 }, old.text);
    expect(back).toHaveProperty('edits');
    if ('edits' in back) expect(applied(after, back.edits)).toEqual(texts);
  }), { numRuns: 800 });
  expect(done).toBeGreaterThan(30);
});
