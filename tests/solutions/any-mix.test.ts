import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StrengthUnit } from '../../server/src/model/quantity.ts';
import { builtInAgents } from '../../server/src/solutions/agents.ts';
import type { MixRequest } from '../../server/src/solutions/mix-plan.ts';
import { planMix } from '../../server/src/solutions/mix.ts';

describe('any answer of the planner', () => {
  const request: fc.Arbitrary<MixRequest> = fc.record({
    agent: fc.constantFrom(...builtInAgents.values()),
    strength: fc.record({
      value: fc.oneof(fc.integer({ min: 0, max: 10_000 }), fc.double({ min: 0, max: 1e6, noNaN: true })),
      unit: fc.constantFrom<StrengthUnit>('ppm', 'mg/L', 'g/L', '%', 'mM', 'uM'),
    }),
    volume: fc.record({
      value: fc.double({ min: 0, max: 1e5, noNaN: true }), unit: fc.constantFrom('L' as const, 'mL' as const, 'uL' as const),
    }),
    source: fc.oneof(
      fc.constant({ kind: 'powder' as const }),
      fc.double({ min: 0.01, max: 1e4, noNaN: true }).map(value => ({ kind: 'stock' as const, strength: { value, unit: 'g/L' as const } })),
      fc.record({ kind: fc.constant('packet' as const), mass: fc.constant({ value: 1, unit: 'g' as const }), halved: fc.nat(6) }),
    ),
    bench: fc.constantFrom('kitchen' as const, 'laboratory' as const),
  });

  it('is a plan within what the tools round, or a refusal that says why; and JSON loses nothing of it', () => {
    fc.assert(fc.property(request, (asked) => {
      const answer = planMix(asked);
      expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
      expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity|undefined|null/);
      if (!answer.possible) {
        expect(answer.message).toMatch(/\w.*\.$/);
        return;
      }
      expect(Math.abs(answer.result.offPercent)).toBeLessThan(8);
      expect(answer.result.limits.lowPpm).toBeLessThanOrEqual(answer.result.ppm);
      expect(answer.result.limits.highPpm).toBeGreaterThanOrEqual(answer.result.ppm);
      expect(answer.cautions[0]?.id).toBe('label-first');
    }), { numRuns: 500 });
  });
});
