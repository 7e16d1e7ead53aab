import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

async function plan(...args: string[]) {
  return plumule(await folderWith({}), 'plan', ...args);
}

describe('plumule plan', () => {
  it('says for poor, middling and good germination what so many seeds can show, and what would show more', async () => {
    const { code, stdout, stderr } = await plan('12', '12');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatchInlineSnapshot(`
      "12 treated and 12 untreated seeds
        Untreated  Treated must reach  In several dishes
        10 %       64 % or more        84 % (2 dishes of 6)
        40 %       95 % or more
        70 %       – (not even 100 %)
      So much must germinate for the verdict “worth repeating” 4 times in 5.
      “In several dishes”: so many on each side, of so many seeds each.
      It is assumed that you count both sides on the same days, about weekly, and that treated seed
      germinates no sooner.
      With one dish a side, the two dishes are assumed to be alike; nothing can show that afterwards.
      Dishes are assumed to differ a little, as they do (correlation 0.05).
      "
    `);
  });

  it('counts dishes, and treatments that share the untreated seed', async () => {
    expect((await plan('48', '48', '--dishes', '4')).stdout).toMatchInlineSnapshot(`
      "48 treated and 48 untreated seeds, in 4 dishes each
        Untreated  Treated must reach
        10 %       48 % or more
        40 %       83 % or more
        70 %       100 %
      So much must germinate for the verdict “worth repeating” 4 times in 5.
      It is assumed that you count both sides on the same days, about weekly, and that treated seed
      germinates no sooner.
      Dishes are assumed to differ a little, as they do (correlation 0.05).
      "
    `);
    expect((await plan('24', '24', '--treatments', '3', '--share', '20%')).stdout).toMatch(/^With 24 treated and 24 untreated seeds, one of 3 treatments, /);
    expect(await plan('12', '12', '--dishes', '13')).toMatchObject({ code: 2, stderr: 'plumule: --dishes: 12 seeds do not fill 13 dishes\n' });
    expect((await plan('12', '12', '--dishes', 'x', '--treatments', '0')).stderr).toBe(
      'plumule: --dishes: “x” is not a number of dishes from 1 to 20\nplumule: --treatments: “0” is not a number of treatments from 1 to 20\n');
  });

  it('says it in a sentence for a share that is known', async () => {
    for (const share of ['20%', '20 %', '20']) {
      expect((await plan('20', '4', '--share', share)).stdout).toMatch(/^With 20 treated and 4 untreated seeds, the verdict is “worth repeating” 4 times in 5 if 20 % germinate untreated and \d\d % treated\./);
    }
    expect((await plan('400', '300')).stdout).toContain('the verdict finds any gain of 15 points');
  });

  it('is data at full precision where that is asked for', async () => {
    const { stdout } = await plan('12', '12', '--format', 'json');
    const { plans, ...head } = JSON.parse(stdout) as { plans: { share: number; visible: number }[] };
    expect(head).toEqual({ version: 1, plumule: version });
    expect(plans.map(({ share }) => share)).toEqual([0.1, 0.4, 0.7]);
    expect(plans[1]!.visible).toBeCloseTo(0.945, 3);
    expect(plans[2]!.visible).toEqual({ undefined: expect.any(String) as string });
  });

  it('refuses what is no number of seeds and no percentage, and ends with 2', async () => {
    expect(await plan('a', '0', '--share', '140 %')).toEqual({
      code: 2, stdout: '',
      stderr: 'plumule: “a” is not a number of seeds from 1 to 1000000\nplumule: “0” is not a number of seeds from 1 to 1000000\n'
        + 'plumule: --share: “140 %” is not a percentage from 0 to 100\n',
    });
    expect((await plan('12')).code).toBe(2);
  });
});
