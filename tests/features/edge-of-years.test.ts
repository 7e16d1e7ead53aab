import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { due } from '../../server/src/calendar/due.ts';
import { icsOf } from '../../server/src/calendar/ics.ts';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { planActions } from '../../server/src/features/actions/plan.ts';
import { quickFixes } from '../../server/src/features/actions/quick-fixes.ts';
import { completionsAt } from '../../server/src/features/completion/completion.ts';
import { hoverAt } from '../../server/src/features/hover/hover.ts';
import { hintsIn } from '../../server/src/features/inlay.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { reportText } from '../../server/src/report/text.ts';
import { at } from './journals.ts';

const textOf = (year: string) => `zone America/Santiago
guide Iris, GA3 100 ppm, 6 h, chill 4 C 90 days
regime R1, chill 4 C 90 days, warm 20 C 60 days
lot L1 Iris alba, 24 seeds, collected ${year}
split L1, A 12 seeds, B 12 seeds
stock G1 ${year}-12-20, GA3 20 mg, 20 mL, keeps 30 days
day ${year}-12-30
soak L1/A 19:00, G1 10 mL, 30 h
soak L1/B 19:00, water, 24 h
lift L1/B ${year}-12-31 19:00
sow L1/B ${year}-12-31 20:00, regime R1, at bag 1 slot 1
count L1/B ${year}-12-31 21:00, 1
due L1 ${year}-12-31, look again
due L1/A 
chill L1/A, 4 C, 90 days
lot L2 Iris alba, 24 seeds, collected 
sow L2 ${year}-12-25, outdoors, look again ${year}-12-31
sow L2, outdoors, look again 
count L2 yesterday, 3
count L2 tomorrow, 3
count L2 31.12.${year}, 3
discard L2 ${year}-12-30
count L2 ${year}-12-31, 1
`;

/** Dates in a text that no journal can have. */
function outside(text: string): string[] {
  return (text.match(/[+-]?\d+-\d\d-\d\d(?!\d)/g) ?? []).filter(date => dayOfIso(date) === undefined);
}

describe.each([
  ['the last day', '9999', '9999-12-31 22:00'], ['the last year', '9998', '9999-12-28'],
  ['the first day', '0100', '0100-01-01'], ['a year that nobody can write', '0001', '0100-01-01 10:00'],
])('on %s, in a journal of %s', (_, year, today) => {
  const journal = new Journal();
  const now = at(today);
  const lines = textOf(year).split('\n');
  journal.set('a.germ', lines.join('\n'));
  const book = new ProblemBook(journal);
  book.update(now);
  /** What was written is not Plumule's. */
  const said = (text: string) => outside(text).filter(date => !date.startsWith('0001'));

  test('each date that is offered can be written', () => {
    lines.forEach((text, line) => {
      for (let character = 0; character <= text.length; character++) {
        const found = completionsAt(journal, 'a.germ', { line, character }, now);
        expect(said(JSON.stringify(found?.items ?? [])), text).toEqual([]);
        const years = found?.items.map(({ label }) => /^(\d+)(-\d\d)?$/.exec(label)?.[1]) ?? [];
        if (text.slice(0, character).endsWith('collected ')) expect(years.filter(each => each && !/^(9\d{3}|0100)$/.test(each))).toEqual([]);
      }
    });
  });

  test('so can those of hovers, hints, fixes, plans and the report', () => {
    lines.forEach((text, line) => {
      expect(said(JSON.stringify(planActions(journal, 'a.germ', { line, character: 5 }, now).map(({ title }) => title)))).toEqual([]);
      for (let character = 0; character <= text.length; character++) {
        expect(said(hoverAt(journal, 'a.germ', { line, character }, now)?.markdown ?? ''), text).toEqual([]);
      }
    });
    const hints = hintsIn(journal, 'a.germ', 0, lines.length, { counts: true, soaks: true, stages: true, stocks: true }, now);
    expect(said(hints.map(({ text }) => text).join('\n'))).toEqual([]);
    const found = book.of('a.germ');
    expect(said(found.map(({ problem }) => problem.message).join('\n'))).toEqual([]);
    const fixes = quickFixes(found, 0, lines.length, { journal, now, file: 'a.germ' });
    expect(said(fixes.map(({ title }) => title).join('\n'))).toEqual([]);
    expect(said(reportText([reportOf(journal, book, { now })]))).toEqual([]);
  });
});

// The library that writes it does not pad years below 1000, in which nobody keeps a calendar.
test.each([['9999', '9999-12-31 22:00'], ['9999', '9999-12-30'], ['9998', '9999-12-28']])(
  'a calendar of %s has dates that another program reads', (year, today) => {
    const journal = new Journal();
    const now = at(today);
    journal.set('a.germ', textOf(year));
    const file = icsOf([{ items: due(journal, now), now, zone: journal.zone }], { stamp: Date.UTC(2026, 0, 1) });
    expect(new ICAL.Component(ICAL.parse(file) as unknown[]).getAllSubcomponents('vevent').length).toBeGreaterThan(0);
    const dates = file.split('\r\n').filter(line => /^DT(START|END)/.test(line)).map(line => line.slice(line.indexOf(':') + 1));
    expect(dates.filter(date => !/^\d{8}(T\d{6}Z?)?$/.test(date))).toEqual([]);
  });
