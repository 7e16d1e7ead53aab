import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const winter = /^\d{4}-\d\d\.germ$/;

test('the walkthrough leads from an empty folder to the first lot, and ticks what is done', () => inEditor(
  { files: { 'readme.txt': 'A folder without a journal.\n' } },
  async editor => {
    const { page } = editor;
    await editor.runCommand('Welcome: Open Walkthrough...');
    await editor.pick('first five', 'The first five minutes');
    const step = title => page.locator('.getting-started-step').filter({ hasText: title });
    const done = title => step(title).locator('.codicon-getting-started-step-checked').first().waitFor();
    await step('Start a journal').getByRole('button', { name: 'New Journal' }).click();
    // The journal stands beside the walkthrough, its first lot to be filled in.
    await page.locator('.tab.active').filter({ hasText: '.germ' }).waitFor();
    await editor.until(async () => (await editor.lines()).some(line => line.startsWith('lot LOT-1 Genus species')), 'the first lot');
    await done('Start a journal');
    await editor.type('GEN-26');
    await editor.press('Tab');
    await editor.type('Gentiana lutea');
    await editor.until(async () => {
      const lines = await editor.lines();
      return lines.some(line => line.startsWith('lot GEN-26 Gentiana lutea, 60 seeds')) && lines.some(line => line.startsWith('split GEN-26,'));
    }, 'the blanks filled in');
    await done('Enter the first lot');
    expect(await step('Write the first soak').locator('.codicon-getting-started-step-checked').count()).toBe(0);
    await editor.press('Control+S');
    const name = await page.locator('.tab.active').filter({ hasText: '.germ' }).getAttribute('data-resource-name');
    expect(name).toMatch(winter);
    await editor.until(async () => (await readFile(path.join(editor.folder, name), 'utf8')).includes('Gentiana lutea'), 'the file');
  }));

test('the walkthrough ends at the comparison of a lot', () => inEditor(
  { files: { 'a.germ': 'lot V-1 Iris, 20 seeds\nsplit V-1, A 10 seeds, B 10 seeds\nlot V-2 Iris, 5 seeds\n' } },
  async editor => {
    const { page } = editor;
    await editor.runCommand('Welcome: Open Walkthrough...');
    await editor.pick('first five', 'The first five minutes');
    const step = page.locator('.getting-started-step').filter({ hasText: 'Compare' });
    await step.click();
    await step.getByRole('button', { name: 'Compare the Batches of This Lot' }).click();
    // No journal is in view, so there is no lot under the cursor.
    await editor.quickInput.getByText('V-2').waitFor();
    expect(await step.locator('.codicon-getting-started-step-checked').count()).toBe(0);
    await editor.pick('V-1', 'V-1');
    await page.locator('.tab').filter({ hasText: 'V-1' }).waitFor();
    await step.locator('.codicon-getting-started-step-checked').first().waitFor();
  }));

test('the journal of this winter is opened when it is there, and left as it is', () => inEditor(
  { files: { 'readme.txt': 'A folder without a journal.\n' } },
  async editor => {
    await editor.runCommand('Plumule: New Journal');
    await editor.until(async () => (await editor.lines()).some(line => line.startsWith('lot LOT-1')), 'the first lot');
    const name = await editor.page.locator('.tab.active').getAttribute('data-resource-name');
    await editor.press('Control+S');
    const file = path.join(editor.folder, name);
    await editor.until(async () => (await readFile(file, 'utf8')).includes('LOT-1'), 'the file');
    const before = await readFile(file, 'utf8');
    await editor.runCommand('View: Close All Editors');
    await editor.runCommand('Plumule: New Journal');
    await editor.until(async () => (await editor.notifications()).some(text => text.includes(`already has a journal: ${name}`)), 'the message');
    await editor.page.locator(`.tab.active[data-resource-name="${name}"]`).waitFor();
    expect(await readFile(file, 'utf8')).toBe(before);
  }));

test('the language status says what was read and what is wrong with it', () => inEditor(
  { files: { 'lots.germ': 'lot V-1 Iris, 5 seeds\nlot V-2 Iris, 5 seeds\n', 'bench.germ': 'sow V-3 2026-01-11\n' } },
  async editor => {
    await editor.openFile('bench.germ');
    const status = editor.page.locator('.part.statusbar [id="status.languageStatus"]').first();
    const told = editor.page.locator('.hover-language-status');
    await editor.until(async () => {
      // Once it is shown, it lies over what was pointed at.
      if (await told.count() === 0) await status.hover({ timeout: 3000 });
      const text = (await told.allInnerTexts()).join(' ').replace(/\s+/g, ' ');
      return text.includes('2 lots in 2 files') && text.includes('1 error');
    }, 'two lots and an error in the language status');
  }));
