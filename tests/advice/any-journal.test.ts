import fc from 'fast-check';
import { expect, test } from 'vitest';
import { adviceFor } from '../../server/src/advice/advice.ts';
import { ProblemBook } from '../../server/src/checks/problem-book.ts';
import { adviceActions } from '../../server/src/features/actions/advised.ts';
import type { Journal } from '../../server/src/journal/journal.ts';
import { problemKinds } from '../../server/src/model/problems.ts';
import { adviceData } from '../../server/src/report/advice/data.ts';
import { adviceSheet } from '../../server/src/report/advice/sheet.ts';
import { sheetText } from '../../server/src/report/sheet/text.ts';
import { journal as anyJournal } from '../support/arbitrary-journal.ts';
import { applied, journalIn } from '../features/actions/applied.ts';
import { NOW } from './helpers.ts';

function errorsIn(journal: Journal): number {
  const book = new ProblemBook(journal);
  book.update(NOW);
  return [...journal.files.keys()].flatMap(name => [...book.eachOf(name)])
    .filter(({ problem }) => problemKinds[problem.code].severity === 'error').length;
}

const seeds = fc.constantFrom('40 seeds', '7 seeds', '1 seed', 'about 40 seeds', '30 to 50 seeds', '');
const soak = fc.constantFrom('GA3 500 ppm', 'GA3 250 ppm', 'GA3 unmeasured', 'KNO3 0.2 %', 'water');
const guides = fc.array(fc.constantFrom(
  'guide Iris, GA3 500 ppm, 24 h, source "a book"', 'guide Iris alba, chill 4 C 60 days', 'guide Iris, GA3', 'guide Iris alba, GA3 5000 ppm, 72 h',
  'guide Iris alba, KNO3 0.2 %, 12 h', 'limit GA3, 300 ppm', 'limit soak, 12 h', 'stock G1 2026-10-01, GA3 20 mg, 20 mL', 'split NEW, X 3 seeds, Y 3 seeds', 'split NEW, Z 2 seeds',
  'guide Iris alba, chill 4 C 30 days, GA3 500 ppm, KNO3 0.1 %', 'powder P1 2015-01-01, GA3 1 g',
), { maxLength: 5 });
const count = fc.integer({ min: 0, max: 20 });
const trial = fc.tuple(fc.integer({ min: 1, max: 4 }), soak, count, count).map(([n, what, a, b]) => [
  `lot OLD-${n} Iris alba, 40 seeds, collected 202${n}`, `split OLD-${n}, A 20 seeds, B 20 seeds`,
  `soak OLD-${n}/A 2025-0${n}-10 19:00, ${what}, 24 h`, `sow OLD-${n}/A 2025-0${n}-11, 20 seeds`, `sow OLD-${n}/B 2025-0${n}-11, 20 seeds`,
  `count OLD-${n}/A 2025-0${n}-28, ${a}`, `count OLD-${n}/B 2025-0${n}-28, ${b}`, `discard OLD-${n}/A 2025-0${n}-28`, `discard OLD-${n}/B 2025-0${n}-28`,
]);

test('what is advised on a packet can be written, and makes no error', () => {
  fc.assert(fc.property(seeds, fc.array(trial, { maxLength: 3 }), guides, (howMany, trials, books) => {
    const text = [`lot NEW Iris alba${howMany === '' ? '' : `, ${howMany}`}`, ...trials.flat(), ...books].join('\n');
    const journal = journalIn({ 'a.germ': text });
    const lot = journal.lot('NEW')!;
    const before = errorsIn(journal);
    for (const { edits } of adviceActions(lot, journal, NOW)) {
      const after = journalIn(applied(journal, edits));
      expect(errorsIn(after), after.files.get('a.germ')!.text.text()).toBe(before);
      const parts = [...after.lot('NEW')!.batches.values()].filter(({ path }) => path !== 'NEW');
      expect(parts.some(({ soaks }) => soaks.length === 0) || parts.some(({ soaks }) => soaks.some(({ doses }) => doses.every(({ agent }) => agent?.word === 'water')))).toBe(true);
    }
  }));
});

test('of any journal the advice is whole: a number is a number, and each sentence on records names one', () => {
  fc.assert(fc.property(anyJournal, ({ files }) => {
    const journal = journalIn(Object.fromEntries(files.map(({ name, text }) => [name, text])));
    for (const lot of journal.lots()) {
      const advice = adviceFor(lot, journal, NOW);
      const text = sheetText([adviceSheet(advice, journal)]);
      expect(text).not.toMatch(/\b(NaN|undefined|Infinity)\b/);
      expect(JSON.stringify(adviceData(advice, journal))).not.toMatch(/\b(NaN|Infinity)\b/);
      const tried = [...advice.species, ...advice.genus].flatMap(({ doses }) => doses);
      expect(tried.every(({ lots }) => lots.length > 0)).toBe(true);
      if ('offer' in advice.choice) expect(advice.choice.offer.tried ?? advice.choice.offer.guide).toBeDefined();
    }
  }), { numRuns: 30 });
});
