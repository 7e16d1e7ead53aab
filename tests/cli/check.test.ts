import { mkdir, truncate } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith } from '../disk/helpers.ts';
import { plumule, shell } from './run.ts';

const CLEAN = `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
sow VER-24/A 2026-01-11, 24 seeds, 18 C
count VER-24/A 2026-01-19, 3
`;
const LONG_SOAK = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds\nsoak VER-24/A 2026-01-10 19:00, water, 30 h\n';
const WRONG = 'lot VER-24 Veratrum nigrum, 60 sedes\n';
/** A treated batch without a control: a hint, and nothing graver. */
const HINT = `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds
soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h
sow VER-24/A 2026-01-11 19:00, 24 seeds
count VER-24/A 2026-01-19, 3
`;
const TODAY = ['--today', '2026-01-20'];

describe('plumule check', () => {
  it('ends with 0 and prints nothing but a summary where all is well', async () => {
    const folder = await folderWith({ 'a.germ': CLEAN });
    expect(await plumule(folder, 'check', 'a.germ', ...TODAY)).toEqual({
      code: 0, stdout: '', stderr: 'plumule: checked 1 file: no problems\n',
    });
  });

  it('ends with 1 where there is an error', async () => {
    const folder = await folderWith({ 'a.germ': WRONG });
    const { code, stdout, stderr } = await plumule(folder, 'check', '.', ...TODAY);
    expect(code).toBe(1);
    expect(stdout).toMatch(/^a\.germ:1:32: error unknown-fact: .*\n$/);
    expect(stderr).toBe('plumule: checked 1 file: 1 error\n');
  });

  it('ends with 1 where there is a warning', async () => {
    const folder = await folderWith({ 'a.germ': LONG_SOAK });
    const { code, stdout } = await plumule(folder, 'check', ...TODAY);
    expect(code).toBe(1);
    expect(stdout).toContain('a.germ:3:40: warning soak-too-long: ');
  });

  it('ends with 0 where there are hints alone, which it prints', async () => {
    const folder = await folderWith({ 'a.germ': HINT });
    const { code, stdout, stderr } = await plumule(folder, 'check', ...TODAY);
    expect(stdout).toContain('a.germ:4:5: hint no-control: ');
    expect(code).toBe(0);
    expect(stderr).toBe('plumule: checked 1 file: 1 hint\n');
  });

  it('leaves out what is less grave than it was told', async () => {
    const folder = await folderWith({ 'a.germ': `${LONG_SOAK}${WRONG.replace('VER-24', 'VER-25')}` });
    const errors = await plumule(folder, 'check', '--severity', 'error', ...TODAY);
    expect(errors.code).toBe(1);
    expect(errors.stdout.split('\n').filter(Boolean)).toEqual([expect.stringContaining(': error ')]);
    const none = await plumule(await folderWith({ 'a.germ': LONG_SOAK }), 'check', '--severity', 'error', ...TODAY);
    expect(none).toEqual({ code: 0, stdout: '', stderr: 'plumule: checked 1 file: no problems\n' });
  });

  it('takes the current folder, and what is below it, where no path is given', async () => {
    const folder = await folderWith({ 'lots/a.germ': CLEAN, 'counts/b.germ': 'count VER-24/A 2026-01-20, 2\n' });
    expect(await plumule(folder, 'check', ...TODAY)).toMatchObject({ code: 0, stderr: 'plumule: checked 2 files: no problems\n' });
  });

  it('prints the places that a problem speaks of below it, indented, by their paths from the current folder', async () => {
    const folder = await folderWith({ 'journal/a.germ': CLEAN, 'journal/b.germ': 'lot VER-24 Veratrum album, 10 seeds\n' });
    const { stdout } = await plumule(folder, 'check', 'journal', ...TODAY);
    expect(stdout).toMatch(/^journal\/b\.germ:1:5: error duplicate-definition: .*\n {4}journal\/a\.germ:1:5: The first one\n$/);
  });

  it('counts columns in UTF-16 units from 1: two for an emoji', async () => {
    const folder = await folderWith({ 'a.germ': 'lot A-1 🌱 Trollius 種, 20 sedes\n' });
    // "lot A-1 " is 8 units, "🌱" 2, " Trollius " 10, "種, " 3, "20 " 3
    expect((await plumule(folder, 'check', ...TODAY)).stdout).toContain('a.germ:1:27: error unknown-fact');
  });

  it('says the same of a file with a byte order mark, and with CRLF line ends', async () => {
    const text = `${CLEAN}${WRONG.replace('VER-24', 'VER-25')}`;
    const plain = await plumule(await folderWith({ 'a.germ': text }), 'check', ...TODAY);
    const windows = await plumule(await folderWith({ 'a.germ': `\uFEFF${text.replaceAll('\n', '\r\n')}` }), 'check', ...TODAY);
    expect(plain.stdout).toContain('a.germ:5:32: error');
    expect(windows).toEqual(plain);
  });
});

describe('plumule check on paths that cannot be read', () => {
  it('names a missing path on standard error, works on the rest, and ends with 2', async () => {
    const folder = await folderWith({ 'a.germ': WRONG });
    const { code, stdout, stderr } = await plumule(folder, 'check', 'gone.germ', 'a.germ', ...TODAY);
    expect(code).toBe(2);
    expect(stdout).toContain('a.germ:1:32: error');
    expect(stderr).toContain('plumule: gone.germ: there is no such file or folder\n');
    expect(stderr).toContain('plumule: checked 1 file: 1 error\n');
  });

  it('names the byte of a file that is not UTF-8, works on the rest, and ends with 2', async () => {
    const folder = await folderWith({ 'a.germ': CLEAN, 'b.germ': Buffer.from('# 18 °C\n', 'latin1') });
    const { code, stderr } = await plumule(folder, 'check', ...TODAY);
    expect(code).toBe(2);
    expect(stderr).toContain('plumule: b.germ: it is not UTF-8: byte 0xB0 at offset 5, in line 1; save it as UTF-8\n');
    expect(stderr).toContain('checked 1 file: no problems');
  });

  it('says that a folder holds no journal, and ends with 2', async () => {
    const folder = await folderWith({ 'journal/a.germ': CLEAN, 'notes/a.txt': '' });
    const { code, stderr } = await plumule(folder, 'check', 'notes', 'journal', ...TODAY);
    expect(code).toBe(2);
    expect(stderr).toContain('plumule: notes: there is no journal here (no *.germ file)\n');
    expect(stderr).toContain('checked 1 file: no problems');
    await mkdir(path.join(folder, 'empty'));
    expect((await plumule(path.join(folder, 'empty'), 'check')).stderr).toBe('plumule: .: there is no journal here (no *.germ file)\n');
  });

  it('does not take a file of another name for a journal', async () => {
    const folder = await folderWith({ 'notes.txt': CLEAN });
    const { code, stderr } = await plumule(folder, 'check', 'notes.txt');
    expect(code).toBe(2);
    expect(stderr).toContain('plumule: notes.txt: the name of a journal must end in .germ\n');
  });
});

describe('the journals that the paths mean', () => {
  const COUNT = 'count VER-24/A 2026-01-20, 2\n';

  it('are as grave as in the file that was named, whatever is wrong with a file beside it, of which it is told', async () => {
    const folder = await folderWith({ 'a.germ': 'lot V-1 Iris, 60 seeds\n', 'b.germ': Buffer.from([0x23, 0xff]) });
    const { code, stdout, stderr } = await plumule(folder, 'check', 'a.germ');
    expect({ code, stdout }).toEqual({ code: 0, stdout: '' });
    expect(stderr).toContain('plumule: b.germ: it is not UTF-8');
    expect((await plumule(folder, 'check')).code).toBe(2);
    expect((await plumule(folder, 'check', 'b.germ')).code).toBe(2);
  });

  it('are found in the rest where one file is too large to read', async () => {
    const folder = await folderWith({ 'a.germ': 'sowed V-1\n', 'b.germ': '' });
    await truncate(path.join(folder, 'b.germ'), 200 * 1024 * 1024);
    const { code, stdout, stderr } = await plumule(folder, 'check');
    expect({ code, lines: stdout.split('\n').length }).toEqual({ code: 2, lines: 2 });
    expect(stderr).toContain('plumule: b.germ: it is larger than 16 MiB');
  });

  it('are one for a file and those beside it, of which only the file’s own problems are printed', async () => {
    const folder = await folderWith({ 'a.germ': CLEAN, 'b.germ': COUNT, 'c.germ': WRONG.replace('VER-24', 'VER-25') });
    expect(await plumule(folder, 'check', 'b.germ', ...TODAY)).toMatchObject({ code: 0, stderr: 'plumule: checked 1 file: no problems\n' });
  });

  it('are one each for two folders', async () => {
    const folder = await folderWith({ 'one/a.germ': CLEAN, 'two/b.germ': COUNT });
    const apart = await plumule(folder, 'check', 'one', 'two', ...TODAY);
    expect(apart.stdout).toMatch(/^two\/b\.germ:1:7: error unknown-lot: .*\n$/);
    expect(await plumule(folder, 'check', '.', ...TODAY)).toMatchObject({ code: 0 });
  });

  it('are one for a folder and what lies in it, however often and in whatever order it is named', async () => {
    const folder = await folderWith({ 'a.germ': CLEAN, 'in/b.germ': COUNT });
    const { code, stderr } = await plumule(folder, 'check', 'in/b.germ', 'in', '.', './in', 'a.germ', ...TODAY);
    expect({ code, stderr }).toEqual({ code: 0, stderr: 'plumule: checked 2 files: no problems\n' });
  });
});

describe('today', () => {
  const FUTURE = CLEAN.replace('2026-01-19', '2026-01-21');

  it('is the day that was given', async () => {
    const folder = await folderWith({ 'a.germ': FUTURE });
    expect((await plumule(folder, 'check', ...TODAY)).stdout).toContain('error count-in-future');
    expect((await plumule(folder, 'check', '--today', '2026-01-21')).code).toBe(0);
  });

  it('is the day of the clock where none was given', async () => {
    const folder = await folderWith({ 'a.germ': CLEAN.replaceAll('2026-01', '9998-01') });
    expect((await plumule(folder, 'check')).stdout).toContain('error count-in-future');
  });

  it('may have a time: a running soak is judged by it', async () => {
    const folder = await folderWith({ 'a.germ': LONG_SOAK.replace(', 30 h', '') });
    expect((await plumule(folder, 'check', '--today', '2026-01-11T19:05')).stdout).not.toContain('soak-too-long');
    expect((await plumule(folder, 'check', '--today', '2026-01-11T19:06')).stdout).toContain('soak-too-long');
  });

  it('must be a date of the calendar', async () => {
    const folder = await folderWith({ 'a.germ': CLEAN });
    for (const wrong of ['2026-02-30', '20/1/2026', '2026-01-20T25:00', 'today']) {
      const { code, stdout, stderr } = await plumule(folder, 'check', '--today', wrong);
      expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
      expect(stderr).toContain('Write a date such as 2026-01-12, or a date and a time such as 2026-01-12T08:00.');
    }
  });
});

describe('the output of plumule check', () => {
  it('has no colours in a pipe, and no control that a journal holds', async () => {
    const folder = await folderWith({ 'a.germ': '\u001b[31mred\u202e\n' });
    const { stdout } = await plumule(folder, 'check', ...TODAY);
    expect(stdout).toContain('a.germ:1:1: error');
    expect(stdout).not.toMatch(/[\u001b\u202e]/);
  });

  // script(1) gives a terminal; elsewhere it takes other options.
  it.runIf(process.platform === 'linux')('has colours on a terminal, but not with NO_COLOR', async () => {
    const folder = await folderWith({ 'a.germ': WRONG });
    // Node takes the terminal of a CI run for one without colours; a person's is none of these.
    const line = (environment: string) => shell(
      folder, `export -f plumule; unset CI; SHELL=/bin/bash TERM=xterm ${environment} script -qec 'plumule check' /dev/null`);
    expect((await line('')).stdout).toContain('\u001b[31merror\u001b[39m');
    expect((await line('NO_COLOR=1')).stdout).toContain('a.germ:1:32: error unknown-fact: ');
  });

  it('comes whole through a pipe, however long it is', async () => {
    const lines = 5_000;
    const folder = await folderWith({ 'a.germ': 'sowed\n'.repeat(lines) });
    const { code, stdout } = await shell(folder, 'set -o pipefail; plumule check | cat');
    expect(code).toBe(1);
    expect(stdout.length).toBeGreaterThan(300_000);
    expect(stdout.split('\n')).toHaveLength(lines + 1);
    expect(stdout).toMatch(/a\.germ:5000:1: error unknown-keyword: .*\n$/);
  });

  it('ends with one sentence and 2 when its reader closes it early, or the disk is full', async () => {
    const folder = await folderWith({ 'a.germ': 'sowed\n'.repeat(5_000) });
    const closed = await shell(folder, 'set -o pipefail; plumule check | head -n 1');
    expect(closed.code).toBe(2);
    expect(closed.stdout).toMatch(/^a\.germ:1:1: error .*\n$/);
    expect(closed.stderr).toBe([
      'plumule: checked 1 file: 5000 errors\n', 'plumule: the program that reads the output closed it too early\n',
    ].join(''));
    const full = await shell(folder, 'plumule check > /dev/full');
    expect(full).toMatchObject({ code: 2, stdout: '' });
    expect(full.stderr.split('\n').sort()).toEqual([
      '', 'plumule: checked 1 file: 5000 errors', 'plumule: the output cannot be written: the disk is full',
    ]);
    expect(await shell(folder, 'plumule check 2> /dev/full > /dev/null')).toEqual({ code: 2, stdout: '', stderr: '' });
  });
});
