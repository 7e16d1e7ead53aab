import { existsSync } from 'node:fs';
import path from 'node:path';

const GROUP = '.editor-group-container.active';
const HOVER = '.monaco-editor .monaco-hover:not(.hidden) .monaco-hover-content:visible';
// VS Code draws blanks as no-break spaces.
const plain = text => text.replaceAll('\u00a0', ' ');

/** A person at the editor: types, points, reads. `page` is Playwright's own, for all that is missing here. */
export class Editor {
  /** Lines of the browser's console. */
  console = [];

  constructor(page, folder) {
    this.page = page;
    this.folder = folder;
    this.group = page.locator(GROUP);
    this.quickInput = page.locator('.quick-input-widget');
    page.on('console', message => this.console.push(`${message.type()}: ${message.text()}`));
    page.on('pageerror', error => this.console.push(`page error: ${error.message}`));
  }

  /** Waits for the status bar, and for the explorer to list the folder. */
  async loaded() {
    await this.page.locator('.part.statusbar .statusbar-item').first().waitFor();
    await this.page.locator('.explorer-folders-view .monaco-list-row').first().waitFor();
  }

  /** As its users do it, so that the window may keep what it has to. */
  async reload() {
    const loaded = this.page.waitForEvent('load');
    await this.runCommand('Developer: Reload Window');
    await loaded;
    await this.loaded();
  }

  /** Repeats `check` until it gives something truthy, and gives that. */
  async until(check, what, timeout = 30_000) {
    const end = Date.now() + timeout;
    for (let last; ;) {
      try {
        const value = await check();
        if (value) return value;
        last = undefined;
      } catch (error) {
        last = error;
      }
      if (Date.now() > end) throw new Error(`${what}: not within ${timeout} ms`, { cause: last });
      await this.page.waitForTimeout(100);
    }
  }

  /** Opens a file of the folder, or one below it by its name alone. */
  async openFile(name) {
    const file = path.resolve(this.folder, name);
    await this.find('Control+P', existsSync(file) ? file : name, path.basename(name));
    await this.page.locator(`${GROUP} .tab.active[data-resource-name="${path.basename(name)}"]`).waitFor();
    await this.group.locator('.view-line').first().waitFor();
  }

  /** Opens a file of the folder by a click in the explorer, which works without any search. */
  async clickFile(name) {
    await this.page.locator('.explorer-folders-view .monaco-list-row').getByText(name, { exact: true }).first().dblclick();
    await this.page.locator(`${GROUP} .tab.active[data-resource-name="${name}"]`).waitFor();
    await this.group.locator('.view-line').first().waitFor();
  }

  /** Runs a command by its title in the palette: 'View: Toggle Word Wrap'. */
  async runCommand(title) {
    await this.find('F1', `>${title}`, title);
  }

  /** Opens the quick input by a key and picks a row; asks again where what is looked for comes late. */
  async find(key, typed, label) {
    await this.until(async () => {
      await this.ask(key);
      await this.pick(typed, label);
      return true;
    }, `“${label}” in the quick input`, 60_000);
  }

  /** Opens the quick input by a key; presses it again where something else took the focus meanwhile. */
  async ask(key) {
    const input = this.quickInput.locator('input').first();
    await this.until(async () => {
      if (await input.isVisible()) return true;
      await this.press(key);
      return input.waitFor({ timeout: 3000 }).then(() => true);
    }, `the quick input for ${key}`);
  }

  /** Types into the quick input and takes the first row with this label. */
  async pick(typed, label) {
    const rows = this.quickInput.locator('.monaco-list-row');
    const row = rows.filter({ has: this.page.locator('.label-name').getByText(label, { exact: true }) }).first();
    try {
      // Whatever takes the focus closes the input: whoever asked for it asks again soon.
      await this.quickInput.locator('input').first().fill(typed, { timeout: 5000 });
      await row.click({ timeout: 5000 });
    } catch {
      const seen = (await rows.allInnerTexts()).map(text => text.replace(/\s+/g, ' ')).join(' | ');
      await this.press('Escape');
      throw new Error(`the quick input has no "${label}" for "${typed}"; it lists: ${seen || 'nothing'}`);
    }
  }

  /** Types at the cursor, key by key. */
  async type(text) {
    await this.page.keyboard.type(text, { delay: 15 });
  }

  /** Presses a key or chord: 'Control+Space'. */
  async press(key) {
    await this.page.keyboard.press(key);
  }

  /** Puts the cursor at a line and column, both from 1. */
  async goTo(line, column = 1) {
    await this.ask('Control+G');
    await this.quickInput.locator('input').first().fill(`:${line}:${column}`);
    await this.press('Enter');
    await this.quickInput.waitFor({ state: 'hidden' });
  }

  /** Line and column of the cursor, from the status bar. */
  async cursor() {
    const item = this.page.locator('.part.statusbar .statusbar-item').filter({ hasText: /^Ln \d+, Col \d+/ });
    const [, line, column] = /Ln (\d+), Col (\d+)/.exec(await item.first().innerText());
    return { line: Number(line), column: Number(column) };
  }

  /** The lines in sight, from the first. */
  async lines() {
    const rows = await this.group.locator('.view-line').evaluateAll(all => all
      .map(row => ({ top: parseFloat(row.style.top), text: row.textContent }))
      .sort((a, b) => a.top - b.top));
    return rows.map(({ text }) => plain(text));
  }

  /** The middle, { x, y } on the page, of the nth (from 0) `text` in sight of the active editor. */
  async locate(text, nth = 0) {
    const at = await this.group.locator('.view-line').evaluateAll((lines, [wanted, n]) => {
      lines.sort((a, b) => parseFloat(a.style.top) - parseFloat(b.style.top));
      for (const line of lines) {
        const walker = document.createTreeWalker(line, NodeFilter.SHOW_TEXT);
        const characters = [];
        while (walker.nextNode()) {
          for (let i = 0; i < walker.currentNode.length; i++) characters.push([walker.currentNode, i]);
        }
        const all = line.textContent.replaceAll('\u00a0', ' ');
        for (let i = all.indexOf(wanted); i >= 0; i = all.indexOf(wanted, i + 1)) {
          if (n-- > 0) continue;
          const range = document.createRange();
          const [last, offset] = characters[i + wanted.length - 1];
          range.setStart(...characters[i]);
          range.setEnd(last, offset + 1);
          const box = range.getBoundingClientRect();
          return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
        }
      }
    }, [text, nth]);
    if (!at) throw new Error(`"${text}" is not in sight in the editor`);
    return at;
  }

  /**
   * Points the mouse at the nth (from 0) `text` in sight and reads the hover: { text, html, images }. Asks
   * again while nothing comes, as when the server is still starting.
   */
  async hover(text, { nth = 0, until = '' } = {}) {
    const hover = this.page.locator(HOVER).first();
    let isPointed = false;
    return this.until(async () => {
      // The pointer is moved once more where the page was laid out anew below it, for the hover goes away then.
      if (!isPointed || !await hover.isVisible()) {
        await this.page.mouse.move(5, 5); // away from any earlier hover
        await hover.waitFor({ state: 'hidden', timeout: 2000 }).catch(() => {});
        const { x, y } = await this.locate(text, nth);
        await this.page.mouse.move(x - 2, y);
        await this.page.mouse.move(x, y, { steps: 3 });
        await hover.waitFor({ timeout: 3000 });
        isPointed = true;
      }
      const shown = await hover.innerText({ timeout: 3000 });
      // Each provider adds its part when it has it.
      if (!shown.includes(until) || /Loading(\.\.\.|…)/.test(shown)) return undefined;
      const images = await hover.locator('img').evaluateAll(all => all.map(image => ({
        alt: image.alt, width: image.naturalWidth, shown: image.complete && image.naturalWidth > 0,
      })));
      return { text: shown, html: await hover.innerHTML({ timeout: 3000 }), images };
    }, `“${until}” in the hover on "${text}"`, 60_000);
  }

  /** The rows in sight of the Problems panel (files, problems, related places), as they are read aloud. */
  async problems() {
    const panel = this.page.locator('.markers-panel');
    if (!await panel.isVisible()) await this.runCommand('Problems: Focus on Problems View');
    await panel.waitFor();
    return panel.locator('.monaco-list-row').evaluateAll(rows => rows.map(row => row.getAttribute('aria-label')));
  }

  /** Text and colour of each token of a line in sight, by its number in the gutter. */
  async tokens(line) {
    const tokens = await this.group.evaluate((group, wanted) => {
      const number = [...group.querySelectorAll('.line-numbers')].find(e => e.textContent === String(wanted));
      const top = number?.closest('.margin-view-overlays > div')?.style.top;
      const row = [...group.querySelectorAll('.view-line')].find(e => e.style.top === top);
      return row && [...row.querySelectorAll('span > span')].map(
        span => ({ text: span.textContent, color: getComputedStyle(span).color }));
    }, line);
    return tokens?.map(({ text, color }) => ({ text: plain(text), color }));
  }

  /** Texts of the items of the status bar. */
  async statusBar() {
    const texts = await this.page.locator('.part.statusbar .statusbar-item').allInnerTexts();
    return texts.map(text => text.replace(/\s+/g, ' ').trim()).filter(Boolean);
  }

  /** Texts of the notifications on show. */
  async notifications() {
    return this.page.locator('.notifications-toasts .notification-list-item-message').allInnerTexts();
  }

  /** A Playwright frame locator for the page in the nth (from 0) webview that was opened. */
  webview(nth = 0) {
    return this.page.frameLocator('iframe.webview.ready').nth(nth).frameLocator('#active-frame');
  }

  /** Throws unsaved edits away, which the server would bring back; ends the window's extension host. */
  async close() {
    if (await this.page.locator('.tab.dirty').count()) {
      await this.runCommand('View: Close All Editors');
      const discard = this.page.locator('.monaco-dialog-box').getByRole('button', { name: "Don't Save" });
      // An edit that was just being saved brings no question.
      await this.until(async () => {
        if (await discard.isVisible()) await discard.click();
        return await this.page.locator('.tab.dirty').count() === 0;
      }, 'editors without unsaved edits');
    }
    await this.page.goto('about:blank');
  }
}
