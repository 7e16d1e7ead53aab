import { mkdir, readFile, readdir, symlink } from 'node:fs/promises';
import path from 'node:path';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { plumule } from './run.ts';

const JOURNAL = `zone Europe/Vienna
lot GEN-25 Gentiana lutea, 24 seeds
soak GEN-25 2026-01-11 19:00, water, 24 h, at jar 1
due GEN-25 2026-03-01, look at it, twice; and again
`;
const TODAY = ['--today', '2026-01-12T08:00'];

/** Read by a library other than the one that writes it. */
function eventsOf(text: string): ICAL.Component[] {
  return new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent');
}

const of = (event: ICAL.Component | undefined, name: string) => String(event?.getFirstPropertyValue(name));

describe('plumule export --ics', () => {
  it('prints a calendar with an alarm and a stable UID for each thing that is due', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    const { code, stdout, stderr } = await plumule(folder, 'export', '--ics', ...TODAY);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    const [soak, reminder, ...none] = eventsOf(stdout);
    expect(none).toEqual([]);
    expect([of(soak, 'uid'), of(soak, 'dtstart')]).toEqual(['soak/GEN-25/2026-01-11T19:00@plumule', '2026-01-12T18:00:00Z']);
    expect(of(reminder, 'summary')).toBe('GEN-25: look at it, twice; and again');
    for (const event of [soak, reminder]) expect(event?.getAllSubcomponents('valarm').length).toBeGreaterThan(0);
  });

  it('writes a file, and writes it again with the same UIDs', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    const file = path.join(folder, 'due.ics');
    const uids = [];
    for (const more of [[], ['--today', '2026-01-20']]) {
      const { code, stdout, stderr } = await plumule(folder, 'export', '--ics', '-o', 'due.ics', ...TODAY, ...more);
      expect({ code, stdout, stderr }).toEqual({ code: 0, stdout: '', stderr: 'plumule: wrote 2 entries to due.ics\n' });
      uids.push(eventsOf(await readFile(file, 'utf8')).map(event => of(event, 'uid')).sort());
    }
    expect(uids[1]).toEqual(uids[0]);
    expect(await readdir(folder)).toEqual(['due.ics', 'winter.germ']);
  });

  it('writes through a link, and into an empty file', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL, 'shared/cal.ics': '' });
    await symlink(path.join(folder, 'shared/cal.ics'), path.join(folder, 'due.ics'));
    expect((await plumule(folder, 'export', '--ics', '--output', 'due.ics', ...TODAY)).code).toBe(0);
    expect(eventsOf(await readFile(path.join(folder, 'shared/cal.ics'), 'utf8'))).toHaveLength(2);
  });

  it('overwrites nothing but a calendar, and says why', async () => {
    const folder = await folderWith({ 'winter.germ': JOURNAL });
    await mkdir(path.join(folder, 'dir'));
    for (const [name, reason] of [
      ['winter.germ', 'this file exists and is not a calendar; choose another name'],
      ['dir', 'it is not a regular file'],
      ['gone/due.ics', 'its folder does not exist'],
    ] as const) {
      expect(await plumule(folder, 'export', '--ics', '-o', name, ...TODAY)).toEqual({
        code: 2, stdout: '', stderr: `plumule: ${name}: ${reason}\n`,
      });
    }
    expect(await readFile(path.join(folder, 'winter.germ'), 'utf8')).toBe(JOURNAL);
  });

  it('writes nothing where there is no journal, or where nobody said what to export', async () => {
    const folder = await folderWith({});
    expect(await plumule(folder, 'export', '--ics', '-o', 'due.ics')).toMatchObject({ code: 2, stdout: '' });
    expect(await plumule(folder, 'export')).toMatchObject({ code: 2, stdout: '' });
    expect(await readdir(folder)).toEqual([]);
  });
});
