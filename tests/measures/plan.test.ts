import { describe, expect, test } from 'vitest';
import { plan } from '../../server/src/measures/plan.ts';

const words = (...asked: Parameters<typeof plan>) => plan(...asked).sentence;

describe('the plan of a trial', () => {
  test('tells what these numbers of seed can show, and a division that shows more', () => {
    expect(words(20, 4, 0.2)).toMatchInlineSnapshot('"With 20 treated and 4 untreated seeds, the verdict is “worth repeating” 4 times in 5 if 20 % germinate untreated and 93 % treated. With 10 and 14, 78 % treated are enough."');
  });

  test('does not speak of a division that is hardly better', () => {
    expect(words(13, 11, 0.2)).toMatch(/ germinate untreated and \d+ % treated\.$/);
  });

  test('says where nothing can be shown', () => {
    expect(words(3, 3, 0.4)).toBe('With 3 treated and 3 untreated seeds, “worth repeating” is unlikely even if 40 % germinate untreated and all treated.');
  });

  test('counts dishes and treatments', () => {
    const dishes = { treated: 4, untreated: 4 };
    expect(words(48, 48, 0.4, { dishes, treatments: 1 })).toMatchInlineSnapshot('"With 48 treated seeds in 4 dishes and 48 untreated in 4, the verdict is “worth repeating” 4 times in 5 if 40 % germinate untreated and 83 % treated."');
    expect(words(24, 24, 0.2, { dishes: { treated: 1, untreated: 1 }, treatments: 3 })).toMatchInlineSnapshot('"With 24 treated and 24 untreated seeds, one of 3 treatments, the verdict is “worth repeating” 4 times in 5 if 20 % germinate untreated and 67 % treated. With 19 and 39, 64 % treated are enough."');
    expect(plan(48, 48, 0.4).inDishes).toMatchObject({ dishes: 4 });
    expect(plan(48, 48, 0.4, { dishes, treatments: 1 }).inDishes).toBeUndefined();
    for (const [treated, untreated] of [[1, 2], [2, 1]] as const) {
      expect(plan(6, 6, 0.4, { dishes: { treated, untreated }, treatments: 1 }).inDishes).toBeUndefined();
    }
  });

  test('of more seeds than are reckoned with says what so many show at least', () => {
    expect(words(400, 300, 0.5)).toBe('With 400 treated and 300 untreated seeds, the verdict finds any gain of 15 points (4 times in 5).');
    expect(plan(6000, 40, 0.5).isMany).toBe(false);
    expect(plan(600, 20, 0.1).best).toMatchObject({ treated: 310, untreated: 310 });
  });

  test('is the same when it is asked for again', () => {
    expect(plan(9, 9, 0.3)).toBe(plan(9, 9, 0.3));
  });
});
