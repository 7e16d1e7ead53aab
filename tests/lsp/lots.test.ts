import { expect, test } from 'vitest';
import type { LotShown } from '../../server/src/lsp/lots.ts';
import { inSession } from '../support/lsp-client.ts';

const settings = { asOf: '2026-02-10T10:00' };
const journal = `lot V-1 Veratrum nigrum, 60 seeds
split V-1, A 24 seeds, B 24 seeds
day 2026-01-10
soak V-1/A 19:00, GA3 500 ppm, 24 h
soak V-1/B 19:00, water, 24 h
day 2026-01-11
sow V-1/A 19:00
sow V-1/B 19:00
day 2026-02-08
count V-1/A, 20
count V-1/B, 2
`;

test('lots are told with state, shares and their line, and with the verdict once it was asked for', () => inSession(
  { settings, files: { 'a.germ': journal } },
  async session => {
    const lots = await session.ask<LotShown[]>('plumule/lotRows', {});
    expect(lots).toMatchObject([{
      id: 'V-1', plant: 'Veratrum nigrum', state: 'open', stateText: '2 of 2 open: sown, day 30', winters: ['2025/26'],
      shares: ['untreated: 2 of 24 = 8.3 %', 'GA3 500 ppm 24 h: 20 of 24 = 83.3 %'],
      at: { uri: session.uri('a.germ'), range: { start: { line: 0, character: 4 }, end: { line: 0, character: 7 } } },
    }]);
    expect(lots[0]).not.toHaveProperty('journal');
    expect(lots[0]).not.toHaveProperty('verdicts');
    const { folder } = lots[0]!;
    const named = [{ folder, id: 'V-1' }, { folder, id: 'W-1' }, { folder: 'file:///elsewhere', id: 'V-1' }];
    expect(await session.ask('plumule/judgeLots', { lots: named })).toEqual([['worth repeating so far'], [], []]);
    expect(await session.ask('plumule/lotRows', {})).toMatchObject([{ verdicts: ['worth repeating so far'] }]);
  }));

test('lots of several journals say whose they are', () => inSession(
  { settings, folder: false, files: { 'x/a.germ': journal, 'y/b.germ': 'lot V-1 Iris, 6 seeds\n' } },
  async session => {
    const added = ['x', 'y'].map(name => ({ uri: session.uri(name), name }));
    await session.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added, removed: [] } });
    const lots = await session.ask<LotShown[]>('plumule/lotRows', {});
    expect(lots.map(({ id, journal: name, plant }) => [id, name, plant])).toEqual([['V-1', 'x', 'Veratrum nigrum'], ['V-1', 'y', 'Iris']]);
    expect(new Set(lots.map(({ folder }) => folder)).size).toBe(2);
  }));
