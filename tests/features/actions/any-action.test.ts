/** Every action that is offered, in any journal: what holds for all of them. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Found } from '../../../server/src/checks/check.ts';
import { ProblemBook } from '../../../server/src/checks/problem-book.ts';
import type { ActionEdit } from '../../../server/src/features/actions/action.ts';
import { archiveAction } from '../../../server/src/features/actions/archive.ts';
import { dayLinesAction } from '../../../server/src/features/actions/day-lines.ts';
import { adviceActions } from '../../../server/src/features/actions/advised.ts';
import { ladderAction } from '../../../server/src/features/actions/ladder.ts';
import { planActions } from '../../../server/src/features/actions/plan.ts';
import { fixAll, quickFixes } from '../../../server/src/features/actions/quick-fixes.ts';
import { splitActions } from '../../../server/src/features/actions/split.ts';
import { rewriteCounts } from '../../../server/src/features/actions/totals.ts';
import type { Journal } from '../../../server/src/journal/journal.ts';
import { dayOf } from '../../../server/src/model/day.ts';
import { reportOf } from '../../../server/src/report/report.ts';
import { reportText } from '../../../server/src/report/text.ts';
import { text } from '../../support/arbitrary-edits.ts';
import { journal as arbitraryJournal } from '../../support/arbitrary-journal.ts';
import { anyLine } from '../../support/arbitrary-lines.ts';
import { applied, journalIn } from './applied.ts';
import { livesOf } from './lives.ts';

type Texts = Readonly<Record<string, string>>;

const now = { day: dayOf(2026, 3, 15)!, minutes: 600 };
const BOM = '\ufeff';

/** Files of lines that have to do with each other and of which much is wrong, as any program may have saved them. */
const savedFile = fc.tuple(text, fc.boolean(), fc.boolean());
const clashing: fc.Arbitrary<Texts> = fc.array(savedFile, { minLength: 1, maxLength: 2 })
  .map(files => Object.fromEntries(files.map(([lines, marked, ended], n) => {
    const end = lines.includes('\r\n') ? '\r\n' : '\n';
    return [`${'ab'[n]!}.germ`, `${marked ? BOM : ''}${lines}${ended ? end : ''}`];
  })));

const slip = fc.record({
  at: fc.nat(999), kind: fc.constantFrom('twice', 'out', 'line', 'digits', 'undated', 'remark'), line: anyLine,
});

/** A journal that hangs together but for a few slips. */
const anyEnd = fc.constantFrom('\n', '\r\n');
const slipped: fc.Arbitrary<Texts> = fc.tuple(arbitraryJournal, fc.array(slip, { maxLength: 4 }), anyEnd, fc.boolean())
  .map(([{ files }, slips, end, marked]) => Object.fromEntries(files.map(({ name, text: plain }) => {
    const lines = plain.split('\n');
    for (const { at, kind, line } of slips) {
      const n = at % lines.length;
      const old = lines[n]!;
      const fresh = {
        twice: [old, old], out: old === '' ? [old] : [''], line: [old, line], remark: ['  A remark.', old],
        digits: [old.replace(/ (\d)(\d?) /, ' $2$1 ')], undated: [old.replace(/ \d{4}-\d\d-\d\d/, '')],
      }[kind];
      lines.splice(n, 1, ...fresh);
    }
    return [name, `${marked ? BOM : ''}${lines.join(end)}`];
  })));

interface Known {
  readonly journal: Journal;
  readonly book: ProblemBook;
  readonly found: readonly Found[];
}

function known(texts: Texts): Known {
  const journal = journalIn(texts);
  const book = new ProblemBook(journal);
  book.update(now);
  return { journal, book, found: [...journal.files.keys()].flatMap(name => book.of(name)) };
}

const endsOf = (lines: string) => new Set(lines.match(/\r\n|\n|\r/g));
const linesOf = (lines: string) => lines.replace(BOM, '').split(/\r\n|\n|\r/);
const messagesOf = ({ found }: Known) => found.map(({ problem: { message } }) => message).sort();

/** The journal once an action is taken. Throws where edits overlap or stand nowhere. */
function taken(texts: Texts, { journal }: Known, edits: readonly ActionEdit[]): Texts {
  const after = applied(journal, edits);
  expect(new Set(edits.map(({ file, line }) => `${line} ${file}`)).size, 'one edit a line').toBe(edits.length);
  for (const [name, lines] of Object.entries(after)) {
    const ends = endsOf(texts[name] ?? Object.values(texts).join(''));
    expect([...endsOf(lines)].every(end => ends.size === 0 || ends.has(end)), 'the line ends of the file').toBe(true);
    expect(lines.lastIndexOf(BOM), 'the byte order mark where it was').toBe(texts[name]?.startsWith(BOM) ? 0 : -1);
  }
  return after;
}

/** What a reader learns of each lot, apart from where it stands. */
function toldOf({ journal, book }: Known): unknown {
  const reports = [...journal.lots()].map(({ id }) => reportText([reportOf(journal, book, { now, ids: [id] })])).sort();
  return [livesOf(journal), reports];
}

/**
 * Codes of problems that name another thing in their advice when the order of the files changes, or where a count says
 * the same as a total.
 */
const advising: ReadonlySet<string> = new Set(['unknown-lot', 'unknown-id', 'unknown-stock', 'unknown-agent',
  'unknown-regime', 'count-exceeds-sown']);

function expectSame(before: Known, after: Known): void {
  expect(toldOf(after)).toEqual(toldOf(before));
  // A count that stands twice is no slip any more where it is written as a total.
  const told = ({ found }: Known) => found.filter(({ problem }) => problem.code !== 'total-as-new')
    .map(({ problem: { code, message } }) =>
      (advising.has(code) ? code : message.replaceAll(/ in \S+\.germ| further up in this file/g, ''))).sort();
  expect(told(after)).toEqual(told(before));
}

/** Every line stands there as it was, in its order; there may be others between them. */
function expectKept(texts: Texts, after: Texts): void {
  for (const [name, lines] of Object.entries(texts)) {
    const old = linesOf(lines);
    let kept = 0;
    for (const line of linesOf(after[name]!)) if (line === old[kept]) kept++;
    expect(kept, 'lines that stand as they were').toBe(old.length);
  }
}

/**
 * Codes that were not there before; of a trial that was only begun, what has yet to be done. Records without a date
 * that were told together are told apart where one with a date now stands between them: these are not new.
 */
function newCodes(before: Known, after: Known): string[] {
  const old = new Set(messagesOf(before));
  const lines = new Set([...before.journal.files.values()].flatMap(file => [...file.text].map(({ text }) => text)));
  const isTold = (code: string, line: string) => code === 'missing-date' && lines.has(line);
  return after.found.filter(({ line, problem: { code, message } }) => !old.has(message) && !isTold(code, line.text))
    .map(({ problem: { code } }) => code);
}

function ownProblems({ found }: Known): number {
  return found.filter(({ line, problem }) => line.content.problems.includes(problem)).length;
}

const journals = fc.oneof(clashing, slipped);
const runs = { numRuns: 40 };

test('a fix takes its problem away; the preferred one brings no mistake along', () => {
  fc.assert(fc.property(journals, texts => {
    const before = known(texts);
    for (const each of before.found) {
      const { line, problem: { code, start, message } } = each;
      // Batches that lay in one soak have each its own problem in the same place, and one fix.
      const isHere = (other: Found) =>
        other.line === line && other.problem.code === code && other.problem.start === start;
      const here = new Set(before.found.filter(isHere).map(({ problem }) => problem.message));
      const context = { journal: before.journal, file: line.store.name, now };
      for (const { title, edits, evident } of quickFixes([each], line.number, line.number, context)) {
        const after = known(taken(texts, before, edits));
        const count = ({ found }: Known) => found.filter(({ problem }) => here.has(problem.message)).length;
        // Of two that are called the same as something else each says so of the other one.
        const isTwin = code === 'duplicate-definition' && count(before) === count(after);
        expect([title, message, isTwin || count(after) < count(before)]).toEqual([title, message, true]);
        // Behind a word that is no keyword nothing was read.
        const isMore = ownProblems(after) > ownProblems(before);
        if (evident && code !== 'unknown-keyword') expect([title, isMore]).toEqual([title, false]);
      }
    }
  }), runs);
});

test('all evident slips of a file can be mended at once, in that file alone', () => {
  fc.assert(fc.property(journals, texts => {
    const before = known(texts);
    for (const name of before.journal.files.keys()) {
      const action = fixAll(before.book.of(name), before.journal);
      if (!action) continue;
      const after = taken(texts, before, action.edits);
      expect({ ...after, [name]: '' }).toEqual({ ...texts, [name]: '' });
      expect(ownProblems(known(after))).toBeLessThan(ownProblems(before));
    }
  }), runs);
});

test('records below day lines, counts rewritten and lots archived tell what they told', () => {
  fc.assert(fc.property(journals, fc.nat(40), fc.nat(20), (texts, from, more) => {
    const before = known(texts);
    const { journal } = before;
    const actions = [
      ...Object.keys(texts).map(name => dayLinesAction(journal, name, from, from + more)),
      ...[...journal.lots()].flatMap(lot => [
        archiveAction(lot, journal),
        ...[...lot.batches.values()].flatMap(batch =>
          [rewriteCounts(batch, 'totals', journal), rewriteCounts(batch, 'new', journal)]),
      ]),
    ];
    for (const action of actions) if (action) expectSame(before, known(taken(texts, before, action.edits)));
  }), runs);
});

test('splits, plans and ladders add lines without a mistake and change none', () => {
  fc.assert(fc.property(journals, texts => {
    const before = known(texts);
    const { journal } = before;
    const places = [...journal.files].flatMap(([name, file]) =>
      Array.from({ length: file.text.lineCount }, (_, line) => [name, { line, character: 0 }] as const));
    const actions = [
      ...[...journal.lots()].flatMap(lot => adviceActions(lot, journal, now)),
      ...[...journal.lots()].flatMap(lot => [...lot.batches.values()].flatMap(batch => splitActions(lot, batch,
        journal))),
      ...places.map(([name, place]) => ladderAction(journal, name, place, now)),
      ...places.flatMap(([name, place]) => planActions(journal, name, place, now)),
    ];
    for (const action of actions) {
      if (!action) continue;
      const after = taken(texts, before, action.edits);
      expectKept(texts, after);
      // A record of a batch that is not there is now told which ones are. What is advised on few seeds shows little;
      // where a dose paid though untreated seed came up readily, too, some is kept untreated, as the hint asks.
      const advised = action.title.startsWith('Do as advised') ? ['split-too-small', 'ready-untreated'] : [];
      const allowed = ['unknown-batch', ...advised];
      expect(newCodes(before, known(after)).filter(code => !allowed.includes(code))).toEqual([]);
    }
  }), runs);
});
