/** The side bar's list of lots, by plant or by winter: where each stands, what came up, whether treating paid. */
import {
  commands, Disposable, EventEmitter, ThemeIcon, TreeItem, TreeItemCollapsibleState, Uri, window,
  type Memento, type TreeDataProvider,
} from 'vscode';
import type { LotShown } from '../../../server/src/lsp/lots.ts';
import type { JournalServer } from '../server.ts';
import { lotGroups, lotNote, wordsOf, type Grouping, type LotGroup } from './lot-groups.ts';
import { openAt } from './open.ts';
import { tooltip } from './tooltip.ts';

type Node = { readonly group: LotGroup } | { readonly lot: LotShown; readonly within: string };

const icons: Readonly<Record<LotShown['state'], string>> = {
  'not begun': 'circle-outline', open: 'circle-filled', 'left off': 'history', closed: 'archive',
};

/** Under this name a window remembers how the list is grouped. */
const GROUPING = 'plumule.lots.grouping';
/** Lots that the server judges without doing anything else meanwhile: less than a tenth of a second. */
const AT_ONCE = 10;
/** The list is drawn no oftener while verdicts come in (ms). */
const REDRAWN = 1000;

export class LotsView implements TreeDataProvider<Node> {
  readonly #server: JournalServer;
  readonly #memory: Memento;
  readonly #changed = new EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.#changed.event;
  readonly #view = window.createTreeView('plumule.lots', { treeDataProvider: this, showCollapseAll: true });
  readonly #registered: Disposable;
  #lots: readonly LotShown[] = [];
  #grouping: Grouping;
  #filter = '';
  /** The journal was read or has changed while nobody looked at the list. */
  #isStale = false;
  /** Counts what was asked for: only the last of it is shown. */
  #asked = 0;

  constructor(server: JournalServer, memory: Memento) {
    this.#server = server;
    this.#memory = memory;
    this.#grouping = memory.get<Grouping>(GROUPING, 'plant');
    this.#registered = Disposable.from(
      this.#view.onDidChangeVisibility(({ visible }) => {
        if (visible && this.#isStale) void this.refresh();
      }),
      commands.registerCommand('plumule.lots.byPlant', () => this.#group('plant')),
      commands.registerCommand('plumule.lots.byWinter', () => this.#group('winter')),
      commands.registerCommand('plumule.lots.filter', () => this.#ask()),
      commands.registerCommand('plumule.lots.all', () => this.#narrow('')),
    );
    this.#draw();
  }

  /** Asks for the lots and then, a few at a time, for the verdicts that are missing; waits until somebody looks. */
  async refresh(): Promise<void> {
    this.#isStale = !this.#view.visible;
    if (this.#isStale) return;
    const turn = ++this.#asked;
    const lots = await this.#server.lotRows();
    if (turn !== this.#asked) return;
    this.#show(lots);
    // Open lots first: they are the ones in view.
    const missing = lots.filter(({ verdicts }) => !verdicts).sort((a, b) => Number(b.state === 'open') - Number(a.state === 'open'));
    const found = new Map<LotShown, readonly string[]>();
    const told = () => this.#show(lots.map(lot => ({ ...lot, verdicts: lot.verdicts ?? found.get(lot) })));
    for (let from = 0, drawn = Date.now(); from < missing.length; from += AT_ONCE) {
      const some = missing.slice(from, from + AT_ONCE);
      const verdicts = await this.#server.judgeLots(some.map(({ folder, id }) => ({ folder, id })));
      if (turn !== this.#asked) return;
      some.forEach((lot, i) => found.set(lot, verdicts[i] ?? []));
      if (!this.#view.visible) break;
      if (Date.now() - drawn < REDRAWN) continue;
      told();
      drawn = Date.now();
    }
    this.#isStale = found.size < missing.length;
    told();
  }

  dispose(): void {
    this.#registered.dispose();
    this.#view.dispose();
    this.#changed.dispose();
  }

  getChildren(node?: Node): Node[] {
    if (!node) return lotGroups(this.#lots, this.#grouping, this.#filter).map(group => ({ group }));
    return 'group' in node ? node.group.lots.map(lot => ({ lot, within: node.group.key })) : [];
  }

  getTreeItem(node: Node): TreeItem {
    return 'group' in node ? this.#groupItem(node.group) : this.#lotItem(node.lot, node.within);
  }

  #groupItem({ key, title, note, isExpanded }: LotGroup): TreeItem {
    const { Collapsed, Expanded } = TreeItemCollapsibleState;
    const item = new TreeItem(title, isExpanded ? Expanded : Collapsed);
    // What somebody folded stays so, but what a filter finds is shown.
    item.id = this.#filter === '' ? key : `${key} found`;
    item.description = note;
    return item;
  }

  #lotItem(lot: LotShown, within: string): TreeItem {
    const { id, folder, journal, state, at } = lot;
    const item = new TreeItem(id);
    item.id = `${within} ${folder} ${id}`;
    item.description = lotNote(lot, this.#grouping);
    item.iconPath = new ThemeIcon(icons[state]);
    const lines = [...wordsOf(lot), journal && `in the journal ${journal}`];
    item.tooltip = tooltip(lines);
    item.command = openAt(Uri.parse(at.uri), at.range);
    item.accessibilityInformation = { label: lines.filter(Boolean).join(', ') };
    return item;
  }

  #show(lots: readonly LotShown[]): void {
    // A list that is drawn anew swallows the click that is just being made.
    if (JSON.stringify(lots) === JSON.stringify(this.#lots)) return;
    this.#lots = lots;
    this.#draw();
  }

  #group(grouping: Grouping): void {
    this.#grouping = grouping;
    void this.#memory.update(GROUPING, grouping);
    this.#draw();
    this.#reveal();
  }

  async #ask(): Promise<void> {
    const text = await window.showInputBox({
      title: 'Filter the Lots', value: this.#filter, prompt: 'Shows the lots that have all of these words.',
      placeHolder: 'Words of a name, plant, winter, state or verdict',
    });
    if (text !== undefined) this.#narrow(text.trim());
  }

  #narrow(filter: string): void {
    this.#filter = filter;
    this.#draw();
    this.#reveal();
  }

  /** Whoever asks from the palette wants to see it. */
  #reveal(): void {
    if (!this.#view.visible) void commands.executeCommand('plumule.lots.focus');
  }

  #draw(): void {
    this.#view.description = `by ${this.#grouping}`;
    const isNone = this.#lots.length > 0 && this.getChildren().length === 0;
    this.#view.message = this.#filter === '' ? undefined : `${isNone ? 'No lot has' : 'Lots with'}: ${this.#filter}`;
    void commands.executeCommand('setContext', 'plumule.lots.grouping', this.#grouping);
    void commands.executeCommand('setContext', 'plumule.lots.isFiltered', this.#filter !== '');
    this.#changed.fire(undefined);
  }
}
