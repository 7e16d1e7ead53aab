/** What counts as evidence, and what is said where it is weak or is about something else. */
import { describe, expect, test } from 'vitest';
import { adviceOn, answerOn, pageOn, trialIn } from './helpers.ts';

const packet = 'lot NEW-26 Gentiana lutea, 40 seeds, collected 2026-09';

/** Halves of an estimated lot: so many came up of each. */
function guessedIn(lot: string, treated: number, untreated: number): string {
  return `
    lot ${lot} Gentiana lutea, about 60 seeds
    split ${lot}, A half, B half
    soak ${lot}/A 2025-01-10 19:00, GA3 500 ppm, 24 h
    soak ${lot}/B 2025-01-10 19:00, water, 24 h
    sow ${lot}/A 2025-01-11
    sow ${lot}/B 2025-01-11
    count ${lot}/A 2025-03-01, ${treated}
    count ${lot}/B 2025-03-01, ${untreated}
    discard ${lot}/A 2025-04-01
    discard ${lot}/B 2025-04-01
  `;
}

describe('own records', () => {
  test('a pinch that paid is tried again, never given to most of the seed: another pinch is another dose', () => {
    expect(answerOn(`lot OLD-24 Gentiana lutea, 48 seeds\n${trialIn('OLD-24', 20, 4, 'GA3 unmeasured')}\n${packet}`)).toBe(
      'Try GA3 unmeasured, 24 h: it paid in one lot, but how strong it was is unknown, so this may be another dose. '
      + 'Treat 20 seeds and leave 20 untreated.');
  });

  test('a soak that came after the cold comes after it again: none is offered for today', () => {
    const source = `
      lot OLD-24 Gentiana lutea, 48 seeds
      split OLD-24, A 24 seeds, B 24 seeds
      chill OLD-24/A 2024-10-18, 4 C, 12 weeks
      chill OLD-24/B 2024-10-18, 4 C, 12 weeks
      ${trialIn('OLD-24', 20, 4).split('\n').slice(2).join('\n')}
      ${packet}
    `;
    expect(answerOn(source)).toContain('It paid in one lot, after chill 4 C 12 weeks.');
    const page = pageOn(source);
    expect(page['How to divide it']).toContain('Your records put the soak after chill 4 C 12 weeks. Give that to both parts first, and begin the soak then.');
    expect(page['Records to write']).toEqual(['split NEW-26, A 30 seeds, B 10 seeds']);
  });

  test('a soak of seed that had been watched says so', () => {
    const source = `
      lot OLD-25 Gentiana lutea, 60 seeds
      split OLD-25, A 30 seeds, B 30 seeds
      sow OLD-25/A 2025-06-10, 15 C
      sow OLD-25/B 2025-06-10, 15 C
      count OLD-25/A 2025-09-10, 0
      count OLD-25/B 2025-09-10, 1
      soak OLD-25/A 2025-09-10 20:00, GA3 500 ppm, 24 h
      count OLD-25/A 2025-12-10, 20
      count OLD-25/B 2025-12-10, 3
      discard OLD-25/A 2026-03-01
      discard OLD-25/B 2026-03-01
      ${packet}
    `;
    expect(answerOn(source)).toContain('It paid in one lot, on seed that had been sown and watched before.');
    expect(pageOn(source)['Records to write']).toEqual(['split NEW-26, A 30 seeds, B 10 seeds']);
  });

  test('estimated lots that contradict each other cannot tell; one that paid is enough alone', () => {
    const paid = guessedIn('OLD-24', 25, 2);
    expect(adviceOn(`${paid}\n${packet}`).choice.kind).toBe('treat');
    const source = `${paid}\n${guessedIn('OLD-25', 2, 25)}\n${packet}`;
    expect(adviceOn(source).choice).toMatchObject({ kind: 'try', because: 'own records' });
    expect(pageOn(source)['What your records say']?.[1]).toMatch(/^OLD-24: Worth repeating: .* OLD-25: Harmful: /);
  });

  test('a dose that paid where seed was counted is tried again where estimated seed was harmed in as many lots', () => {
    const counted = (n: number) => `lot OLD-${n} Gentiana lutea, 48 seeds\n${trialIn(`OLD-${n}`, 20, 4)}`;
    const harmed = ['EST-1', 'EST-2', 'EST-3'].map(id => guessedIn(id, 2, 25));
    const source = [counted(1), ...harmed, packet].join('\n');
    expect(answerOn(source)).toBe('Try GA3 500 ppm, 24 h: it looks good where you counted the seed, '
      + 'but by estimated numbers it harmed seed of EST-1, EST-2 and EST-3. Treat 20 seeds and leave 20 untreated.');
    const [, told, from] = pageOn(source)['What your records say']!;
    expect(told).toMatch(/^Worth repeating: .* EST-1: Harmful: .* EST-3: Harmful: /);
    expect(from).toMatch(/^From OLD-1 \(.*\), EST-1 \(.*\), EST-2 \(.*\) and EST-3 \(.*\)\.$/);
    expect(answerOn([counted(1), counted(2), harmed[0], packet].join('\n'))).toMatch(
      /^Treat most of it: GA3 500 ppm, 24 h\. It paid in 2 lots, but by estimated numbers it harmed seed of EST-1\. /);
    expect(adviceOn([counted(1), harmed[0], packet].join('\n')).choice.kind).toBe('try');
  });

  test('one agent of several is held to more than one alone', () => {
    const year = (n: number) => 2023 + n;
    const lots = (letter: string, soak: string, treated: number) => [0, 1].map(n => (
      `lot ${letter}-${n} Gentiana lutea, 48 seeds\n${trialIn(`${letter}-${n}`, treated, 8, soak, year(n))}`)).join('\n');
    const looksGood = lots('G', 'GA3 500 ppm', 14);
    expect(adviceOn(`${looksGood}\n${packet}`).choice.kind).toBe('treat');
    const several = `${looksGood}\n${lots('K', 'KNO3 0.2 %', 9)}\n${lots('S', 'smoke 10 %', 8)}\n${packet}`;
    expect(adviceOn(several).species.find(({ agent }) => agent.word === 'GA3')?.doses[0]?.verdict).toBe('worth repeating');
    expect(answerOn(several)).toContain('Try GA3 500 ppm, 24 h: it looks good by itself, but you tried several treatments');
  });

  test.each([14, 28, 35])('winters count whatever came up and whenever they were looked at last: day %i', day => {
    const guide = 'guide Gentiana, GA3 500 ppm, 24 h, source "a book"';
    const winter = (year: number, up: number, end = `discard OLD-${year} 20${year}-03-10`) => `
      lot OLD-${year} Gentiana lutea, 24 seeds
      sow OLD-${year} 20${year}-01-01, 15 C
      count OLD-${year} 20${year}-${day < 31 ? `01-${day + 1}` : `02-0${day - 30}`}, ${up}
      ${end}
    `;
    const said = (...winters: string[]) => answerOn([...winters, packet, guide].join('\n'));
    const soon = day <= 30;
    if (soon) expect(said(winter(24, 18))).toMatch(/^Leave it untreated: untreated seed/);
    for (const end of [undefined, '']) {
      expect(said(winter(24, 18, end), winter(25, 2, end))).toMatch(/^Try GA3 500 ppm/);
      expect(said(winter(24, 2, end), winter(25, 18, end))).toMatch(/^Try GA3 500 ppm/);
    }
    if (soon) expect(said(winter(24, 18), winter(25, 20))).toMatch(/^Leave it untreated: untreated seed/);
  });

  test('seed of the last 30 days does not decide yet, be it up or not', () => {
    const source = (last: number) => `
      lot OLD-24 Gentiana lutea, 24 seeds
      sow OLD-24 2025-01-11, 15 C
      count OLD-24 2025-01-25, 20
      lot OLD-25 Gentiana lutea, 40 seeds
      sow OLD-25 2026-10-${last}, 15 C
      count OLD-25 2026-11-10, 0
      ${packet}
    `;
    expect(answerOn(source(31))).toMatch(/^Leave it untreated: untreated seed/);
    expect(answerOn(source(30))).not.toMatch(/^Leave it untreated/);
  });

  test('four seeds do not speak for a plant, though all of them came up', () => {
    const kept = (n: number) => `lot OLD-24 Gentiana lutea, ${n} seeds\nsow OLD-24 2025-01-11\ncount OLD-24 2025-02-08, ${n}\n${packet}`;
    expect(adviceOn(kept(10)).choice).toMatchObject({ kind: 'leave', because: 'ready' });
    expect(adviceOn(kept(9)).choice.kind).toBe('unknown');
    expect(pageOn(kept(9))['Untreated seed']).toContain(
      'None of it has germinated both well and soon (70 % of at least 10 seeds, half of them by day 30).');
  });

  test('one lot that came up by itself does not speak for a plant that has not since', () => {
    const year = (n: number, up: number) => `
      lot OLD-${n} Gentiana lutea, 40 seeds
      sow OLD-${n} 20${n}-11-01, 15 C
      count OLD-${n} 20${n}-11-20, ${up}
      count OLD-${n} 20${n}-12-20, 0
    `;
    const guide = 'guide Gentiana, GA3 500 ppm, 24 h, source "a book"';
    expect(adviceOn(`${year(22, 36)}\n${packet}\n${guide}`).choice).toMatchObject({ kind: 'leave', because: 'ready' });
    const since = `${year(22, 36)}\n${year(23, 2)}\n${packet}\n${guide}`;
    expect(adviceOn(since).choice).toMatchObject({ kind: 'try', because: 'guide' });
    expect(pageOn(since)['Untreated seed']).toContain(
      'Of all your untreated seed together 38 of 80 germinated, so that lot alone does not decide.');
  });
});

describe('other forms and other species', () => {
  const kin = (plant: string, treated: number, untreated: number) => (
    `lot KIN-24 ${plant}, 48 seeds\n${trialIn('KIN-24', treated, untreated)}`);

  test('what paid on the species is tried on its cultivar, before a guide, and is not called another species', () => {
    const page = pageOn(`
      ${kin('Gentiana lutea', 20, 4)}
      lot NEW-26 Gentiana lutea 'Alba', 40 seeds
      guide Gentiana lutea, smoke 10 %, source "a book"
    `);
    expect(page.lead?.[0]).toContain("Try GA3 500 ppm, 24 h: it paid on Gentiana lutea, and you have no comparison of your own for Gentiana lutea 'Alba'.");
    expect(page).toHaveProperty('Other forms of Gentiana lutea in your records');
    expect(page).not.toHaveProperty('Other species of Gentiana in your records');
  });

  test('what harmed the species is not tried on its subspecies', () => {
    const source = `
      ${kin('Gentiana lutea', 2, 20)}
      lot NEW-26 Gentiana lutea ssp. symphyandra, 40 seeds
      guide Gentiana, GA3K 500 ppm, source "a book"
    `;
    expect(answerOn(source)).toBe('Leave it untreated: GA3 500 ppm harmed seed of Gentiana lutea in your own records.');
    expect(answerOn(`${source}\nguide Gentiana, KNO3 0.2 %`)).toContain('Try KNO3 0.2 %, 24 h: your guide gives it');
  });

  test('what harmed another species is told beside the guide that gives it', () => {
    expect(answerOn(`${kin('Gentiana acaulis', 2, 20)}\n${packet}\nguide Gentiana, GA3 500 ppm`))
      .toContain('GA3 500 ppm harmed Gentiana acaulis. Treat 20 seeds');
  });
});

describe('guides', () => {
  test('a soak that they put after the cold is not offered for today, and what follows it is told', () => {
    const after = pageOn(`${packet}\nguide Gentiana, chill 4 C 30 days, GA3 250 ppm, warm 20 C 4 weeks`);
    expect(after.lead?.[0]).toContain('your guide gives it, after chill 4 C 30 days, and you have');
    expect(after['How to divide it']).toEqual(expect.arrayContaining([
      'Your guide puts the soak after chill 4 C 30 days. Give that to both parts first, and begin the soak then.',
      'Your guide goes on with warm 20 C 4 weeks. Give that to both parts alike.']));
    expect(after['Records to write']).toEqual(['split NEW-26, A 20 seeds, B 20 seeds']);
    const before = pageOn(`${packet}\nguide Gentiana, GA3 250 ppm, chill 4 C 30 days`);
    expect(before['Records to write']).toHaveLength(3);
  });

  test('one that gives a strength within the limit goes before one that does not', () => {
    const source = `${packet}\nguide Gentiana lutea, GA3\nguide Gentiana lutea, GA3 3000 ppm\nguide Gentiana, GA3 200 ppm, KNO3 0.2 %`;
    expect(answerOn(source)).toContain('Try GA3 200 ppm');
    expect(pageOn(source)['How to divide it']?.join()).toContain('The guide gives KNO3 0.2 % as well.');
  });

  test('a dose above the limit is said to be so at once, and nothing says how to make it', () => {
    const page = pageOn(`${packet}\nguide Gentiana, GA3 2000 ppm`);
    expect(page.lead?.[0]).toContain('GA3 2000 ppm is above your limit of 1000 ppm.');
    expect(page['What it needs']?.join()).not.toContain('plumule mix');
  });

  test('a dose that does not dissolve is said to be so at once, and one that does goes before it', () => {
    const agent = 'agent GA3, solubility 0.4 g/L';
    const page = pageOn(`${packet}\n${agent}\nguide Gentiana, GA3 500 ppm`);
    expect(page.lead?.[0]).toContain('GA3 500 ppm is more than dissolves in water (0.4 g/L).');
    expect(page['What it needs']).toEqual([
      'GA3 500 ppm is more than dissolves in water (0.4 g/L; declared in the journal), so no record of it is offered. Check both numbers and their units.',
    ]);
    expect(page['Records to write']).toEqual(['split NEW-26, A 20 seeds, B 20 seeds']);
    const other = `${packet}\n${agent}\nguide Gentiana lutea, GA3 401 ppm\nguide Gentiana, GA3 400 ppm`;
    expect(answerOn(other)).toMatch(/Try GA3 400 ppm/);
    expect(answerOn(other)).not.toContain('dissolves');
    expect(pageOn(other)['Records to write']?.[1]).toContain('GA3 400 ppm');
  });

  test('another agent is tried where what was tried did nothing, but not where most seed germinates without', () => {
    const guide = 'guide Gentiana, KNO3 0.2 %, 24 h, source "a book"';
    const tried = (treated: number, untreated: number) => (
      `lot OLD-24 Gentiana lutea, 48 seeds\n${trialIn('OLD-24', treated, untreated)}\n${packet}\n${guide}`);
    expect(answerOn(tried(4, 4))).toContain('Try KNO3 0.2 %, 24 h: your guide gives it, and what you tried before has not paid.');
    expect(adviceOn(tried(2, 20)).choice).toMatchObject({ kind: 'leave', because: 'harmful' });
  });
});

test('bottles and powder past their date are told, and a liquid is diluted', () => {
  const guide = 'guide Gentiana, GA3 500 ppm';
  const past = pageOn(`${packet}\n${guide}\nstock S1 2018-01-01, GA3 100 mg, 100 mL\npowder P1 2015-01-01, GA3 1 g`);
  expect(past['What it needs']).toEqual([
    expect.stringMatching(/^No bottle in your records has GA3 500 ppm or more left and is in date\. .*“plumule mix GA3 500ppm 20mL” says how\.$/),
    'The bottle S1 (journal.germ:3) is past its date.',
    'The packet P1 (journal.germ:4) has 1 g left, but is past its date, so a dose from it would be uncertain.']);
  const liquid = pageOn(`${packet}\nguide Gentiana, smoke 10 %`);
  expect(liquid['What it needs']?.[0]).toContain('“plumule mix smoke 10% 20mL --from” with the strength on its label');
});
