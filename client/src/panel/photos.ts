/** Where the page of the panel loads photos from: plain files of the open folder that the journal is in. */
import { Uri, workspace, type Webview } from 'vscode';
import type { PhotoNamed } from '../../../server/src/lsp/panel.ts';
import { whyNotPlain } from '../files.ts';

/** What the editor's own browser shows. */
const SHOWN = /\.(?:svg|png|jpe?g|gif|bmp|webp)$/i;

export class PhotoAddresses {
  readonly #webview: Webview;
  /** Of those asked for last: somebody who types has them asked for at every key. */
  #found = new Map<string, string>();

  constructor(webview: Webview) {
    this.#webview = webview;
  }

  /** Null for each that is not to be shown. */
  async of(photos: readonly PhotoNamed[]): Promise<(string | null)[]> {
    const before = this.#found;
    this.#found = new Map();
    return Promise.all(photos.map(async photo => {
      const key = `${photo.uri} ${photo.path}`;
      const address = before.get(key) ?? await this.#addressOf(photo);
      if (address !== null) this.#found.set(key, address);
      return address;
    }));
  }

  async #addressOf({ uri, path }: PhotoNamed): Promise<string | null> {
    if (path === null || !SHOWN.test(path)) return null;
    const journal = Uri.parse(uri);
    const folder = workspace.getWorkspaceFolder(journal)?.uri;
    // This takes `..` out of the path.
    const file = Uri.joinPath(journal, '..', path);
    if (!folder || !file.path.startsWith(folder.path.endsWith('/') ? folder.path : `${folder.path}/`)) return null;
    return await whyNotPlain(file, folder) ? null : this.#webview.asWebviewUri(file).toString();
  }
}
