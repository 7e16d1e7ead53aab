import { expect, test } from 'vitest';
import { inEditor, picture } from './journal.mjs';

const settings = { 'plumule.asOf': '2026-11-25T20:00' };

const rows = (editor, text) => editor.page.locator('.part.sidebar .monaco-list-row').filter({ hasText: text });

/** Opens a file of the samples and the list of lots beside it. */
async function showLots(editor, file) {
  await editor.openFile(file);
  await editor.runCommand('Plumule: Focus on Lots View');
  await rows(editor, /lots?, \d+ open/).first().waitFor();
}

async function filter(editor, words) {
  const { page } = editor;
  const header = page.locator('.part.sidebar .pane-header').filter({ hasText: 'Lots' });
  await header.hover();
  await header.getByLabel('Filter the Lots').click();
  await editor.quickInput.locator('input').first().fill(words);
  await editor.press('Enter');
  await page.locator('.part.sidebar .message').getByText(words).waitFor();
}

test('lots stand by plant, then by winter; a filter finds some of them, and a click leads to the line of a lot', () => inEditor(
  { settings },
  async editor => {
    await showLots(editor, '2026-27.germ');
    await editor.runCommand('Plumule: Group the Lots by Winter');
    await rows(editor, 'Winter 2026/27').waitFor();
    await editor.page.screenshot({ path: picture('lots-winter') });
    await filter(editor, 'asclepiadea 2025');
    const row = rows(editor, 'GEN-25').first();
    // Also the state, which else its symbol shows, and the verdict, which comes behind the rest.
    await editor.until(async () => /repeating/.test(await row.getAttribute('aria-label')), 'the verdict');
    await editor.page.screenshot({ path: picture('lots-filter') });
    expect(await rows(editor, 'GEN-26').count()).toBe(0);
    await row.click();
    await editor.page.locator('.tab.active[data-resource-name="2025-26.germ"]').waitFor();
    await editor.until(async () => (await editor.cursor()).line === 18, 'the line of the lot');
    await editor.runCommand('Plumule: Show All Lots');
    await editor.runCommand('Plumule: Group the Lots by Plant');
    await rows(editor, /Aconitum lycoctonum\s*2 lots, 1 open/).waitFor();
    await editor.page.screenshot({ path: picture('lots-plant') });
  }));
