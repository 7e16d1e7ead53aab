import { describe, expect, test } from 'vitest';
import { adviceOn, answerOn, pageOn, trialIn } from './helpers.ts';

const guide = 'guide Gentiana, GA3 500 ppm, 24 h, source "a book"';

describe('how the seed is divided', () => {
  test('too few are halved all the same, and no trial is promised', () => {
    expect(answerOn(`lot NEW-26 Gentiana lutea, 6 seeds\n${guide}`)).toMatch(/^Too few for a trial: treat half, keep half\./);
    expect(adviceOn(`lot NEW-26 Gentiana lutea, 6 seeds\n${guide}`).division).toMatchObject({ sides: { treated: 3, untreated: 3 }, isTooFew: true });
  });

  test('the plan goes by how much untreated seed has germinated, where that is known', () => {
    const { division } = adviceOn(`
      lot OLD-24 Gentiana lutea, 48 seeds
      ${trialIn('OLD-24', 12, 7)}
      lot NEW-26 Gentiana lutea, 40 seeds
    `);
    expect(division?.share).toEqual({ value: 0.29, own: true, leavesOut: false });
    expect(division?.plan?.sentence).toContain('29 % germinate untreated');
    expect(adviceOn(`lot NEW-26 Gentiana lutea, 40 seeds\n${guide}`).division?.share).toEqual({ value: 0.4, own: false, leavesOut: false });
  });

  test('an estimate is planned for its least, and halved by eye', () => {
    const source = `lot NEW-26 Gentiana lutea, about 40 seeds\n${guide}`;
    expect(adviceOn(source).division).toMatchObject({ sides: { treated: 18, untreated: 18 }, isEstimated: true });
    expect(pageOn(source)['Records to write']?.[0]).toBe('split NEW-26, A half, B half');
    expect(answerOn(source)).toContain('Treat half, keep half.');
  });

  test('of seed that nobody counted no number is said', () => {
    const source = `lot NEW-26 Gentiana lutea\n${guide}`;
    expect(adviceOn(source).division).toMatchObject({ sides: undefined, plan: undefined });
    expect(pageOn(source)['How to divide it']).toEqual([
      'The number of seeds is unknown, so Plumule cannot say what a trial would show. Count them first if you can.']);
  });

  test('seed that was divided before is taken as it is', () => {
    const source = `
      lot NEW-26 Gentiana lutea, 60 seeds
      split NEW-26, A 24 seeds, B 24 seeds
      ${guide}
    `;
    expect(answerOn(source)).toContain('Treat NEW-26/A and leave NEW-26/B untreated.');
    expect(pageOn(source)['Records to write']).toEqual([
      'soak NEW-26/A 2026-11-29 19:00, GA3 500 ppm, 24 h', 'soak NEW-26/B 2026-11-29 19:00, water, 24 h']);
  });

  test('a part that was split off stays out of the division of the rest', () => {
    const source = `lot NEW-26 Gentiana lutea, 40 seeds\nsplit NEW-26, A 10 seeds\n${guide}`;
    expect(pageOn(source)['Records to write']?.[0]).toBe('split NEW-26, B 15 seeds, C 15 seeds');
    expect(pageOn(source)['How to divide it']).toContain('What else is left, in NEW-26/A, stays as it is.');
  });

  test('halves that were divided by eye are planned for their least', () => {
    const source = `lot NEW-26 Gentiana lutea, 60 seeds\nsplit NEW-26, A half, B half\n${guide}`;
    expect(adviceOn(source).division).toMatchObject({ sides: { treated: 27, untreated: 27 }, isEstimated: true });
  });

  test('one seed is divided by nobody', () => {
    const one = 'lot NEW-26 Gentiana lutea, 1 seed';
    expect(answerOn(`${one}\n${guide}`)).toBe('One seed is too few for a trial. The treatment would be GA3 500 ppm, 24 h: '
      + 'your guide gives it, and you have no comparison of your own for Gentiana lutea.');
    const paid = `lot OLD-24 Gentiana lutea, 48 seeds\n${trialIn('OLD-24', 20, 4)}\n${one}`;
    expect(answerOn(paid)).toBe('Treat it: GA3 500 ppm, 24 h. It paid in one lot.');
    expect(pageOn(paid)).not.toHaveProperty('Records to write');
  });

  test('what was not sown of a lot is told, where no split tells it apart', () => {
    expect(pageOn('lot NEW-26 Gentiana lutea, 40 seeds\nsow NEW-26 2026-02-01, 25 seeds').lead).toEqual([
      'No untouched seed of NEW-26 is left, so there is nothing to decide. Not all of NEW-26 was sown. '
      + 'To decide about the rest, make it a part of its own with a “split” dated before the sowing.']);
  });

  test('what is left of a lot is decided on by itself', () => {
    const source = `
      lot NEW-26 Gentiana lutea, 88 seeds
      ${trialIn('NEW-26', 20, 4, 'GA3 500 ppm', 2026)}
    `;
    const { lead } = pageOn(source);
    expect(lead).toEqual([
      'Treat most of it: GA3 500 ppm, 24 h. It paid in one lot. Treat 30 seeds and leave 10 untreated.',
      '40 seeds still untouched. The journal does not say how old the seed is.',
    ]);
    expect(pageOn(source)['Records to write']?.[0]).toBe('split NEW-26, C 30 seeds, D 10 seeds');
  });

  test.each([
    ['all of it was sown', 'sow NEW-26 2026-02-01, 40 seeds', 'No untouched seed of NEW-26 is left, so there is nothing to decide.'],
    ['it was given away', 'give NEW-26 2026-02-01', 'No untouched seed of NEW-26 is left, so there is nothing to decide.'],
    ['a record has an error', 'sow NEW-26 2026-02-99, 40 seeds', 'A record of NEW-26 has an error, so what is left is unknown. Fix it first.'],
  ])('nothing is advised where %s', (_, record, sentence) => {
    const page = pageOn(`lot NEW-26 Gentiana lutea, 40 seeds\n${record}\n${guide}`);
    expect(page.lead).toEqual([sentence]);
    expect(page).not.toHaveProperty('Records to write');
  });
});
