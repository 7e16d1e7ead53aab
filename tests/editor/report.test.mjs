import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const journal = `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h
soak VER-24/B 2026-01-10 19:00, water, 24 h
sow VER-24/A 2026-01-11 19:00, at shelf 1 slot 1
sow VER-24/B 2026-01-11 19:00, at shelf 1 slot 2
count VER-24/A 2026-02-10, 18
count VER-24/B 2026-02-10, 7
lot IRI-1 Iris alba, 10 seeds
`;
const settings = { 'plumule.asOf': '2026-02-12T18:30' };

const rendered = (editor, nth = 0) => editor.webview(nth).locator('body').innerText({ timeout: 3000 });
const reads = (editor, words, nth = 0) => editor.until(
  async () => (await rendered(editor, nth)).replace(/\s+/g, ' ').includes(words), `“${words}” in the preview`);
const left = editor => editor.page.locator('.editor-group-container').first();

test('the lens over a lot shows its comparison beside the journal, and that follows what is typed', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    await editor.openFile('a.germ');
    await editor.page.locator('.codelens-decoration a').filter({ hasText: 'compare' }).first().click();
    // R 4.2.2: fisher.test(rbind(c(18, 6), c(7, 17))), p = 0.0034.
    await reads(editor, 'GA3 500 ppm 24 h (A) against water 24 h (B)');
    await reads(editor, '46 points more');
    expect(await rendered(editor)).not.toContain('Iris');
    await left(editor).locator('.view-line').first().click();
    await editor.goTo(8, 28);
    await editor.type('1');
    await reads(editor, '17 of 24 untreated');
    // Nothing was saved for it.
    expect(await readFile(path.join(editor.folder, 'a.germ'), 'utf8')).toBe(journal);
  }));

test('the lens over a packet says what to do with it, and a refactoring writes the records of that', () => inEditor(
  { files: { 'a.germ': `${journal}guide Iris, GA3 250 ppm, 24 h, source "a book"\n` }, settings },
  async editor => {
    await editor.openFile('a.germ');
    await editor.page.locator('.codelens-decoration a').filter({ hasText: 'what to do with it' }).first().click();
    await reads(editor, 'What to do with IRI-1 Iris alba');
    await reads(editor, 'your guide gives it, and you have no comparison of your own for Iris alba');
    await left(editor).locator('.view-line').first().click();
    await editor.goTo(9, 6);
    await editor.press('Control+Shift+R');
    // The first one is for later: it reminds of the soaks.
    const focused = editor.page.locator('.action-widget .monaco-list-row.focused');
    await focused.filter({ hasText: 'remind of the soaks' }).waitFor();
    await editor.press('ArrowDown');
    await focused.filter({ hasText: 'Do as advised with IRI-1: divide it, and begin the soaks now' }).waitFor();
    await editor.press('Enter');
    const isThere = async start => (await editor.lines()).some(line => line.startsWith(start));
    await editor.until(() => isThere('soak IRI-1/A 2026-02-12 18:30, GA3 250 ppm, 24 h'), 'the soak');
    expect(await isThere('split IRI-1, A 5 seeds, B 5 seeds')).toBe(true);
  }));

test('the palette compares the lot under the cursor, and asks for one where there is none', () => inEditor(
  { files: { 'a.germ': `# Winter\n${journal}` }, settings },
  async editor => {
    const { page } = editor;
    await editor.openFile('a.germ');
    await page.locator('.codelens-decoration').first().waitFor();
    await editor.goTo(8, 3);
    await editor.runCommand('Plumule: Compare the Batches of This Lot');
    await page.locator('.tab').filter({ hasText: 'VER-24 Veratrum nigrum' }).waitFor();
    await reads(editor, 'VER-24 Veratrum nigrum');
    await left(editor).locator('.view-line').first().click();
    await editor.goTo(1);
    await editor.runCommand('Plumule: Compare the Batches of This Lot');
    await editor.pick('alba', 'IRI-1');
    await reads(editor, 'IRI-1 Iris alba');
  }));

test('the report of the whole journal is shown, comes back with the window, and shows text of the journal as it was written', () => inEditor(
  {
    files: { 'a.germ': `${journal}lot EVIL-1 <img src=x onerror=alert(1)> [a](https://x.org) www.x.org a@b.org, 9 seeds, from ![p](https://x.org/p.png) <script>x</script>\nsow EVIL-1 2026-01-11\n` },
    settings,
  },
  async editor => {
    await editor.openFile('a.germ');
    await editor.page.locator('.codelens-decoration').first().waitFor();
    await editor.runCommand('Plumule: Show the Report');
    const isWhole = async () => {
      await reads(editor, 'VER-24 Veratrum nigrum');
      await reads(editor, 'EVIL-1 <img src=x onerror=alert(1)> [a](https://x.org) www.x.org a@b.org');
      await reads(editor, 'from ![p](https://x.org/p.png) <script>x</script>');
      const body = editor.webview().locator('.markdown-body');
      expect(await body.locator('img, script, iframe').count()).toBe(0);
      // The preview makes links of bare addresses, if that is not turned off; each leads where it says.
      const links = await body.locator('a').evaluateAll(all => all.map(({ href, textContent }) => [href, textContent]));
      for (const [target, words] of links) expect(target.replace(/^mailto:|\/$/g, '')).toBe(words);
    };
    await isWhole();
    await editor.reload();
    await isWhole();
  }));

test('the sheet of places is written where the grower says', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    const { page } = editor;
    await editor.openFile('a.germ');
    await editor.runCommand('View: Show Plumule');
    const row = page.locator('.part.sidebar .monaco-list-row').filter({ hasText: '1: VER-24/A' }).first();
    await row.waitFor();
    await editor.until(async () => {
      await row.hover();
      await page.getByRole('button', { name: 'Write the Sheet of Places to Print' }).click({ timeout: 3000 });
      return true;
    }, 'the button of the view');
    const input = editor.quickInput.locator('input').first();
    await editor.until(async () => (await input.inputValue()).endsWith('places.html'), 'a name for the file');
    await editor.press('Enter');
    const file = path.join(editor.folder, 'places.html');
    await editor.until(() => existsSync(file), 'the sheet');
    await editor.until(async () => (await editor.notifications()).some(each => each.includes('places.html')), 'the message');
    const sheet = await readFile(file, 'utf8');
    expect(sheet).toMatch(/^<!DOCTYPE html>.*<h2>shelf 1<\/h2>.*VER-24\/A.*<\/html>\n$/s);
  }));
