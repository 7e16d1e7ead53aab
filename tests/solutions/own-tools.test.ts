import { describe, expect, test } from 'vitest';
import { exact } from '../../server/src/solutions/amounts.ts';
import { builtInAgents } from '../../server/src/solutions/agents.ts';
import { planMix } from '../../server/src/solutions/mix.ts';
import { leastText, ownBench, toolOf, toolsFor } from '../../server/src/solutions/tools.ts';

describe('a tool of one’s own', () => {
  test.each([
    ['0.01 g', 'your scale that shows 0.01 g', '100 mg'],
    ['1 mg', 'your scale that shows 1 mg', '10 mg'],
    ['5 mL by 0.1 mL', 'your 5 mL measure marked every 0.1 mL', '2 mL'],
    ['10mL by 0.5mL', 'your 10 mL measure marked every 0.5 mL', '10 mL'],
    ['  2 mL by 2 mL ', 'your 2 mL measure marked every 2 mL', '40 mL'],
    [' 2 g ', 'your scale that shows 2 g', '20 g'],
  ])('%s', (text, name, least) => {
    const tool = toolOf(text)!;
    // Ten steps of a mass, twenty of a volume.
    expect([tool.name, leastText(tool)]).toEqual([name, least]);
  });

  test.each(['', '5 mL', '0 g', '1 mL by 5 mL', '5 mL by 0 mL', '0 mL by 0 mL', 'a spoon', '0.01'])('none: “%s”', text => {
    expect(toolOf(text)).toBeUndefined();
  });

  test('takes the place of those of a kitchen that measure the same; of the others the kitchen’s stay', () => {
    const bench = ownBench(['0.001 g', '0.1 g'], undefined);
    expect(toolsFor('mass', bench).map(({ name }) => name)).toEqual(['your scale that shows 0.1 g', 'your scale that shows 0.001 g']);
    expect(toolsFor('volume', bench)).toEqual(toolsFor('volume', 'kitchen'));
    expect(ownBench([], undefined)).toBe('kitchen');
  });

  test('is held to the tolerance: half a step of 10 mg is 10 % of 50 mg and 1 % of 500 mg', () => {
    const least = (percent: number) => toolsFor('mass', ownBench(['0.01 g'], percent)).map(leastText);
    expect(least(10)).toEqual(['50 mg']);
    expect(least(1)).toEqual(['500 mg']);
  });

  test('is held to no tolerance that is none: up to half of the amount, and above nothing', () => {
    const least = (percent: number | undefined) => toolsFor('mass', ownBench(['0.01 g'], percent)).map(leastText);
    expect(least(50)).toEqual(['10 mg']);
    for (const none of [undefined, 0, -1, 50.5, 1000]) expect(least(none)).toEqual(['100 mg']);
    // Without a tool of their own, a grower may still say how exact it has to be.
    expect(toolsFor('volume', ownBench([], 5)).map(leastText)).toEqual(toolsFor('volume', 'kitchen').map(tool =>
      leastText({ ...tool, fewest: exact(10) })));
  });

  test('is filled up to five times before the rest is taken as it comes', () => {
    const made = (ml: number) => planMix({
      agent: builtInAgents.get('GA3')!, strength: { value: 500, unit: 'ppm' }, volume: { value: ml, unit: 'mL' },
      source: { kind: 'stock', strength: { value: 1000, unit: 'ppm' } }, bench: ownBench(['10 mL by 0.1 mL'], undefined),
    });
    expect(made(49.97)).toMatchObject({ amounts: { makeUpTo: { measured: { value: 50 } } } });
    expect(made(50.03)).toMatchObject({ amounts: { makeUpTo: { measured: { value: 50.03 } } } });
  });
});

test('a plan goes by the tools that there are', () => {
  // 500 mg/L in 200 mL are 100 mg.
  const plan = (bench: ReturnType<typeof ownBench>) => planMix({
    agent: builtInAgents.get('GA3')!, strength: { value: 500, unit: 'ppm' }, volume: { value: 200, unit: 'mL' },
    source: { kind: 'powder' }, bench,
  });
  expect(plan(ownBench(['0.1 g'], undefined))).toMatchObject({ possible: false, code: 'too-little-to-weigh' });
  expect(plan(ownBench(['0.01 g'], undefined))).toMatchObject({ possible: true });
  expect(plan(ownBench(['0.01 g'], 1))).toMatchObject({ possible: false });
});
