import { expect, test } from 'vitest';
import { parse } from '../../server/src/syntax/parse.ts';

test.each([
  ['?', 'A line begins with a letter (a record), “#” (a comment) or a blank (a remark). Begin it with a keyword, or put “#” or a blank before it.'],
  ['coutn A-1/B, 3', '“coutn” is not a keyword. Did you mean “count”?'],
  ['sow 2026-02-01', '“sow” must be followed by a lot or a batch. For example: sow VER-24/A 2026-01-11 19:10, 24 seeds, 18 C, at bag 4'],
  ['count A-1, 3 sprouted', '“count” does not take “sprouted”. Did you mean “germinated”?'],
  ['count A-1, 3, 4 germinated', 'This line gives “germinated” twice. Keep one of the two.'],
  ['split A-1, A 3 seeds, A 4 seeds', 'This line gives “A” twice. Keep one of the two.'],
  ['soak A-1, GA3 5 ppm, GA3 50 ppm', 'This line gives “GA3” twice. Keep one of the two.'],
  ['sow A-1, at bag 1, at bag 2', 'This line gives a fact such as “at bag 3 slot 2” twice. Keep one of the two.'],
  ['note A-1', '“note” needs a text. For example: note VER-24 2026-02-01, seed coats very hard this year'],
  ['count A-1, 0,5', '“0,5” has a comma inside a number. Between two facts put a blank behind the comma.'],
  ['sow A-1, 18,5 C', '“18,5” has a comma inside a number. Write 18.5: a decimal point, and nothing between thousands.'],
  ['soak A-1, GA3 500 pmm', '“pmm” is not a unit of strength. Did you mean “ppm”?'],
  ['chill A-1, 101 years', '“101 years” is not a time that can be meant here. Write 100 years at most.'],
  ['count A-1 4/1/2026, 3', '“4/1/2026” does not begin with the year. Write the date as year-month-day: 2026-01-04 or 2026-04-01.'],
  ['count A-1 2026-02-30, 3', 'There is no 2026-02-30 in the calendar. February 2026 has 28 days.'],
  ['count A-1 2026-2-3, 3', '“2026-2-3” is not a date. Write 2026-02-03: year, month and day with hyphens.'],
  ['soak A-1 25:00, water', '“25:00” is not a time of day. Write hours from 00 to 23 and minutes from 00 to 59: 19:30.'],
  ['sow A-1, in "loam', 'This quotation mark is not closed. Put a second " at the end of the text.'],
])('of %j is said: %s', (line, message) => {
  expect(parse(line).problems.map(problem => problem.message)).toEqual([message]);
});
