import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor, picture } from './journal.mjs';

const journal = `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h
soak VER-24/B 2026-01-10 19:00, water, 24 h
sow VER-24/A 2026-01-11 19:00, at shelf 1 slot 1
sow VER-24/B 2026-01-11 19:00, at shelf 1 slot 2
count VER-24/A 2026-02-10, 18
count VER-24/B 2026-02-10, 7
lot IRI-1 Iris alba, 10 seeds, from <img src=x onerror=alert(1)>
`;
const asOf = { 'plumule.asOf': '2026-02-12T18:30' };
const dark = { ...asOf, 'workbench.colorTheme': 'Default Dark Modern' };
const left = editor => editor.page.locator('.editor-group-container').first();
const marks = editor => editor.webview().locator('[data-way]');
const reads = (editor, words) => editor.until(
  async () => (await editor.webview().locator('main').innerText({ timeout: 3000 })).replace(/\s+/g, ' ').includes(words),
  `“${words}” in the panel`);

/** Tab, until one of the marks of the picture has the focus. */
const tabToMark = editor => editor.until(async () => {
  await editor.press('Tab');
  return editor.webview().locator('[data-way]:focus').count();
}, 'the focus on a mark');

test('by keyboard alone the panel opens, follows what is typed, leads to records, and comes back with the window', () => inEditor(
  { files: { 'a.germ': journal }, settings: dark, height: 790 },
  async editor => {
    const { page } = editor;
    await editor.openFile('a.germ');
    await page.locator('.codelens-decoration').first().waitFor();
    await editor.goTo(8, 3);
    await editor.press('Control+K');
    await editor.press('v');
    await reads(editor, '46 points more');
    // Picture, verdict and table are seen at once.
    const { needed, height } = await editor.webview().locator('html').evaluate(html => (
      { needed: html.scrollHeight, height: html.ownerDocument.defaultView.innerHeight }));
    expect(height).toBeLessThanOrEqual(700);
    expect(needed).toBeLessThanOrEqual(height);
    await page.screenshot({ path: picture('panel-dark') });

    await left(editor).locator('.view-line').first().click();
    await editor.goTo(8, 28);
    await editor.type('1');
    await editor.until(async () => (await marks(editor).locator('title').allTextContents()).some(each => (
      each.includes('17 of 24 germinated') && each.includes('count VER-24/B 2026-02-10, 17'))), 'the count in the picture');

    await editor.webview().locator('[role=tab][aria-selected=true]').focus();
    await tabToMark(editor);
    const focused = editor.webview().locator('[data-way]:focus');
    const line = async () => Number((await focused.getAttribute('data-way')).split(' ')[0]) + 1;
    const first = await line();
    await editor.press('ArrowRight');
    await editor.until(async () => await line() !== first, 'the next mark');
    const second = await line();
    await editor.press('Enter');
    await editor.until(async () => (await editor.cursor()).line === second, 'the line of the record');

    await editor.webview().locator('[role=tab][aria-selected=true]').focus();
    await editor.press('End');
    await reads(editor, 'Places');
    await editor.webview().locator('.slot').first().waitFor();
    await editor.reload();
    await editor.webview().locator('.slot').first().waitFor();
  }));

test('the panel has the colours of each theme, and runs nothing that stands in the journal', () => inEditor(
  { files: { 'a.germ': journal }, settings: asOf },
  async editor => {
    await editor.openFile('a.germ');
    await editor.page.locator('.codelens-decoration').first().waitFor();
    await editor.goTo(8, 3);
    await editor.runCommand('Plumule: Show Pictures Beside the Journal');
    await reads(editor, '46 points more');
    const body = editor.webview().locator('body');
    const paper = () => editor.webview().locator('svg > rect').first().evaluate(rect => getComputedStyle(rect).fill);
    for (const [theme, kind] of [
      ['Default Light Modern', 'vscode-light'], ['Default High Contrast', 'vscode-high-contrast'],
      ['Default High Contrast Light', 'vscode-high-contrast-light'], ['Default Dark Modern', 'vscode-dark'],
    ]) {
      await writeFile(path.join(editor.folder, '.vscode/settings.json'), JSON.stringify({ ...asOf, 'workbench.colorTheme': theme }));
      await editor.until(async () => await body.getAttribute('data-vscode-theme-kind') === kind, theme);
      const behind = () => body.evaluate(element => getComputedStyle(element).backgroundColor);
      await editor.until(async () => await paper() === await behind(), `${theme}: the paper of the picture`);
      await editor.page.screenshot({ path: picture(`panel-${kind}`) });
    }
    await left(editor).locator('.view-line').first().click();
    await editor.goTo(9, 3);
    await reads(editor, 'from <img src=x onerror=alert(1)>');
    expect(await editor.webview().locator('img, main script').count()).toBe(0);
  }));
