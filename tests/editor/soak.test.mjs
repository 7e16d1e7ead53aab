import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor, picture } from './journal.mjs';

const settings = { 'plumule.asOf': '2026-02-10T18:30' };
const journal = `limit soak, 24 h
stock S1 2026-01-09, GA3 20 mg, 20 mL
lot V-1 Veratrum nigrum, 60 seeds
split V-1, A 24 seeds, B 24 seeds
lot G-1 Gentiana lutea, 40 seeds
split G-1, A 20 seeds, B 20 seeds
`;
const written = `
day 2026-02-10
dilute S1-500, from S1 10 mL, to 20 mL
soak V-1/A 18:30, S1-500 10 mL, 24 h, at jar 1
soak G-1/B 18:30, S1-500 10 mL, 24 h, at jar 2
`;

test('two batches soaked from a stock at half its strength take at most 40 keys, and nothing is wrong with them', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    const { page, quickInput } = editor;
    let keys = 0;
    const key = async name => {
      keys++;
      await editor.press(name);
    };
    const type = async text => {
      keys += text.length;
      await editor.type(text);
    };
    const asked = question => quickInput.getByText(question).first().waitFor();
    const row = name => quickInput.locator('.monaco-list-row.focused').filter({ hasText: name }).waitFor();

    await editor.openFile('a.germ');
    await page.locator('.codelens-decoration').first().waitFor();
    await editor.goTo(3, 5);
    await key('Control+K');
    await key('Control+Y');
    // Those of the lot in hand come first.
    await quickInput.locator('input[placeholder="Which batches?"]').waitFor();
    await key('ArrowDown');
    await row('V-1/A');
    await key('Space');
    await key('End');
    await row('G-1/B');
    await key('Space');
    await page.screenshot({ path: picture('soak-batches') });
    await key('Enter');
    await row('GA3 1000 ppm · 20 mL left');
    await key('Enter');
    await asked('How strong should it be? Leave it empty to use S1 as it is.');
    await type('500 ppm');
    await key('Enter');
    await asked('How much does each batch get?');
    await type('10 mL');
    await key('Enter');
    await asked('How long?');
    await type('24 h');
    await key('Enter');
    await asked('Where? One place for all, or one for each (V-1/A, G-1/B)');
    expect(keys).toBeLessThanOrEqual(28);
    await type('jar 1, jar 2');
    await key('Enter');
    await editor.until(async () => await readFile(path.join(editor.folder, 'a.germ'), 'utf8') === journal + written, 'the records');
    expect(keys).toBeLessThanOrEqual(40);
    await editor.until(async () => (await editor.statusBar()).some(text => text.includes('2 lifts Wed 18:30')), 'the end of the soaks');
    expect((await editor.problems()).filter(text => text !== null && !/no problems/i.test(text))).toEqual([]);
  }));

test('what cannot be made is said at the question, and a question back leads to the one before', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    const { quickInput } = editor;
    const asked = question => quickInput.getByText(question).first().waitFor();
    await editor.openFile('a.germ');
    await editor.runCommand('Plumule: Soak Batches');
    await quickInput.locator('input[placeholder="Which batches?"]').waitFor();
    await editor.press('ArrowDown');
    await editor.press('Space');
    await editor.press('Enter');
    await quickInput.locator('.monaco-list-row').filter({ hasText: 'S1' }).waitFor();
    await editor.press('Enter');
    await asked('How strong should it be?');
    await editor.type('2000 ppm');
    await asked('S1 is weaker than that.');
    await quickInput.getByRole('button', { name: 'Back' }).click();
    await quickInput.locator('.monaco-list-row').filter({ hasText: 'water' }).click();
    await asked('How long?');
    await editor.press('Escape');
    await quickInput.waitFor({ state: 'hidden' });
    expect(await editor.lines()).toContain('lot V-1 Veratrum nigrum, 60 seeds');
    expect(await readFile(path.join(editor.folder, 'a.germ'), 'utf8')).toBe(journal);
  }));
