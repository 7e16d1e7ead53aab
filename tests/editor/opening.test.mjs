import { expect, test } from 'vitest';
import { inEditor, picture } from './journal.mjs';

const journal = `# Winter 2026, an invented bench
lot VER-24 Veratrum nigrum, 60 seeds
  Sown as soon as it came.
`;

test('a .germ file opens as Plumule, with its comments in a colour of their own', () => inEditor(
  { files: { 'bench.germ': journal } },
  async editor => {
    await editor.openFile('bench.germ');
    await editor.until(async () => (await editor.statusBar()).includes('Plumule'), 'language mode Plumule');
    await editor.until(async () => {
      const [comment] = await editor.tokens(1);
      const [keyword] = await editor.tokens(2);
      return comment.text.startsWith('#') && comment.color !== keyword.color;
    }, 'a comment in another colour than a keyword');
    expect((await editor.lines())[1]).toBe('lot VER-24 Veratrum nigrum, 60 seeds');
    await editor.page.screenshot({ path: picture('opening') });
  }));
