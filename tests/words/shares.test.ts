import { describe, expect, test } from 'vitest';
import { intervalText, shareText, shortShareText } from '../../server/src/words/shares.ts';

// Wilson limits: Newcombe 1998, Stat Med 17:857-872; of 17/20 check values computed with R 4.2.2, prop.test without
// correction.
describe('a share in words', () => {
  test.each([
    [0, 20, '0 of 20 = 0 %', '0 to 16.1'],
    [1, 29, '1 of 29 = 3.4 %', '0.6 to 17.2'],
    [15, 148, '15 of 148 = 10.1 %', '6.2 to 16'],
    [81, 263, '81 of 263 = 30.8 %', '25.5 to 36.6'],
    [17, 20, '17 of 20 = 85 %', '64 to 94.8'],
    [10, 10, '10 of 10 = 100 %', '72.2 to 100'],
  ])('%i of %i', (x, n, share, interval) => {
    expect(shareText(x, n)).toBe(share);
    expect(intervalText(x, n)).toBe(`95 % Wilson interval ${interval} %`);
    expect(shortShareText(x, n)).toBe(`${share.split(' = ')[1]!} (${interval})`);
  });

  test('that is not quite nothing or everything is not said to be', () => {
    expect(shareText(1, 4000)).toBe('1 of 4000 = <0.1 %');
    expect(shareText(3999, 4000)).toBe('3999 of 4000 = >99.9 %');
    expect(shareText(1, 2000)).toBe('1 of 2000 = 0.1 %');
  });
});
