import { describe, expect, test } from 'vitest';
import { measureBatch } from '../../server/src/measures/batch.ts';
import type { Course } from '../../server/src/measures/course.ts';
import { courseOf, courseUntil } from '../../server/src/trials/course.ts';
import { dayOfIso } from '../../server/src/model/day.ts';
import { known, valueOf } from '../measures/helpers.ts';
import { lotOf } from './helpers.ts';

/** The course of the batch `L`, or of another one. */
function course(source: string, path = 'L'): Course {
  return known(courseOf(lotOf(source).batches.get(path)!));
}

const days = ({ checks }: Course) => checks.map(({ day, germinated }) => [day, germinated]);

describe('the course of a batch', () => {
  test('counts days from the sowing, with the seed that germinated in the cold before it', () => {
    const found = course(`
      lot L Iris alba, 20 seeds
      chill L 2026-01-01, 4 C, 60 days
      count L 2026-02-20, 3
      sow L 2026-03-02
      count L 2026-03-12, 5
    `);
    expect(found.sown).toBe(20);
    expect(days(found)).toEqual([[-10, 3], [10, 8]]);
    const { speed, meanTime, ofSown } = measureBatch(found);
    expect(speed.maguire).toEqual({ undefined: 'seed had germinated by day 0' });
    expect(meanTime.earliest).toEqual({ undefined: 'no check before the first germination' });
    expect(ofSown.t10).toEqual({ undefined: 'it was reached before the first check, on day -10' });
  });

  test('that was never sown counts from the end of its soak, else from its first stage', () => {
    expect(days(course(`
      lot L Iris alba, 20 seeds
      soak L 2026-01-01 19:00, water, 24 h
      count L 2026-01-12, 3
    `))).toEqual([[10, 3]]);
    expect(days(course(`
      lot L Iris alba, 20 seeds
      chill L 2026-01-01, 4 C, 60 days
      count L 2026-01-12, 3
    `))).toEqual([[11, 3]]);
  });

  test('is of the seed sown, less what stayed in the tin', () => {
    const source = `
      lot L Iris alba, 20 seeds
      sow L 2026-01-01, 12 seeds
      count L 2026-01-12, 3, 2 rotted, 1 lost
    `;
    expect(course(source)).toEqual({ sown: 12, checks: [{
      day: 11, germinated: 3, emerged: 0, leaf: 0, leggy: 0, abnormal: 0, died: 0, rotted: 2, lost: 1,
    }] });
    expect(known(measureBatch(course(source)).germination.sown)).toMatchObject({ x: 3, n: 11 });
  });

  test('takes a cut test that adds up for a check, and its classes for what they say', () => {
    const cut = (classes: string) => course(`
      lot L Iris alba, 20 seeds
      sow L 2026-01-01
      count L 2026-01-11, 8
      cut L 2026-01-21, ${classes}
    `);
    expect(days(cut('7 fresh, 2 dead, 3 empty'))).toEqual([[10, 8], [20, 8]]);
    const { germination } = measureBatch(cut('7 fresh, 2 dead, 3 empty'));
    expect(known(germination.full)).toMatchObject({ x: 8, n: 17 });
    expect(known(germination.viable)).toMatchObject({ x: 8, n: 15 });
    expect(days(cut('7 fresh'))).toEqual([[10, 8]]);
    expect(measureBatch(cut('7 fresh')).germination.viable).toEqual({ undefined: 'the cut test sorts 7, but 12 had not germinated' });
  });

  test('is closed by a cut test, by being thrown away, and by being given out whole', () => {
    const after = (...records: string[]) => course(
      ['lot L Iris alba, 20 seeds', 'sow L 2026-01-01', 'count L 2026-01-11, 0', ...records].join('\n'));
    expect(after().closed).toBeUndefined();
    expect(after('cut L 2026-01-12, 20 fresh').closed).toBe(true);
    expect(after('discard L 2026-01-12').closed).toBe(true);
    expect(after('split L 2026-01-12, A 10 seeds, B 10 seeds').closed).toBe(true);
  });

  test('of seed sown in portions has a share and no days, unless they were sown within 3 days', () => {
    const sown = (second: string) => measureBatch(course(`
      lot L Iris alba, 20 seeds
      sow L 2026-01-01, 10 seeds
      sow L ${second}, 10 seeds
      count L 2026-02-01, 8
    `));
    expect(known(sown('2026-01-20').germination.sown)).toMatchObject({ x: 8, n: 20 });
    expect(sown('2026-01-20').meanTime.mean).toEqual({ undefined: 'it was sown in portions, each with its own day 0' });
    expect(valueOf(sown('2026-01-04').meanTime.mean)).toBe(31);
    expect(sown('2026-01-05').meanTime.mean).toHaveProperty('undefined');
  });

  test('of seed that is sown once more after a soak keeps its days', () => {
    expect(days(course(`
      lot L Iris alba, 20 seeds
      sow L 2026-01-01
      count L 2026-02-01, 0
      soak L 2026-02-02 19:00, water, 24 h
      sow L 2026-02-03
      count L 2026-03-01, 4
    `))).toEqual([[31, 0], [59, 4]]);
  });

  test('is undefined where seed that had not germinated was picked out between two counts', () => {
    const source = `
      lot L Iris alba, 20 seeds
      sow L 2026-01-01
      count L 2026-01-11, 4
      split L 2026-01-12, A 8 seeds`;
    const { root } = lotOf(`${source}\n      count L 2026-02-01, 3`);
    expect(courseOf(root)).toEqual({ undefined: 'seed that had not germinated was taken out after counting began' });
    // As long as nothing is counted later, what was seen by then stands.
    expect(days(course(source))).toEqual([[10, 4]]);
    expect(course(source).sown).toBe(20);
    expect(days(course(`${source}\n      move L 2026-01-13, at frame`))).toEqual([[10, 4]]);
    const left = source.replace('split L 2026-01-12, A 8 seeds', 'send L 2026-01-12, 8 seeds, to a friend');
    expect(courseOf(lotOf(`${left}\n      count L 2026-02-01, 3`).root)).toHaveProperty('undefined');
    // Nothing had grown: those split off are as good a part as those that stay.
    const none = source.replace('count L 2026-01-11, 4', 'count L 2026-01-11, 0, 2 lost');
    expect(days(course(`${none}\n      count L 2026-02-01, 3`))).toEqual([[10, 0], [31, 3]]);
  });

  test('is that of seed split off after the sowing, with the day 0 of its parent', () => {
    expect(course(`
      lot L Iris alba, 20 seeds
      sow L 2026-01-01
      split L 2026-01-12, A 8 seeds
      count L/A 2026-02-01, 3
    `, 'L/A')).toMatchObject({ sown: 8, checks: [{ day: 31, germinated: 3 }] });
  });

  test('as it stood before a day lacks later checks', () => {
    const { root } = lotOf(`
      lot L Iris alba, 20 seeds
      sow L 2026-01-01
      count L 2026-01-11, 4
      count L 2026-01-21, 3
      cut L 2026-01-31, 13 dead
    `);
    const until = (iso: string) => days(courseUntil(known(courseOf(root)), root.origin!.moment.day, dayOfIso(iso)!));
    expect(until('2026-01-31')).toEqual([[10, 4], [20, 7]]);
    expect(until('2026-01-21')).toEqual([[10, 4]]);
    expect(until('2026-01-11')).toEqual([]);
    const { root: portions } = lotOf('lot L Iris alba, 20 seeds\nsow L 2026-01-01, 10 seeds\nsow L 2026-01-20, 10 seeds\ncount L 2026-02-01, 8');
    expect(courseUntil(known(courseOf(portions)), portions.origin!.moment.day, dayOfIso('2026-02-02')!).untimed)
      .toBe('it was sown in portions, each with its own day 0');
  });
});
