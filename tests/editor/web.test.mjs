import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const files = {
  'lots.germ': '# Lots\nlot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds, B 24 seeds\n',
  'bench.germ': `day 2026-01-10
soak VER-24/A 19:00, GA3 500 ppm, 30 h, at bag 1
soak VER-24/B 19:00, water, 24 h, at bag 2
`,
};
const settings = { 'plumule.asOf': '2026-01-11T18:30' };

/** What a journal in the browser must do: problems, hover, a jump to another file, what is due, and a report. */
async function works(editor) {
  await editor.clickFile('bench.germ');
  await editor.until(async () => (await editor.problems()).some(row => row?.includes('the limit is 24 h')), 'the problem');
  const { text } = await editor.hover('VER-24/A');
  expect(text).toContain('Veratrum nigrum');
  await editor.group.locator('.view-line').first().click();
  await editor.goTo(2, 8);
  await editor.until(async () => {
    await editor.press('F12');
    return editor.page.locator('.tab.active[data-resource-name="lots.germ"]').isVisible();
  }, 'the lot');
  await editor.runCommand('View: Show Plumule');
  const rows = editor.page.locator('.part.sidebar .monaco-list-row');
  await rows.filter({ hasText: 'VER-24/B: lift' }).first().waitFor();
  await rows.filter({ hasText: 'VER-24/A' }).first().waitFor();
  // The cursor is still on the lot.
  await editor.runCommand('Plumule: Compare the Batches of This Lot');
  await editor.until(async () => (await editor.webview().locator('body').innerText()).includes('GA3 500 ppm'), 'the report');
  await editor.page.locator('.editor-group-container').first().locator('.view-line').first().click();
}

test('in a browser without Node the whole extension works on the files of the editor', () => inEditor(
  { files, settings, web: true }, works));

test('in a virtual workspace, whose files lie on no disk, it works too, and writes into them', () => inEditor(
  { files, settings, memory: true },
  async editor => {
    await works(editor);
    const row = editor.page.locator('.part.sidebar .monaco-list-row').filter({ hasText: 'VER-24/B: lift' }).first();
    await row.hover();
    await row.getByLabel('Write the Record').click();
    await editor.until(async () => (await editor.lines()).some(line => line.startsWith('lift VER-24/B')), 'the lift');
    // It was saved: into a file system that only the editor knows.
    await editor.page.locator('.tab.dirty').first().waitFor({ state: 'detached' });
  }));
