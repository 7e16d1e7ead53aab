import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const settings = { 'plumule.asOf': '2026-01-25T18:30' };
const lots = `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
sow VER-24/A 2026-01-11
sow VER-24/B 2026-01-11
`;
/** A line begins so; behind it may stand a hint. */
const shows = (editor, line) => editor.until(
  async () => (await editor.lines()).some(each => each.startsWith(line)), `the line “${line}”`);
/** What is due has been worked out, so the server reads along. */
const ready = editor => editor.until(
  async () => (await editor.statusBar()).some(text => text.includes('counts') || text.includes('VER-24')), 'the server');

test('what comes next is offered and taken with a key, from the record to its batch', () => inEditor(
  { files: { 'lots.germ': lots, 'bench.germ': 'day 2026-01-25\n' }, settings },
  async editor => {
    const { page } = editor;
    await editor.openFile('bench.germ');
    await ready(editor);
    await editor.goTo(2);
    const offered = text => page.locator('.suggest-widget.visible .monaco-list-row').filter({ hasText: text }).first();
    await editor.type('coun');
    await offered('count').waitFor();
    await editor.press('Tab');
    // The record stands there with blanks; the first one is the batch, and those that are open are offered.
    await shows(editor, 'count VER-24/A,');
    await editor.press('Escape');
    await editor.press('Escape');
    await editor.press('End');
    await editor.press('Enter');
    await editor.type('discard V');
    await offered('VER-24/B').waitFor();
  }));

test('a slip is mended by the light bulb, and a file is formatted', () => inEditor(
  { files: { 'lots.germ': `${lots}count VER-24/A 2026-1-18, 3\nCount VER-24/B   2026-01-18,2\n` }, settings },
  async editor => {
    await editor.openFile('lots.germ');
    await editor.until(async () => (await editor.problems()).some(row => row?.includes('is not a date')), 'the problem');
    await editor.goTo(5, 18);
    await editor.press('Control+.');
    await editor.page.locator('.action-widget .monaco-list-row.focused').filter({ hasText: '2026-01-18' }).waitFor();
    await editor.press('Enter');
    await shows(editor, 'count VER-24/A 2026-01-18, 3');
    await editor.runCommand('Format Document');
    await shows(editor, 'count VER-24/B 2026-01-18, 2');
  }));

test('a lot is renamed in every file, and a name that is taken is refused with the reason', () => inEditor(
  { files: { 'lots.germ': lots, 'bench.germ': 'lot IRI-1 Iris, 5 seeds\ncount VER-24/A 2026-01-18, 3\n' }, settings },
  async editor => {
    const { page } = editor;
    const rename = async name => {
      await editor.until(async () => {
        await editor.press('F2');
        return page.locator('.rename-box input').waitFor({ timeout: 3000 }).then(() => true);
      }, 'the box for the new name');
      await page.locator('.rename-box input').fill(name);
      await editor.press('Enter');
    };
    await editor.openFile('bench.germ');
    await editor.goTo(2, 8);
    await rename('IRI-1');
    await page.getByText(/IRI-1.{0,60}(is|already|there|taken|defined)/).first().waitFor();
    await editor.goTo(2, 8);
    await rename('VER-25');
    await shows(editor, 'count VER-25/A 2026-01-18, 3');
    await editor.openFile('lots.germ');
    await shows(editor, 'sow VER-25/B 2026-01-11');
  }));

test('totals stand at the ends of the lines, and above a lot how its batches do', () => inEditor(
  { files: { 'lots.germ': `${lots}count VER-24/A 2026-01-18, 3\ncount VER-24/B 2026-01-18, 0\n` }, settings },
  async editor => {
    await editor.openFile('lots.germ');
    await editor.until(async () => (await editor.lines()).some(line => line.includes('day 7 · 3 of 24 = 12.5 %')), 'the hint');
    await editor.page.locator('.codelens-decoration').filter({ hasText: /2 of 2 open.*A 3 of 24 = 12\.5 %/ }).first().waitFor();
  }));

test('what is typed stands as it was typed, whatever is offered meanwhile', async () => {
  const readme = await readFile(new URL('../../README.md', import.meta.url), 'utf8');
  const [, winter] = /^```plumule\n(.*?)^```$/ms.exec(readme);
  await inEditor({ files: { 'lots.germ': lots, 'winter.germ': '' }, settings }, async editor => {
    await editor.openFile('lots.germ');
    await ready(editor);
    await editor.openFile('winter.germ');
    await editor.group.locator('.view-line').first().click();
    await editor.type(winter);
    await editor.press('Escape');
    await editor.press('Control+S');
    await editor.page.locator('.tab.dirty').first().waitFor({ state: 'detached' });
    expect(await readFile(path.join(editor.folder, 'winter.germ'), 'utf8')).toBe(winter);
  });
});
