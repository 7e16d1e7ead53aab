/** Words that one lot uses change nothing of what is said of the others. */
import { readdir, readFile } from 'node:fs/promises';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { due } from '../../server/src/calendar/due.ts';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { Journal } from '../../server/src/journal/journal.ts';
import type { Moment } from '../../server/src/journal/moment.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { reportData } from '../../server/src/report/json.ts';
import { placesMap } from '../../server/src/report/places/map.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { stocksData } from '../../server/src/report/stocks/data.ts';
import { stockList } from '../../server/src/report/stocks/list.ts';
import { journal } from '../support/arbitrary-journal.ts';

/** A lot of another plant that was estimated, halved, stood outdoors, left; with its packet and its bottle. */
const APART = `
powder XP 2025-09-01, GA3K 1 g, at safe
stock XS 2025-09-02, from XP 50 mg, 98 mL, keeps 4 years, at safe
left XP 2025-09-20, 900 mg
left XS 2025-09-21, 90 mL
lot XOLD-22 Zelkova serrata, about 50 seeds, collected 2022
lot XNEW-25 Zelkova serrata, 50 to 60 seeds, collected 2024 and 2025, replaces XOLD-22
split XNEW-25, A half, B half
soak XNEW-25/A 2025-10-02 19:00, XS 5 mL, 20 mL, 24 h, at cup
soak XNEW-25/B 2025-10-02 19:00, water, 24 h, at cup 2
sow XNEW-25/A 2025-10-03 19:30, outdoors, look again 2026-03-01, at frame
sow XNEW-25/B 2025-10-03 19:30, about 20 seeds, outdoors, at frame
count XNEW-25/A 2025-10-12, 9, 2 stuck
count XNEW-25/B 2025-10-12, 3
apply XNEW-25/A 2025-10-13, XS 1 mL, 2 drops, 2 seedlings
count XNEW-25/A 2025-10-16, 1 freed
lose XNEW-25/A 2025-10-17, 1 seedlings, to a spill
give XNEW-25/A 2025-10-18, 2 seedlings, to a friend
sell XNEW-25/A 2025-10-19, 2 seedlings
send XNEW-25/B 2025-10-20, 4 seeds, to a friend
plant XNEW-25/A 2025-10-21, in the meadow
`;

type Files = readonly { readonly name: string; readonly text: string }[];

const isApart = (id: string) => /^X(?:OLD|NEW|P|S)\b/.test(id);

/** All that is said of the lots, bottles and places of the others. */
function saidOf(files: Files, now: Moment): object {
  const read = new Journal();
  for (const { name, text } of files) read.set(name, text);
  const book = new ProblemBook(read);
  book.update(now);
  const report = reportOf(read, book, { now, by: 'species' });
  const { lots, linesWithoutLot, plants } = reportData(report) as {
    lots: { id: string }[]; linesWithoutLot: number; plants: { plants?: { plant: string }[] };
  };
  const stocks = stocksData(stockList(read, { now })) as { stocks: { id: string }[] };
  return {
    lots: lots.filter(({ id }) => !isApart(id)), linesWithoutLot,
    plants: JSON.parse(JSON.stringify(plants), (_, value: unknown) => (
      Array.isArray(value) ? value.filter(each => !JSON.stringify(each).includes('Zelkova')) : value)) as unknown,
    problems: files.flatMap(({ name }) => [...book.eachOf(name)])
      .filter(({ line }) => !/\bX(?:OLD|NEW|P|S)\b/.test(line.text))
      .map(({ line, problem }) => `${line.number} ${line.text}: ${problem.code} ${problem.message}`),
    due: due(read, now).filter(({ id }) => !isApart(id))
      .map(({ key, group, day, minutes }) => ({ key, group, day, minutes })),
    places: placesMap(read, { now }).containers
      .map(({ name, rows }) => ({ name, ids: rows.map(({ id }) => id).filter(id => !isApart(id)) }))
      .filter(({ ids }) => ids.length > 0),
    stocks: stocks.stocks.filter(({ id }) => !isApart(id)),
  };
}

function expectApart(files: Files, now: Moment, where: number): void {
  const isOwnFile = where >= files.length;
  const beside = isOwnFile ? [...files, { name: 'x.germ', text: APART }]
    : files.map((file, i) => (i === where ? { ...file, text: `${file.text.trimEnd()}\n${APART}` } : file));
  expect(saidOf(beside, now)).toEqual(saidOf(files, now));
}

test('what is estimated, stands outdoors or left changes nothing of other lots, wherever it is written', () => {
  fc.assert(fc.property(journal, fc.integer({ min: 0, max: 3 }), ({ files, today }, where) => {
    expectApart(files, { day: today, minutes: 720 }, where);
  }), { numRuns: 25 });
});

test('nor of the lots of the samples', async () => {
  const folder = new URL('../../samples/', import.meta.url);
  const names = (await readdir(folder)).filter(name => name.endsWith('.germ')).sort();
  const files = await Promise.all(names.map(async name => ({ name, text: await readFile(new URL(name, folder), 'utf8') })));
  const now = { day: dayOfIso('2026-11-29')!, minutes: 720 };
  for (const where of [names.indexOf('2025-26.germ'), names.length]) expectApart(files, now, where);
});
