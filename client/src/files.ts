/**
 * Answers the server's questions for files through the editor's own file system, be it remote or virtual. A server
 * beside the disk reads that itself.
 */
import { FileSystemError, FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { PictureFound } from '../../server/src/lsp/files.ts';

export function answerFiles(client: BaseLanguageClient): void {
  client.onRequest('plumule/list', ({ folder, deep }: { folder: string; deep: boolean }) => list(Uri.parse(folder), deep));
  client.onRequest('plumule/read', ({ uri }: { uri: string }) => read(Uri.parse(uri)));
  client.onRequest('plumule/picture', ({ uri, folder }: { uri: string; folder: string }) =>
    picture(Uri.parse(uri), Uri.parse(folder)));
}

/** Not by the editor's search: that one is not there in every virtual workspace, and leaves out what git ignores. */
async function list(folder: Uri, deep: boolean): Promise<string[]> {
  const found: string[] = [];
  for (const [name, type] of await workspace.fs.readDirectory(folder)) {
    const uri = Uri.joinPath(folder, name);
    // Links are left out: where one leads to, nobody can tell here.
    if (type === FileType.File && /\.germ$/i.test(name)) found.push(uri.toString());
    const isPlain = type === FileType.Directory && !name.startsWith('.') && name !== 'node_modules';
    if (deep && isPlain) found.push(...await list(uri, deep).catch(() => []));
  }
  return found.sort();
}

/** Strict UTF-8: a wrong byte would be a wrong letter in somebody's records. */
async function read(uri: Uri): Promise<{ text?: string; error?: string }> {
  try {
    const bytes = await workspace.fs.readFile(uri);
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch (error) {
    if (error instanceof FileSystemError && error.code === 'FileNotFound') return {};
    return { error: error instanceof TypeError ? 'the file is not UTF-8' : String(error) };
  }
}

/** File systems whose pictures the editor shows in a hover. */
const SHOWN = ['file', 'vscode-remote'];

/** A picture that stands below a folder as a plain file, from where the editor shows it in a hover. */
async function picture(uri: Uri, folder: Uri): Promise<PictureFound> {
  if (!SHOWN.includes(uri.scheme)) return { why: 'unreachable' };
  const why = await whyNotPlain(uri, folder);
  return why ? { why } : { address: uri.toString() };
}

/** Undefined for a plain file below a folder; nothing that a link leads to is one, because that may lie anywhere. */
export async function whyNotPlain(uri: Uri, folder: Uri): Promise<'link' | 'missing' | undefined> {
  const parts = uri.path.slice(folder.path.length).split('/').filter(part => part !== '');
  let at = folder;
  for (const [i, part] of parts.entries()) {
    at = Uri.joinPath(at, part);
    const type = await workspace.fs.stat(at).then(found => found.type, () => FileType.Unknown);
    if ((type & FileType.SymbolicLink) !== 0) return 'link';
    if (type !== (i < parts.length - 1 ? FileType.Directory : FileType.File)) return 'missing';
  }
  return undefined;
}
