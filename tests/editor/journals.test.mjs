import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const winter = id => `lot ${id} Iris, 20 seeds\nsow ${id} 2026-01-01, at bag 3\n`;
const files = { 'a.germ': winter('V-1'), 'notes.txt': 'of no journal\n', '../elsewhere/b.germ': winter('W-1') };
const settings = { 'plumule.asOf': '2026-02-01T10:00' };

const rows = (editor, text) => editor.page.locator('.part.sidebar .monaco-list-row').filter({ hasText: text });

test('what is due, and where, is told apart by journal, and a round is written into the one that is picked', () => inEditor(
  { files, settings },
  async editor => {
    await editor.openFile('a.germ');
    await editor.openFile('../elsewhere/b.germ');
    await editor.runCommand('Plumule: Focus on Due View');
    await rows(editor, 'V-1: count').filter({ hasText: 'journal' }).first().waitFor();
    await rows(editor, 'W-1: count').filter({ hasText: 'elsewhere' }).first().waitFor();
    await rows(editor, 'bag 3').filter({ hasText: 'journal' }).first().waitFor();
    await rows(editor, 'bag 3').filter({ hasText: 'elsewhere' }).first().waitFor();
    await editor.openFile('notes.txt');
    await editor.runCommand('Plumule: Count What Is Due');
    await editor.quickInput.locator('.monaco-list-row').filter({ hasText: 'elsewhere' }).waitFor();
    expect(await editor.quickInput.locator('.monaco-list-row').count()).toBe(2);
    await editor.pick('elsewhere', 'elsewhere');
    await editor.until(async () => (await editor.lines()).some(line => line.startsWith('count W-1, ')), 'the round of the other journal');
  }));
