/** How a solution is made up, on a page beside the journal that stays while one weighs. */
import { commands, Disposable, env, Uri, ViewColumn, window, type WebviewPanel } from 'vscode';
import type { MixShown } from '../../server/src/lsp/mix.ts';

interface Lead {
  readonly title: string;
  readonly command: string;
}

const WRITE: Lead = { title: 'Write the Record', command: 'plumule.mix.write' };
const COPY: Lead = { title: 'Copy', command: 'plumule.mix.copy' };
const OTHER: Lead = { title: 'Mix Another', command: 'plumule.mix' };

export class MixPage {
  readonly #root: Uri;
  #panel: WebviewPanel | undefined;
  #text = '';
  #write: () => Promise<void> = () => Promise.resolve();
  readonly #leads: Disposable;

  constructor(root: Uri) {
    this.#root = root;
    this.#leads = Disposable.from(
      commands.registerCommand(WRITE.command, () => this.#write()),
      commands.registerCommand(COPY.command, () => env.clipboard.writeText(this.#text)),
    );
  }

  /** `write` puts the record into the journal. */
  show({ title, text, html, record }: MixShown, write: () => Promise<void>): void {
    this.#text = `${title}\n${text}\n`;
    this.#write = write;
    const panel = this.#panel ??= this.#open();
    panel.title = title;
    const leads = record === undefined ? [COPY, OTHER] : [WRITE, COPY, OTHER];
    panel.webview.html = this.#pageOf(panel, html, leads);
    panel.reveal(undefined, true);
  }

  dispose(): void {
    this.#leads.dispose();
    this.#panel?.dispose();
  }

  #open(): WebviewPanel {
    const media = Uri.joinPath(this.#root, 'client', 'media');
    const enableCommandUris = [WRITE, COPY, OTHER].map(({ command }) => command);
    const panel = window.createWebviewPanel('plumule.solution', 'Solution', { viewColumn: ViewColumn.Beside, preserveFocus: true }, {
      enableCommandUris, localResourceRoots: [media],
    });
    panel.onDidDispose(() => (this.#panel = undefined));
    return panel;
  }

  /** No script; nothing is loaded but our own style. */
  #pageOf({ webview }: WebviewPanel, html: string, leads: readonly Lead[]): string {
    const style = webview.asWebviewUri(Uri.joinPath(this.#root, 'client', 'media', 'page.css')).toString();
    const links = leads.map(({ title, command }) => `<a class="lead" href="command:${command}">${title}</a>`).join('');
    return `<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src ${webview.cspSource}; base-uri 'none'; form-action 'none'">
<title>Solution</title><link rel="stylesheet" href="${style}"></head>
<body class="solution"><main>${html}</main><nav>${links}</nav></body></html>`;
  }
}
