import { expect, test } from 'vitest';
import { rename, renameTarget } from '../../server/src/features/rename.ts';
import { Journal } from '../../server/src/journal/journal.ts';

const files = {
  'a.germ': `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
split VER-24/A, 1 12 seeds, 2 12 seeds
stock G1 2026-01-09, GA3 20 mg, 20 mL
regime cold, chill 4 C 90 days
`,
  'b.germ': `soak VER-24/A/1 2026-01-10 19:00, G1 10 mL, 24 h
sow VER-24/A/1 2026-01-11, regime cold
count VER-24/A/1 2026-01-19, 3
lot IRI-1 Iris, 5 seeds
`,
};

function journalOf(texts: Readonly<Record<string, string>>): Journal {
  const journal = new Journal();
  for (const [name, text] of Object.entries(texts)) journal.set(name, text);
  return journal;
}

/** The texts after a rename at a word of a line; the reason where it is refused. */
function renamed(
  journal: Journal, file: string, line: number, word: string, newName: string,
): Record<string, string> | string {
  const character = journal.files.get(file)!.text.at(line).text.lastIndexOf(word) + word.length - 1;
  const result = rename(journal, file, { line, character }, newName);
  if ('refused' in result) return result.refused;
  const inOrder = [...result.edits].sort((a, b) => b.line - a.line || b.start - a.start);
  for (const edit of inOrder) {
    const at = (column: number) => ({ line: edit.line, character: column });
    journal.edit(edit.file, { start: at(edit.start), end: at(edit.end) }, edit.text);
  }
  return Object.fromEntries([...journal.files].map(([name, { text }]) => [name, text.text()]));
}

const replaced = (...pairs: [string, string][]) => Object.fromEntries(Object.entries(files).map(([name, text]) =>
  [name, pairs.reduce((all, [from, to]) => all.replaceAll(from, to), text)]));

test('a lot is renamed in every file, and its batches follow', () => {
  expect(renamed(journalOf(files), 'b.germ', 2, 'VER-24', 'VER-25')).toEqual(replaced(['VER-24', 'VER-25']));
});

test('a batch is renamed in its split and in every path through it', () => {
  expect(renamed(journalOf(files), 'a.germ', 2, 'VER-24/A', 'Nord')).toEqual(
    replaced(['VER-24/A', 'VER-24/Nord'], [', A 24', ', Nord 24']));
});

test('a stock and a regime are renamed where they are defined and used', () => {
  expect(renamed(journalOf(files), 'b.germ', 0, 'G1', 'G9')).toEqual(replaced(['G1', 'G9']));
  expect(renamed(journalOf(files), 'b.germ', 1, 'cold', 'onewinter')).toEqual(
    replaced(['regime cold', 'regime onewinter']));
});

test('a rename there and back gives the same texts and the same counts', () => {
  const journal = journalOf(files);
  renamed(journal, 'b.germ', 2, 'VER-24', 'X');
  expect(journal.lot('X')?.batches.get('X/A/1')?.totals.germinated).toBe(3);
  expect(renamed(journal, 'a.germ', 0, 'X', 'VER-24')).toEqual(files);
});

test('a clash, a name that cannot be one and an agent that Plumule knows are refused with the reason', () => {
  expect(renamed(journalOf(files), 'a.germ', 0, 'VER-24', 'IRI-1')).toContain('IRI-1');
  expect(renamed(journalOf(files), 'a.germ', 0, 'VER-24', 'GA3')).toContain('agent');
  expect(renamed(journalOf(files), 'a.germ', 0, 'VER-24', '24 x')).toContain('cannot be a name');
  expect(renamed(journalOf(files), 'a.germ', 2, 'VER-24/A', 'B')).toContain('VER-24/B');
  expect(renamed(journalOf(files), 'a.germ', 3, 'GA3', 'gibb')).toContain('keeps its name');
});

test('records of a batch that was never split off do not come to be of another, and a limit keeps its meaning', () => {
  const stray = journalOf({ 'a.germ': `${files['a.germ']}note VER-24/C 2026-02-01, who wrote this\n` });
  expect(renamed(stray, 'a.germ', 2, 'VER-24/A', 'C')).toContain('VER-24/C');
  const agent = { 'a.germ': 'agent kelp, seaweed\nlimit kelp, 10 ppm\n' };
  expect(renamed(journalOf(agent), 'a.germ', 0, 'kelp', 'soak')).toContain('limit');
  expect(renamed(journalOf(agent), 'a.germ', 0, 'kelp', 'weed')).toEqual(
    { 'a.germ': 'agent weed, seaweed\nlimit weed, 10 ppm\n' });
});

test('nothing is renamed in a remark, and a name that nothing defines is refused', () => {
  const journal = journalOf({ 'a.germ': 'count LOST-1 2026-01-19, 3\n  LOST-1 again\n' });
  expect(renameTarget(journal, 'a.germ', { line: 1, character: 3 })).toBeUndefined();
  expect(renameTarget(journal, 'a.germ', { line: 0, character: 8 })).toEqual({ refused: 'This journal does not define LOST-1.' });
});

test('a word of the format is no name where it would be read as one', () => {
  const readAs = (line: number, word: string, to: string) => renamed(journalOf(files), 'a.germ', line, word, to);
  expect(readAs(2, 'VER-24/A', 'warm')).toBe('“warm” would be read as something else in “split VER-24, A 24 seeds, B 24 seeds”.');
  expect(readAs(3, 'G1', 'at')).toContain('“soak VER-24/A/1 2026-01-10 19:00, G1 10 mL, 24 h”');
  expect(readAs(4, 'cold', 'at')).toEqual(replaced(['regime cold', 'regime at']));
  // The two would be one agent given twice.
  const twice = { 'a.germ': `${files['a.germ']}stock G2 2026-01-09, GA3 20 mg, 20 mL\nsoak VER-24/A 2026-01-10, G1 1 mL, g3 1 mL\n` };
  expect(renamed(journalOf(twice), 'a.germ', 3, 'G1', 'G3')).toContain('would be read');
});

test('names in any script are names, with their marks', () => {
  expect(renamed(journalOf(files), 'a.germ', 0, 'VER-24', 'बीज')).toEqual(replaced(['VER-24', 'बीज']));
  expect(renamed(journalOf(files), 'a.germ', 2, 'VER-24/A', 'नीला')).toEqual(
    replaced(['VER-24/A', 'VER-24/नीला'], [', A 24', ', नीला 24']));
});

test('a limit for a word that nobody declared does not come to hold for an agent', () => {
  const journal = journalOf({ 'a.germ': 'agent kelp, seaweed\nlimit weed, 10 ppm\n' });
  expect(renamed(journal, 'a.germ', 0, 'kelp', 'weed')).toBe('This journal already uses the name weed.');
});

test('what is renamed of a batch is its last part alone, and the name that it has changes nothing', () => {
  const at = { line: 0, character: 14 };
  expect(renameTarget(journalOf(files), 'b.germ', at)).toMatchObject({ text: '1' });
  expect(renameTarget(journalOf(files), 'b.germ', { ...at, character: 13 })).toEqual({
    place: { file: 'b.germ', line: 0, start: 12, end: 13 }, text: 'A',
  });
  expect(rename(journalOf(files), 'b.germ', { ...at, character: 13 }, 'A')).toEqual({ edits: [] });
  expect(rename(journalOf(files), 'b.germ', { line: 0, character: 2 }, 'A')).toEqual({ refused: 'There is no name to change here.' });
});

test('what is taken of a stock is not its name', () => {
  const line = files['b.germ'].split('\n')[0]!;
  const target = (character: number) => renameTarget(journalOf(files), 'b.germ', { line: 0, character });
  const name = line.indexOf('G1');
  expect(target(name + 1)).toEqual({ place: { file: 'b.germ', line: 0, start: name, end: name + 2 }, text: 'G1' });
  for (let at = name + 3; at <= line.length; at++) expect([at, target(at)]).toEqual([at, undefined]);
});
