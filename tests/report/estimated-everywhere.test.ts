/** Wherever Plumule says something of seed that was estimated, its percentages are ranges. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { adviceFor } from '../../server/src/advice/advice.ts';
import { changesBetween } from '../../server/src/changes/changes.ts';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { completionsAt } from '../../server/src/features/completion/completion.ts';
import { documentSymbols } from '../../server/src/features/document-symbols.ts';
import { batchPicture, lotPicture } from '../../server/src/features/drawing/pictures.ts';
import { seasonPicture } from '../../server/src/features/drawing/season.ts';
import { hoverAt } from '../../server/src/features/hover/hover.ts';
import { hintsIn } from '../../server/src/features/inlay.ts';
import { lensesOf, lensTitle } from '../../server/src/features/lens.ts';
import { judgeLot, lotRows } from '../../server/src/features/lots.ts';
import { workspaceSymbols } from '../../server/src/features/workspace-symbols.ts';
import { due } from '../../server/src/calendar/due.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import type { Moment } from '../../server/src/journal/moment.ts';
import { winterNamed } from '../../server/src/model/winter.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { adviceData } from '../../server/src/report/advice/data.ts';
import { adviceSheet } from '../../server/src/report/advice/sheet.ts';
import { reportPage } from '../../server/src/report/html.ts';
import { reportData } from '../../server/src/report/json.ts';
import { reportMarkdown } from '../../server/src/report/markdown.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { sheetText } from '../../server/src/report/sheet/text.ts';
import { reportText } from '../../server/src/report/text.ts';
import { winterData } from '../../server/src/report/winter/data.ts';
import { winterReview } from '../../server/src/report/winter/review.ts';
import { winterSheet } from '../../server/src/report/winter/words.ts';
import { filledTables } from '../../server/src/tables/tables.ts';
import { journal } from '../support/arbitrary-journal.ts';
import { trialOf } from '../../server/src/trials/lot-trial.ts';

type Files = readonly { readonly name: string; readonly text: string }[];

/**
 * Every number of seeds becomes an estimate that allows at least one seed more than were there, so that no count makes
 * it certain; cut tests would, and percentages that are strengths stand in the way.
 */
const estimate = fc.constantFrom(
  (n: number) => `about ${n} seeds`, (n: number) => `${n} to ${n + 7} seeds`, (n: number) => `${n - 1} to ${n + 1} seeds`,
);

const estimated = fc.tuple(journal, fc.infiniteStream(estimate)).map(([{ files, today }, stream]) => ({
  today,
  files: files.map(({ name, text }) => ({
    name,
    text: text.replaceAll(/^cut .*\n/gm, '').replaceAll('KNO3 0.2 %', 'KNO3 2000 ppm')
      .replaceAll(/^sow .*$/gm, line => line.replace(/, \d+ seeds/, ''))
      .replaceAll(/\b(\d+) seeds\b/g, (_, n: string) => written(stream, Number(n))),
  })),
}));

function written(stream: Iterator<(n: number) => string, unknown>, n: number): string {
  const next = stream.next();
  return next.done ? '' : next.value(n);
}

interface Said {
  readonly where: string;
  readonly text: string;
}

function journalOf(files: Files): Journal {
  const read = new Journal();
  for (const { name, text } of files) read.set(name, text);
  return read;
}

function* saidOf(files: Files, now: Moment): Generator<Said> {
  const read = journalOf(files);
  const book = new ProblemBook(read);
  book.update(now);
  const winter = winterNamed('2025/26')!;
  for (const by of [undefined, 'species'] as const) {
    const report = reportOf(read, book, { now, details: true, ...(by && { by }) });
    yield { where: 'report', text: reportText([report]) };
    yield { where: 'Markdown', text: reportMarkdown([report]) };
    yield { where: 'page', text: reportPage([report]).replaceAll(/<style>[^]*?<\/style>/g, '') };
    yield { where: 'JSON', text: JSON.stringify(reportData(report)) };
    if (by) continue;
    const review = winterReview(report, winter);
    yield { where: 'winter', text: `${sheetText([winterSheet(review)])}\n${JSON.stringify(winterData(review))}` };
  }
  const frame = { theme: themes.light, width: 640, small: false, id: 'p' };
  yield* pictured('season', seasonPicture(read, now, frame));
  for (const lot of read.lots()) {
    const advice = adviceFor(lot, read, now);
    yield { where: 'advice', text: `${sheetText([adviceSheet(advice, read)])}\n${JSON.stringify(adviceData(advice, read))}` };
    const trial = trialOf(lot, now.day);
    yield* pictured(lot.id, lotPicture(trial, frame));
    for (const batch of lot.batches.values()) yield* pictured(batch.path, batchPicture(batch, trial, frame));
  }
  yield { where: 'due', text: JSON.stringify(due(read, now).map(({ what }) => what)) };
  const rows = lotRows(read, now)
    .map(({ lot: { id }, ...row }) => ({ ...row, id, verdicts: judgeLot(read, id, now.day) }));
  yield { where: 'lots', text: JSON.stringify(rows) };
  yield { where: 'symbols', text: JSON.stringify(workspaceSymbols(read, '', now)) };
  for (const { name } of files) {
    yield { where: 'problems', text: book.of(name).map(({ problem }) => problem.message).join('\n') };
    yield* inEditor(read, name, now);
  }
  const before = files.map(({ name, text }) => [name, text.replaceAll(/^count .*\n/gm, '')] as const);
  const changes = changesBetween(new Map(before), new Map(files.map(({ name, text }) => [name, text])));
  yield { where: 'changes', text: changes.flatMap(({ words }) => words).join('\n') };
}

function tablesOf(files: Files, now: Moment): ReturnType<typeof filledTables> {
  return filledTables([{ name: 'mine', journal: journalOf(files), files: files.map(({ name }) => name), now }]);
}

function* pictured(where: string, picture: ReturnType<typeof lotPicture>): Generator<Said> {
  if (!picture) return;
  const { title, description, table, svg } = picture;
  yield { where: `picture of ${where}`, text: [title, description, JSON.stringify(table), svg.markup].join('\n') };
}

function* inEditor(read: Journal, file: string, now: Moment): Generator<Said> {
  yield { where: 'outline', text: JSON.stringify(documentSymbols(read, file, now), (key, value: unknown) => (key === 'place' ? null : value)) };
  for (const lens of lensesOf(read, file)) yield { where: 'lens', text: lensTitle(read, lens, now)! };
  const { text } = read.files.get(file)!;
  const kinds = { counts: true, soaks: true, stages: true, stocks: true };
  for (const { text: hint, more } of hintsIn(read, file, 0, text.lineCount, kinds, now)) {
    yield { where: 'hint', text: `${hint}\n${more}` };
  }
  for (let line = 0; line < text.lineCount; line++) {
    const record = text.at(line).content.record;
    if (!record?.subject) continue;
    const { start, end } = record.subject;
    for (const character of [1, start + 1, end, ...record.facts.map(fact => fact.start + 1)]) {
      const hover = hoverAt(read, file, { line, character }, now);
      if (hover) yield { where: `hover of ${text.at(line).text}:${character}`, text: hover.markdown };
    }
    const offered = completionsAt(read, file, { line, character: end }, now)?.items ?? [];
    yield { where: 'completion', text: offered.map(item => JSON.stringify(item)).join('\n') };
  }
}

/** A percentage of a number that stands as if it had been counted; as all of these, lines may break in it. */
const EXACT = /(?<!to\s+|\d)\d+\s+of\s+\d+(?!\d|\s+to\b)(?:\s+[a-z]+)*\s+=\s+[<>]?[\d.]+\s%/;
/**
 * Percentages that are not of seeds: the width of intervals, strengths and how exact these are; and those behind a
 * range of seeds, whose ends may round to the same.
 */
const OTHERS = /95 %|% means .*|\*\*GA3 .*|\([\d.]+ %\)|\d % of the limit|purity \d+ %|\d\s+to\s+\d+\s+=\s+[<>]?[\d.]+\s%/g;
/** One percentage: no end of a range, and not the nothing or the whole that is the same of every number of seeds. */
const LONE = /(?<![\d.]|to\s+|\d )(?!(?:0|100)\s%)[<>]?\d[\d.]*\s%/g;
/** What data say of seeds that were counted alone. */
const COUNTED = /"(?:seeds|kept|sown|tested|of|n)":[1-9]\d*|"(?:course|measures)":\{(?!"undefined")/g;
const countedColumns = ['seeds', 'kept', 'sown', 'tested', 'treated_seeds', 'untreated_seeds', 'difference'];

test('no percentage of estimated seed is one number, in whatever is said of it', () => {
  let ranges = 0;
  fc.assert(fc.property(estimated, ({ files, today }) => {
    for (const { where, text } of saidOf(files, { day: today, minutes: 720 })) {
      expect(text, where).not.toMatch(EXACT);
      // The page on a solution tells how exact its strength is.
      const isOfSeeds = !/^hover of (?:stock|dilute|limit)/.test(where);
      if (isOfSeeds) expect(text.replaceAll(OTHERS, '').match(LONE) ?? [], where).toEqual([]);
      expect(text.match(COUNTED) ?? [], where).toEqual([]);
      ranges += text.match(/ to [\d.]+ %/g)?.length ?? 0;
    }
  }), { numRuns: 15 });
  expect(ranges).toBeGreaterThan(100);
});

test('nor is the number of seeds in the tables', () => {
  fc.assert(fc.property(estimated, ({ files, today }) => {
    for (const { table: { name, fields }, rows } of tablesOf(files, { day: today, minutes: 720 })) {
      const counted = fields.flatMap((field, i) => (countedColumns.includes(field.name) ? [i] : []));
      const cells = rows.flatMap(row => counted.map(i => row[i]));
      expect(cells.filter(cell => cell !== null && cell !== 0), name).toEqual([]);
    }
  }), { numRuns: 25 });
});
