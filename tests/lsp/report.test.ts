import { expect, test } from 'vitest';
import type { LotsShown } from '../../server/src/lsp/report.ts';
import { inSession, type Session } from '../support/lsp-client.ts';

const settings = { asOf: '2026-03-01' };
const journal = `lot V-1 Veratrum nigrum, 60 seeds
split V-1, A 24 seeds, B 24 seeds
soak V-1/A 2026-01-10 19:00, GA3 500 ppm, 24 h
soak V-1/B 2026-01-10 19:00, water, 24 h
sow V-1/A 2026-01-11
sow V-1/B 2026-01-11
count V-1/A 2026-02-10, 18
count V-1/B 2026-02-10, 7
lot I-1 Iris alba, 10 seeds, at tin 1
`;

const report = (session: Session) => session.ask<string>('plumule/report', {});

test('the report has the batches of each lot, treated against untreated and the verdict', () => inSession(
  { settings, files: { 'a.germ': journal } },
  async session => {
    const text = await report(session);
    expect(text).toMatch(/^# Report as of 2026-03-01\n\n## V-1 Veratrum nigrum\n/);
    // R 4.2.2: fisher.test(rbind(c(18, 6), c(7, 17))), p = 0.0034.
    expect(text).toContain('**GA3 500 ppm 24 h (A) against water 24 h (B)**  \n  Worth repeating');
    expect(text).toContain('46 points more (95 % interval 18 to 65)');
  }));

test('a report has the edits that were sent before it was asked for, and the errors in them', () => inSession({ settings }, async session => {
  await session.open('a.germ', journal);
  await session.change('a.germ', 2, [7, 24, 25], '9, 1 sprouted');
  const text = await report(session);
  expect(text).toContain('The records of V-1');
}));

const two = {
  'x/winter/a.germ': journal, 'y/winter/b.germ': 'lot Q-1 Quercus robur, 5 seeds\nsow Q-1 2026-02-25, at frame\n',
};

async function openFolders(session: Session, ...names: string[]): Promise<void> {
  const added = names.map(name => ({ uri: session.uri(name), name }));
  await session.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added, removed: [] } });
}

test('the report of all journals calls each by its folder, by the whole path where two have one name', () => inSession(
  { settings, files: two, folder: false },
  async session => {
    await openFolders(session, 'x/winter', 'y');
    const text = await report(session);
    expect(text).toContain('# Report of winter as of 2026-03-01');
    expect(text).toContain('# Report of y as of 2026-03-01\n\n## Q-1 Quercus robur');
    await openFolders(session, 'y/winter');
    expect(await report(session)).toContain('/y/winter as of 2026-03-01\n\n## Q-1');
  }));

test('the report of a journal alone needs no name, and without a journal there is none', async () => {
  await inSession({ settings, files: { 'a.germ': journal } }, async session => {
    expect(await report(session)).toMatch(/^# Report as of 2026-03-01\n\n## V-1 .*## I-1 Iris alba/s);
  });
  await inSession({ settings }, async session => {
    expect(await report(session)).toBe('This journal has no lots yet.\n');
  });
});

test('what to do with a lot is told from its journal', () => inSession(
  { settings, files: { 'a.germ': journal } },
  async session => {
    const uri = session.uri('a.germ');
    const advice = (lot: string) => session.ask<string>('plumule/advice', { uri, lot });
    expect(await advice('I-1')).toMatch(/^# What to do with I-1 Iris alba, as of 2026-03-01\n\n/);
    expect(await advice('X-1')).toBe('The lot X-1 is no longer in this journal.\n');
  }));

test('a line tells its lot; where it is about none there are all to choose from', () => inSession(
  { settings, files: { 'a.germ': journal } },
  async session => {
    const uri = session.uri('a.germ');
    const at = (line: number) => session.ask<LotsShown>('plumule/lots', { uri, position: { line, character: 3 } });
    expect(await at(6)).toEqual({ at: 'V-1', lots: [] });
    const all = {
      at: null, lots: [{ uri, lot: 'V-1', plant: 'Veratrum nigrum' }, { uri, lot: 'I-1', plant: 'Iris alba' }],
    };
    expect(await at(9)).toEqual(all);
    expect(await session.ask('plumule/lots', {})).toEqual(all);
  }));

test('the sheet of places is a page of its own, with the places of each journal', () => inSession(
  { settings, files: two, folder: false },
  async session => {
    await openFolders(session, 'x', 'y');
    const page = await session.ask<string>('plumule/sheet', {});
    expect(page).toMatch(/^<!DOCTYPE html>\n.*<\/html>\n$/s);
    expect(page).toMatch(/<h1>Places in x as of 2026-03-01<\/h1>.*<h2>tin 1<\/h2>.*<h1>Places in y .*<h2>frame<\/h2>/s);
  }));
