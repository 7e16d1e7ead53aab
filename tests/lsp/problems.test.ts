import { rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import { inSession } from '../support/lsp-client.ts';

const settings = { asOf: '2026-02-01' };
const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds, B 24 seeds\n';
const long = 'soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 30 h\n';

test('a problem appears while the line is typed and goes when it is mended', () => inSession({ settings }, async session => {
  await session.open('a.germ', `${lot}${long}`);
  await session.shows('a.germ', ['soak-too-long']);
  const [problem] = session.shown('a.germ') ?? [];
  expect(problem?.range).toEqual({ start: { line: 2, character: 45 }, end: { line: 2, character: 49 } });
  await session.change('a.germ', 2, [2, 45, 47], '24');
  await session.shows('a.germ', []);
}));

test('of a thousand problems each is shown, and of more the last one shown says how many are not', () => inSession(
  { settings }, async session => {
    const wrong = '* rain\n';
    const messages = () => (session.shown('a.germ') ?? []).map(({ message }) => JSON.stringify(message).slice(1, -1));
    const last = () => messages().at(-1) ?? '';
    await session.open('a.germ', wrong.repeat(1000));
    await session.shows('a.germ', Array.from({ length: 1000 }, () => 'unknown-line'));
    expect(messages().filter(message => message.includes('not shown'))).toEqual([]);
    for (const [version, notice] of [[2, '1 more problem in this file is not shown.'], [3, '2 more problems in this file are not shown.']] as const) {
      await session.change('a.germ', version, [0, 0, 0], wrong);
      await session.until(() => last().endsWith(`. ${notice}`), last);
    }
    expect(messages()).toHaveLength(1000);
  }));

test('files that are not open are checked too, with ids from one file known in all', () => inSession(
  { settings, files: { 'a.germ': lot, 'deep/er/b.germ': long } },
  async session => {
    await session.shows('deep/er/b.germ', ['soak-too-long']);
    await session.shows('a.germ', []);
  }));

test('a deleted file takes its problems along and leaves others without its lots', () => inSession(
  { settings, files: { 'a.germ': lot, 'b.germ': long } },
  async session => {
    await session.shows('b.germ', ['soak-too-long']);
    await rm(path.join(session.folder, 'a.germ'));
    await session.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: session.uri('a.germ'), type: 3 }],
    });
    await session.shows('b.germ', ['unknown-lot']);
    await rm(path.join(session.folder, 'b.germ'));
    await session.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: session.uri('b.germ'), type: 3 }],
    });
    await session.shows('b.germ', []);
  }));

test('a renamed file shows its problems under the new name only', () => inSession(
  { settings, files: { 'a.germ': lot, 'b.germ': long } },
  async session => {
    await session.shows('b.germ', ['soak-too-long']);
    await rename(path.join(session.folder, 'b.germ'), path.join(session.folder, 'c.germ'));
    await session.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: session.uri('b.germ'), type: 3 }, { uri: session.uri('c.germ'), type: 1 }],
    });
    await session.shows('c.germ', ['soak-too-long']);
    await session.shows('b.germ', []);
  }));

test('a branch switch on the disk is followed, but not for a document that is open', () => inSession(
  { settings, files: { 'a.germ': lot, 'b.germ': long } },
  async session => {
    await session.open('a.germ', lot);
    await session.shows('b.germ', ['soak-too-long']);
    await writeFile(path.join(session.folder, 'a.germ'), 'lot OTHER-1 Primula, 3 seeds\n');
    await writeFile(path.join(session.folder, 'b.germ'), `${long.replace('30 h', '24 h')}count VER-24/C 2026-01-20, 1\n`);
    await session.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: session.uri('a.germ'), type: 2 }, { uri: session.uri('b.germ'), type: 2 }],
    });
    await session.shows('b.germ', ['unknown-batch']);
  }));

test('a closed document falls back to what the disk has', () => inSession(
  { settings, files: { 'a.germ': `${lot}${long}` } },
  async session => {
    await session.open('a.germ', lot);
    await session.shows('a.germ', []);
    await session.close('a.germ');
    await session.shows('a.germ', ['soak-too-long']);
  }));

test('the problems of a document are sent again when it is reopened', () => inSession(
  { settings, files: { 'a.germ': `${lot}${long}` } },
  async session => {
    await session.open('a.germ', `${lot}${long}`);
    await session.shows('a.germ', ['soak-too-long']);
    await session.close('a.germ');
    session.published.length = 0;
    await session.open('a.germ', `${lot}${long}`);
    await session.shows('a.germ', ['soak-too-long']);
  }));

test('a file outside every folder knows the journals beside it and none deeper', () => inSession(
  { settings, folder: false, files: { 'lots.germ': lot, 'deeper/more.germ': 'lot VER-24 Iris, 3 seeds\n' } },
  async session => {
    await session.open('b.germ', long);
    await session.shows('b.germ', ['soak-too-long']);
    expect(session.shown('deeper/more.germ')).toBeUndefined();
  }));

test('a severity can be changed, and a problem turned off', () => inSession(
  { settings: { ...settings, problems: { severity: { 'soak-too-long': 'error', 'dose-above-limit': 'off' } } } },
  async session => {
    await session.open('a.germ', `${lot}${long.replace('500', '2000')}`);
    await session.shows('a.germ', ['soak-too-long']);
    expect(session.shown('a.germ')?.[0]?.severity).toBe(1);
  }));

test('a limit of the settings counts, and the message says that it is one', () => inSession(
  { settings: { ...settings, limits: { soakHours: 12, strengths: { GA3: '400 ppm' } } } },
  async session => {
    await session.open('a.germ', `${lot}${long.replace('30 h', '20 h')}`);
    await session.shows('a.germ', ['dose-above-limit', 'soak-too-long']);
    const messages = session.shown('a.germ')?.map(({ message }) => message);
    expect(messages?.[0]).toContain('setting plumule.limits.strengths');
    expect(messages?.[1]).toContain('setting plumule.limits.soakHours');
  }));

test('no problem is shown that only waits for a file to be read or for the settings', () => inSession(
  {
    settings: { ...settings, limits: { soakHours: 48 } },
    files: { 'a.germ': long, ...Object.fromEntries(Array.from({ length: 40 }, (_, i) => [`more/${i}.germ`, ''])), 'z.germ': lot },
  },
  async session => {
    await session.open('a.germ', `${long}sowed VER-24\n`);
    await session.shows('a.germ', ['unknown-keyword']);
    expect(session.published.flatMap(({ diagnostics }) => diagnostics.map(({ code }) => code))).toEqual(['unknown-keyword']);
  }));

test('a long journal shows what its lines say by themselves before its lots are checked', () => inSession({ settings }, async session => {
  await session.open('a.germ', `${'# the cold bench\n'.repeat(6000)}${lot}${long}sowed VER-24\n`);
  await session.shows('a.germ', ['soak-too-long', 'unknown-keyword']);
  const [first] = session.published;
  expect(first?.diagnostics.map(({ code }) => code)).toEqual(['unknown-keyword']);
}));

test('a long journal is checked some lots at a time, and shows nothing of them before it is checked to the end', () => {
  let turns = 0;
  const later = (work: () => void) => {
    turns++;
    setImmediate(work);
  };
  let time = 0;
  // Whatever is done takes a second.
  const clock = vi.spyOn(performance, 'now').mockImplementation(() => (time += 1000));
  onTestFinished(() => clock.mockRestore());
  const lots = Array.from({ length: 50 }, (_, n) => `${lot}${long}`.replaceAll('VER-24', `V-${n}`));
  return inSession({ settings, later }, async session => {
    await session.open('a.germ', `${'# the cold bench\n'.repeat(5000)}${lots.join('')}`);
    await session.until(() => session.shown('a.germ')?.length === 50, () => 'not all are shown');
    expect(new Set(session.published.map(({ diagnostics }) => diagnostics.length))).toEqual(new Set([50]));
    expect(turns).toBeGreaterThan(50);
  });
});

test('a burst of edits is published once', () => inSession({ settings }, async session => {
  await session.open('a.germ', `${lot}${long}`);
  await session.shows('a.germ', ['soak-too-long']);
  session.published.length = 0;
  for (let version = 2; version < 12; version++) void session.change('a.germ', version, [2, 45, 45], '1');
  await session.change('a.germ', 12, [2, 45, 57], '24');
  await session.shows('a.germ', []);
  expect(session.published.length).toBeLessThanOrEqual(2);
}));

test('a file with a wrong byte is named in the log and the others are still read', () => inSession(
  { settings, files: { 'a.germ': `${lot}${long}` } },
  async session => {
    await session.shows('a.germ', ['soak-too-long']);
    await writeFile(path.join(session.folder, 'bad.germ'), Buffer.from([0x6c, 0x6f, 0x74, 0xff, 0xfe]));
    await session.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: session.uri('bad.germ'), type: 1 }],
    });
    await expect.poll(() => session.logged.some(message => message.includes('bad.germ'))).toBe(true);
  }));

test('addresses that a client encodes in its own way are the same file', () => inSession(
  { settings, files: { 'my winter (1).germ': lot } },
  async session => {
    const uri = session.uri('my winter (1).germ').replace('(', '%28').replace(')', '%29');
    const textDocument = { uri, languageId: 'plumule', version: 1, text: `${lot}${long}` };
    await session.connection.sendNotification('textDocument/didOpen', { textDocument });
    await expect.poll(() => session.published.findLast(params => params.uri === uri)?.diagnostics.length).toBe(1);
    expect(session.published.filter(({ diagnostics }) => diagnostics.some(({ code }) => code === 'duplicate-definition'))).toEqual([]);
  }));
