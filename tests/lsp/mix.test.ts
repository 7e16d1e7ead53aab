import { expect, test } from 'vitest';
import type { MixShown } from '../../server/src/lsp/mix.ts';
import { inSession } from '../support/lsp-client.ts';

const settings = { asOf: '2026-02-10' };
const bench = 'stock G1 2026-01-09, GA3 20 mg, 20 mL\n';
const question = { agent: 'GA3', strength: '500 ppm', volume: '10 mL', stock: 'G1' };

test('a solution from a stock of the journal is planned, and its record stands below a day line of today', () => inSession(
  { settings, files: { 'a.germ': bench } },
  async session => {
    const uri = session.uri('a.germ');
    const shown = await session.ask<MixShown>('plumule/mix', { question, uri });
    expect(shown.plan?.steps[0]?.text).toContain('Take 5 mL of');
    expect(shown.written).toMatchObject({ uri, text: '\n\nday 2026-02-10\ndilute G1-500, from G1 5 mL, to 10 mL' });
    const named = await session.ask<MixShown>('plumule/mix', { question: { ...question, id: 'G7' }, uri });
    expect(named.written?.text).toContain('dilute G7, from G1 5 mL');
  }));

test('a solution from a packet of the journal is written as made from it', () => inSession(
  { settings, files: { 'a.germ': `powder P1 2025-11-02, GA3 1 g, purity 90 %\n${bench}` } },
  async session => {
    const uri = session.uri('a.germ');
    const { stocks } = await session.ask<MixShown>('plumule/mix', { question: { agent: 'GA3' }, uri });
    expect(stocks).toContainEqual({ id: 'P1', text: 'GA3 powder, purity 90 %, 1 g left' });
    const shown = await session.ask<MixShown>('plumule/mix', { question: { agent: 'GA3', strength: '900 ppm', volume: '100 mL', stock: 'P1' }, uri });
    expect(shown.written?.text).toBe('\n\nday 2026-02-10\nstock G2, from P1 100 mg, 100 mL');
  }));

test('without a file the first journal answers, and without a journal there is no record', async () => {
  await inSession({ settings, files: { 'a.germ': bench } }, async session => {
    const shown = await session.ask<MixShown>('plumule/mix', { question });
    expect(shown.stocks).toEqual([{ id: 'G1', text: 'GA3 1000 ppm, 20 mL left' }]);
    expect(shown.written?.uri).toBe(session.uri('a.germ'));
  });
  await inSession({ settings }, async session => {
    const shown = await session.ask<MixShown>('plumule/mix', { question: { ...question, stock: undefined, volume: '1 L' } });
    expect(shown.plan?.method).toBe('powder');
    expect(shown.written).toBeNull();
  });
});

test('what cannot be understood or made is told', () => inSession({ settings }, async session => {
  const wrong = await session.ask<MixShown>('plumule/mix', { question: { agent: 'GA3', strength: '0,5 g/L' } });
  expect(wrong.problems.strength).toContain('Write 0.5');
  const refused = await session.ask<MixShown>('plumule/mix', { question: { agent: 'GA3', strength: '9 %', volume: '1 L' } });
  expect(refused.refusal?.code).toBe('above-solubility');
}));
