import { describe, expect, test } from 'vitest';
import { hover } from '../journals.ts';

/** A lot of batches of 24: what each lay in, how many germinated, and how many of these were leggy. */
function lot(mark: string, ...parts: readonly (readonly [soak: string, up: number, leggy?: number])[]): string {
  const names = parts.map((_, i) => String.fromCharCode(65 + i));
  return [
    'lot PEN-25 Penstemon digitalis, 120 seeds', mark,
    `split PEN-25, ${names.map(name => `${name} 24 seeds`).join(', ')}`,
    ...parts.map(([soak], i) => `soak PEN-25/${names[i]!} 2025-10-11 18:00, ${soak}, 24 h`),
    ...parts.map((_, i) => `sow PEN-25/${names[i]!} 2025-10-12 18:00`),
    ...parts.map(([, up, leggy], i) => `count PEN-25/${names[i]!} 2025-11-11, ${up}${leggy ? `, ${leggy} leggy` : ''}`),
    ...parts.map((_, i) => `discard PEN-25/${names[i]!} 2025-11-12`),
  ].join('\n');
}

const here = '    ^^^^^^ here';

describe('hover on a lot with a trial', () => {
  test('tells first whether the soak paid, and what stands behind that', () => {
    const [, verdict] = hover(lot(here, ['GA3 500 ppm', 18, 4], ['water', 7]), '2025-12-01')!.split('\n\n');
    // R 4.2.2: Wilson limits squared and added for 18 and 7 of 24, 0.1762 to 0.6512.
    expect(verdict).toBe('- **GA3 500 ppm 24 h (A) against water 24 h (B)** – Worth repeating: by day 30, 18 of 24 treated seeds '
      + 'had germinated (75 %) and 7 of 24 untreated (29 %): 46 points more (95 % interval 18 to 65). It comes at a price: 4 of 18 treated seedlings are weak (leggy, abnormal or dead) and 0 of 7 untreated. With one dish a side, a '
      + 'difference between the two dishes themselves would look the same.  \n'
      + '  Leggy 4 of 18 against 0 of 7');
  });

  test('shows a ladder of doses as a table with its trend', () => {
    const blocks = hover(lot(here, ['GA3 1000 ppm', 9], ['water', 2], ['GA3 250 ppm', 8], ['GA3 500 ppm', 21]), '2025-12-01')!.split('\n\n');
    expect(blocks[1]!.split('\n')).toEqual([
      '| GA3 | Batch | Germinated | T50 | Verdict |',
      '| :-- | :-- | :-- | :-- | :-- |',
      '| water 24 h | B | 2 of 24 = 8.3 % | before day 30 |  |',
      '| GA3 250 ppm 24 h | C | 8 of 24 = 33.3 % | before day 30 | worth repeating |',
      '| GA3 500 ppm 24 h | D | 21 of 24 = 87.5 % | before day 30 | worth repeating |',
      '| GA3 1000 ppm 24 h | A | 9 of 24 = 37.5 % | before day 30 | worth repeating |',
    ]);
    // R 4.2.2: prop.trend.test(c(2, 8, 21, 9), rep(24, 4)) has p 0.001645.
    expect(blocks[2]).toBe('Trend: 14 points more from each dose to the next (Cochran-Armitage, p 0.0016). Best dose: 500 ppm. '
      + 'The verdicts allow for the number of doses.');
  });

  test('says of which doses the strength is only about known, and no more digits of a dose than anybody measures', () => {
    // A quarter by eye of 100 mg in 100 mL is 250 ppm, 18 mg in 19 mL are 947.4 ppm.
    const stocks = 'stock E1 2025-10-01, GA3 100 mg halved 2 times, 100 mL\nstock G1 2025-10-01, GA3 20 mg, purity 90 %, 19 mL\n';
    const text = (up: readonly number[]) => hover(stocks
      + lot(here, ['water', 2], ['E1 10 mL', up[0]!], ['G1 10 mL', up[1]!]), '2025-12-01')!;
    expect(text([21, 9])).toContain('| GA3 about 250 ppm 24 h | B | 21 of 24 = 87.5 % |');
    expect(text([21, 9])).toContain('Best dose: about 250 ppm.');
    expect(text([9, 21])).toContain('Best dose: 947 ppm.');
    expect(text([18, 19])).toContain('No best dose: 947 ppm has the most sound seedlings, but cannot be told apart from about 250 ppm.');
  });

  test('tells what other lots of the plant add', () => {
    const other = lot('', ['GA3 250 ppm', 15], ['water', 6]).replaceAll('PEN-25', 'PEN-26').replaceAll('2025', '2026');
    const text = hover(`${lot(here, ['GA3 500 ppm', 18], ['water', 7])}\n${other.replace('\n\n', '\n')}`, '2026-12-01');
    expect(text).toMatch(/- \*\*GA3 \(250 to 500 ppm\) on Penstemon digitalis\*\* – Worth repeating: in 2 lots 42 points more of the treated seeds/);
    expect(hover(lot(here, ['GA3 500 ppm', 18], ['water', 7]), '2026-12-01')).not.toContain('in 1 lot');
  });

  test('says nothing of a trial where there is none', () => {
    expect(hover(lot(here, ['water', 18], ['water', 7]), '2025-12-01')).not.toMatch(/against|Worth|Trend/);
  });

  test('writes journal text as it stands', () => {
    const text = hover(lot(here, ['*x* 5 ppm', 18], ['water', 7]), '2025-12-01');
    expect(text).not.toContain('**x');
  });
});

describe('hover on a batch of a trial', () => {
  test('tells how it did against the untreated seed', () => {
    const batch = lot('', ['GA3 500 ppm', 18], ['water', 7]).replace('discard PEN-25/A', 'discard PEN-25/A')
      .replace('\n\n', '\n').replace('count PEN-25/A 2025-11-11, 18', 'count PEN-25/A 2025-11-11, 18\n      ^^^^^^^^ here');
    expect(hover(batch, '2025-12-01')).toContain('\n\n**GA3 500 ppm 24 h (A) against water 24 h (B)** – Worth repeating: ');
    const control = batch.replace('      ^^^^^^^^ here\n', '').replace(', 7\n', ', 7\n      ^^^^^^^^ here\n');
    expect(hover(control, '2025-12-01')).not.toContain('Worth repeating');
  });
});
