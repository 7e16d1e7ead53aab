import { symlink } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor, picture } from './journal.mjs';

const paths = ['tray.svg', 'link.svg', '../outside.svg', '/outside.svg', 'https://127.0.0.1/a.png', 'none.png'];
const journal = ['lot VER-24 Veratrum nigrum, 60 seeds', ...paths.map(each => `photo VER-24 2026-01-25, ${each}`), ''].join('\n');
const tray = '<svg xmlns="http://www.w3.org/2000/svg" width="400" height="300"><rect width="400" height="300" fill="green"/></svg>';
const photos = { 'a.germ': journal, 'tray.svg': tray, '../outside.svg': tray };
const settings = { 'plumule.asOf': '2026-01-26' };

test('over the path of a photo its picture is shown, with words for a screen reader, and none from elsewhere', () => inEditor(
  { files: photos, settings },
  async editor => {
    await symlink(path.join(editor.folder, '../outside.svg'), path.join(editor.folder, 'link.svg'));
    const asked = [];
    editor.page.on('request', request => asked.push(request.url()));
    await editor.openFile('a.germ');
    const { text, images } = await editor.hover('tray.svg', { until: 'Photo of' });
    expect(text).toContain('Photo of VER-24, Veratrum nigrum, 2026-01-25');
    expect(images).toEqual([{ alt: 'Photo of VER-24, Veratrum nigrum, 2026-01-25', width: 400, shown: true }]);
    for (const each of paths.slice(1)) {
      const other = await editor.hover(each, { until: 'Photo of' });
      expect(other.text).toMatch(/Photo of VER-24.*(Not shown|There is no such file)/s);
      expect(other.images).toEqual([]);
    }
    expect(asked.filter(url => /outside|link\.svg|a\.png/.test(url))).toEqual([]);
  }));

test('who wants no pictures gets the words alone', () => inEditor(
  { files: photos, settings: { ...settings, 'plumule.hovers.photos': false } },
  async editor => {
    await editor.openFile('a.germ');
    const { text, images } = await editor.hover('tray.svg', { until: 'Photo of' });
    expect(text).toContain('Photo of VER-24, Veratrum nigrum, 2026-01-25');
    expect(images).toEqual([]);
  }));

test('in a browser without Node the picture is shown too', () => inEditor(
  { files: photos, settings, web: true },
  async editor => {
    await editor.clickFile('a.germ');
    expect((await editor.hover('tray.svg', { until: 'Photo of' })).images).toMatchObject([{ width: 400, shown: true }]);
    expect((await editor.hover('../outside.svg', { until: 'Photo of' })).images).toEqual([]);
  }));

const others = [
  'link.svg', '../outside.svg', '%2e%2e/outside.svg', 'more/../../outside.svg', '/outside.svg', 'file:///outside.svg',
  'https://127.0.0.1/a.png', 'none.png', 'broken.png', 'a.germ', 'more',
];
const inRow = {
  'a.germ': `lot VER-24 Veratrum nigrum, 60 seeds
sow VER-24 2026-01-20
photo VER-24 2026-02-25, more/b & "c"#1?.svg
photo VER-24 2026-01-25, tray.svg
${others.map(each => `photo VER-24 2026-03-01, ${each}`).join('\n')}
`,
  'tray.svg': tray, 'more/b & "c"#1?.svg': tray.replace('green', 'brown'), 'broken.png': 'no picture', '../outside.svg': tray,
};
const cells = editor => editor.webview().locator('.photo');
const loaded = editor => editor.webview().locator('.photo img').evaluateAll(all => all
  .filter(image => image.complete && image.naturalWidth > 0).map(image => image.alt));
const names = ['Photo of VER-24, Veratrum nigrum, 2026-01-25, day 5, tray.svg',
  'Photo of VER-24, Veratrum nigrum, 2026-02-25, day 36, b & "c"#1?.svg'];

/** Both pictures in order of day, and of all else the name and the day. */
async function showsRow(editor) {
  await editor.runCommand('Plumule: Show Pictures Beside the Journal');
  await editor.until(async () => (await loaded(editor)).length === 2, 'two pictures');
  expect(await loaded(editor)).toEqual(names);
  // Pictures out of sight are not loaded yet.
  await cells(editor).nth(2 + others.indexOf('broken.png')).scrollIntoViewIfNeeded();
  const seen = await editor.until(async () => {
    const texts = await cells(editor).evaluateAll(all => all.map(cell => cell.innerText.replace(/\s+/g, ' ').trim()));
    return texts.some(text => text.startsWith('broken.png')) && texts;
  }, 'the name of what is no picture');
  expect(seen.slice(0, 2)).toEqual(['2026-01-25, day 5', '2026-02-25, day 36']);
  expect(seen.slice(2)).toHaveLength(others.length);
  for (const text of seen.slice(2)) expect(text).toMatch(/^\S+ 2026-03-01, day 40$/);
}

test('the panel shows photos in a row by day, that lead to their records, and none from elsewhere', () => inEditor(
  { files: inRow, settings },
  async editor => {
    await symlink(path.join(editor.folder, '../outside.svg'), path.join(editor.folder, 'link.svg'));
    const asked = [];
    editor.page.on('request', request => asked.push(request.url()));
    await editor.openFile('a.germ');
    await showsRow(editor);
    await editor.page.screenshot({ path: picture('photos') });
    expect(asked.filter(url => /outside|link\.svg|a\.png|none\.png/.test(url))).toEqual([]);
    await cells(editor).nth(1).click();
    await editor.until(async () => (await editor.cursor()).line === 3, 'the record that was clicked');
    await cells(editor).first().focus();
    await editor.press('Enter');
    await editor.until(async () => (await editor.cursor()).line === 4, 'the record of the key');
    // Who types does not have them loaded anew.
    await editor.webview().locator('.photo img').first().evaluate(image => (image.dataset.kept = 'yes'));
    await editor.goTo(1, 31);
    await editor.type('5');
    await editor.until(async () => (await editor.webview().locator('main').innerText()).includes('605 seeds'), 'what was typed');
    expect(await editor.webview().locator('.photo img').first().getAttribute('data-kept')).toBe('yes');
  }));

test('in a browser without Node the panel shows photos too', () => inEditor(
  { files: inRow, settings, web: true },
  async editor => {
    await editor.clickFile('a.germ');
    await showsRow(editor);
  }));
