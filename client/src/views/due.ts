/** The side bar's list of what is due: overdue, today, this week, later. */
import {
  EventEmitter, MarkdownString, ThemeColor, ThemeIcon, TreeItem, TreeItemCollapsibleState, Uri, type TreeDataProvider,
} from 'vscode';
import type { DueShown } from '../../../server/src/lsp/calendar-shapes.ts';
import { openAt } from './open.ts';

type Group = DueShown['group'];
type Node = { readonly group: Group } | { readonly item: DueShown };

const titles: Readonly<Record<Group, string>> = {
  overdue: 'Overdue', today: 'Today', 'this week': 'This week', later: 'Later',
};

const icons: Readonly<Record<string, string>> = {
  soak: 'beaker', stage: 'calendar', count: 'eye', stock: 'package', reminder: 'bell', ahead: 'clock',
};

export class DueView implements TreeDataProvider<Node> {
  readonly #changed = new EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.#changed.event;
  #items: readonly DueShown[] = [];

  show(items: readonly DueShown[]): void {
    this.#items = items;
    this.#changed.fire(undefined);
  }

  getChildren(node?: Node): Node[] {
    const groups = Object.keys(titles) as Group[];
    if (!node) return groups.filter(group => this.#of(group).length > 0).map(group => ({ group }));
    return 'group' in node ? this.#of(node.group).map(item => ({ item })) : [];
  }

  getTreeItem(node: Node): TreeItem {
    return 'group' in node ? this.#groupItem(node.group) : itemOf(node.item);
  }

  #groupItem(group: Group): TreeItem {
    const open = group === 'later' ? TreeItemCollapsibleState.Collapsed : TreeItemCollapsibleState.Expanded;
    const item = new TreeItem(titles[group], open);
    item.id = group;
    item.description = String(this.#of(group).length);
    return item;
  }

  #of(group: Group): DueShown[] {
    return this.#items.filter(item => item.group === group);
  }
}

function itemOf({ key, what, id, plant, place, when, overdueDays, action, at, group, kind }: DueShown): TreeItem {
  // The side bar is narrow: what is told by the icon and the group needs no more words.
  const item = new TreeItem(`${id}: ${kind === 'soak' ? 'lift' : kind === 'count' ? 'count' : what}`);
  item.id = key;
  item.description = overdueDays > 0 ? `${when}, ${days(overdueDays)} ago` : when;
  item.iconPath = new ThemeIcon(icons[kind] ?? 'circle', group === 'overdue' ? new ThemeColor('list.warningForeground') : undefined);
  item.tooltip = tooltip([`${id}${plant ? ` ${plant}` : ''}`, what, place && `lies at ${place}`, action && `writes: ${action}`]);
  item.command = openAt(Uri.parse(at.uri), at.range);
  item.contextValue = action === undefined ? 'plumule.due' : 'plumule.due.writable';
  return item;
}

function days(n: number): string {
  return n === 1 ? '1 day' : `${n} days`;
}

function tooltip(lines: readonly (string | undefined)[]): MarkdownString {
  const text = new MarkdownString();
  // appendText escapes: names and places are the journal's own words.
  lines.filter(line => line !== undefined && line !== '').forEach((line, i) => text.appendText(`${i > 0 ? '\n' : ''}${line}`));
  return text;
}
