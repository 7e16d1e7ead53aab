import { mkdir, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import type { Hover } from 'vscode-languageserver';
import type { PictureFound } from '../../server/src/lsp/files.ts';
import { themes } from '../../server/src/pictures/theme.ts';
import { inSession, type Session, type SessionOptions } from '../support/lsp-client.ts';

const capabilities = {
  workspace: { configuration: true, workspaceFolders: true },
  textDocument: { hover: { contentFormat: ['markdown'] } },
};
const shows: SessionOptions = { capabilities, initializationOptions: { pictures: true } };
const caption = 'Photo of V-1, Iris, 2026-01-25';

/** The hover over the path of a photo in `deep/a.germ`. */
async function over(session: Session, photo: string): Promise<string> {
  await session.open('deep/a.germ', `lot V-1 Iris\nphoto V-1 2026-01-25, ${photo}\n`);
  const textDocument = { uri: session.uri('deep/a.germ') };
  const { contents } = await session.ask<Hover>('textDocument/hover', {
    textDocument,
    position: { line: 1, character: 24 },
  });
  await session.close('deep/a.germ');
  return (contents as { value: string }).value;
}

const files = { 'deep/photos/tray 4.png': '', 'b#1.jpg': '', 'notes.txt': '', 'deep/(x).svg': '' };

test.each([
  ['photos/tray 4.png', 'deep/photos/tray%204.png'],
  ['photos\\tray 4.png', 'deep/photos/tray%204.png'],
  ['./photos/../photos/tray 4.png', 'deep/photos/tray%204.png'],
  ['../b#1.jpg', 'b%231.jpg'],
  ['(x).svg', 'deep/%28x%29.svg'],
])('over %s in the folder of the journal the picture is shown, with words for who cannot see it', (photo, address) =>
  inSession({ ...shows, files }, async session => {
    expect(await over(session, photo)).toBe(`${caption}\n\n![${caption}](${session.uri('')}/${address}|width=240)`);
  }),
);

test.each([
  ['/etc/b.jpg', 'outside the folder'],
  ['../../c.jpg', 'outside the folder'],
  ['photos/../../../c.jpg', 'outside the folder'],
  ['https://example.org/c.jpg', 'outside the folder'],
  ['//example.org/c.jpg', 'outside the folder'],
  ['file:///etc/c.jpg', 'outside the folder'],
  ['data:image/png;base64,AAAA', 'outside the folder'],
  ['%2e%2e/b%231.jpg', 'no such file'],
  ['photos/none.jpg', 'no such file'],
  ['photos', 'not an svg'],
  ['../notes.txt', 'not an svg'],
  ['photos.png', 'no such file'],
])('over %s it is not, but the reason: %s', (photo, reason) =>
  inSession({ ...shows, files }, async session => {
    const text = await over(session, photo);
    expect(text.startsWith(`${caption}\n\n`)).toBe(true);
    expect(text).toContain(reason);
    expect(text).not.toContain('](');
  }),
);

test('nothing is shown that a link leads to, be it of a file or of a folder on the way', () =>
  inSession({ ...shows, files: { ...files, 'elsewhere/secret.png': '' } }, async session => {
    const place = (...parts: string[]) => path.join(session.folder, ...parts);
    await symlink(place('elsewhere/secret.png'), place('deep/file.png'));
    await symlink(place('elsewhere'), place('deep/folder'));
    await symlink(place('nowhere.png'), place('deep/gone.png'));
    for (const photo of ['file.png', 'folder/secret.png', 'gone.png', '../deep/folder/secret.png']) {
      expect(await over(session, photo)).toBe(`${caption}\n\nNot shown: it is behind a symbolic link.`);
    }
  }));

test('a folder with the name of a picture is none', () =>
  inSession({ ...shows, files }, async session => {
    await mkdir(path.join(session.folder, 'deep/photos.png'));
    expect(await over(session, 'photos.png')).toContain('no such file');
  }));

test('who cannot show pictures, or does not want them, gets the words alone', async () => {
  await inSession({ capabilities, files }, async session => {
    expect(await over(session, 'photos/tray 4.png')).toBe(caption);
  });
  await inSession({ ...shows, files, settings: { hovers: { photos: false } } }, async session => {
    expect(await over(session, 'photos/tray 4.png')).toBe(caption);
  });
});

test('beside a journal that lies in no open folder nothing is shown', () =>
  inSession({ ...shows, files, folder: false }, async session => {
    expect(await over(session, 'photos/tray 4.png')).toContain('not in an open folder');
  }));

test('with a client that has the files, its word decides, and its address is taken', () =>
  inSession({ capabilities, initializationOptions: { pictures: true, files: true } }, async session => {
    const asked: unknown[] = [];
    session.connection.onRequest('plumule/list', () => []);
    session.connection.onRequest('plumule/read', () => ({}));
    session.connection.onRequest<PictureFound, never>(
      'plumule/picture',
      (question: { uri: string }): PictureFound => {
        asked.push(question);
        return question.uri.endsWith('far.png')
          ? { why: 'unreachable' }
          : { address: 'vscode-remote://host/deep/near.png' };
      },
    );
    await writeFile(path.join(session.folder, 'far.png'), '');
    expect(await over(session, 'far.png')).toContain('cannot show pictures of this file system');
    expect(await over(session, 'near.png')).toContain('](vscode-remote://host/deep/near.png|width=240)');
    expect(asked[0]).toEqual({ uri: session.uri('deep/far.png'), folder: session.uri('').replace(/\/$/, '') });
  }));

test('a lot is drawn in the colours that the editor names, also when these change, and for no editor that names none', async () => {
  const journal = { 'a.germ': 'lot V-1 Iris, 20 seeds\nsow V-1 2026-01-11\ncount V-1 2026-01-25, 5\n' };
  const drawnOver = async (session: Session) => {
    await session.open('a.germ', journal['a.germ']);
    const textDocument = { uri: session.uri('a.germ') };
    const { contents } = await session.ask<Hover>('textDocument/hover', {
      textDocument,
      position: { line: 0, character: 6 },
    });
    await session.close('a.germ');
    const [, encoded = ''] = /base64,([^)]*)/.exec((contents as { value: string }).value) ?? [];
    return Buffer.from(encoded, 'base64').toString('utf8');
  };
  await inSession({ capabilities, initializationOptions: { theme: 'dark' }, files: journal }, async session => {
    expect(await drawnOver(session)).toContain(themes.dark.paper);
    await session.connection.sendNotification('plumule/theme', { theme: 'contrast-light' });
    expect(await drawnOver(session)).toContain(themes['contrast-light'].soft);
    await session.connection.sendNotification('plumule/theme', { theme: 'toString' });
    expect(await drawnOver(session)).toBe('');
  });
  await inSession({ capabilities, files: journal }, async session => expect(await drawnOver(session)).toBe(''));
  await inSession(
    {
      capabilities,
      initializationOptions: { theme: 'dark' },
      files: journal,
      settings: { hovers: { pictures: false } },
    },
    async session => expect(await drawnOver(session)).toBe(''),
  );
});
