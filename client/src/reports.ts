/** A lot in the panel; what to do with its seed, and all that is open, in the editor's own Markdown preview. */
import {
  commands, Disposable, EventEmitter, TabInputText, TabInputWebview, Uri, ViewColumn, window, workspace,
  type ExtensionContext, type Memento, type Tab, type TextDocumentContentProvider,
} from 'vscode';
import { cursorOf } from './cursor.ts';
import type { Pictures } from './panel/panel.ts';
import type { JournalServer } from './server.ts';

const SCHEME = 'plumule-report';

/** A report follows when the typing has paused for so long (ms). */
const QUIET = 700;

/** Where the window keeps the addresses of the reports that it showed, and how many. */
const SHOWN = 'reports';
const MOST_SHOWN = 20;

interface OfLot {
  readonly uri: string;
  readonly lot: string;
}

/** Registers the commands, and what the previews of an earlier session read again when they are restored. */
export function registerReports(context: ExtensionContext, server: JournalServer, pictures: Pictures): void {
  const reports = new Reports(server, context.workspaceState);
  context.subscriptions.push(
    reports,
    workspace.registerTextDocumentContentProvider(SCHEME, reports),
    commands.registerCommand('plumule.report', () => reports.show(undefined)),
    commands.registerCommand('plumule.compare', async (uri?: unknown, lot?: unknown) => {
      const of = lotIn(uri, lot) ?? await chosenLot(server, 'Compare the Batches of a Lot');
      if (!of) return;
      // Ticks the last step of the walkthrough.
      void commands.executeCommand('setContext', 'plumule.compared', true);
      pictures.show({ view: 'lot', ...of });
    }),
    commands.registerCommand('plumule.advise', async (uri?: unknown, lot?: unknown) => {
      const of = lotIn(uri, lot) ?? await chosenLot(server, 'Say What to Do with a Lot');
      if (of) await reports.show(of);
    }),
  );
  reports.restore();
}

/** From a lens both are texts; a menu of the editor sends an address of its own kind. */
function lotIn(uri: unknown, lot: unknown): OfLot | undefined {
  return typeof uri === 'string' && typeof lot === 'string' ? { uri, lot } : undefined;
}

class Reports implements TextDocumentContentProvider {
  readonly #server: JournalServer;
  readonly #memory: Memento;
  readonly #changed = new EventEmitter<Uri>();
  readonly onDidChange = this.#changed.event;
  readonly #following: Disposable;
  /** Reports that were shown, by address; true where the journal has changed since. */
  readonly #stale = new Map<string, boolean>();
  #waiting: ReturnType<typeof setTimeout> | undefined;

  constructor(server: JournalServer, memory: Memento) {
    this.#server = server;
    this.#memory = memory;
    this.#following = Disposable.from(
      window.tabGroups.onDidChangeTabs(() => this.#refresh()),
      server.onChanged(() => {
        for (const address of this.#stale.keys()) this.#stale.set(address, true);
        clearTimeout(this.#waiting);
        this.#waiting = setTimeout(() => this.#refresh(), QUIET);
      }),
    );
  }

  /** What to do with one lot beside the journal, the report of all in the place of it: its tables are wide. */
  async show(of: OfLot | undefined): Promise<void> {
    const name = of ? `What to do with ${of.lot}` : 'Report';
    const uri = Uri.from({ scheme: SCHEME, path: `/${name}`, query: of ? JSON.stringify(of) : '' });
    try {
      await commands.executeCommand(of ? 'markdown.showPreviewToSide' : 'markdown.showPreview', uri);
    } catch {
      // The editor's Markdown extension was turned off.
      await window.showTextDocument(uri, { viewColumn: of ? ViewColumn.Beside : ViewColumn.Active, preview: true });
    }
  }

  /** A window that comes back may show its previews before this extension is there to fill them: they are told. */
  restore(): void {
    for (const address of this.#memory.get<string[]>(SHOWN, [])) this.#stale.set(address, true);
    this.#refresh();
  }

  async provideTextDocumentContent(uri: Uri): Promise<string> {
    this.#stale.set(uri.toString(), false);
    void this.#memory.update(SHOWN, [...this.#stale.keys()].slice(-MOST_SHOWN));
    try {
      const of = uri.query === '' ? undefined : JSON.parse(uri.query) as OfLot;
      return of ? await this.#server.advice(of) : await this.#server.report();
    } catch (error) {
      // A window that comes back asks before the journal was read: it is told at the next change.
      this.#stale.set(uri.toString(), true);
      return `The report is not ready yet. (${String(error)})\n`;
    }
  }

  dispose(): void {
    clearTimeout(this.#waiting);
    this.#following.dispose();
    this.#changed.dispose();
  }

  /** Reports that somebody sees; the others when they come into view again, for a large journal takes a while. */
  #refresh(): void {
    const seen = window.tabGroups.all.map(({ activeTab }) => activeTab);
    const labels = seen.flatMap(tab => (tab && isReport(tab) ? [tab.label] : []));
    for (const [address, stale] of this.#stale) {
      const uri = Uri.parse(address);
      if (!stale || !labels.some(label => label.includes(uri.path.slice(1)))) continue;
      this.#stale.set(address, false);
      this.#changed.fire(uri);
      // The editor lets go of a text that only a preview shows; opened anew, the preview takes it up.
      void workspace.openTextDocument(uri);
    }
  }
}

/** Or any other Markdown preview: whose it is, only its label says. */
function isReport({ input }: Tab): boolean {
  return input instanceof TabInputText ? input.uri.scheme === SCHEME
    : input instanceof TabInputWebview && input.viewType.endsWith('markdown.preview');
}

/** That of the line with the cursor; where it is about none, one of a list. */
async function chosenLot(server: JournalServer, title: string): Promise<OfLot | undefined> {
  const editor = window.activeTextEditor;
  const uri = editor?.document.languageId === 'plumule' ? editor.document.uri.toString() : undefined;
  const { at, lots } = await server.lots(editor && uri !== undefined ? { uri, position: cursorOf(editor) } : undefined);
  if (uri !== undefined && at !== null) return { uri, lot: at };
  if (lots.length === 0) {
    void window.showInformationMessage('This journal has no lots yet.');
    return undefined;
  }
  const items = lots.map(({ plant, ...of }) => ({ label: of.lot, description: plant ?? '', of }));
  return (await window.showQuickPick(items, { title, placeHolder: 'Which lot?', matchOnDescription: true }))?.of;
}
