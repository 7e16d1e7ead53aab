import { describe, expect, it } from 'vitest';
import { dayOfIso } from '../../server/src/model/day.ts';
import type { Strength } from '../../server/src/model/quantity.ts';
import type { MixPlan } from '../../server/src/solutions/mix-plan.ts';
import { fromStock, inPpm, plan, steps } from './asked.ts';

describe('the bottle that a plan ends with', () => {
  const kept = (made: MixPlan): string => steps(made).at(-1)!;
  const today = dayOfIso('2026-01-10')!;
  const half = { value: 0.5, unit: '%' } as const;

  it('is good for as long as growers keep such a one, and no longer than what it was made from', () => {
    const until = (sourceUntil?: string) => kept(plan('bleach', half, 100, fromStock(5, '%'), {
      keeping: { today, sourceUntil: sourceUntil === undefined ? undefined : dayOfIso(sourceUntil) },
    }));
    const day = /Good until 2026-01-11 \(keeps 1 day; bleach once diluted/;
    expect(until()).toMatch(day);
    expect(until('2026-01-11')).toMatch(day);
    expect(until('2026-01-12')).toMatch(day);
    expect(until('2026-01-10')).toMatch(/Good until 2026-01-10 \(no longer than what it was made from\)/);
  });

  it('undiluted keeps as it was bought, or as the stock that it is', () => {
    const undiluted = (word: string, ppm: Strength) => kept(plan(word, ppm, 100, { kind: 'stock', strength: ppm }, { keeping: { today } }));
    // Eight weeks once opened; four years for a stock of GA3 by default.
    expect(undiluted('bleach', { value: 5, unit: '%' })).toContain('Good until 2026-03-07');
    expect(undiluted('thiourea', inPpm(1000))).toContain('Good until 2026-07-10');
  });

  it('has a time and no last day where today is unknown', () => {
    const made = plan('bleach', half, 100, fromStock(5, '%'));
    expect(kept(made)).toContain('It keeps 1 day (bleach once diluted');
    expect(JSON.stringify(made.steps)).not.toMatch(/\d{4}-\d\d-\d\d/);
  });
});
