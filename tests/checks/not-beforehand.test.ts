import { expect, test } from 'vitest';
import { expectMarked, problemsIn } from './marked.ts';

const started = `
    lot L Iris alba, 60 seeds
    split L, A 24 seeds, B 24 seeds
    soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
    soak L/B 2026-01-10 19:00, water, 24 h
    sow L/A 2026-01-11 19:00
    sow L/B 2026-01-11 19:00`;

test('a day that was named beforehand is no problem, neither before nor after the counts', () => {
  expectMarked(['not-beforehand'], `${started}
    judge L 2026-01-11, on day 60
  `);
  expectMarked(['not-beforehand'], `${started}
    judge L 2026-01-11, on day 60
    count L/A 2026-01-20, 0
    count L/B 2026-02-01, 3
    count L/A 2026-03-20, 3
    count L/B 2026-03-20, 3
  `);
});

test('one that was named when seed of either side had been seen is, on the day itself too', () => {
  expectMarked(['not-beforehand'], `${started}
    count L/A 2026-01-25, 0
    count L/B 2026-01-25, 1 rotted
    judge L 2026-01-25, on 2026-03-01
                        ^^^^^^^^^^^^^ not-beforehand
    count L/A 2026-03-01, 3
    count L/B 2026-03-01, 3
  `);
});

test('a second one is, whenever it was written', () => {
  expectMarked(['not-beforehand'], `${started}
    judge L 2026-01-11, on day 60
    judge L 2026-01-12, on day 90
                        ^^^^^^^^^ not-beforehand
  `);
  expectMarked(['not-beforehand'], `${started}
    judge L 2026-01-11, on day 60
    count L/A 2026-02-01, 3
    count L/B 2026-02-01, 1
    judge L 2026-02-02, on day 90
                        ^^^^^^^^^ not-beforehand
  `);
});

test('one that was written when the day was over is not, for it is about another sowing', () => {
  expectMarked(['not-beforehand'], `${started}
    judge L 2026-01-11, on 2026-03-12
    judge L 2026-03-12, on 2027-03-12
                        ^^^^^^^^^^^^^ not-beforehand
    judge L 2026-03-13, on 2027-03-12
  `);
});

test('a day that does not lie ahead is none', () => {
  expectMarked(['not-beforehand'], `${started}
    judge L 2026-01-12, on 2026-01-12
                        ^^^^^^^^^^^^^ not-beforehand
  `);
});

test('the trial of a second winter has a day of its own', () => {
  expectMarked(['not-beforehand'], `
    lot L Iris alba, 60 seeds
    split L, A 12 seeds, B 12 seeds, C 12 seeds, D 12 seeds
    judge L 2026-01-10, on 2026-04-01
    soak L/A 2026-01-10 19:00, GA3 500 ppm, 24 h
    soak L/B 2026-01-10 19:00, water, 24 h
    sow L/A 2026-01-11 19:00
    sow L/B 2026-01-11 19:00
    count L/A 2026-04-01, 5
    count L/B 2026-04-01, 3
    discard L/A 2026-04-20
    discard L/B 2026-04-20
    judge L 2027-01-10, on 2027-04-01
    soak L/C 2027-01-10 19:00, GA3 500 ppm, 24 h
    soak L/D 2027-01-10 19:00, water, 24 h
    sow L/C 2027-01-11 19:00
    sow L/D 2027-01-11 19:00
  `, { now: '2027-02-01' });
});

test('the message says why, and the fixes keep the day as a reminder or strike the line out', () => {
  const [problem] = problemsIn('not-beforehand', `${started}
    count L/A 2026-01-25, 3
    judge L 2026-02-25, on 2026-03-01
  `);
  expect(problem!.message).toBe('This “judge” of L does not count: by 2026-02-25 you had seen seed germinate or rot. '
    + 'Set the day before anything comes up. You can keep the day as a reminder.');
  expect(problem!.fixes.map(({ text }) => text)).toEqual(['due L 2026-03-01, judge the trial', '# ']);
  // A day by the age of the seed that had passed is none to be reminded of.
  const [gone] = problemsIn('not-beforehand', `${started}
    count L/A 2026-01-25, 3
    judge L/A 2026-02-25, on day 30
  `);
  expect(gone!.fixes.map(({ text }) => text)).toEqual(['# ']);
  const [past] = problemsIn('not-beforehand', `${started}
    count L/A 2026-01-25, 3
    judge L 2026-02-25, on day 30
  `);
  expect(past!.fixes.map(({ text }) => text)).toEqual(['# ']);
});
