import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const settings = { 'plumule.asOf': '2026-02-10T20:00' };

/** Answers the question that stands in the quick input, once it is there. */
async function answer(editor, question, text) {
  await editor.quickInput.getByText(question).first().waitFor();
  await editor.quickInput.locator('input').first().fill(text);
  await editor.press('Enter');
}

test('a solution is asked for step by step, and its record comes into the journal', () => inEditor(
  { files: { 'bench.germ': 'stock G1 2026-01-09, GA3 20 mg, 20 mL\n' }, settings },
  async editor => {
    const { page, quickInput } = editor;
    await editor.openFile('bench.germ');
    await editor.runCommand('Plumule: Mix a Solution');
    await quickInput.locator('.monaco-list-row').filter({ hasText: 'gibberellic acid' }).waitFor();
    await editor.pick('GA3', 'GA3');
    await quickInput.getByText('How strong should it be?').first().waitFor();
    await quickInput.locator('input').first().fill('0,5 g/L');
    // What is wrong stands in place of the question.
    await answer(editor, 'Write 0.5', '500 ppm');
    await answer(editor, 'How much do you need?', '10 mL');
    await quickInput.locator('.monaco-list-row').filter({ hasText: 'GA3 1000 ppm, 20 mL left' }).waitFor();
    await editor.pick('G1', 'G1');
    // The page stands beside the journal, and stays.
    const solution = editor.webview().locator('body');
    await solution.getByText('1. Take 5 mL of the 1000 ppm GA3 stock').waitFor();
    // So does it when the window is loaded anew.
    await editor.reload();
    await solution.getByText('1. Take 5 mL of the 1000 ppm GA3 stock').waitFor({ timeout: 60_000 });
    await solution.getByText('Write the Record').click();
    await quickInput.getByText('What should it be called?').first().waitFor();
    expect(await quickInput.locator('input').first().inputValue()).toBe('G1-500');
    await editor.press('Enter');
    // Behind it stands its strength.
    const isWritten = line => line.startsWith('dilute G1-500, from G1 5 mL, to 10 mL');
    await editor.until(async () => (await editor.lines()).some(isWritten), 'the record');
    expect(await editor.lines()).toContain('day 2026-02-10');
    // The file had no other change, so it is saved with the record.
    await page.locator('.tab.dirty').first().waitFor({ state: 'detached' });
    await solution.getByText('1. Take 5 mL of the 1000 ppm GA3 stock').waitFor();
  }));

test('what cannot be made is asked again, with what can be made filled in', () => inEditor(
  { files: { 'bench.germ': 'stock G1 2026-01-09, GA3 20 mg, 20 mL\nsoak V-1 2026-01-10, G1 12 mL, 24 h\nlot V-1 Iris, 60 seeds\n' }, settings },
  async editor => {
    const { quickInput } = editor;
    await editor.openFile('bench.germ');
    await editor.runCommand('Plumule: Mix a Solution');
    await quickInput.locator('.monaco-list-row').filter({ hasText: 'gibberellic acid' }).waitFor();
    await editor.pick('GA3', 'GA3');
    await answer(editor, 'How strong should it be?', '500 ppm');
    await answer(editor, 'How much do you need?', '40 mL');
    await quickInput.locator('.monaco-list-row').filter({ hasText: 'GA3 1000 ppm, 8 mL left' }).waitFor();
    await editor.pick('G1', 'G1');
    await quickInput.getByText('It takes 20 mL of G1, and 8 mL of it is left. How much should it be instead?').first().waitFor();
    const solution = editor.webview().locator('body');
    await solution.getByText('8 mL of it makes 16 mL of 500 ppm.').waitFor();
    expect(await quickInput.locator('input').first().inputValue()).toBe('16 mL');
    await editor.press('Enter');
    await solution.getByText('1. Take 8 mL of the 1000 ppm GA3 stock').waitFor();
  }));
