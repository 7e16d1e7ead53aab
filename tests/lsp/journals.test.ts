import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import type { DueShown, PlaceShown, RoundShown, StockShown } from '../../server/src/lsp/calendar-shapes.ts';
import { folderWith } from '../disk/helpers.ts';
import { inSession, type Session } from '../support/lsp-client.ts';

const settings = { asOf: '2026-02-01 10:00' };
const winter = (id: string) => `lot ${id} Iris, 20 seeds\nsow ${id} 2026-01-01, at bag 3\nstock G-${id} 2026-01-01, GA3 20 mg, 20 mL\n`;

const shownBy = async (session: Session) => ({
  due: (await session.ask<DueShown[]>('plumule/due', {})).filter(({ kind }) => kind === 'count').map(({ id, journal }) => [id, journal]),
  places: (await session.ask<PlaceShown[]>('plumule/places', {})).map(({ name, journal }) => [name, journal]),
  stocks: (await session.ask<StockShown[]>('plumule/stocks', {})).map(({ id, journal }) => [id, journal]),
  rounds: (await session.ask<RoundShown[]>('plumule/rounds', {})).map(({ name, batches }) => [name, batches]),
});

test('several journals are told apart by their folders; one alone needs no name', () => inSession(
  { settings, files: { 'a.germ': winter('V-1') } },
  async session => {
    expect(await shownBy(session)).toEqual({
      due: [['V-1', undefined]], places: [['bag 3', undefined]], stocks: [['G-V-1', undefined]], rounds: [['', 1]],
    });
    const other = await folderWith({ 'b.germ': winter('W-1') });
    const uri = pathToFileURL(path.join(other, 'b.germ')).href;
    await session.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'plumule', version: 1, text: winter('W-1') },
    });
    const [mine, theirs] = [path.basename(session.folder), path.basename(other)];
    expect(await shownBy(session)).toEqual({
      due: [['V-1', mine], ['W-1', theirs]], places: [['bag 3', mine], ['bag 3', theirs]],
      stocks: [['G-V-1', mine], ['G-W-1', theirs]], rounds: [[mine, 1], [theirs, 1]],
    });
  }));
