import { describe, expect, test } from 'vitest';
import { folderKeyOf, isInside, keyOf, ownerOf } from '../../server/src/lsp/addresses.ts';

const owner = (uri: string, ...folders: string[]) => ownerOf(keyOf(uri), folders.map(folderKeyOf));
/** Folder, directory, or alone, and of whom. */
const told = (uri: string, ...folders: string[]) => {
  const { kind, folder } = owner(uri, ...folders);
  return `${kind} ${folder}`;
};

test('a document belongs to the innermost folder around it', () => {
  const folders = ['file:///g', 'file:///g/winter/', 'file:///gr'];
  expect(told('file:///g/a.germ', ...folders)).toBe('folder file:///g');
  expect(told('file:///g/winter/a.germ', ...folders)).toBe('folder file:///g/winter');
  expect(told('file:///g/winters/a.germ', ...folders)).toBe('folder file:///g');
  expect(told('file:///green/a.germ', ...folders)).toBe('directory file:///green');
  expect(told('file:///g/a.germ', 'file:///')).toBe('folder file:///');
});

test('a document outside every folder belongs to its directory, if it lies where files are kept', () => {
  expect(told('file:///h/a.germ', 'file:///g')).toBe('directory file:///h');
  expect(told('vscode-remote://ssh-remote%2Bnas/h/a.germ')).toBe('directory vscode-remote://ssh-remote%2Bnas/h');
  expect(owner('untitled:Untitled-1').kind).toBe('directory');
});

test.each([
  'git:/g/a.germ?%7B%22path%22%3A%22%2Fg%2Fa.germ%22%2C%22ref%22%3A%22~%22%7D', 'gitlens://1f/g/a.germ?x', 'review:/g/a.germ',
  'vscode-local-history:/g/a.germ', 'fugitive:///g/.git//0/a.germ', 'output:a.germ', 'zip:/g/a.zip/a.germ',
])('%s is the side of a difference or the like, and alone', uri => {
  expect(told(uri, 'file:///g')).toBe(`alone ${keyOf(uri)}`);
});

test('an address of an unusual kind belongs to a folder of that kind', () => {
  expect(told('vscode-vfs://github/me/journal/a.germ', 'vscode-vfs://github/me/journal')).toBe('folder vscode-vfs://github/me/journal');
});

test.each(['.history/a_2026.germ', 'winter/.a.germ', 'node_modules/x/a.germ', 'notes.txt', 'germ', 'a.germ.bak'])(
  '%s in a folder is no file of its journal, as on the command line', path => {
    expect(owner(`file:///g/${path}`, 'file:///g').kind).toBe('alone');
  });

test('a folder that is itself hidden is one like any other', () => {
  expect(told('file:///g/.journal/a.germ', 'file:///g/.journal')).toBe('folder file:///g/.journal');
  expect(told('file:///g/.journal/A.GERM', 'file:///g', 'file:///g/.journal')).toBe('folder file:///g/.journal');
});

describe('on Windows', () => {
  // How editors spell the same file: VS Code with an escaped colon, others with a capital letter.
  test('a drive is the same however its letter and its colon are written', () => {
    expect(keyOf('file:///C:/Garten/a.germ')).toBe(keyOf('file:///c%3A/Garten/a.germ'));
    expect(told('file:///C:/Garten/sub/a.germ', 'file:///c%3A/Garten/')).toBe('folder file:///c%3A/Garten');
    expect(told('file:///d:/a.germ', 'file:///c:/Garten')).toBe('directory file:///d%3A/');
    expect(told('file:///C:/a.germ', 'file:///c:/')).toBe('folder file:///c%3A/');
  });

  test('a share is one folder, its host in any case, and another host or share another one', () => {
    const share = 'file://NAS/garden/journal';
    expect(told('file://nas/garden/journal/a.germ', share)).toBe('folder file://nas/garden/journal');
    expect(told('file://other/garden/journal/a.germ', share)).toBe('directory file://other/garden/journal');
    expect(isInside(keyOf('file:///garden/journal/a.germ'), folderKeyOf(share))).toBe(false);
  });

  test('blanks, umlauts and signs in a name are the same escaped or not', () => {
    expect(keyOf('file:///c:/Käfig %231/a b.germ')).toBe(keyOf('file:///C%3A/K%C3%A4fig%20%231/a%20b.germ'));
  });
});
