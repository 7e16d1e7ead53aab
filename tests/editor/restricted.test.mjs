import { execFile } from 'node:child_process';
import { chmod, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { commitAll, inEditor, picture } from './journal.mjs';

const files = {
  'a.germ': `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
soak VER-24/A 2026-01-10 19:00, GA3 500 ppm, 30 h
soak VER-24/B 2026-01-10 19:00, water, 30 h
sow VER-24/A 2026-01-12 01:00
sow VER-24/B 2026-01-12 01:00
count VER-24/A 2026-02-10, 18
count VER-24/B 2026-02-10, 7
`,
  'trap.sh': '#!/bin/sh\ntouch "$(dirname "$0")/sprung"\n',
};

test('in a folder that is not trusted all of Plumule works, and nothing of the folder is run', () => inEditor(
  { files, settings: { 'plumule.asOf': '2026-02-12' }, restricted: true },
  async editor => {
    // A program that git runs for whoever asks it what has changed.
    const trap = path.join(editor.folder, 'trap.sh');
    await chmod(trap, 0o755);
    await commitAll(editor.folder);
    await promisify(execFile)('git', ['config', 'core.fsmonitor', trap], { cwd: editor.folder });
    await editor.openFile('a.germ');
    await editor.until(async () => (await editor.statusBar()).some(text => text.includes('Restricted Mode')), 'the restricted mode');
    await editor.until(async () => (await editor.problems()).some(row => row?.includes('the limit is 24 h')), 'the problem');
    await editor.until(async () => new Set((await editor.tokens(1)).map(({ color }) => color)).size > 1, 'words in colours');
    await editor.group.locator('.view-line').first().click();
    await editor.goTo(8, 29);
    await editor.press('Control+K');
    await editor.press('v');
    await editor.until(async () => (await editor.webview().locator('main').innerText()).includes('46 points more'), 'the panel');
    await editor.page.screenshot({ path: picture('restricted') });
    await editor.runCommand('Plumule: Show the Report');
    await editor.until(async () => {
      const texts = await Promise.all([0, 1].map(nth => editor.webview(nth).locator('body').innerText({ timeout: 2000 }).catch(() => '')));
      return texts.some(text => text.includes('Treated against untreated'));
    }, 'the report');
    await writeFile(path.join(editor.folder, 'b.germ'), 'note VER-24 2026-02-11, a change for git to see\n');
    await editor.openFile('b.germ');
    await editor.hover('VER-24', { until: 'Veratrum' });
    expect(await readdir(editor.folder)).not.toContain('sprung');
  }));
