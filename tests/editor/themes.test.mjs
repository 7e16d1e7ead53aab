import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const journal = `# Winter
lot OPEN-1 Iris alba, 10 seeds, from "own bed", stored dry, dormancy PD
lot SHUT-1 Iris alba, 10 seeds
  A remark.
discard SHUT-1 2026-01-05
note NONE-1 2026-01-10, whose is this
`;
const themes = [
  'Default Light Modern', 'Default Dark Modern', 'Visual Studio Light', 'Visual Studio Dark', 'Default High Contrast', 'Default High Contrast Light',
];

/** Relative luminance and contrast as WCAG 2.1 defines them. */
function luminance(color) {
  const [r, g, b] = color.match(/\d+/g).map(part => part / 255)
    .map(part => (part <= 0.03928 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(one, other) {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

test('in light, dark and high-contrast themes every word can be read, and what is closed or unknown told apart', () => inEditor(
  { files: { 'a.germ': journal }, settings: { 'workbench.colorTheme': 'Monokai' } },
  async editor => {
    await editor.openFile('a.germ');
    const background = () => editor.group.locator('.monaco-editor-background').first()
      .evaluate(element => getComputedStyle(element).backgroundColor);
    const colour = async (line, text) => (await editor.tokens(line)).find(token => token.text.includes(text)).color;
    let before = '';
    for (const theme of themes) {
      const settings = { 'workbench.colorTheme': theme, 'plumule.asOf': '2026-01-20' };
      await writeFile(path.join(editor.folder, '.vscode/settings.json'), JSON.stringify(settings));
      const now = async () => `${await background()} ${await colour(2, 'Iris alba')} ${await colour(2, 'OPEN-1')}`;
      await editor.until(async () => await now() !== before, theme);
      await editor.until(async () => {
        const [open, closed, unknown] = await Promise.all([colour(2, 'OPEN-1'), colour(3, 'SHUT-1'), colour(6, 'NONE-1')]);
        return open !== closed && closed !== unknown && unknown !== open && await colour(3, 'Iris alba') === closed;
      }, `${theme}: three colours`);
      // The colours of the words and that of the paper are set one after the other: only what stays pale is wrong.
      await editor.until(async () => {
        const paper = await background();
        for (const line of [1, 2, 3, 4, 5, 6]) {
          for (const { text, color } of await editor.tokens(line)) {
            // Success criterion 1.4.3, level AA.
            expect(contrast(color, paper), `${theme}: ${text}`).toBeGreaterThanOrEqual(4.5);
          }
        }
        return true;
      }, `${theme}: words that can be read`);
      before = await now();
    }
  }));
