/** No verdict rests on a batch of which a record cannot be right. */
import { describe, expect, test } from 'vitest';
import { problemsIn } from '../checks/marked.ts';
import { journalOf, lotOf, trial, twoBatches } from './helpers.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { leftOutByError, trialOf } from '../../server/src/trials/lot-trial.ts';

const clean = twoBatches({ up: [15, 3] });

/** The batches left out, each with the reason; and what is said of treated and untreated seed. */
function told(source: string): { leftOut: string[][]; verdicts: string[] } {
  const { leftOut, contests } = trial(source);
  return {
    leftOut: leftOut.map(({ batch, why }) => [batch.path, why.undefined]),
    verdicts: contests.map(({ verdict: { verdict } }) => verdict),
  };
}

/** The two batches with their ends changed, and records after that. */
function endedBy(a: string, b: string, ...more: readonly string[]): string {
  return [
    clean.replace('discard L/A 2026-02-11', a).replace('discard L/B 2026-02-11', b).trimEnd(), ...more,
  ].join('\n    ');
}

describe('a batch with a record that cannot be right', () => {
  test('is compared without it', () => {
    expect(told(clean)).toEqual({ leftOut: [], verdicts: ['worth repeating'] });
    expect(told(endedBy('cut L/A 2026-04-01, 5 fresh', 'cut L/B 2026-04-01, 17 fresh'))).toEqual({ leftOut: [], verdicts: ['worth repeating'] });
  });

  test.each([4, 16, 18])('is left out where its cut test sorts %i of 17 seeds', sorted => {
    const source = endedBy('cut L/A 2026-04-01, 5 fresh', `cut L/B 2026-04-01, ${sorted} fresh`);
    expect(problemsIn('cut-does-not-add-up', source)).toHaveLength(1);
    expect(told(source)).toEqual({
      leftOut: [['L/B', `its cut test counts ${sorted}, but 17 had not germinated`]], verdicts: ['cannot tell'],
    });
  });

  test.each([
    ['count', 'count L/A 2027-02-17, 1'], ['cut', 'cut L/A 2027-02-17, 5 fresh'],
  ])('is left out until the day that a %s of it is dated', (keyword, line) => {
    const lot = lotOf(endedBy(line, 'count L/B 2026-02-17, 0'));
    const verdictsOn = (day: string) => (
      trialOf(lot, dayOfIso(day)!).contests.map(({ verdict: { verdict } }) => verdict));
    expect(leftOutByError(lot, dayOfIso('2026-03-01')!).map(({ batch, why }) => [batch.path, why.undefined])).toEqual([
      ['L/A', `its “${keyword}” of 2027-02-17 is dated after today (2026-03-01)`],
    ]);
    expect(verdictsOn('2026-03-01')).toEqual([]);
    expect(verdictsOn('2027-02-17')).not.toEqual([]);
    expect(verdictsOn('2027-02-16')).toEqual([]);
  });

  test('is not left out for what is planned', () => {
    const lot = lotOf(endedBy('discard L/A 2027-02-17', 'discard L/B 2027-02-17'));
    expect(leftOutByError(lot, dayOfIso('2026-03-01')!)).toEqual([]);
  });

  test('is left out where no number of its estimated seeds makes the cut test right', () => {
    const [right, wrong] = [5, 9].map(sorted => `
      lot L Iris alba, 18 to 22 seeds
      sow L 2026-01-11
      count L 2026-02-10, 15
      cut L 2026-04-01, ${sorted} fresh
    `);
    expect(leftOutByError(lotOf(right!), Infinity)).toEqual([]);
    expect(leftOutByError(lotOf(wrong!), Infinity).map(({ why }) => why.undefined)).toEqual(['its cut test counts 9, but 3 to 7 had not germinated']);
  });

  test.each([
    ['9 died', '9 died are more than the 3 that had germinated by 2026-02-17'],
    ['9 leggy', '9 leggy are more than the 3 that had germinated by 2026-02-17'],
    ['=4 germinated, 5 emerged', '5 emerged are more than the 4 that had germinated by 2026-02-17'],
    ['=2', 'its total of germinated falls from 3 to 2 on 2026-02-17'],
  ])('is left out where its count cannot be right: %s', (numbers, why) => {
    const source = endedBy('count L/A 2026-02-17, 0', `count L/B 2026-02-17, ${numbers}`);
    expect(told(source)).toEqual({ leftOut: [['L/B', why]], verdicts: ['cannot tell'] });
  });

  test.each([
    ['sow L/B 2026-01-11 20:00, 9 seeds', 'more of its seeds were sown than it has', ['L/B']],
    ['give L/B 2026-01-12, 21 seeds', 'more of its seeds were taken out than it has', ['L/B']],
    ['split L, C 30 seeds', 'more seeds were split off L than it has', ['L/C']],
    ['split L, B 6 seeds', 'L/B is given out twice', ['L/B']],
    ['lot L Iris alba, 30 seeds', 'two lots are called L', ['L/A', 'L/B']],
  ])('is left out where nobody can say how much seed it has: %s', (line, why, batches) => {
    const { leftOut } = told(`${clean.trimEnd()}\n    ${line}\n    ${line.includes('C ') ? 'count L/C 2026-02-10, 3' : ''}`);
    expect(leftOut.filter(([, text]) => text === why).map(([path]) => path)).toEqual(batches);
  });

  test.each([
    ['count L/B 2026-04-20, 10', 'count'], ['soak L/B 2026-04-20 19:00, GA3 500 ppm, 24 h', 'soak'],
  ])('is left out where something is done to it after its close: %s', (late, keyword) => {
    const source = endedBy('discard L/A 2026-04-01', 'discard L/B 2026-04-01', late);
    expect(problemsIn('after-close', source)).toHaveLength(1);
    expect(told(source)).toEqual({
      leftOut: [['L/B', `its “${keyword}” of 2026-04-20 comes after it was closed by “discard” on 2026-04-01`]], verdicts: ['cannot tell'],
    });
  });

  test('stays where all that comes after its close is a remark, or is of seedlings after a cut test', () => {
    const source = endedBy('cut L/A 2026-04-01, 5 fresh', 'discard L/B 2026-04-01', 'count L/A 2026-05-01, 9 leaf, 1 died', 'note L/B 2026-05-01, mouldy');
    expect(told(source)).toEqual({ leftOut: [], verdicts: ['worth repeating'] });
  });

  test('is no other half of a later soak', () => {
    const later = (more: string) => trial(`
      lot L Iris alba, 40 seeds
      split L, A 20 seeds, B 20 seeds
      sow L/A 2026-01-11
      sow L/B 2026-01-11
      count L/A 2026-02-15, 1
      count L/B 2026-02-15, 1
      soak L/A 2026-02-15 19:00, GA3 500 ppm, 24 h
      count L/A 2026-04-01, 12
      count L/B 2026-04-01, 1
      cut L/B 2026-04-02, ${more}
    `).contests.filter(({ treated }) => treated.since !== undefined);
    expect(later('18 fresh')).toHaveLength(1);
    expect(later('4 fresh')).toEqual([]);
  });

  test('is in no comparison of drops', () => {
    const drops = (end: string) => trial(`
      lot L Iris alba, 20 seeds
      sow L 2026-01-01
      count L 2026-01-20, 16, 9 stuck
      cut L 2026-02-01, ${end} dead
    `).drops.leftOut.map(({ why }) => why.undefined);
    expect(drops('4')).toEqual([]);
    expect(drops('3')).toEqual(['its cut test counts 3, but 4 had not germinated']);
  });
});

describe('a record of seed that is elsewhere', () => {
  const all = clean.replace('60 seeds', '40 seeds').trimEnd();

  test.each(['count L 2026-02-17, 4', 'soak L 2026-02-17 19:00, water, 24 h'])('may mean any part: %s', line => {
    const why = `the “${line.slice(0, line.indexOf(' '))}” of 2026-02-17 may mean any part of L, all of whose seed was split off`;
    expect(told(`${all}\n    ${line}`)).toEqual({ leftOut: [['L/A', why], ['L/B', why]], verdicts: [] });
  });

  test('may mean any part where nothing was done with what stayed', () => {
    const why = 'the “count” of 2026-02-17 may mean any part of L, with whose own seed nothing was done';
    expect(told(`${clean.trimEnd()}\n    count L 2026-02-17, 4`)).toMatchObject({ verdicts: [] });
    expect(told(`${clean.trimEnd()}\n    count L 2026-02-17, 4`).leftOut).toContainEqual(['L/A', why]);
  });

  test.each([
    ['a remark', all, 'note L 2026-02-17, mouldy'],
    ['of what stayed and was sown, too', clean.trimEnd(), 'sow L 2026-02-11\n    count L 2026-02-17, 4'],
  ])('leaves out none where it is %s', (_, source, lines) => {
    expect(told(`${source}\n    ${lines}`).verdicts).toEqual(['worth repeating']);
  });
});

describe('a record of a batch that does not exist', () => {
  const why = (path: string) => `a record names ${path}, which no “split” gives out, and may mean another batch`;

  test.each(['L/b', 'L/C', 'L/C/1'])('leaves out all that it may mean: %s', path => {
    const missing = path.slice(0, 3);
    expect(told(`${clean.trimEnd()}\n    count ${path} 2026-02-09, 10`)).toEqual({
      leftOut: [['L/A', why(missing)], ['L/B', why(missing)]], verdicts: [],
    });
  });

  test('leaves out none where it is a remark', () => {
    expect(told(`${clean.trimEnd()}\n    note L/b 2026-02-09, mouldy`)).toEqual({ leftOut: [], verdicts: ['worth repeating'] });
  });

  test('leaves out only parts of the batch that it would be a part of, and that batch', () => {
    const source = `
      lot L Iris alba, 80 seeds
      split L, A 40 seeds, B 40 seeds
      split L/A, 1 20 seeds
      sow L/A 2026-01-11, 20 seeds
      sow L/A/1 2026-01-11
      sow L/B 2026-01-11
      count L/A 2026-02-10, 3
      count L/A/1 2026-02-10, 3
      count L/A/2 2026-02-10, 3
      count L/B 2026-02-10, 3
    `;
    expect(told(source).leftOut).toEqual([['L/A', why('L/A/2')], ['L/A/1', why('L/A/2')]]);
  });
});

describe('a line that cannot be read', () => {
  const why = 'a line that cannot be read names L/A';

  test.each([
    'conut L/A 2026-02-09, 12', 'L/A 2026-02-09, 12', '2026-02-09 count L/A, 12', '8 Feb 2026: L/A 12 up, fine',
  ])('may be a count of the batch that it names: %s', line => {
    expect(told(`${clean.trimEnd()}\n    ${line}`)).toEqual({ leftOut: [['L/A', why]], verdicts: [] });
  });

  test('may be one of any batch of the lot that it names', () => {
    const { leftOut } = told(`${clean.trimEnd()}\n    conut L A 2026-02-09, 12`);
    expect(leftOut).toEqual(['L/A', 'L/B'].map(path => [path, 'a line that cannot be read names L']));
  });

  test.each(['conut M/A 2026-02-09, 12', 'conut LA/A 2026-02-09, 12', '# conut L/A 2026-02-09, 12', '  L/A was fine'])(
    'is of no account where it names another lot, or is no record: %s',
    line => {
      expect(told(`${clean.trimEnd()}\n    ${line}`)).toEqual({ leftOut: [], verdicts: ['worth repeating'] });
    });

  test('is followed as it is written and mended', () => {
    const journal = journalOf(clean);
    const verdicts = () => trialOf(journal.lot('L')!, Infinity).contests.map(({ verdict: { verdict } }) => verdict);
    expect(verdicts()).toEqual(['worth repeating']);
    journal.set('b.germ', 'conut L/A 2026-02-09, 12');
    expect(verdicts()).toEqual([]);
    journal.set('b.germ', 'note L/A 2026-02-09, 12 up');
    expect(verdicts()).toEqual(['worth repeating']);
    journal.set('b.germ', 'count l/B 2026-02-09, 12');
    expect(trialOf(journal.lot('L')!, Infinity).leftOut.map(({ batch, why: { undefined: text } }) => [batch.path, text])).toEqual([
      ['L/B', 'a record names l/B, which may mean L/B'],
    ]);
    journal.set('c.germ', 'lot l Iris lutea, 60 seeds');
    expect(verdicts()).toEqual(['worth repeating']);
    journal.remove('c.germ');
    expect(verdicts()).toEqual(['cannot tell']);
    journal.remove('b.germ');
    expect(verdicts()).toEqual(['worth repeating']);
  });
});
