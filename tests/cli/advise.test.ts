import { describe, expect, it } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const JOURNAL = `lot NEW-26 Gentiana lutea, 40 seeds, collected 2026-09
guide Gentiana, GA3 500 ppm, 24 h, source "a book"
`;

async function advise(...args: string[]) {
  return adviseOn(JOURNAL, ...args);
}

async function adviseOn(journal: string, ...args: string[]) {
  return plumule(await folderWith({ 'winter.germ': journal }), 'advise', ...args, '--today', '2026-11-29T19:00');
}

describe('plumule advise', () => {
  it('says what to do with a lot, what that rests on, and which records to write', async () => {
    const { stdout, stderr, code } = await advise('NEW-26');
    expect({ stderr, code }).toEqual({ stderr: '', code: 0 });
    expect(stdout).toMatch(/^What to do with NEW-26 Gentiana lutea, as of 2026-11-29 19:00\n\nTry GA3 500 ppm, 24 h: your guide gives it/);
    expect(stdout).toContain('From a book (winter.germ:2).');
    expect(stdout).toContain('    split NEW-26, A 20 seeds, B 20 seeds\n    soak NEW-26/A 2026-11-29 19:00, GA3 500 ppm, 24 h\n');
  });

  it('in Markdown, and for programs', async () => {
    expect((await advise('NEW-26', '--format', 'md')).stdout).toMatch(/^# What to do with NEW-26 Gentiana lutea/);
    const { journals } = JSON.parse((await advise('NEW-26', '--format', 'json')).stdout) as { journals: object[] };
    expect(journals).toMatchObject([{
      files: ['winter.germ'], lot: 'NEW-26', advice: 'try', because: 'guide',
      treatment: { agent: 'GA3', ppm: 500, record: 'GA3 500 ppm', soak: '24 h', guide: { file: 'winter.germ', line: 2 } },
      division: { treated: 20, untreated: 20, tooFew: false, untreatedShareFromRecords: false },
    }]);
  });

  it('of a dose that does not dissolve says so in place of its records', async () => {
    for (const [line, isLimit] of [['agent GA3, solubility 0.4 g/L', false], ['limit GA3, 400 ppm', true]] as const) {
      const { stdout } = await adviseOn(`${JOURNAL}${line}\n`, 'NEW-26', '--format', 'json');
      const { journals } = JSON.parse(stdout) as { journals: object[] };
      expect(journals).toMatchObject([{
        treatment: { ppm: 500, aboveLimit: isLimit, aboveSolubility: !isLimit }, records: { reminders: [], soaks: [] },
      }]);
    }
  });

  it('a lot that is not there has its nearest name told', async () => {
    const { stdout, stderr, code } = await advise('NEW-25');
    expect({ stdout, code }).toEqual({ stdout: '', code: 2 });
    expect(stderr).toContain('there is no lot “NEW-25”; did you mean “NEW-26”?');
  });
});
