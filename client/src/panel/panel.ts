/** Pictures beside the journal, in a webview: they follow the cursor and the typing. */
import {
  commands, Disposable, Range, Uri, ViewColumn, window, workspace,
  type ExtensionContext, type TextEditor, type Webview, type WebviewPanel,
} from 'vscode';
import type { Position } from 'vscode-languageclient';
import type { PanelView } from '../../../server/src/report/panel/panel.ts';
import { cursorOf } from '../cursor.ts';
import type { JournalServer } from '../server.ts';
import { panelHtml } from './html.ts';
import type { FromPage, PanelState, RingPage, ToPage } from './messages.ts';
import { PhotoAddresses } from './photos.ts';

const TYPE = 'plumule.pictures';

/** Milliseconds: keys that come faster than this are drawn together. */
const QUIET = 40;

export class Pictures {
  readonly #server: JournalServer;
  readonly #root: Uri;
  #panel: Panel | undefined;

  constructor(context: ExtensionContext, server: JournalServer) {
    this.#server = server;
    this.#root = context.extensionUri;
    context.subscriptions.push(
      window.registerWebviewPanelSerializer(TYPE, {
        deserializeWebviewPanel: (panel: WebviewPanel, state: PanelState | undefined) => {
          this.#take(panel, state ?? { view: 'lot' });
          return Promise.resolve();
        },
      }),
      commands.registerCommand('plumule.pictures', () => this.show(cursorState())),
      new Disposable(() => this.#panel?.dispose()),
    );
  }

  /** What the cursor is on, or the state given; one panel is enough, because it follows. */
  show(state: PanelState): void {
    if (this.#panel) {
      this.#panel.show(state);
      return;
    }
    this.#open(state, false);
  }

  /**
   * Has the page play a sound, for nothing else of the editor can. Where it is out of sight it is shown for that, with
   * the season, and the cursor stays where it is.
   */
  ring(uri: string): void {
    if (!this.#panel) this.#open({ view: 'season', uri }, true);
    this.#panel!.ring();
  }

  #open(state: PanelState, preserveFocus: boolean): void {
    this.#take(window.createWebviewPanel(TYPE, 'Pictures', { viewColumn: ViewColumn.Beside, preserveFocus }, {}), state);
  }

  #take(panel: WebviewPanel, state: PanelState): void {
    this.#panel?.dispose();
    const taken = new Panel(panel, state, this.#server, this.#root);
    this.#panel = taken;
    panel.onDidDispose(() => {
      if (this.#panel === taken) this.#panel = undefined;
    });
  }
}

class Panel {
  readonly #panel: WebviewPanel;
  readonly #server: JournalServer;
  readonly #photos: PhotoAddresses;
  readonly #following: Disposable;
  #state: PanelState;
  #position: Position | undefined;
  #size = { width: 560, height: 640 };
  #waiting: ReturnType<typeof setTimeout> | undefined;
  /** One request at a time: what comes meanwhile is asked for once, afterwards. */
  #isAsking = false;
  #isStale = false;
  /** The page is in sight and listens: one out of sight is thrown away, and comes anew. */
  #isListening = false;
  /** It has not played the sound that it was asked for yet. */
  #isToRing = false;

  constructor(panel: WebviewPanel, state: PanelState, server: JournalServer, root: Uri) {
    this.#panel = panel;
    this.#state = state;
    this.#position = cursorIn(state);
    this.#server = server;
    const { webview } = panel;
    const media = Uri.joinPath(root, 'client', 'media');
    this.#photos = new PhotoAddresses(webview);
    allow(webview, media);
    this.#following = Disposable.from(
      webview.onDidReceiveMessage((message: FromPage) => this.#receive(message)),
      window.onDidChangeTextEditorSelection(({ textEditor }) => this.#follow(textEditor)),
      window.onDidChangeActiveTextEditor(editor => editor && this.#follow(editor)),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId === 'plumule') this.#soon();
      }),
      workspace.onDidChangeWorkspaceFolders(() => allow(webview, media)),
      server.onChanged(() => this.#soon()),
      panel.onDidChangeViewState(() => (this.#isListening &&= panel.visible)),
      panel.onDidDispose(() => this.dispose()),
    );
    webview.html = htmlOf(webview, media, state.view);
  }

  show(state: PanelState): void {
    this.#state = state;
    this.#position = cursorIn(state);
    this.#panel.reveal(undefined, false);
    this.#soon();
  }

  ring(): void {
    this.#isToRing = true;
    if (this.#isListening) this.#play();
    else this.#panel.reveal(undefined, true);
  }

  #play(): void {
    if (this.#isToRing) void this.#panel.webview.postMessage({ ring: true } satisfies RingPage);
    this.#isToRing = false;
  }

  dispose(): void {
    clearTimeout(this.#waiting);
    this.#following.dispose();
    this.#panel.dispose();
  }

  #receive(message: FromPage): void {
    if (message.type === 'go') {
      void goTo(message.way);
      return;
    }
    this.#isListening = true;
    this.#play();
    const { view, width, height } = message;
    this.#state = { ...this.#state, view };
    this.#size = { width, height };
    this.#soon();
  }

  #follow(editor: TextEditor): void {
    const { document } = editor;
    if (document.languageId !== 'plumule') return;
    this.#state = { ...this.#state, uri: document.uri.toString() };
    this.#position = cursorOf(editor);
    this.#soon();
  }

  #soon(): void {
    clearTimeout(this.#waiting);
    this.#waiting = setTimeout(() => void this.#ask(), QUIET);
  }

  async #ask(): Promise<void> {
    this.#isStale = this.#isAsking;
    if (this.#isAsking) return;
    this.#isAsking = true;
    const asked = { ...this.#state, ...this.#size, position: this.#position };
    try {
      const { title, html, colours, lot, photos: named } = await this.#server.panel(asked);
      const photos = await this.#photos.of(named);
      // What was asked for meanwhile is not overwritten.
      const { view, uri, lot: wanted } = this.#state;
      if (view === asked.view && uri === asked.uri && wanted === asked.lot) {
        this.#state = { view, uri, lot: lot ?? undefined };
      }
      this.#panel.title = title;
      await this.#panel.webview.postMessage({ state: this.#state, html, colours, photos } satisfies ToPage);
    } catch {
      // The server is stopping, or the panel was closed meanwhile; the next change asks again.
    } finally {
      this.#isAsking = false;
      if (this.#isStale) this.#soon();
    }
  }
}

/** Our own page, and the open folders for the photos that journals name; the page is told which of these to show. */
function allow(webview: Webview, media: Uri): void {
  const folders = (workspace.workspaceFolders ?? []).map(({ uri }) => uri);
  webview.options = { enableScripts: true, localResourceRoots: [media, ...folders] };
}

/** Where the cursor is, unless a lot was asked for. */
function cursorIn({ uri, lot }: PanelState): Position | undefined {
  if (lot !== undefined) return undefined;
  const editor = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri);
  return editor && cursorOf(editor);
}

/** The journal in hand; the cursor says the lot. */
function cursorState(): PanelState {
  const { document } = window.activeTextEditor ?? {};
  return { view: 'lot', uri: document?.languageId === 'plumule' ? document.uri.toString() : undefined };
}

function htmlOf(webview: Webview, media: Uri, view: PanelView): string {
  const nonce = [...crypto.getRandomValues(new Uint8Array(16))].map(byte => byte.toString(16).padStart(2, '0')).join('');
  return panelHtml({
    nonce, view, source: webview.cspSource,
    script: webview.asWebviewUri(Uri.joinPath(media, 'page.js')).toString(),
    style: webview.asWebviewUri(Uri.joinPath(media, 'page.css')).toString(),
  });
}

/** To the line of a record, beside the panel: where its file is open already, else in the first group. */
async function goTo(way: string): Promise<void> {
  const [line = '', address = ''] = way.split(' ');
  const document = await workspace.openTextDocument(Uri.parse(address, true));
  if (document.languageId !== 'plumule') return;
  const open = window.visibleTextEditors.find(editor => editor.document === document);
  const at = new Range(Number(line), 0, Number(line), 0);
  await window.showTextDocument(document, { viewColumn: open?.viewColumn ?? ViewColumn.One, selection: at });
}
