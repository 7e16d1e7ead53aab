import { symlink } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { inEditor } from './journal.mjs';

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
