import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { folderWith } from '../disk/helpers.ts';
import { hasBlocks } from '../../server/src/cli/output.ts';
import { plumule } from './run.ts';

const LOTS = `lot A-1 Trollius europaeus, 20 seeds
sow A-1 2026-01-04, 20 seeds, 15 C
lot B-1 Adonis vernalis, 30 seeds
`;
const COUNTS = 'count A-1 2026-01-18, 4\n';
const TODAY = ['--today', '2026-01-20'];

describe('plumule report', () => {
  it('prints a table for each lot and ends with 0', async () => {
    const folder = await folderWith({ 'a.germ': LOTS, 'b.germ': COUNTS });
    const { code, stdout, stderr } = await plumule(folder, 'report', ...TODAY);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    // 4 of 20: 8.1 to 41.6 by prop.test(4, 20, correct = FALSE) of R.
    expect(stdout).toContain(`A-1  Trollius europaeus
20 seeds
  Batch  Treatment  Sown  Germinated     %  95 % interval          First  Last            T50
  A-1    untreated    20           4  20.0    8.1 to 41.6  before day 14    14  before day 14
`);
    expect(stdout).toContain('B-1  Adonis vernalis\n');
  });

  it('prints the lots asked for alone; one that is not there is named, with the nearest, and ends it with 2', async () => {
    const folder = await folderWith({ 'a.germ': LOTS });
    const { code, stdout, stderr } = await plumule(folder, 'report', '--lot', 'B-1', '--lot', 'A-2', ...TODAY);
    expect(code).toBe(2);
    expect(stdout).toContain('B-1  Adonis vernalis');
    expect(stdout).not.toContain('Trollius');
    expect(stderr).toBe('plumule: there is no lot “A-2”; did you mean “A-1”?\n');
  });

  it('of a file prints the lots that it says something of, with all that is known of them', async () => {
    const folder = await folderWith({ 'a.germ': LOTS, 'b.germ': COUNTS });
    const { stdout } = await plumule(folder, 'report', 'b.germ', ...TODAY);
    expect(stdout).toContain('A-1    untreated    20           4  20.0');
    expect(stdout).not.toContain('B-1');
  });

  it('names the folders where it is of several journals', async () => {
    const folder = await folderWith({ 'one/a.germ': LOTS, 'two/b.germ': 'lot C-1 Anemone, 5 seeds\n' });
    const { stdout } = await plumule(folder, 'report', 'two', 'one', ...TODAY);
    expect(stdout.split('\n').filter(line => line.startsWith('Report'))).toEqual([
      'Report of one as of 2026-01-20', 'Report of two as of 2026-01-20',
    ]);
  });

  it('still ends with 0 where records have errors, and says so on standard error and at the lot', async () => {
    const folder = await folderWith({ 'a.germ': `${LOTS}${COUNTS}count A-1 2026-01-19, 30\n` });
    const { code, stdout, stderr } = await plumule(folder, 'report', ...TODAY);
    expect(code).toBe(0);
    expect(stderr).toBe('plumule: 1 error in the records of these lots; “plumule check” lists them\n');
    expect(stdout).toContain('The records of A-1 have an error: its numbers may be wrong until you fix it.');
    expect(stdout).toContain('No percentage for A-1: more are counted (34) than there are seeds (20).');
  });

  it('draws courses in blocks where that is asked for, and none unasked where it is no terminal', async () => {
    const folder = await folderWith({ 'a.germ': `${LOTS}${COUNTS}count A-1 2026-01-19, 6\n` });
    const [asked, unasked] = [await plumule(folder, 'report', '--courses', 'always', ...TODAY), await plumule(folder, 'report', ...TODAY)];
    expect(asked.stdout).toContain('  A-1    ··············▃▅\n');
    expect(unasked.stdout).not.toContain('lines of blocks');
  });

  it.each([
    ['a terminal of UTF-8', 'linux', { TERM: 'xterm-256color', LANG: 'de_AT.UTF-8' }, true],
    ['one whose letters are others than its language', 'darwin', { TERM: 'xterm', LANG: 'C', LC_CTYPE: 'UTF-8' }, true],
    ['one of another encoding', 'linux', { TERM: 'xterm', LANG: 'de_AT.UTF-8', LC_ALL: 'C' }, false],
    ['the console of Linux', 'linux', { TERM: 'linux', LANG: 'de_AT.UTF-8' }, false],
    ['one that says that it can do nothing', 'linux', { TERM: 'dumb', LANG: 'de_AT.UTF-8' }, false],
    ['Windows Terminal', 'win32', { WT_SESSION: 'b4a2' }, true],
    ['the old console of Windows', 'win32', {}, false],
  ] as const)('draws them unasked only where they can be read: %s', (_, platform, env, can) => {
    expect(hasBlocks({ platform, env })).toBe(can);
  });

  it('is Markdown where that is asked for', async () => {
    const folder = await folderWith({ 'a.germ': `${LOTS}${COUNTS}` });
    const { stdout } = await plumule(folder, 'report', '--format', 'md', '--lot', 'A-1', ...TODAY);
    expect(stdout).toMatch(/^# Report as of 2026-01-20\n\n## A-1 Trollius europaeus\n\n20 seeds\n\n\| Batch \| Treatment \|/);
    expect(stdout).toContain('| A-1 | untreated | 20 | 4 | 20.0 | 8.1 to 41.6 | before day 14 | 14 |');
  });

  it('is data where that is asked for, with the paths that could not be read', async () => {
    const folder = await folderWith({ 'a.germ': `${LOTS}${COUNTS}` });
    const { code, stdout, stderr } = await plumule(folder, 'report', '--format', 'json', '.', 'gone', ...TODAY);
    expect(code).toBe(2);
    expect(stderr).toBe('plumule: gone: there is no such file or folder\n');
    expect(JSON.parse(stdout)).toMatchObject({
      version: 1, plumule: version, unread: [{ path: 'gone' }],
      journals: [{ files: ['a.germ'], now: '2026-01-20', zone: null, lots: [{ id: 'A-1', file: 'a.germ', line: 1 }, { id: 'B-1' }] }],
    });
  });

  it('puts the lots of a species or a genus together where that is asked for', async () => {
    const folder = await folderWith({ 'a.germ': LOTS });
    const { stdout } = await plumule(folder, 'report', '--by', 'species', ...TODAY);
    expect(stdout).toContain('\nTrollius europaeus\n1 lot: A-1\n\n  No trial to compare: A-1.\n');
    expect((await plumule(folder, 'report', '--by', 'genus', ...TODAY)).stdout).toContain('\nTrollius\n1 lot: A-1\n');
    expect((await plumule(folder, 'report', '--by', 'lot', ...TODAY)).stdout).toBe((await plumule(folder, 'report', ...TODAY)).stdout);
    const data = JSON.parse((await plumule(folder, 'report', '--by', 'genus', '--format', 'json', ...TODAY)).stdout) as object;
    expect(data).toMatchObject({ journals: [{ plants: { by: 'genus', plants: [{ plant: 'Adonis' }, { plant: 'Trollius' }] } }] });
  });

  it('reports the journal as it stood on a day: what is dated later does not count', async () => {
    const folder = await folderWith({ 'a.germ': `${LOTS}${COUNTS}count A-1 2026-02-01, 5\n` });
    const asOf = async (day: string) => (await plumule(folder, 'report', '--lot', 'A-1', '--as-of', day)).stdout;
    expect(await asOf('2026-02-05')).toMatch(/^Report as of 2026-02-05\n[^]* 9  45\.0 /);
    expect(await asOf('2026-01-31')).toMatch(/^Report as of 2026-01-31\n[^]* 4  20\.0 [^]*sown, day 27/);
    expect(await asOf('2026-01-10')).not.toContain('Germinated');
    expect(await asOf('2026-01-01')).toContain('not begun');
    expect((await plumule(folder, 'report', '--as-of', '2026-01-01', ...TODAY)).code).toBe(2);
  });

  it('says that there are none where no lot is recorded', async () => {
    const folder = await folderWith({ 'a.germ': '# nothing yet\n' });
    expect(await plumule(folder, 'report', ...TODAY)).toEqual({
      code: 0, stdout: 'Report as of 2026-01-20\n\nThis journal has no lots.\n', stderr: '',
    });
  });
});
