import { expect, test } from 'vitest';
import type { SoakChoices } from '../../server/src/features/soak/choices.ts';
import type { SoakWritten } from '../../server/src/lsp/soak.ts';
import { inSession } from '../support/lsp-client.ts';

const settings = { asOf: '2026-02-10T18:30' };
const bench = 'lot V-1 Iris, 60 seeds\nstock G1 2026-01-09, GA3 20 mg, 20 mL\nlot V-2 Iris, 60 seeds\n';

test('batches are offered by the lot in hand, and their records stand below a day line of today', () => inSession(
  { settings, files: { 'a.germ': bench } },
  async session => {
    const uri = session.uri('a.germ');
    const choices = await session.ask<SoakChoices>('plumule/soakChoices', { uri, position: { line: 2, character: 4 } });
    expect(choices.batches.map(({ id }) => id)).toEqual(['V-2', 'V-1']);
    const soak = { batches: ['V-1', 'V-2'], liquid: 'G1', amount: '5 mL' };
    expect(await session.ask<SoakWritten>('plumule/soakRecords', { uri, soak })).toMatchObject({
      problems: {}, written: { uri, text: '\n\nday 2026-02-10\nsoak V-1 18:30, G1 5 mL\nsoak V-2 18:30, G1 5 mL' },
    });
    const wrong = await session.ask<SoakWritten>('plumule/soakRecords', { uri, soak: { ...soak, strength: '9 %' } });
    expect(wrong.written).toBeNull();
    expect(wrong.problems.strength).toContain('G1 is weaker');
  }));

test('without a journal there is no batch to choose', () => inSession({ settings }, async session => {
  expect(await session.ask('plumule/soakChoices', {})).toMatchObject({ batches: [] });
}));
