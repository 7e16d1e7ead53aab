import { expect, test } from 'vitest';
import { escapeMarkdown, markdownBlocks, markdownTable } from '../../server/src/features/markdown.ts';
import { hoverContents, plainOf } from '../../server/src/lsp/plain.ts';

test('signs of the journal come out as they were, emphasis and pictures as their words', () => {
  const name = String.raw`[x](y) *V_1* 1\2 <b> a|b 50 % ~ www.x.org`;
  expect(plainOf(`**${escapeMarkdown(name)}** is ![a curve \\[of it\\]](data:image/svg+xml;base64,AAAA)`)).toBe(
    `${name} is a curve [of it]`);
});

test('a table keeps its rows and loses its rule', () => {
  const table = markdownTable(['**Batch**', 'n'], [['A', '3'], ['B', '4']]);
  expect(plainOf(markdownBlocks(['Two batches', table]))).toBe('Two batches\n\n| Batch | n |\n| A | 3 |\n| B | 4 |');
});

test('an example stands without its fence', () => {
  expect(plainOf('The facts\n\n```plumule\nlot V-1 Iris\n```\n\nMore')).toBe('The facts\n\nlot V-1 Iris\n\nMore');
});

test('a client gets Markdown only where it says that it takes it', () => {
  const taking = (contentFormat: ('markdown' | 'plaintext')[]) => ({ textDocument: { hover: { contentFormat } } });
  expect(hoverContents('**A**', taking(['plaintext', 'markdown']))).toEqual({ kind: 'markdown', value: '**A**' });
  expect(hoverContents('**A**', taking(['plaintext']))).toEqual({ kind: 'plaintext', value: 'A' });
  expect(hoverContents('**A**', {})).toEqual({ kind: 'plaintext', value: 'A' });
});
