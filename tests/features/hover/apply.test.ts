import { expect, test } from 'vitest';
import { hover } from '../journals.ts';

/** Two batches of 20 seedlings, ten of each stuck in their coats; what is said over the drops that A was given. */
function told(drops: string, ...after: string[]): string[] {
  const markdown = hover(`
    lot MEC-26 Meconopsis integrifolia, 40 seeds
    split MEC-26, A 20 seeds, B 20 seeds
    sow MEC-26/A 2026-01-01, 20 seeds, 18 C
    sow MEC-26/B 2026-01-01, 20 seeds, 18 C
    count MEC-26/A 2026-01-20, 20, 10 stuck
    count MEC-26/B 2026-01-20, 20, 10 stuck
    apply MEC-26/A 2026-01-21, ${drops}
    ^^^^^ here
    ${after.join('\n    ')}
  `, '2026-03-01')!;
  return markdown.split('\n').filter(line => /against no drops|freed|alive|unknown:/.test(line));
}

test('drops on stuck seedlings tell the verdict of the report', () => {
  expect(told('GA3 100 ppm, 2 drops, 20 seedlings', 'count MEC-26/A 2026-02-01, 9 freed', 'count MEC-26/B 2026-02-01, 2 freed')).toEqual([
    '**Drops of GA3 100 ppm (MEC-26/A) against no drops (MEC-26/B)**',
    expect.stringMatching(/^- The drops helped: 9 of 10 \(90 %\) stuck seedlings were freed, and 2 of 10 \(20 %\) without drops: 70 points more/),
    expect.stringMatching(/^- Still alive: 20 of 20 \(100 %\) seedlings, and 20 of 20 \(100 %\) without drops/),
  ]);
});

test('drops that cannot be judged tell why', () => {
  expect(told('GA3 100 ppm, 2 drops, 10 seedlings')).toEqual([
    'Whether the drops helped is unknown: its seedlings were not counted after the drops.',
  ]);
  expect(told('GA3 100 ppm, 4 seedlings', 'count MEC-26/A 2026-02-01, 9 freed')).toEqual([
    'Whether the drops helped is unknown: 4 of its 10 stuck seedlings were given drops, and the counts do not tell which of them were freed.',
  ]);
});

test('drops on seedlings of which none was stuck tell nothing of the kind', () => {
  expect(hover(`
    lot MEC-26 Meconopsis integrifolia, 40 seeds
    sow MEC-26 2026-01-01, 20 seeds
    count MEC-26 2026-01-20, 20
    apply MEC-26 2026-01-21, GA3 100 ppm, 2 drops
    ^^^^^ here
    count MEC-26 2026-02-01, 0
  `, '2026-03-01')).not.toMatch(/helped|unknown:/);
});
