import { describe, expect, test } from 'vitest';
import { pageOn, trialIn } from './helpers.ts';

const packet = 'lot NEW-26 Gentiana lutea, 40 seeds, collected 2021-09';
const paid = `
  lot OLD-24 Gentiana lutea, 48 seeds, collected 2024-09
  ${trialIn('OLD-24', 20, 4)}
`;

describe('the page of an advice', () => {
  test('names the record or the guide behind each sentence, and the age of the seed', () => {
    const page = pageOn(`${paid}\n${packet}\nguide Gentiana, GA3 250 ppm, source "a book"\n>Fresh seed only.`);
    expect(page['What your records say']).toEqual(['GA3 500 ppm', expect.stringMatching(/^Worth repeating: by day .*95 % interval/), 'From OLD-24 (journal.germ:1).']);
    expect(page['What your guides say']).toEqual(['Gentiana: GA3 250 ppm', 'Fresh seed only.', 'From a book (journal.germ:12).', 'GA3 500 ppm is stronger than every guide here; it rests on your own records.']);
    expect(page['Untreated seed']).toContain('None of it was as old as this seed, which is 5 years old. Ages within half a year count as the same (common practice, no source).');
  });

  test('what an error in the records leaves out is told, with what to fix', () => {
    const wrong = paid.replace('cut OLD-24/B 2025-04-01, 20 fresh', 'cut OLD-24/B 2025-04-01, 2 fresh');
    expect(pageOn(`${wrong}\n${packet}`)['What your records say']).toEqual([
      'OLD-24/B', 'Left out until you fix it: its cut test counts 2, but 20 had not germinated.',
    ]);
    expect(pageOn(`${paid}\ncount OLD-24/b 2025-02-20, 9\n${packet}`)['What your records say']).toEqual(['OLD-24/A', 'OLD-24/B'].flatMap(batch => [
      batch, 'Left out until you fix it: a record names OLD-24/b, which no “split” gives out, and may mean another batch.',
    ]));
  });

  test('a bottle in hand is named, with the water that it takes', () => {
    const page = pageOn(`${paid}\n${packet}
      stock G1 2026-10-01, GA3 20 mg, 20 mL
      stock WEAK 2026-10-01, GA3 2 mg, 20 mL
      stock PAST 2019-10-01, GA3 20 mg, 20 mL
    `);
    expect(page['What it needs']).toEqual([
      expect.stringMatching(/^In hand: G1 \(journal\.germ:\d+\), 20 mL left, good until .*\. For GA3 500 ppm add 1 mL of water to each mL of it\.$/)]);
  });

  test('without one it is to be made up, with the packet that there is', () => {
    const page = pageOn(`${paid}\n${packet}\npowder P1 2026-01-01, GA3 500 mg`);
    expect(page['What it needs']?.join(' ')).toMatch(/No bottle .* has GA3 500 ppm or more left\. .*The packet P1 \(journal\.germ:\d+\) has 500 mg left\./);
    expect(page.notes?.join(' ')).toContain('Powder: keep it out of eyes and lungs.');
    expect(page.notes?.join(' ')).toContain('label');
  });

  test('a dose above the own limit is told, and no record of it is offered', () => {
    const page = pageOn(`${packet}\nguide Gentiana, GA3 2000 ppm, 48 h, source "a book"`);
    expect(page['What it needs']?.[0]).toMatch(/^GA3 2000 ppm is above your limit of 1000 ppm/);
    expect(page['What it needs']?.[1]).toBe('48 h is longer than your limit, so the advice is 24 h.');
    expect(page['Records to write']).toEqual(['split NEW-26, A 20 seeds, B 20 seeds']);
  });

  test('a guide without a strength makes up none', () => {
    const page = pageOn(`${packet}\nguide Gentiana, GA3, source "a book"`);
    expect(page.lead?.[0]).toContain('Try GA3 of unknown strength, 24 h: your guide gives it');
    expect(page['What it needs']).toEqual(['The guide says no strength. Take it from the product’s label or another book.']);
    expect(page['Records to write']).toEqual(['split NEW-26, A 20 seeds, B 20 seeds']);
  });

  test('untreated seed that was fast enough by itself is told, with its numbers', () => {
    const page = pageOn(`
      lot OLD-24 Gentiana lutea, 48 seeds, collected 2021-09
      sow OLD-24 2026-01-11, 40 seeds, 15 C
      count OLD-24 2026-01-25, 36
      ${packet}
    `);
    expect(page['Untreated seed']?.[0]).toBe('Fast enough by itself: 36 of 40 untreated seeds germinated (90 %, 95 % interval 77 to 96) '
      + 'in OLD-24, half of the seed by day 14. From OLD-24 (journal.germ:1).');
  });
});
