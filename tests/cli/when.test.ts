import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const JOURNAL = `regime woodland, warm 20 C 12 weeks, chill 4 C 14 weeks, warm 18 C 12 weeks
regime open, chill 4 C
lot PAR-25 Paris quadrifolia, 20 seeds
sow PAR-25 2025-01-01, 20 seeds
count PAR-25 2025-02-01, 3
count PAR-25 2025-02-22, 1 leaf
`;
const TODAY = ['--today', '2026-02-10'];

async function when(...args: string[]) {
  return plumule(await folderWith({ 'winter.germ': JOURNAL }), 'when', ...args);
}

describe('plumule when', () => {
  it('counts back from the day on which leaves are wanted, and says what that is based on', async () => {
    const { code, stdout, stderr } = await when(
      'woodland', '--leaves-by', '2027-05-01', '--plant', 'Paris quadrifolia', '--soak', '24 h', ...TODAY);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    // Python 3.11, datetime: 2027-05-01 less 21 days, then less 12, 14 and 12 weeks, then less a day.
    expect(stdout).toBe(`woodland, for first leaves by 2027-05-01
  2026-07-17  soak 24 h (in 5 months)
  2026-07-18  sow; warm 20 C 12 weeks
  2026-10-10  chill 4 C 14 weeks
  2027-01-16  warm 18 C 12 weeks
  2027-04-10  the last stage ends
  2027-05-01  first leaves

From germination to a first leaf: 21 days, by 1 batch of Paris quadrifolia in these records.
The days to a first leaf count from the end of the last stage. That is on the safe side: much seed
germinates before the stage ends.
`);
  });

  it('shows no dates for leaves where nothing says how long they take, and says what to do', async () => {
    expect(await when('woodland', '--leaves-by', '2027-05-01', ...TODAY)).toEqual({
      code: 1, stderr: '',
      stdout: `woodland, for first leaves by 2027-05-01: no date can be given, because the days from germination to
a first leaf are unknown (no plant is named).

Give the days with --leaf, or use --plant to name a plant whose counts have them. To plan only for
the end of the regime, use --ends-by 2027-05-01.
`,
    });
    const iris = await when('woodland', '--leaves-by', '2027-05-01', '--plant', 'Iris', '--format', 'json', ...TODAY);
    expect(iris.code).toBe(1);
    expect(JSON.parse(iris.stdout)).toMatchObject({
      daysToLeaf: { undefined: 'no count in this journal has a first leaf of Iris or its genus' },
      schedule: { undefined: expect.stringContaining('Iris') as string }, begunToday: null,
    });
    expect((await when('woodland', '--leaves-by', '2027-05-01', '--leaf', '30', ...TODAY)).stdout)
      .toContain('From germination to a first leaf: 30 days, as you gave it.');
  });

  it('counts back from the end of the regime where that is wanted, though the days to a leaf are given', async () => {
    const { stdout } = await when('woodland', '--ends-by', '2027-05-01', '--leaf', '21', ...TODAY);
    // Python 3.11, datetime: 2027-05-01 less 12, 14 and 12 weeks, and with 21 days more.
    expect(stdout).toContain('  2026-08-08  sow; warm 20 C 12 weeks');
    expect(stdout).toContain('  2027-05-01  the last stage ends\n  2027-05-22  first leaves\n');
    const late = await when('woodland', '--ends-by', '2026-10-22', '--leaf', '21', ...TODAY);
    expect(late.stdout).toContain('If you start today, it ends on 2026-11-03, 12 days too late.');
  });

  it('adds no soak by itself, and says where a guide has one for the plant', async () => {
    const guides = `guide Paris, GA3 600 ppm, 48 h, chill 4 C 14 days, source "Bulletin 7"
guide Paris, kinetin 10 ppm, 48 h
guide Paris, chill 4 C 14 days, GA3 100 ppm, 12 h, source "after the cold"
`;
    const folder = await folderWith({ 'winter.germ': JOURNAL, 'guides.germ': guides });
    const asked = (...more: string[]) =>
      plumule(folder, 'when', 'woodland', '--sown', '2026-03-01', '--plant', 'Paris quadrifolia', ...more, ...TODAY);
    const { stdout } = await asked();
    expect(stdout).toContain('  2026-03-01  sow; warm');
    expect(stdout.replaceAll('\n', ' ')).toContain(
      'This plan has no soak. In your guides the seed is soaked for 48 h (Bulletin 7; the guide for Paris); add it with --soak "48 h".');
    expect(stdout).not.toContain('12 h');
    expect((await asked('--soak', '24 h')).stdout).not.toContain('guides');
    expect(JSON.parse((await asked('--format', 'json')).stdout)).toMatchObject({
      guideSoaks: [{
        duration: { value: 48, unit: 'h' },
        guides: [{ plant: 'Paris', source: 'Bulletin 7', file: 'guides.germ', line: 1 }, { plant: 'Paris', source: null, line: 2 }],
      }],
    });
  });

  it('says how late it gets where the time to begin has passed', async () => {
    const { stdout } = await when('woodland', '--ends-by', '2026-10-22', ...TODAY);
    expect(stdout).toContain('2026-01-29  sow; warm 20 C 12 weeks (12 days ago)');
    expect(stdout).toContain('The time to start was 12 days ago. If you start today, it ends on 2026-11-03, 12 days too late.');
  });

  it('says when it ends where it is begun today, or was sown on a day', async () => {
    const begun = await when('woodland', '--soak', '36h', ...TODAY);
    expect(begun.stdout).toContain('woodland, started on 2026-02-10\n  2026-02-10  soak 36 h (today)\n  2026-02-12  sow;');
    expect((await when('woodland', '--sown', '2026-02-12')).stdout).toContain('  2026-11-05  the last stage ends\n');
  });

  it('takes stages that are written out, and then needs no journal', async () => {
    const { code, stdout } = await plumule(await folderWith({}), 'when', 'chill 4 C 90 days', '--ends-by', '2027-05-01', ...TODAY);
    expect(code).toBe(0);
    expect(stdout).toContain('  2027-01-31  sow; chill 4 C 90 days');
  });

  it('is data where that is asked for', async () => {
    const { stdout } = await when('woodland', '--leaves-by', '2027-05-01', '--plant', 'paris', '--format', 'json', ...TODAY);
    expect(JSON.parse(stdout)).toMatchObject({
      version: 1, plumule: version, regime: 'woodland', today: '2026-02-10', fixed: { by: 'leaf', date: '2027-05-01' },
      daysToLeaf: { days: 21, own: { median: 21, batches: 1 } },
      schedule: {
        soak: null, sow: '2026-07-18', end: '2027-04-10', ready: '2027-05-01',
        stages: [
          { stage: 'warm', temperature: { day: 20, night: null, unit: 'C' }, duration: { value: 12, unit: 'weeks' }, start: '2026-07-18', end: '2026-10-10' },
          { stage: 'chill' }, { stage: 'warm' },
        ],
      },
      begunToday: null, unread: [],
    });
  });

  it('ends with 1 where a stage has no length', async () => {
    expect(await when('open', '--ends-by', '2027-05-01', ...TODAY)).toEqual({
      code: 1, stderr: '',
      stdout: 'open, to end by 2027-05-01: no date can be given, because stage 1 of the regime (chill) has no\nlength.\n',
    });
    const { stdout } = await when('open', '--format', 'json');
    const data: unknown = JSON.parse(stdout);
    expect(data).toMatchObject({ schedule: { undefined: expect.any(String) as string }, begunToday: null });
  });

  it('refuses what it does not understand, and ends with 2', async () => {
    expect(await when('woodlnd')).toEqual({
      code: 2, stdout: '', stderr: 'plumule: there is no regime “woodlnd”; did you mean “woodland”?\n',
    });
    for (const args of [
      ['chill 4 C and more'], ['woodland', '--soak', 'long'], ['woodland', '--leaf', 'soon'],
      ['woodland', '--ends-by', '2027-05-01', '--sown', '2027-01-01'], ['woodland', '--leaves-by', '1 May'],
    ]) {
      const { code, stdout, stderr } = await when(...args);
      expect({ args, code, stdout }).toEqual({ args, code: 2, stdout: '' });
      expect(stderr).not.toBe('');
    }
    expect((await when('chll 4 C 9 days')).stderr).toContain('Did you mean “chill”?');
    const two = await folderWith({ 'a/x.germ': 'regime r, chill 4 C 9 days', 'b/y.germ': 'regime r, chill 4 C 8 days' });
    expect(await plumule(two, 'when', 'r', 'a', 'b')).toMatchObject({
      code: 2, stderr: 'plumule: more than one journal has a regime “r” (a, b): name one of them\n',
    });
  });
});
