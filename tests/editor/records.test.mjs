import { expect, test } from 'vitest';
import { inEditor, picture } from './journal.mjs';

const files = {
  'a.germ': 'lot V-1 Iris, 60 seeds\nsplit V-1, A 24 seeds, B 24 seeds\nday 2026-01-11\nsow V-1/A 19:30\nsow V-1/B 19:30\n',
  'b.germ': 'day 2026-02-01\ncount V-1/B, 1\ncount V-1/A, 3\n  Up at last, and all of them on one side of the dish, which the lamp had warmed.\n',
};
const settings = { 'plumule.asOf': '2026-02-02T10:00' };
const NEXT = 'Alt+N';
const PREVIOUS = 'Alt+P';

async function isAt(editor, file, line) {
  await editor.until(async () => {
    const tab = editor.page.locator('.editor-group-container.active .tab.active');
    return await tab.getAttribute('data-resource-name') === file && (await editor.cursor()).line === line;
  }, `the cursor at ${file}:${line}`);
}

test('a key leads to the next record of the batch, in another file too, and another back to its split', () => inEditor(
  { files, settings },
  async editor => {
    await editor.openFile('a.germ');
    await editor.group.getByText('compare', { exact: true }).waitFor();
    await editor.goTo(4, 8);
    await editor.press(NEXT);
    await isAt(editor, 'b.germ', 3);
    await editor.press(NEXT);
    await editor.until(async () => (await editor.statusBar()).some(text => text.includes('V-1/A has no later record.')), 'the end is said');
    await editor.press(PREVIOUS);
    await isAt(editor, 'a.germ', 4);
    await editor.press(PREVIOUS);
    await isAt(editor, 'a.germ', 2);
  }));

test('a list of the records of a batch has their days, shows each, leads to the one that is taken and back from it', () => inEditor(
  { files, settings },
  async editor => {
    const rows = editor.quickInput.locator('.monaco-list-row');
    const listed = () => editor.until(async () => {
      await editor.press('Alt+B');
      return rows.nth(2).waitFor({ timeout: 3000 }).then(() => true);
    }, 'the list');
    await editor.openFile('a.germ');
    await editor.group.getByText('compare', { exact: true }).waitFor();
    await editor.goTo(4, 8);
    await listed();
    expect(await rows.evaluateAll(all => all.map(row => row.getAttribute('aria-label').replaceAll(/\s+/g, ' ')))).toEqual([
      expect.stringMatching(/no date.*split V-1, A 24 seeds, B 24 seeds.*a\.germ:2/),
      expect.stringMatching(/2026-01-11 19:30.*sow V-1\/A 19:30.*a\.germ:4/),
      expect.stringMatching(/2026-02-01.*count V-1\/A, 3.*b\.germ:3/),
    ]);
    // The one that it was asked from is chosen; the next is shown before it is taken.
    await editor.press('ArrowDown');
    await editor.page.locator('.tab.active[data-resource-name="b.germ"]').waitFor();
    await editor.page.screenshot({ path: picture('records') });
    await editor.press('Escape');
    await isAt(editor, 'a.germ', 4);
    await listed();
    await editor.press('ArrowDown');
    await editor.press('Enter');
    await isAt(editor, 'b.germ', 3);
  }));

test('what rewrites a batch is offered anywhere in its name and on what was counted', () => inEditor(
  { files, settings },
  async editor => {
    const title = 'Write the counts of V-1/A as totals so far (“=”)';
    await editor.openFile('b.germ');
    for (const column of [7, 9, 14]) {
      await editor.goTo(3, column);
      const offered = editor.page.locator('.action-widget').getByText(title).first();
      await editor.until(async () => {
        await editor.press('Control+Shift+R');
        return offered.waitFor({ timeout: 3000 }).then(() => true);
      }, `“${title}” at column ${column}`);
      await editor.press('Escape');
    }
  }));

test('a hint is shown whole, however long it is', () => inEditor(
  {
    files: {
      'a.germ': `lot V-1 Iris, 60 seeds
sow V-1 2026-01-11
count V-1 2026-02-01, 9, 5 emerged, 4 leaf, 3 rotted, 2 lost, 1 leggy
`,
    },
    settings,
  },
  async editor => {
    await editor.openFile('a.germ');
    await editor.until(async () => (await editor.lines()).some(line => line.endsWith('rotted 3 · lost 2 · leggy 1')), 'the whole hint');
  }));

test('the placeholder of a plant’s name has no character that the editor warns of', () => inEditor(
  { files: { 'a.germ': '' }, settings },
  async editor => {
    await editor.openFile('a.germ');
    await editor.type('lo');
    const lot = editor.page.locator('.suggest-widget .monaco-list-row[aria-label^="lot"]').first();
    await editor.until(async () => {
      if (!await lot.isVisible()) await editor.press('Control+Space');
      return lot.waitFor({ timeout: 3000 }).then(() => true);
    }, 'the suggestion of a lot');
    await lot.click();
    await editor.until(async () => (await editor.lines())[0].includes('name of the plant'), 'the blanks of a lot');
    expect(await editor.page.locator('.unicode-highlight').count()).toBe(0);
  }));
