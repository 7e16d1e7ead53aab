import { expect, test } from 'vitest';
import type { PanelShown } from '../../server/src/lsp/panel.ts';
import { inSession } from '../support/lsp-client.ts';

const settings = { asOf: '2026-03-01' };
const journal = `lot V-1 Veratrum nigrum, 60 seeds
split V-1, A 24 seeds, B 24 seeds
soak V-1/A 2026-01-10 19:00, GA3 500 ppm, 24 h
sow V-1/A 2026-01-11
sow V-1/B 2026-01-11
count V-1/A 2026-02-10, 18
count V-1/B 2026-02-10, 7
lot I-1 Iris alba, 10 seeds, at tin 1
`;

test('the panel shows the lot of the cursor, else the one before, with what was typed a moment ago', () => inSession(
  { settings },
  async session => {
    await session.open('a.germ', journal);
    const uri = session.uri('a.germ');
    const ask = (more: object) => session.ask<PanelShown>('plumule/panel', { uri, view: 'lot', width: 560, height: 640, ...more });
    const shown = await ask({ position: { line: 5, character: 2 } });
    expect(shown).toMatchObject({ title: 'V-1 Veratrum nigrum', lot: 'V-1' });
    expect(shown.html).toContain(`data-way="5 ${uri}"`);
    expect(shown.html).toContain('18 of 24 germinated');
    expect(shown.colours).toContain('--vscode-editor-background');
    await session.change('a.germ', 2, [5, 24, 26], '9');
    expect((await ask({ lot: 'V-1', position: { line: 8, character: 0 } })).html).toContain('9 of 24 germinated');
    expect((await ask({ view: 'places' })).html).toContain('tin 1');
  }));

test('photos come as the path that their record names, and nobody has looked whether it is one', () => inSession({ settings }, async session => {
  await session.open('a.germ', `${journal}photo V-1 2026-02-10, ../../etc/passwd.png\nphoto V-1 2026-02-11, https://host/a.png\n`);
  const uri = session.uri('a.germ');
  const { photos, html } = await session.ask<PanelShown>('plumule/panel', { uri, lot: 'V-1', view: 'lot', width: 560, height: 640 });
  expect(photos).toEqual([{ uri, path: '../../etc/passwd.png' }, { uri, path: null }]);
  expect(html).not.toContain('<img');
}));

test('without a journal the panel says so, and a file that is none has the first journal', () => inSession({ settings }, async session => {
  expect(await session.ask<PanelShown>('plumule/panel', {})).toMatchObject({ lot: null, title: 'Pictures' });
  await session.open('a.germ', journal);
  expect(await session.ask<PanelShown>('plumule/panel', { uri: session.uri('no.germ'), lot: 'I-1' })).toMatchObject({ lot: 'I-1' });
}));
