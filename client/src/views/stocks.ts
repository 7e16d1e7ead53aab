/** The side bar's list of bottles and packets, with what is left of each. */
import { EventEmitter, ThemeIcon, TreeItem, Uri, window, type TreeDataProvider } from 'vscode';
import type { StockShown } from '../../../server/src/lsp/calendar-shapes.ts';
import { openAt } from './open.ts';

export class StocksView implements TreeDataProvider<StockShown> {
  readonly #changed = new EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.#changed.event;
  readonly #view = window.createTreeView('plumule.stocks', { treeDataProvider: this });
  #stocks: readonly StockShown[] = [];

  show(stocks: readonly StockShown[]): void {
    if (JSON.stringify(stocks) === JSON.stringify(this.#stocks)) return;
    this.#stocks = stocks;
    this.#changed.fire(undefined);
  }

  dispose(): void {
    this.#view.dispose();
    this.#changed.dispose();
  }

  getChildren(node?: StockShown): StockShown[] {
    return node ? [] : [...this.#stocks];
  }

  getTreeItem({ id, journal, holds, left, state, note, at }: StockShown): TreeItem {
    const item = new TreeItem(`${id}: ${left}`);
    item.description = [holds, note, journal].filter(Boolean).join(' · ');
    item.iconPath = new ThemeIcon(state === 'expired' ? 'warning' : 'beaker');
    item.command = openAt(Uri.parse(at.uri), at.range);
    item.accessibilityInformation = { label: [id, `${left} left`, holds, note, journal && `in the journal ${journal}`].filter(Boolean).join(', ') };
    return item;
  }
}
