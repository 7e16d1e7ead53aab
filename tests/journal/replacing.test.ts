/** A lot that takes the place of an older one, wherever the two are told. */
import { describe, expect, test } from 'vitest';
import { changesBetween } from '../../server/src/changes/changes.ts';
import { archiveAction } from '../../server/src/features/actions/archive.ts';
import { definitionsAt } from '../../server/src/features/definition.ts';
import { documentSymbols } from '../../server/src/features/document-symbols.ts';
import { highlightsAt } from '../../server/src/features/highlight.ts';
import { hoverAt } from '../../server/src/features/hover/hover.ts';
import { referencesAt } from '../../server/src/features/references.ts';
import { rename } from '../../server/src/features/rename.ts';
import type { Journal } from '../../server/src/journal/journal.ts';
import { merge } from '../../server/src/merge/merge.ts';
import { agendaOf } from '../../server/src/report/agenda.ts';
import { reportData } from '../../server/src/report/json.ts';
import { reportText } from '../../server/src/report/text.ts';
import { parse } from '../../server/src/syntax/parse.ts';
import { print } from '../../server/src/syntax/print.ts';
import { applied, journalIn } from '../features/actions/applied.ts';
import { labels, offered } from '../features/completion/offered.ts';
import { at, reportFor } from '../report/helpers.ts';
import { tokensIn } from '../support/tokens.ts';

const now = at('2026-01-01');
const older = 'lot GEN-23 Gentiana lutea, 40 seeds, collected 2023\nsow GEN-23 2025-12-01, 40 seeds\n';
const newer = 'lot GEN-25 Gentiana lutea, 60 seeds, replaces GEN-23, from a friend\n';
const both = { 'old.germ': older, 'new.germ': newer };

test('is read, and printed with each id as it is written', () => {
  const line = 'lot GEN-25 Gentiana lutea, replaces GEN-22, replaces GEN-23';
  expect(parse(line).problems).toEqual([]);
  const loose = 'lot GEN-25 Gentiana lutea,REPLACES  GEN-22 ,replaces GEN-23';
  expect(print(loose, parse(loose).record!)).toBe(line);
});

describe('both lots say so', () => {
  const hover = (file: string) => hoverAt(journalIn(both), file, { line: 0, character: 6 }, now)?.markdown.split('\n')[0];

  test('in their hovers', () => {
    expect(hover('new.germ')).toBe('**GEN-25** · Gentiana lutea · 60 seeds · from a friend · replaces GEN-23');
    expect(hover('old.germ')).toBe('**GEN-23** · Gentiana lutea · 40 seeds · collected 2023 · replaced by GEN-25');
  });

  test('in the outline', () => {
    const outline = (file: string) => documentSymbols(journalIn(both), file, now).map(({ name, detail }) => `${name}: ${detail}`);
    expect(outline('new.germ')).toEqual(['GEN-25 Gentiana lutea: 60 seeds, replaces GEN-23 · not begun']);
    expect(outline('old.germ')).toEqual(['GEN-23 Gentiana lutea: 40 seeds, replaced by GEN-25 · sown, day 31']);
  });

  test('in the report, as text and as data', () => {
    const report = reportFor(older + newer, now);
    expect(reportText([report])).toMatch(/40 seeds, collected 2023, replaced by GEN-25\n[^]*60 seeds, from a friend, replaces GEN-23\n/);
    expect((reportData(report) as { lots: unknown[] }).lots).toMatchObject([
      { id: 'GEN-23', replaces: [], replacedBy: ['GEN-25'] }, { id: 'GEN-25', replaces: ['GEN-23'], replacedBy: [] },
    ]);
  });

  test('where one takes the place of several, and where several take the place of one', () => {
    const report = reportFor(`
      lot A Iris
      lot B Iris
      lot C Iris, replaces A, replaces B
      lot D Iris, replaces B
    `, now);
    expect(report.lots.map(({ replacing }) => replacing)).toEqual([
      { replaces: [], replacedBy: ['C'] }, { replaces: [], replacedBy: ['C', 'D'] },
      { replaces: ['A', 'B'], replacedBy: [] }, { replaces: ['B'], replacedBy: [] },
    ]);
  });
});

describe('in the editor', () => {
  const place = { line: 0, character: 50 };

  test('the id leads to the older lot, is one of its references, and is highlighted with them', () => {
    const journal = journalIn(both);
    expect(definitionsAt(journal, 'new.germ', place).map(({ to }) => to)).toEqual([{ file: 'old.germ', line: 0, start: 4, end: 10 }]);
    const named = { file: 'new.germ', line: 0, start: 46, end: 52 };
    expect(referencesAt(journal, 'old.germ', { line: 0, character: 6 }, false)).toEqual([named, { file: 'old.germ', line: 1, start: 4, end: 10 }]);
    expect(highlightsAt(journal, 'new.germ', place)).toMatchObject([{ place: named }]);
    expect(tokensIn(journal, 'new.germ').at(-1)).toMatchObject({ start: 46, end: 52, type: 'name', marks: [] });
  });

  test('another name of the older lot is written there too', () => {
    const journal = journalIn(both);
    const renamed = rename(journal, 'new.germ', place, 'GEN-OLD');
    expect(applied(journal, 'edits' in renamed ? renamed.edits : [])).toEqual({
      'old.germ': older.replaceAll('GEN-23', 'GEN-OLD'), 'new.germ': newer.replaceAll('GEN-23', 'GEN-OLD'),
    });
  });

  test('lots of the plant are offered first, and never the one that is being written', () => {
    const lots = 'lot IRI-22 Iris sibirica\n  lot GEN-23 Gentiana lutea\n  lot GEN-24 gentiana  lutea';
    const at = (line: string) => labels(offered(`\n  ${lots}\n  ${line}\n  ${' '.repeat(line.length - 1)}^ here`));
    expect(at('lot GEN-25 Gentiana lutea, ')).toContain('replaces …');
    expect(at('lot HEP-25 Hepatica nobilis, ')).not.toContain('replaces …');
    expect(at('lot GEN-25 Gentiana lutea, replaces ').map(label => label.split(' ')[0])).toEqual(['GEN-23', 'GEN-24', 'IRI-22']);
  });
});

test('is merged, and told as a change', () => {
  const base = newer.replace(', replaces GEN-23', '');
  const theirs = base.replace('60 seeds', '55 seeds');
  expect(merge(base, newer, theirs).conflicts.length).toBe(1);
  expect(merge(base, newer, base).text).toBe(newer);
  const told = (before: string, after: string) =>
    changesBetween(new Map([['a', before]]), new Map([['a', after]])).map(({ words }) => words.join('; '));
  expect(told(base, newer)).toEqual(['lot now also replaces GEN-23']);
  expect(told(newer, newer.replace('replaces GEN-23', 'replaces GEN-22'))).toEqual(['lot now replaces GEN-22 instead of replaces GEN-23']);
  expect(told('regime r, warm 20 C, chill 4 C, warm 15 C', 'regime r, warm 20 C, chill 4 C, warm 18 C'))
    .toEqual(['regime now warm 18 C instead of warm 15 C']);
});

test('changes nothing that is due, and takes the new lot into no list of the old one’s files', () => {
  const journal = journalIn(both);
  const alone = journalIn({ 'old.germ': older, 'new.germ': newer.replace(', replaces GEN-23', '') });
  const items = (each: Journal, files?: string[]) =>
    agendaOf(each, { now, ...(files && { files }) }).items.map(({ id, day, what }) => [id, day, what]);
  expect(items(journal)).toEqual(items(alone));
  expect(items(journal).length).toBeGreaterThan(0);
  expect(items(journal, ['new.germ'])).toEqual([]);
});

test('does not move the new lot to the archive with the old one', () => {
  const done = `${older}discard GEN-23 2025-12-30\n`;
  const journal = journalIn({ 'j.germ': done + newer });
  const action = archiveAction(journal.lot('GEN-23')!, journal)!;
  const texts = applied(journal, action.edits);
  expect(texts['j.germ']).toBe(newer);
  expect(texts['archive.germ']).toContain('lot GEN-23');
});
