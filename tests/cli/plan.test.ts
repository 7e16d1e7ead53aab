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
    // R 4.2.2, exact power of fisher.test: 12 against 12 has 0.810 at 69 and 10 %, 0.814 at 96 and 40 %.
    expect(stdout).toBe(`12 treated and 12 untreated seeds
  Untreated  Treated must reach  Better split
  10 %       69 % or more        13 and 11: 64 %
  40 %       96 % or more        11 and 13: 93 %
  70 %       – (not even 100 %)
Shares of germinated seed; Fisher’s exact test at 5 % with a power of 80 %.
`);
  });

  it('says it in a sentence for a share that is known', async () => {
    for (const share of ['20%', '20 %', '20']) {
      expect((await plan('20', '4', '--share', share)).stdout).toBe(
        'With 20 treated and 4 untreated seeds, 20 % untreated can be told from 91 % treated or more (power 80 %); 14 and 10 would tell it from 78 %.\n');
    }
    expect((await plan('400', '300')).stdout).toContain('any two shares that differ by 15 points can be told apart');
  });

  it('is data at full precision where that is asked for', async () => {
    const { stdout } = await plan('12', '12', '--format', 'json');
    const { plans, ...head } = JSON.parse(stdout) as { plans: { share: number; visible: number }[] };
    expect(head).toEqual({ version: 1, plumule: version });
    expect(plans.map(({ share }) => share)).toEqual([0.1, 0.4, 0.7]);
    expect(plans[1]!.visible).toBeCloseTo(0.95531, 5);
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
