import { expect, test } from 'vitest';
import type { NewJournal } from '../../server/src/features/new-journal.ts';
import { inSession } from '../support/lsp-client.ts';

test('a first file has the zone of the machine and says it, a later one has that of its journal', () => inSession(
  { files: { 'a.germ': 'zone Pacific/Auckland\n' } },
  async session => {
    const first = await session.ask<NewJournal>('plumule/newJournal', { zone: 'Europe/Vienna' });
    expect(first.file).toMatch(/^\d{4}-\d\d\.germ$/);
    expect(first.head).toContain('\nzone Europe/Vienna\n');
    const next = await session.ask<NewJournal>('plumule/newJournal', { zone: 'Europe/Vienna', uri: session.uri('a.germ') });
    expect(next.file).toMatch(/^\d{4}\.germ$/);
    expect(next.head).not.toContain('zone');
  }));
