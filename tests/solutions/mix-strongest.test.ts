import { expect, test } from 'vitest';
import { exact } from '../../server/src/solutions/amounts.ts';
import { inPpm, plan, powder } from './asked.ts';
import { agent } from './helpers.ts';

test('a plan of the strongest that dissolves is not stronger for what the tools round', () => {
  // 555.6 mg and 165 mg to the nearest step would be 560 mg (5040 ppm) and 170 mg (5152 ppm).
  const fine = plan('GA3', inPpm(5000), 100, { kind: 'powder', purity: { percent: 90 } });
  expect([fine.amounts.powder?.measured.text, fine.result.text]).toEqual(['550 mg', '4950 ppm']);
  const coarse = plan('GA3', inPpm(5000), 33, powder, { bench: 'kitchen' });
  expect([coarse.amounts.powder?.measured.text, coarse.result.text]).toEqual(['160 mg', '4848 ppm']);
  // A sixteenth of 100 mg makes 11.25 mL of 500 ppm, which would be measured as 11.2.
  const soluble = { ...agent('GA3'), solubility: { ppm: exact(500), source: { kind: 'journal', text: '' } as const } };
  const packet = plan('GA3', inPpm(500), 7, { kind: 'packet', mass: { value: 100, unit: 'mg' }, purity: { percent: 90 } }, { agent: soluble, bench: 'kitchen' });
  expect([packet.amounts.makeUpTo.measured.text, packet.result.text]).toEqual(['11.4 mL', '493 ppm']);
  // Below it they round to the nearest.
  expect(plan('GA3', inPpm(4900), 100, { kind: 'powder', purity: { percent: 90 } }).amounts.powder?.measured.text).toBe('540 mg');
});
