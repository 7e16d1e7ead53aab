import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

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
      stdout: `Due as on 2026-01-12 20:30

Overdue
  2026-01-12 19:00  GEN-25  lift out of water after 24 h
                    winter.germ:3  Gentiana lutea, at jar 1
                    write: lift GEN-25 2026-01-12 20:30
`,
    });
  });

  it('names each journal where there are several, and the paths that it could not read', async () => {
    const folder = await folderWith({ 'a/x.germ': JOURNAL, 'b/y.germ': '' });
    const { code, stdout, stderr } = await plumule(folder, 'due', 'a', 'b', 'c', '--today', '2026-01-12');
    expect(code).toBe(2);
    expect(stdout).toContain('Due in a as on 2026-01-12\n');
    expect(stdout).toContain('Due in b as on 2026-01-12\n\nNothing is due.\n');
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

  it('takes whole days alone', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    for (const days of ['-1', '1.5', 'week']) {
      expect(await plumule(folder, 'due', `--days=${days}`)).toMatchObject({ code: 2, stdout: '' });
    }
  });
});
