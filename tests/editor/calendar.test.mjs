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

/** The row of the soak of a batch in the list of what is due, once it is there. */
async function liftRow(editor, batch) {
  await editor.openFile('a.germ');
  await editor.runCommand('View: Show Plumule');
  await shows(editor, `${batch}: lift`);
  return editor.page.locator('.part.sidebar .monaco-list-row').filter({ hasText: `${batch}: lift` }).first();
}

test('the side bar lists what is due and what lies where, and the status bar the next of it', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    await editor.openFile('a.germ');
    await editor.runCommand('View: Show Plumule');
    await shows(editor, 'Today');
    await shows(editor, 'VER-24/A: lift');
    await shows(editor, '2: VER-24/A');
    await editor.until(async () => (await editor.statusBar()).some(text => text.includes('2 lifts 19:00')), 'the next in the status bar');
  }));

test('an item of the list writes its record below today’s day line', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    const row = await liftRow(editor, 'VER-24/A');
    await editor.until(async () => {
      // Written, it leaves the list; a click may be lost when that is drawn anew.
      if (await row.isVisible()) {
        await row.hover({ timeout: 3000 });
        await row.getByLabel('Write the Record').click({ timeout: 3000 });
      }
      const text = await readFile(path.join(editor.folder, 'a.germ'), 'utf8');
      return text.endsWith('day 2026-01-11\nlift VER-24/A 18:30\n');
    }, 'the lift in the file');
  }));

test('over an item stands what it writes', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    const row = await liftRow(editor, 'VER-24/A');
    await editor.until(async () => {
      await editor.page.mouse.move(5, 5);
      await row.hover({ timeout: 3000 });
      const tooltip = editor.page.locator('.workbench-hover').getByText('will write for today: lift VER-24/A, with the present time');
      return tooltip.waitFor({ timeout: 3000 }).then(() => true);
    }, 'the record');
  }));

test('the list is read and its records are written from the keyboard alone', () => inEditor(
  { files: { 'a.germ': journal }, settings },
  async editor => {
    const { page } = editor;
    const row = await liftRow(editor, 'VER-24/B');
    // What a screen reader says: also what icon, colour and group tell the eye.
    expect(await row.getAttribute('aria-label')).toMatch(/VER-24\/B, Veratrum nigrum, .*at bag 1 slot 3, due 2026-01-11 19:00/);
    await editor.runCommand('Plumule: Focus on Due View');
    await editor.until(async () => {
      await editor.press('ArrowDown');
      return (await row.getAttribute('class')).includes('focused');
    }, 'the item by the arrow keys');
    await editor.press('Shift+F10');
    await page.locator('.context-view .monaco-menu').getByText('Write the Record').waitFor();
    await editor.press('ArrowDown');
    await editor.press('Enter');
    await editor.until(async () => (await editor.lines()).some(line => line.startsWith('lift VER-24/B')), 'the lift');
  }));

test('a click on an item leads to its record', () => inEditor(
  { files: { 'a.germ': journal, 'b.germ': '# Nothing here\n' }, settings },
  async editor => {
    await editor.openFile('b.germ');
    await editor.runCommand('View: Show Plumule');
    await editor.page.locator('.part.sidebar .monaco-list-row').filter({ hasText: 'VER-24/B: lift' }).first().click();
    await editor.page.locator('.tab.active[data-resource-name="a.germ"]').waitFor();
    await editor.until(async () => (await editor.cursor()).line === 5, 'the soak of B');
  }));

const sown = `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
sow VER-24/A 2026-01-11, at shelf 1
sow VER-24/B 2026-01-11, at shelf 2
`;
const later = { 'plumule.asOf': '2026-01-25T18:30' };

test('one command writes a count for each batch that waits; a digit and Tab fill in each of them', () => inEditor(
  { files: { 'a.germ': sown }, settings: later },
  async editor => {
    await editor.openFile('a.germ');
    await editor.press('Control+K');
    await editor.press('Control+G');
    await editor.until(async () => {
      // Hints stand behind the lines, sooner or later.
      const lines = await editor.lines();
      return /^day 2026-01-25\ncount VER-24\/A,.*\ncount VER-24\/B,/m.test(lines.join('\n'));
    }, 'the lines to fill in');
    await editor.until(async () => (await editor.cursor()).line === 7, 'the cursor in the first of them');
    // What is still to be filled in is no mistake.
    expect(await editor.group.locator('.squiggly-error, .squiggly-warning').count()).toBe(0);
    await editor.type('3');
    await editor.press('Tab');
    await editor.type('10');
    await editor.until(async () => {
      const lines = await editor.lines();
      return ['count VER-24/A, 3', 'count VER-24/B, 10'].every(text => lines.some(line => line.startsWith(text)));
    }, 'both numbers where they belong');
  }));

test('a count takes 3 keys and a round of eight dishes 17', () => inEditor(
  {
    files: {
      'a.germ': `lot VER-24 Veratrum nigrum, 240 seeds
split VER-24, ${[...'ABCDEFGH'].map(part => `${part} 24 seeds`).join(', ')}
${[...'ABCDEFGH'].map((part, i) => `sow VER-24/${part} 2026-01-11, at shelf ${i + 1}\n`).join('')}`,
    },
    settings: later,
  },
  async editor => {
    let keys = 0;
    const key = async name => {
      keys++;
      await editor.press(name);
    };
    await editor.openFile('a.germ');
    await editor.until(async () => (await editor.statusBar()).some(text => /VER-24|overdue|counts/.test(text)), 'what is due');
    await key('Control+K');
    await key('Control+G');
    await editor.until(async () => (await editor.cursor()).line === 13, 'the cursor in the first of them');
    await key('1');
    expect(keys).toBe(3);
    for (const digit of '2345678') {
      await key('Tab');
      await key(digit);
    }
    expect(keys).toBe(17);
    const counts = [...'ABCDEFGH'].map((part, i) => `count VER-24/${part}, ${i + 1}`);
    await editor.until(async () => {
      const lines = await editor.lines();
      return counts.every(count => lines.some(line => line.startsWith(count)));
    }, 'eight numbers where they belong');
  }));

test('what is due is written as a calendar file', () => inEditor(
  { files: { 'a.germ': sown }, settings: later },
  async editor => {
    await editor.openFile('a.germ');
    await editor.runCommand('Plumule: Export the Calendar (iCalendar)');
    const input = editor.quickInput.locator('input').first();
    await editor.until(async () => (await input.inputValue()).endsWith('plumule.ics'), 'a name for the file');
    await editor.press('Enter');
    const text = await editor.until(() => readFile(path.join(editor.folder, 'plumule.ics'), 'utf8'), 'the calendar');
    expect(text).toMatch(/^BEGIN:VCALENDAR\r\n/);
    expect(text).toContain('VER-24/A');
    await editor.until(async () => (await editor.notifications()).some(each => each.includes('Wrote the calendar')), 'the message');
  }));

test('packets in the cold that nobody counted are offered to be counted when no count is due', () => inEditor(
  {
    files: { 'a.germ': 'lot V-1 Iris, 20 seeds\nchill V-1 2026-01-01, 4 C, 8 weeks, at bag 1 slot 1\n' },
    settings: { 'plumule.asOf': '2026-02-01T10:00' },
  },
  async editor => {
    await editor.openFile('a.germ');
    await editor.page.locator('.codelens-decoration').first().waitFor();
    await editor.runCommand('Plumule: Count What Is Due');
    await editor.page.locator('.notifications-toasts').getByRole('button', { name: 'Count It Now' }).click();
    await editor.until(async () => (await editor.lines()).some(line => line.startsWith('count V-1, ')), 'the round');
    await editor.type('3');
    await editor.until(async () => (await editor.lines()).some(line => /^count V-1, 3.*3 of 20/.test(line)), 'the count');
  }));

test('batches that nobody wrote of for years stand folded at the end, and their counts are written when asked for', () => inEditor(
  {
    files: { 'a.germ': sown.replace('sow VER-24/B 2026', 'sow VER-24/B 2023') }, settings: later,
  },
  async editor => {
    await editor.openFile('a.germ');
    await editor.runCommand('View: Show Plumule');
    const rows = editor.page.locator('.part.sidebar .monaco-list-row');
    const group = rows.filter({ hasText: 'Nothing done for more than a year' }).first();
    await group.waitFor();
    await rows.filter({ hasText: 'VER-24/A: count' }).first().waitFor();
    expect(await group.getAttribute('aria-expanded')).toBe('false');
    expect(await rows.filter({ hasText: 'VER-24/B: count' }).count()).toBe(0);
    await editor.until(async () => {
      if (!(await editor.lines()).some(line => line.startsWith('count VER-24/B, '))) {
        await group.hover({ timeout: 3000 });
        await group.getByLabel('Count These Too').click({ timeout: 3000 });
      }
      return (await editor.lines()).some(line => line.startsWith('count VER-24/B, '));
    }, 'the count of the other batch');
    expect((await editor.lines()).some(line => line.startsWith('count VER-24/A, '))).toBe(false);
  }));

test('batches that nobody wrote of for years are offered to be counted when no count is due', () => inEditor(
  { files: { 'a.germ': 'lot OLD-22 Iris, 20 seeds\nsow OLD-22 2022-11-01, at shelf 1\n' }, settings: later },
  async editor => {
    await editor.openFile('a.germ');
    await editor.press('Control+K');
    await editor.press('Control+G');
    await editor.until(async () => (await editor.notifications()).some(text => text.includes('no record for more than a year')), 'the question');
    await editor.page.locator('.notifications-toasts').getByRole('button', { name: 'Count Them Now' }).click();
    await editor.until(async () => (await editor.lines()).some(line => line.startsWith('count OLD-22, ')), 'the line to fill in');
  }));
