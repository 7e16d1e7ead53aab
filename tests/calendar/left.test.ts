import { expect, test } from 'vitest';
import { stocksNow } from '../../server/src/calendar/left.ts';
import { toNumber } from '../../server/src/solutions/display.ts';
import { journalOf, moment } from './helpers.ts';

const stock = 'stock G1 2026-01-09, GA3 20 mg, 20 mL\nlot A Iris alba, 10 seeds\nsow A 2026-01-10\n';

function left(source: string, now = '2026-02-01') {
  return stocksNow(journalOf(stock + source), moment(now)).map(({ solution: { id }, left: some, found, ...said }) => ({
    id, mL: some && [some.least, some.most].map(toNumber), found: found && toNumber(found.amount),
    notMeasured: said.notMeasured, overdrawn: said.overdrawn, emptied: said.emptied,
  }));
}

const whole = { id: 'G1', mL: [20, 20], found: undefined, notMeasured: 0, overdrawn: false, emptied: undefined };

test('what is left of a bottle is what was made up less what was taken by now', () => {
  expect(left('')).toEqual([whole]);
  expect(left('', '2026-01-08')).toEqual([]);
  expect(left('apply A 2026-01-20, G1 5 mL\napply A 2026-02-02, G1 5 mL')).toEqual([{ ...whole, mL: [15, 15] }]);
});

test('nothing is left of a bottle that was used up, overdrawn or thrown away', () => {
  const none = { ...whole, mL: [0, 0] };
  expect(left('apply A 2026-01-20, G1 20 mL')).toEqual([{ ...none, emptied: moment('2026-01-20') }]);
  expect(left('apply A 2026-01-20, G1 21 mL')).toEqual([{ ...none, emptied: moment('2026-01-20'), overdrawn: true }]);
  expect(left('note G1 2026-01-21, thrown away')).toEqual([{ ...none, emptied: moment('2026-01-21') }]);
  expect(left('note G1 2026-01-21, not thrown away')).toEqual([whole]);
});
