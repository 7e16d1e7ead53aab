import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

async function mix(...args: string[]) {
  return plumule(await folderWith({}), 'mix', ...args);
}

describe('plumule mix', () => {
  it('says the steps from a stock: 10 mL of 1000 ppm and 10 mL of water are 20 mL of 500 ppm (common practice)', async () => {
    const { code, stdout, stderr } = await mix('GA3', '500 ppm', '20 mL', '--from', '1000 ppm');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout.split('\n\n').slice(0, 2).join('\n\n')).toBe([
      'GA3 500 ppm, 20 mL',
      '= 500 mg/L = 0.5 g/L = 0.05 % = 1.444 mM',
      '',
      '1. Take 10 mL of the 1000 ppm GA3 stock with a 10 mL syringe marked every 0.2 mL.',
      '2. Make it up to 20 mL with water (10 mL of water), and mix well. Measure with a 10 mL syringe',
      '   marked every 0.2 mL, filled 2 times.',
      '3. Label it: GA3 500 ppm, and the date.',
      '4. Keep it cold, dark and closed. It keeps 1 year (GA3 once diluted; default: common practice, no',
      '   source). In water at 20 C, about half of it is gone after 14 days (a supplier’s product data',
      '   page, unverified).',
    ].join('\n'));
    expect(stdout).toContain('Assumed:\n  - 1 ppm counts as 1 mg/L');
    expect(stdout).toContain('Take care:\n  - The product’s label');
  });

  it('says of what is measured by volume that it is undiluted at 100 %, and puts no other unit below the title', async () => {
    expect((await mix('smoke', '10 %', '20 mL')).stdout).toContain('\nFor example --from "100 %" if it is undiluted.\n');
    expect((await mix('smoke', '10 %', '20 mL', '--from', '100 %')).stdout).toMatch(/^smoke 10 %, 20 mL\n\n1\. Take 2 mL of the 100 % smoke stock/);
  });

  it('weighs powder, says what a kitchen cannot, and counts the purity', async () => {
    const { code, stdout } = await mix('GA3', '500ppm', '20mL', '--purity', '90', '--bench', 'laboratory');
    expect(code).toBe(0);
    expect(stdout).toContain('1. Weigh 11 mg of GA3 powder on a balance that shows 1 mg (worked out: 11.11 mg).');
    expect(stdout).toContain('In a kitchen: 11.11 mg cannot be weighed');
    expect(stdout).toContain('\nStrength: 495 ppm, with these tools from 467 to 524 ppm (');
  });

  it('halves a packet by eye', async () => {
    const { code, stdout } = await mix('GA3', '500 ppm', '20 mL', '--packet', '100 mg', '--halved', '2');
    expect(code).toBe(0);
    expect(stdout).toContain('halve it by eye 2 times, and take one part: about\n   25 mg.');
    expect(stdout).toContain('Or: Make a stronger stock and dilute it');
  });

  it('takes the units as a shell divides them, and of a salt what is meant', async () => {
    const quoted = await mix('GA3K', '500 ppm', '200 mL', '--purity', '75 % acid');
    expect(await mix('GA3K', '500', 'ppm', '200', 'mL', '--purity', '75 % acid')).toEqual(quoted);
    expect(quoted.stdout).toContain('75 % is of the acid GA3');
  });

  it('gives JSON with every number at full precision', async () => {
    const { code, stdout } = await mix('GA3', '1 mM', '30 mL', '--purity', '85', '--bench', 'laboratory', '--format', 'json');
    const answer = JSON.parse(stdout) as Record<string, unknown>;
    expect(code).toBe(0);
    // Computed by rational arithmetic: 346.379 mg/L of 30 mL from 85 % powder.
    expect(answer).toMatchObject({
      version: 1, plumule: version, possible: true, method: 'powder',
      asked: { strength: { value: 1, unit: 'mM' }, ppm: 346.379, volume: { value: 30, unit: 'mL' } },
      amounts: { powder: { wanted: { value: 12.225141176470588, unit: 'mg' }, measured: { value: 12, unit: 'mg' } } },
    });
  });

  it('refuses what cannot be, with the nearest that can, and ends with 1', async () => {
    const stronger = await mix('GA3', '2000 ppm', '20 mL', '--from', '1000 ppm');
    expect(stronger).toEqual({
      code: 1,
      stdout: 'GA3 2000 ppm, 20 mL: not possible\n\n' +
        '2000 ppm cannot be made from 1000 ppm: water only makes it weaker.\n\n' +
        'The nearest you can make:\n' +
        '  - The nearest is the stock itself, undiluted: 1000 ppm.\n' +
        '  - From powder: 40 mg of pure GA3 made up to 20 mL is 2000 ppm.\n',
      stderr: '',
    });
    const soluble = await mix('GA3', '500 %', '100 mL', '--format', 'json');
    expect(soluble.code).toBe(1);
    expect(JSON.parse(soluble.stdout)).toMatchObject({ version: 1, possible: false, code: 'above-solubility' });
    expect((await mix('GA3', '100 ppm', '20 mL', '--bench', 'kitchen')).stdout).toContain('2 mg cannot be weighed');
  });

  it.each([
    [['GA3', '0,5 g/L', '20 mL'], '<strength>: “0,5” has a comma inside a number. Write 0.5'],
    [['GA3', '500', '20 mL'], '<strength>: “500” has no unit.'],
    [['GA3', '500 ppm', '20 mg'], '<volume>: “mg” is not a unit of volume.'],
    [['H2O2', '3 %', '20 mL'], '<agent>: “H2O2” is not an agent. Did you mean “peroxide”?'],
    [['GA3', 'strong', '20 mL'], '<strength>: “strong” is not a strength such as “500 ppm”.'],
    [['GA3', '500 ppm'], '“500 ppm” is not a strength and a volume such as'],
    [['GA3', '500 ppm', '20 mL', '--from', '1000 ppm', '--purity', '90'], '--purity: A solution is made from a stock or from powder'],
    [['GA3', '500 ppm', '20 mL', '--halved', '2'], '--halved: Say how much powder the packet holds.'],
    [['GA3', '500 ppm', '20 mL', '--packet', '1 g', '--halved', 'twice'], '--halved: Write how often'],
    [['GA3', '500 ppm', '20 mL', '--purity', '120'], '--purity: '],
  ])('does not understand %j, says why, and ends with 2', async (args, message) => {
    const { code, stdout, stderr } = await mix(...args);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(`plumule: ${message}`);
  });
});
