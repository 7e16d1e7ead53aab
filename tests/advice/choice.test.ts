import { describe, expect, test } from 'vitest';
import { adviceOn, answerOn, pageOn, trialIn } from './helpers.ts';

const packet = 'lot NEW-26 Gentiana lutea, 40 seeds, collected 2026-09';
const old = 'lot OLD-24 Gentiana lutea, 48 seeds, collected 2024-09';

describe('what to do with a packet', () => {
  test('a treatment that paid is given again, and a quarter stays untreated', () => {
    expect(answerOn(`
      ${old}
      ${trialIn('OLD-24', 20, 4)}
      ${packet}
    `)).toBe('Treat most of it: GA3 500 ppm, 24 h. It paid in one lot. Treat 30 seeds and leave 10 untreated.');
  });

  test('one that harmed is not', () => {
    expect(answerOn(`
      ${old}
      ${trialIn('OLD-24', 2, 20)}
      ${packet}
      guide Gentiana, GA3 500 ppm, 24 h, source "a book"
    `)).toBe('Leave it untreated: GA3 500 ppm harmed seed of Gentiana lutea in your own records.');
  });

  test('nor one that showed no benefit, nor one that seed did well without', () => {
    expect(answerOn(`${old}\n${trialIn('OLD-24', 10, 12)}\n${packet}`))
      .toBe('Leave it untreated: GA3 500 ppm showed no sign of a benefit on Gentiana lutea in your own records (a gain of up to 19 points is not ruled out).');
    const ready = `
      ${old}
      sow OLD-24 2025-01-11, 40 seeds, 15 C
      count OLD-24 2025-01-25, 36
      ${packet}
      guide Gentiana, GA3 500 ppm, 24 h, source "a book"
    `;
    expect(answerOn(ready)).toBe('Leave it untreated: untreated seed of Gentiana lutea germinated well and soon in your own records.');
  });

  test('what the records cannot tell is tried again, in halves; as long as seed may come they cannot tell yet', () => {
    const trial = `
      ${old}
      ${trialIn('OLD-24', 12, 7)}
      ${packet}
    `;
    const closed = 'Try GA3 500 ppm, 24 h: your records cannot tell whether it pays. Treat 20 seeds and leave 20 untreated.';
    expect(answerOn(trial)).toBe(closed);
    expect(answerOn(trial.replaceAll(/ +cut .*/g, ''))).toBe(closed.replace('cannot tell', 'cannot tell yet'));
  });

  test('without own comparisons the guide gives the dose; the one that names the plant goes first', () => {
    expect(answerOn(`
      ${packet}
      guide Gentiana, GA3 250 ppm, 12 h, source "a book"
      guide Gentiana lutea, GA3 500 ppm, source "a paper"
    `)).toBe('Try GA3 500 ppm, 24 h: your guide gives it, and you have no comparison of your own for Gentiana lutea. '
      + 'Treat 20 seeds and leave 20 untreated.');
  });

  test('a guide of the cold alone names no soak', () => {
    expect(answerOn(`${packet}\nguide Gentiana, chill 4 C 60 days, source "a book"`)).toBe(
      'Leave it untreated: your guides name no soak (chill 4 C 60 days), and you have no comparison of your own.');
  });

  test('another species of the genus is a reason to try, never to treat', () => {
    const { choice } = adviceOn(`
      lot KIN-24 Gentiana acaulis, 48 seeds
      ${trialIn('KIN-24', 20, 4)}
      ${packet}
    `);
    expect(choice).toMatchObject({ kind: 'try', because: 'genus', offer: { text: 'GA3 500 ppm', soak: '24 h' } });
  });

  test('where nothing is known nothing is said', () => {
    const page = pageOn(packet);
    expect(page.lead?.[0]).toBe('Neither your records nor your guides say anything of a treatment for Gentiana lutea, so there is no advice.');
    expect(Object.keys(page)).toEqual(['lead', 'notes']);
    expect(page.notes?.join()).not.toContain('Treated seed');
  });

  test('a packet without a name of a plant goes by its own records alone', () => {
    expect(adviceOn('lot NEW-26, 40 seeds\nguide Gentiana, GA3 500 ppm').choice.kind).toBe('unknown');
  });

  test('of two doses the one that paid is given, and the harmful one is told', () => {
    const source = `
      lot OLD-24 Gentiana lutea, 72 seeds
      split OLD-24, C 24 seeds
      soak OLD-24/C 2025-01-10 19:00, GA3 1000 ppm, 24 h
      sow OLD-24/C 2025-01-11 19:00, 24 seeds, 15 C
      count OLD-24/C 2025-02-15, 0, 20 rotted
      discard OLD-24/C 2025-04-01
      ${trialIn('OLD-24', 22, 10)}
      ${packet}
    `;
    expect(answerOn(source)).toContain('GA3 500 ppm, 24 h. It paid');
    expect(pageOn(source)['What your records say']?.join('\n')).toMatch(/GA3 1000 ppm\nHarmful: /);
    expect(pageOn(source)['What your records say']?.join('\n')).toContain('GA3 500 ppm gave the most sound seedlings of these doses so far and GA3 1000 ppm the fewest');
  });

  test('of doses that paid one within the limit goes first, though a stronger one did better', () => {
    const source = `
      lot OLD-24 Gentiana lutea, 72 seeds
      split OLD-24, C 24 seeds
      soak OLD-24/C 2025-01-10 19:00, GA3 2000 ppm, 24 h
      sow OLD-24/C 2025-01-11 19:00, 24 seeds, 15 C
      count OLD-24/C 2025-02-15, 24
      ${trialIn('OLD-24', 20, 3)}
      ${packet}
    `;
    expect(answerOn(source)).toMatch(/^Treat most of it: GA3 500 ppm, 24 h\./);
    expect(answerOn(`${source}\nlimit GA3, 3000 ppm`)).toMatch(/^Treat most of it: GA3 2000 ppm, 24 h\./);
    const salt = source.replace('GA3 2000', 'GA3K 2000');
    expect(answerOn(`${salt}\nlimit GA3K, 2000 ppm`)).toMatch(/^Treat most of it: GA3K 2000 ppm, 24 h\./);
    // Its acid is 1802 ppm (346.379 / 384.469), which is no ppm of the salt.
    expect(answerOn(`${salt}\nlimit GA3K, 1900 ppm`)).toMatch(/^Treat most of it: GA3 500 ppm, 24 h\./);
    expect(answerOn(`${source}\nlimit GA3, 100 ppm`)).toMatch(/^Treat most of it: GA3 2000 ppm, 24 h\. .*above your limit of 100 ppm/);
    expect(answerOn(`${source}\nlimit GA3, 3000 ppm\nagent GA3, solubility 1.9 g/L`)).toMatch(/^Treat most of it: GA3 500 ppm, 24 h\./);
    expect(answerOn(`${source}\nlimit GA3, 3000 ppm\nagent GA3, solubility 0.1 g/L`))
      .toMatch(/^Treat most of it: GA3 2000 ppm, 24 h\. .* GA3 2000 ppm is more than dissolves in water \(0\.1 g\/L\)\./);
  });

  test('several lots are combined, each compared with itself', () => {
    const lots = [2023, 2024, 2025].map(year => (
      `lot G-${year} Gentiana lutea, 48 seeds\n${trialIn(`G-${year}`, 12, 6, 'GA3 500 ppm', year)}`));
    expect(answerOn(`${lots.join('\n')}\n${packet}`)).toContain(
      'It was tried in 3 lots, and together they show that it pays, though none does alone.');
    // One of them alone would not have shown it.
    expect(adviceOn(`${lots[0]!}\n${packet}`).choice).toMatchObject({ kind: 'try', because: 'own records' });
  });

  test('a comparison whose day of judging has not come decides nothing', () => {
    expect(adviceOn(`
      ${old}
      split OLD-24, A 24 seeds, B 24 seeds
      judge OLD-24 2026-10-01, on 2027-03-01
      soak OLD-24/A 2026-10-01 19:00, GA3 500 ppm, 24 h
      sow OLD-24/A 2026-10-02 19:00, 24 seeds
      sow OLD-24/B 2026-10-02 19:00, 24 seeds
      count OLD-24/A 2026-11-02, 20
      count OLD-24/B 2026-11-02, 1
      ${packet}
    `).choice.kind).toBe('unknown');
  });
});
