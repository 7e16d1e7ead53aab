import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const journal = `powder P1 2025-11-02, GA3 1 g, purity 90 %, at freezer
stock G1 2026-01-09, from P1 20 mg, 18 mL, at fridge door
lot VER-24 Veratrum nigrum, 60 seeds
soak VER-24 2026-01-10 19:00, G1 8 mL, 24 h
`;
const settings = { 'plumule.asOf': '2026-01-12T10:00' };

const stocks = editor => editor.page.locator('.part.sidebar .monaco-list-row').filter({ hasText: 'GA3' });
const texts = async editor => (await stocks(editor).allInnerTexts()).map(row => row.replace(/\s+/g, ' ').trim());

async function showStocks(editor) {
  await editor.openFile('a.germ');
  await editor.runCommand('Plumule: Focus on Stocks View');
  await editor.until(async () => (await texts(editor)).some(row => row.startsWith('G1: 10 mL')), 'what is left of G1');
}

test('the side bar lists what is left of each bottle and packet, and a click leads to its record', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    await showStocks(editor);
    expect(await texts(editor)).toEqual([
      expect.stringMatching(/^P1: 980 mg ?GA3 powder, purity 90 %/), expect.stringMatching(/^G1: 10 mL ?GA3 1000 ppm/),
    ]);
    const row = stocks(editor).filter({ hasText: 'G1' }).first();
    expect(await row.getAttribute('aria-label')).toContain('G1, 10 mL left, GA3 1000 ppm');
    await editor.until(async () => {
      // A click may be lost when the list is drawn anew.
      await row.click({ timeout: 3000 });
      return (await editor.statusBar()).some(text => text.startsWith('Ln 2,'));
    }, 'the record of the bottle');
  }));

test('the list follows what is written', () => inEditor(
  { files: { 'a.germ': `${journal}left P1 2026-01-11, 640 mg\n` }, settings },
  async editor => {
    await showStocks(editor);
    await editor.until(async () => (await texts(editor)).some(row => row.startsWith('P1: 640 mg')), 'what was weighed');
    await writeFile(path.join(editor.folder, 'a.germ'), `${journal}left P1 2026-01-11, 600 mg\nnote G1 2026-01-12, emptied\n`);
    await editor.until(async () => (await texts(editor)).every(row => row.startsWith('P1: 600 mg')), 'the packet alone, weighed anew');
  }));
