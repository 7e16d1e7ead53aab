import { expect, test } from 'vitest';
import { stocksPicture } from '../../server/src/features/drawing/bench.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { stocksData } from '../../server/src/report/stocks/data.ts';
import { stockList } from '../../server/src/report/stocks/list.ts';
import { stockSheet } from '../../server/src/report/stocks/words.ts';
import { contentHeld, strengthHeld } from '../../server/src/words/held.ts';
import { at, journalOf } from '../journal/helpers.ts';

const journal = journalOf([
  // A quarter by eye of 100 mg in 100 mL is 250 ppm; one to two of it 125 ppm. P2 was four years old in 2024.
  'stock E1 2026-01-01, GA3 100 mg halved 2 times, 100 mL', 'dilute E2 2026-01-01, from E1 10 mL, to 20 mL',
  'powder P2 2020-01-01, GA3 1 g', 'stock O1 2026-01-01, from P2 20 mg, 20 mL', 'stock W1 2026-01-01, GA3 20 mg, 20 mL',
  'stock U1 2026-01-01, GA3 20 mg',
].join('\n'));

test('a bottle is “about” so strong where powder was halved by eye on the way to it, and “at most” where that was old', () => {
  const words = [...journal.solutions()].filter(({ form }) => form !== 'powder').map(each => `${each.id} ${contentHeld(each, journal)}`);
  expect(words).toEqual([
    'E1 GA3 about 250 ppm', 'E2 GA3 about 125 ppm', 'O1 GA3 at most 1000 ppm', 'W1 GA3 1000 ppm', 'U1 GA3 of unknown strength',
  ]);
  expect(strengthHeld(journal.solution('U1')!, journal)).toBeUndefined();
});

test('a bottle has three digits where its strength was worked out, and those of its label where it was bought', () => {
  const made = journalOf([
    'stock S1 2026-01-01, GA3 50 mg, purity 90 %, 45.1 mL', 'dilute S2 2026-01-01, from S1 10 mL, to 20 mL', 'stock B1 2026-01-01, ethephon 39.75 %, 500 mL',
  ].join('\n'));
  // 45 mg in 45.1 mL are 997.783 mg/L.
  expect([...made.solutions()].map(each => contentHeld(each, made))).toEqual(['GA3 998 ppm', 'GA3 499 ppm', 'ethephon 39.75 %']);
});

test('the list of stocks, its data and its picture say so as well', () => {
  const list = stockList(journal, { now: at('2026-02-01') });
  const [bottles] = stockSheet(list).passages;
  expect(bottles!.columns[1]!.cells.slice(0, 2)).toEqual(['GA3 about 250 ppm', 'GA3 about 125 ppm']);
  const { stocks } = stocksData(list) as { stocks: { id: string; about: boolean; atMost: boolean }[] };
  expect(stocks.filter(({ about }) => about).map(({ id }) => id)).toEqual(['E1', 'E2']);
  expect(stocks.filter(({ atMost }) => atMost).map(({ id }) => id)).toEqual(['O1']);
  const drawn = stocksPicture(journal, at('2026-02-01'), { theme: themes.light, width: 760, small: false, id: 'a' })!;
  expect(drawn.description).toContain('GA3 about 125 ppm');
});
