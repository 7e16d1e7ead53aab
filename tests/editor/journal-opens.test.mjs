import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { inEditor, picture } from './journal.mjs';

const settings = { 'plumule.asOf': '2026-11-25T20:00' };
const lots = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds, B 24 seeds\n';

const showing = (editor, words) => editor.until(
  async () => (await editor.problems()).some(row => row?.includes(words)), `the problem “${words}”`);

test('a soak of 30 hours and a dose of 2000 ppm are warned of while they are typed', () => inEditor(
  { files: { 'lots.germ': lots, 'bench.germ': '# The bench\n' }, settings },
  async editor => {
    await editor.openFile('bench.germ');
    await editor.goTo(2);
    await editor.type('soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 30 h');
    await showing(editor, 'VER-24/A was in the soak for 30 h; the limit is 24 h');
    await editor.openFile('bench.germ');
    await editor.goTo(2, 50);
    await editor.press('Enter');
    await editor.type('soak VER-24/B 2026-01-10 19:00, GA3 2000 ppm, 24 h');
    await showing(editor, 'GA3 2000 ppm is above the limit of 1000 ppm');
  }));

test('the hover over a batch says what came up, of how many, and the interval', () => inEditor(
  { settings },
  async editor => {
    await editor.openFile('2025-26.germ');
    await editor.goTo(86);
    const { text } = await editor.hover('PEN-25/B');
    // 18 of 24: Wilson's 95 % interval by R 4.2.2, prop.test(18, 24, correct = FALSE): 0.551, 0.880.
    expect(text).toContain('18 of 24');
    expect(text).toMatch(/55.{1,8}88/);
  }));

test('from a count to its lot and back', () => inEditor(
  { files: { 'lots.germ': `# Lots\n${lots}`, 'counts.germ': '# Counts\n\nsow VER-24/A 2026-01-11\ncount VER-24/A 2026-01-19, 3\n' }, settings },
  async editor => {
    await editor.openFile('counts.germ');
    await editor.goTo(4, 8);
    await editor.until(async () => {
      await editor.press('F12');
      return editor.page.locator('.tab.active[data-resource-name="lots.germ"]').isVisible();
    }, 'the lot');
    await editor.until(async () => (await editor.cursor()).line === 2, 'the line of the lot');
    await editor.press('Control+Alt+-');
    await editor.page.locator('.tab.active[data-resource-name="counts.germ"]').waitFor();
    await editor.until(async () => (await editor.cursor()).line === 4, 'the count again');
  }));

test('the problems of files that nobody opened are listed', () => inEditor({ settings }, async editor => {
  await editor.openFile('2025-26.germ');
  await editor.until(async () => (await editor.problems()).some(row => row?.includes('problems.germ')), 'problems.germ');
}));

test('the editor at work, for the README', async () => {
  const readme = await readFile(new URL('../../README.md', import.meta.url), 'utf8');
  const [, winter] = /^```plumule\n(.*?)^```$/ms.exec(readme);
  const slips = '\nday 2026-02-15\nsoak GEN-25 18:00, GA3 2000 ppm, 30 h\n';
  await inEditor({
    files: { 'winter.germ': winter + slips },
    settings: {
      'plumule.asOf': '2026-02-15T20:00', 'workbench.colorTheme': 'Default Light Modern',
      'editor.minimap.enabled': false, 'breadcrumbs.enabled': false,
    },
    width: 1280, height: 800,
  }, async editor => {
    await editor.openFile('winter.germ');
    await editor.runCommand('View: Show Plumule');
    await editor.page.locator('.part.sidebar .monaco-list-row').filter({ hasText: 'GEN-25/A: count' }).waitFor();
    await showing(editor, 'above the limit of 1000 ppm');
    await editor.group.locator('.view-line').first().click();
    await editor.goTo(33);
    // Down to where the hover has room above it.
    for (let line = 0; line < 9; line++) await editor.press('Control+ArrowUp');
    await editor.until(() => editor.locate('2000 ppm'), 'the last line');
    const { x, y } = await editor.locate('soak GEN-25 18');
    await editor.until(async () => {
      await editor.page.mouse.move(5, 5);
      await editor.page.mouse.move(x, y, { steps: 3 });
      return editor.page.locator('.monaco-hover').getByText('Worth repeating so far').first().waitFor({ timeout: 3000 }).then(() => true);
    }, 'the hover of the lot');
    const opacity = () => editor.page.locator('.monaco-hover:not(.hidden)').first().evaluate(hover =>
      Number(getComputedStyle(hover.parentElement).opacity) * Number(getComputedStyle(hover).opacity));
    await editor.until(async () => await opacity() === 1, 'a hover that has faded in');
    await editor.page.screenshot({ path: picture('screenshot') });
  });
});
