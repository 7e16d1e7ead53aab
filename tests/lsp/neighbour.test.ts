import { expect, test } from 'vitest';
import type { NeighbourShown, RecordsShown } from '../../server/src/lsp/navigation.ts';
import { inSession } from '../support/lsp-client.ts';

test('a client is led to the next record of a batch, into another file, and told where there is none', () => inSession(
  { files: { 'a.germ': 'lot V-1 Iris, 20 seeds\nsow V-1 2026-01-11\n', 'b.germ': 'count V-1 2026-02-01, 3\n' } },
  async session => {
    const ask = (name: string, line: number, direction: string) => session.ask<NeighbourShown | null>(
      'plumule/neighbour', { uri: session.uri(name), position: { line, character: 6 }, direction });
    expect(await ask('a.germ', 1, 'next')).toEqual({
      path: 'V-1', at: { uri: session.uri('b.germ'), range: { start: { line: 0, character: 6 }, end: { line: 0, character: 9 } } },
    });
    expect(await ask('b.germ', 0, 'next')).toEqual({ path: 'V-1', at: null });
    expect(await ask('b.germ', 1, 'next')).toBeNull();
  }));

test('a client gets all records of a batch with their days and files', () => inSession(
  { files: { 'a.germ': 'lot V-1 Iris, 20 seeds\nsow V-1 2026-01-11\n', 'b.germ': 'day 2026-02-01\ncount V-1, 3\n' } },
  async session => {
    const ask = (line: number) => session.ask<RecordsShown | null>(
      'plumule/records', { uri: session.uri('b.germ'), position: { line, character: 6 } });
    const found = await ask(1);
    expect(found).toMatchObject({ path: 'V-1', here: 2 });
    expect(found!.records.map(({ when, text, at }) => [when, text, at.uri, at.range.start.line])).toEqual([
      [null, 'lot V-1 Iris, 20 seeds', session.uri('a.germ'), 0],
      ['2026-01-11', 'sow V-1 2026-01-11', session.uri('a.germ'), 1],
      ['2026-02-01', 'count V-1, 3', session.uri('b.germ'), 1],
    ]);
    expect(await ask(0)).toBeNull();
  }));
