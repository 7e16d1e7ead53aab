import { test } from 'vitest';
import { commitAll, inEditor } from './journal.mjs';

const files = { 'a.germ': 'lot V-1 Iris, 60 seeds\nsow V-1 2026-01-11\ncount V-1 2026-02-01, 3\n' };
const settings = { 'plumule.asOf': '2026-02-09T10:00' };
// Git is told of changes by the machine, in its own time.
const GIT = { timeout: 90_000 };
const SINCE = 'since the last commit: 5 more germinated on 8 February 2026';

test('the line above a lot says what changed since the last commit, and leads to the difference', () => inEditor(
  { files, settings, committed: true },
  async editor => {
    const told = editor.group.getByText(SINCE, { exact: true });
    await editor.openFile('a.germ');
    await editor.goTo(4);
    await editor.type('count V-1 2026-02-08, 5\n');
    await told.waitFor(GIT);
    await editor.press('Control+S');
    await editor.until(async () => {
      if (!await editor.page.locator('.monaco-diff-editor').first().isVisible()) await told.click({ timeout: 3000 });
      return editor.page.locator('.monaco-diff-editor').first().waitFor({ timeout: 3000 }).then(() => true);
    }, 'the difference');
    await editor.openFile('a.germ');
    await told.waitFor(GIT);
    await commitAll(editor.folder);
    await told.waitFor({ ...GIT, state: 'hidden' });
  }));
