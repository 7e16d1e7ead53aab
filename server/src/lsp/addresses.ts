/** Which journal a document belongs to, told from addresses alone. */
import { URI, Utils } from 'vscode-uri';

/**
 * A journal of a workspace folder with all below it; one of the files in a directory outside every folder; or a text by
 * itself, which makes no journal.
 */
export type OwnerKind = 'folder' | 'directory' | 'alone';

export interface Owner {
  readonly kind: OwnerKind;
  /** Key of the folder or the directory; of what is alone its own. */
  readonly folder: string;
}

/** Of addresses under which files are kept. Under others, `git:` among them, editors show what was or might be. */
const KEPT: ReadonlySet<string> = new Set(['file', 'vscode-remote', 'untitled']);

/** One spelling for an address, however a client encodes it. */
export function keyOf(uri: string): string {
  return URI.parse(uri).toString();
}

/** As `keyOf`, whether or not a client ends the address of a folder with `/`. */
export function folderKeyOf(uri: string): string {
  const key = keyOf(uri);
  // Without its `/` the root of a drive is whatever folder a program is in there.
  if (/\/[a-z]%3A$/.test(key)) return `${key}/`;
  return key.endsWith('/') && !/(?:\/|%3A)\/$/.test(key) ? key.slice(0, -1) : key;
}

export function isInside(key: string, folder: string): boolean {
  return key.startsWith(folder.endsWith('/') ? folder : `${folder}/`);
}

/** The one owner of a document, given the keys of the workspace folders. */
export function ownerOf(key: string, folders: Iterable<string>): Owner {
  let folder: string | undefined;
  for (const each of folders) if (isInside(key, each) && each.length > (folder?.length ?? -1)) folder = each;
  if (folder === undefined) {
    const uri = URI.parse(key);
    if (!KEPT.has(uri.scheme)) return { kind: 'alone', folder: key };
    return { kind: 'directory', folder: folderKeyOf(Utils.dirname(uri).toString()) };
  }
  return isJournalBelow(key.slice(folder.length)) ? { kind: 'folder', folder } : { kind: 'alone', folder: key };
}

/**
 * Whether a journal takes the file at a path below its folder. As on the command line: hidden files are the scraps of
 * other programs, `node_modules` holds other people's files.
 */
export function isJournalBelow(path: string): boolean {
  const parts = path.split('/').filter(part => part !== '');
  return parts.every(part => !part.startsWith('.') && part !== 'node_modules') && /\.germ$/i.test(path);
}
