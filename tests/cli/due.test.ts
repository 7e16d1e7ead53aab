import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { folderWith } from '../disk/helpers.ts';
import { plumule, shell } from './run.ts';

const JOURNAL = `zone Europe/Vienna
lot GEN-25 Gentiana lutea, 24 seeds
soak GEN-25 2026-01-11 19:00, water, 24 h, at jar 1
due GEN-25 2026-03-01, look at it
`;

describe('plumule due', () => {
  it('prints what is due, and ends with 0', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    expect(await plumule(folder, 'due', '--today', '2026-01-12T20:30', '--days', '7')).toEqual({
      code: 0, stderr: '',
      stdout: `Due as of 2026-01-12 20:30

Overdue
  2026-01-12 19:00  GEN-25  lift out of water after 24 h
                    winter.germ:3  90 min late, Gentiana lutea, at jar 1
                    write: lift GEN-25 2026-01-12 20:30
`,
    });
  });

  it('asks for the counts of packets in the cold that were counted once, and for the end of the cold of all', async () => {
    const bag = `lot LIL-25 Lilium martagon, 40 seeds, at tin 1 slot 4
split LIL-25, A 20 seeds, B 20 seeds
chill LIL-25/A 2025-11-01, 4 C, 90 days, at bag 3 slot 1
chill LIL-25/B 2025-11-01, 4 C, 90 days, at bag 3 slot 2
count LIL-25/A 2026-02-01, 2
`;
    const folder = await folderWith({ 'winter.germ': bag });
    expect((await plumule(folder, 'due', '--today', '2026-02-05')).stdout).toBe(`Due as of 2026-02-05

Overdue
  2026-01-30  LIL-25/A  chill 4 C 90 days ends
              winter.germ:3  6 days late, Lilium martagon, at bag 3 slot 1
              write: warm LIL-25/A 2026-02-05
  2026-01-30  LIL-25/B  chill 4 C 90 days ends
              winter.germ:4  6 days late, Lilium martagon, at bag 3 slot 2
              write: sow LIL-25/B 2026-02-05

This week
  2026-02-08  LIL-25/A  count; last looked at on 2026-02-01 (count)
              winter.germ:5  Lilium martagon, at bag 3 slot 1
              write: count LIL-25/A 2026-02-08,
`);
  });

  it('names each journal where there are several, and the paths that it could not read', async () => {
    const folder = await folderWith({ 'a/x.germ': JOURNAL, 'b/y.germ': '' });
    const { code, stdout, stderr } = await plumule(folder, 'due', 'a', 'b', 'c', '--today', '2026-01-12');
    expect(code).toBe(2);
    expect(stdout).toContain('Due in a as of 2026-01-12\n');
    expect(stdout).toContain('Due in b as of 2026-01-12\n\nNothing is due.\n');
    expect(stderr).toBe('plumule: c: there is no such file or folder\n');
  });

  it('is data of a version where that is asked for', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    const { stdout } = await plumule(folder, 'due', '--today', '2026-01-12T20:30', '--format', 'json');
    const data = JSON.parse(stdout) as { journals: { due: object[] }[] };
    expect(data).toMatchObject({
      version: 1, plumule: version, unread: [],
      journals: [{ files: ['winter.germ'], zone: 'Europe/Vienna', now: '2026-01-12T20:30' }],
    });
    expect(data.journals[0]!.due).toMatchObject([
      { group: 'overdue', kind: 'soak', overdueDays: 0, overdueMinutes: 90, file: 'winter.germ', line: 3 },
      { group: 'later', kind: 'reminder' },
    ]);
  });

  it('puts apart at the end what nobody did anything about for more than a year, in few lines', async () => {
    const forgotten = ['A', 'B'].map(part => `sow OLD-23/${part} 2024-01-10, at shelf 1\n`).join('');
    const folder = await folderWith({ 'winter.germ': `${JOURNAL}lot OLD-23 Iris alba, 20 seeds\nsplit OLD-23, A 10 seeds, B 10 seeds\n${forgotten}due OLD-23 2024-03-01, look\n` });
    const { stdout } = await plumule(folder, 'due', '--today', '2026-01-12T18:30', '--days', '7');
    // The first count of seed that was sown is due after seven days.
    expect(stdout.slice(stdout.indexOf('Nothing'))).toBe(`Nothing done for more than a year
  2 counts, the first due on 2024-01-17
    OLD-23/A, OLD-23/B
  1 reminder, due on 2024-03-01
    OLD-23
  Write “discard” for what is over.
`);
    expect(stdout).toMatch(/^Due as of 2026-01-12 18:30\n\nToday\n/);
    const json = await plumule(folder, 'due', '--today', '2026-01-12T18:30', '--format', 'json');
    const { journals: [told] } = JSON.parse(json.stdout) as { journals: { longPast: number; longAgo: object[] }[] };
    expect(told).toMatchObject({ longPast: 3, longAgo: [{ id: 'OLD-23/A', group: 'long ago' }, { id: 'OLD-23/B' }, { kind: 'reminder' }] });
    const sheet = await plumule(folder, 'round', '--today', '2026-01-12');
    expect(sheet.stdout).toContain('No count is due.');
    expect((await plumule(folder, 'round', '--left-off', '--today', '2026-01-12')).stdout.match(/OLD-23\/./g)).toEqual(['OLD-23/A', 'OLD-23/B']);
  });

  // script(1) gives a terminal; elsewhere it takes other options.
  it.runIf(process.platform === 'linux')('is as wide as the terminal, but for the record to write', async () => {
    const text = 'look whether the roots have come through the bottom of the pot by now';
    const folder = await folderWith({ 'winter.germ': `${JOURNAL}due GEN-25 2026-01-14, ${text}\n` });
    const on = (columns: number) => shell(folder, 'export -f plumule; SHELL=/bin/bash TERM=xterm NO_COLOR=1 script -qec ' +
      `'stty cols ${columns}; plumule due --today 2026-01-13' /dev/null`);
    const narrow = (await on(60)).stdout.split(/\r?\n/);
    expect(narrow).toContain('  2026-01-14        GEN-25  look whether the roots have come');
    expect(narrow).toContain(`                    write: note GEN-25 2026-01-14, done: ${text}`);
    for (const line of narrow) if (!line.includes('write: ')) expect(line.length).toBeLessThanOrEqual(60);
    expect((await on(200)).stdout).toContain(`GEN-25  ${text}\r\n`);
  });

  it('takes whole days alone', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    for (const days of ['-1', '1.5', 'week']) {
      expect(await plumule(folder, 'due', `--days=${days}`)).toMatchObject({ code: 2, stdout: '' });
    }
  });
});
