import fc from 'fast-check';
import { expect, test } from 'vitest';
import { best } from '../../../server/src/features/completion/best.ts';

test('the best of any items are the first that sorting all of them gives, equal ones in their order', () => {
  const item = fc.record({ rank: fc.integer({ min: 0, max: 5 }), name: fc.string({ maxLength: 2 }) });
  fc.assert(fc.property(fc.array(item), fc.integer({ min: 0, max: 8 }), (items, most) => {
    const compare = (a: { rank: number }, b: { rank: number }) => a.rank - b.rank;
    expect(best(items, most, compare)).toEqual([...items].sort(compare).slice(0, most));
  }));
});
