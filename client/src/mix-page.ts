/** How a solution is made up, on a page beside the journal that stays while one weighs. */
import { commands, Disposable, env, Uri, ViewColumn, window, type ExtensionContext, type WebviewPanel } from 'vscode';
import type { MixQuestion } from '../../server/src/features/mix/answer.ts';
import type { MixShown } from '../../server/src/lsp/mix.ts';
import { pageOf } from './page.ts';

interface Lead {
  readonly title: string;
  readonly command: string;
}

const WRITE: Lead = { title: 'Write the Record', command: 'plumule.mix.write' };
const COPY: Lead = { title: 'Copy', command: 'plumule.mix.copy' };
const OTHER: Lead = { title: 'Mix Another', command: 'plumule.mix' };

const TYPE = 'plumule.solution';

/** What the page shows, and what it was asked for: in which journal in hand. */
export interface Mixed {
  readonly shown: MixShown;
  readonly question: MixQuestion;
  readonly uri: string | undefined;
}

/** Under this name a window remembers what the page shows, so that it is there again after a reload. */
const KEPT = 'plumule.mix.shown';

export class MixPage {
  readonly #root: Uri;
  readonly #memory: ExtensionContext['workspaceState'];
  #panel: WebviewPanel | undefined;
  readonly #registered: Disposable;

  /** `write` puts the record into the journal. */
  constructor({ extensionUri, workspaceState }: ExtensionContext, write: (mixed: Mixed) => Promise<void>) {
    this.#root = extensionUri;
    this.#memory = workspaceState;
    this.#registered = Disposable.from(
      commands.registerCommand(WRITE.command, () => {
        const mixed = this.#mixed();
        return mixed && write(mixed);
      }),
      commands.registerCommand(COPY.command, () => {
        const { title = '', text = '' } = this.#mixed()?.shown ?? {};
        return env.clipboard.writeText(`${title}\n${text}\n`);
      }),
      window.registerWebviewPanelSerializer(TYPE, {
        deserializeWebviewPanel: (panel: WebviewPanel) => {
          const mixed = this.#mixed();
          if (mixed && !this.#panel) this.#put(this.#taken(panel), mixed.shown);
          else panel.dispose();
          return Promise.resolve();
        },
      }),
    );
  }

  show(mixed: Mixed): void {
    void this.#memory.update(KEPT, mixed);
    const panel = this.#panel ?? this.#open();
    this.#put(panel, mixed.shown);
    panel.reveal(undefined, true);
  }

  #mixed(): Mixed | undefined {
    return this.#memory.get<Mixed>(KEPT);
  }

  #put(panel: WebviewPanel, { title, html, record }: MixShown): void {
    panel.title = title;
    const leads = record === undefined ? [COPY, OTHER] : [WRITE, COPY, OTHER];
    panel.webview.html = this.#pageOf(panel, html, leads);
  }

  dispose(): void {
    this.#registered.dispose();
    this.#panel?.dispose();
  }

  #open(): WebviewPanel {
    return this.#taken(window.createWebviewPanel(TYPE, 'Solution', { viewColumn: ViewColumn.Beside, preserveFocus: true }));
  }

  #taken(panel: WebviewPanel): WebviewPanel {
    panel.webview.options = {
      enableCommandUris: [WRITE, COPY, OTHER].map(({ command }) => command),
      localResourceRoots: [Uri.joinPath(this.#root, 'client', 'media')],
    };
    panel.onDidDispose(() => (this.#panel = undefined));
    return this.#panel = panel;
  }

  #pageOf({ webview }: WebviewPanel, html: string, leads: readonly Lead[]): string {
    const style = webview.asWebviewUri(Uri.joinPath(this.#root, 'client', 'media', 'page.css')).toString();
    const links = leads.map(({ title, command }) => `<a class="lead" href="command:${command}">${title}</a>`).join('');
    const body = `<body class="solution"><main>${html}</main><nav>${links}</nav></body>`;
    return pageOf({ title: 'Solution', style, source: webview.cspSource, also: [], body });
  }
}
