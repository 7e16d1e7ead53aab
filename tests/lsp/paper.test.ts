import { expect, test } from 'vitest';
import { inSession } from '../support/lsp-client.ts';

test('labels and the counting sheet come as pages to print', () => inSession(
  { settings: { asOf: '2026-02-10' }, files: { 'a.germ': 'lot GEN-25 Gentiana lutea, 24 seeds\nsow GEN-25 2026-01-11, at bag 3 slot 1\n' } },
  async session => {
    const labels = await session.ask<string>('plumule/labels', { paper: 'letter-3x10' });
    expect(labels).toMatch(/^<!DOCTYPE html>[^]*size: letter[^]*<b>GEN-25<\/b>/);
    expect(await session.ask<string>('plumule/roundSheet', {})).toMatch(/^<!DOCTYPE html>[^]*bag 3[^]*0 of 24/);
  }));
