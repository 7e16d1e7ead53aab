import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

/** A journal with a soak of 24 hours that ends at a moment (ms since 1970). The alarm goes by the machine's clock. */
function soakUntil(end) {
  const [date, time] = new Date(end - 24 * HOUR).toISOString().split('T');
  return `zone UTC
lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
soak VER-24/A ${date} ${time.slice(0, 5)}, GA3 500 ppm, 24 h
`;
}

/** A full minute not far ahead: the editor has to be open before, on a busy machine too. */
const soon = () => Math.ceil((Date.now() + 60_000) / MINUTE) * MINUTE;

const about = async (editor, words) => (await editor.notifications()).filter(text => text.includes(words));
const rings = (editor, words, timeout) => editor.until(async () => (await about(editor, words)).length > 0, `the alarm “${words}”`, timeout);
const press = (editor, name) => editor.page.locator('.notifications-toasts').getByRole('button', { name }).click();
/** What is due has been read, and with it the soaks: whatever rings at once has rung. */
const read = editor => editor.until(
  async () => (await editor.statusBar()).some(text => text.includes('VER-24/A')), 'the soak in the status bar');

test('a soak rings before its end and at its end; lifting writes the record', async () => {
  const end = soon();
  await inEditor({ files: { 'a.germ': soakUntil(end) } }, async editor => {
    await editor.openFile('a.germ');
    await rings(editor, 'The soak of VER-24/A (Veratrum nigrum) ends at');
    await press(editor, /Clear Notification/);
    await rings(editor, 'The soak of VER-24/A (Veratrum nigrum) ends now', 3 * MINUTE);
    expect(Date.now()).toBeGreaterThanOrEqual(end);
    expect(await about(editor, 'VER-24/A')).toHaveLength(1);
    await press(editor, 'Lift now');
    await editor.until(async () => {
      const text = await readFile(path.join(editor.folder, 'a.germ'), 'utf8');
      const [, lifted] = /\nlift VER-24\/A (?:\d{4}-\d\d-\d\d )?(\d\d:\d\d)\n/.exec(text) ?? [];
      return lifted && lifted >= new Date(end).toISOString().slice(11, 16);
    }, 'the lift in the file');
    // The soak runs no longer.
    await editor.until(async () => !(await editor.statusBar()).some(text => text.includes('VER-24/A: lift')), 'a status bar without the soak');
  });
});

test('what ended while the editor was closed is told once, also after a reload', () => inEditor(
  { files: { 'a.germ': soakUntil(Date.now() - 2 * HOUR) } },
  async editor => {
    await editor.openFile('a.germ');
    await rings(editor, 'The soak of VER-24/A (Veratrum nigrum) ended at');
    await editor.reload();
    await read(editor);
    expect(await about(editor, 'VER-24/A')).toEqual([]);
  }));

test('soaks that end at one time ring together, and are lifted together', async () => {
  const two = soakUntil(Date.now() - 2 * HOUR);
  await inEditor({ files: { 'a.germ': `${two}${two.trim().split('\n').at(-1).replace('VER-24/A', 'VER-24/B')}\n` } }, async editor => {
    await editor.openFile('a.germ');
    await rings(editor, '2 soaks ended at');
    expect(await about(editor, 'VER-24/')).toEqual([expect.stringMatching(/^.*2 soaks ended at .*, while the editor was closed: VER-24\/A, VER-24\/B\./s)]);
    await press(editor, 'Lift all now');
    await editor.until(async () => {
      const text = await readFile(path.join(editor.folder, 'a.germ'), 'utf8');
      return /\nlift VER-24\/A .*\nlift VER-24\/B .*\n/.test(text);
    }, 'both lifts in the file');
  });
});

test('an alarm that is turned off does not ring', () => inEditor(
  { files: { 'a.germ': soakUntil(Date.now() - 2 * HOUR) }, settings: { 'plumule.alarm.enabled': false } },
  async editor => {
    await editor.openFile('a.germ');
    await read(editor);
    expect(await about(editor, 'VER-24/A')).toEqual([]);
  }));

test('where a sound is wanted, the panel of pictures opens and plays it, and the journal keeps the cursor', () => inEditor(
  { files: { 'a.germ': soakUntil(Date.now() - 2 * HOUR) }, settings: { 'plumule.asOf': '2020-01-01' } },
  async editor => {
    const { page } = editor;
    await editor.openFile('a.germ');
    // What is played is told by the page that plays it.
    const heard = [];
    page.on('console', message => message.text().startsWith('note ') && heard.push(message.text()));
    await page.addInitScript(() => {
      const { start } = OscillatorNode.prototype;
      OscillatorNode.prototype.start = function (...when) {
        console.log(`note ${this.frequency.value} ${this.context.state}`);
        return start.apply(this, when);
      };
    });
    await writeFile(path.join(editor.folder, '.vscode/settings.json'), JSON.stringify({ 'plumule.alarm.sound': true }));
    await rings(editor, 'The soak of VER-24/A (Veratrum nigrum) ended at');
    await editor.until(() => heard.length === 4, 'the sound');
    expect(heard).toEqual(['note 660 running', 'note 880 running', 'note 660 running', 'note 880 running']);
    await editor.webview().getByRole('tab', { name: 'Season', selected: true }).waitFor();
    expect(await editor.group.locator('.tab.active').getAttribute('data-resource-name')).toBe('a.germ');
  }));
