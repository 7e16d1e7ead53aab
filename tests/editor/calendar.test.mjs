import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const journal = `zone Europe/Vienna
lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 24 h, at bag 1 slot 2
soak VER-24/B 2026-01-10 19:00, water, 24 h, at bag 1 slot 3
`;
const settings = { 'plumule.asOf': '2026-01-11T18:30' };

const rows = editor => editor.page.locator('.monaco-workbench .part.sidebar .monaco-list-row').allInnerTexts();
const shows = (editor, text) => editor.until(
  async () => (await rows(editor)).some(row => row.replace(/\s+/g, ' ').includes(text)), `“${text}” in the side bar`);

test('the side bar lists what is due and what lies where, and the status bar the next of it', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    await editor.openFile('a.germ');
    await editor.runCommand('View: Show Plumule');
    await shows(editor, 'Today');
    await shows(editor, 'VER-24/A: lift');
    await shows(editor, '2: VER-24/A');
    await editor.until(async () => (await editor.statusBar()).some(text => text.includes('VER-24/A')), 'the next in the status bar');
  }));

test('an item of the list writes its record below today’s day line', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    await editor.openFile('a.germ');
    await editor.runCommand('View: Show Plumule');
    await shows(editor, 'VER-24/A: lift');
    const row = editor.page.locator('.part.sidebar .monaco-list-row').filter({ hasText: 'VER-24/A: lift' }).first();
    await row.hover();
    await row.getByLabel('Write the Record').click();
    await editor.until(async () => {
      const text = await readFile(path.join(editor.folder, 'a.germ'), 'utf8');
      return text.endsWith('day 2026-01-11\nlift VER-24/A 18:30\n') || text.endsWith('day 2026-01-11\nlift VER-24/A 2026-01-11 18:30\n');
    }, 'the lift in the file');
  }));

test('a soak that came to its end rings once, and lifting writes the record', async () => {
  const start = new Date(Date.now() - 25 * 3_600_000);
  const pad = n => String(n).padStart(2, '0');
  const day = `${start.getFullYear()}-${pad(start.getMonth() + 1)}-${pad(start.getDate())}`;
  const soak = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds\n'
    + `soak VER-24/A ${day} ${pad(start.getHours())}:${pad(start.getMinutes())}, GA3 500 ppm, 24 h\n`;
  await inEditor({ files: { 'a.germ': soak } }, async editor => {
    await editor.openFile('a.germ');
    await editor.until(async () => (await editor.notifications()).some(text => text.includes('VER-24/A')), 'the alarm');
    expect((await editor.notifications()).filter(text => text.includes('VER-24/A'))).toHaveLength(1);
    await editor.page.locator('.notifications-toasts').getByRole('button', { name: 'Lift now' }).click();
    await editor.until(async () => /\nlift VER-24\/A/.test(await readFile(path.join(editor.folder, 'a.germ'), 'utf8')), 'the lift');
  });
});
