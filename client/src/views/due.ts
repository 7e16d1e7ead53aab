/** The side bar's list of what is due: overdue, today, this week, later. */
import {
  EventEmitter, ThemeColor, ThemeIcon, TreeItem, TreeItemCollapsibleState, Uri, window,
  type TreeDataProvider,
} from 'vscode';
import type { DueShown } from '../../../server/src/lsp/calendar-shapes.ts';
import { briefly, days, shortly } from './brief.ts';
import { openAt } from './open.ts';
import { tooltip } from './tooltip.ts';

type Group = DueShown['group'];
type Node = { readonly group: Group } | { readonly item: DueShown };

const titles: Readonly<Record<Group, string>> = {
  overdue: 'Overdue', today: 'Today', 'this week': 'This week', later: 'Later', 'long ago': 'Nothing done for more than a year',
};

const icons: Readonly<Record<string, string>> = {
  soak: 'beaker', stage: 'calendar', count: 'eye', stock: 'package', reminder: 'bell', ahead: 'clock',
};

export class DueView implements TreeDataProvider<Node> {
  readonly #changed = new EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.#changed.event;
  readonly #view = window.createTreeView('plumule.due', { treeDataProvider: this });
  #items: readonly DueShown[] = [];

  show(items: readonly DueShown[]): void {
    // A list that is drawn anew swallows the click that is just being made.
    if (JSON.stringify(items) === JSON.stringify(this.#items)) return;
    this.#items = items;
    this.#changed.fire(undefined);
    const [overdue, today] = [this.#of('overdue').length, this.#of('today').length];
    const tooltip = [overdue > 0 && `${overdue} overdue`, today > 0 && `${today} due today`].filter(Boolean).join(', ');
    this.#view.badge = tooltip === '' ? undefined : { value: overdue + today, tooltip };
  }

  dispose(): void {
    this.#view.dispose();
    this.#changed.dispose();
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
    const open = group === 'later' || group === 'long ago' ? TreeItemCollapsibleState.Collapsed : TreeItemCollapsibleState.Expanded;
    const item = new TreeItem(titles[group], open);
    item.id = group;
    item.description = String(this.#of(group).length);
    if (group === 'long ago') item.contextValue = 'plumule.due.longAgo';
    return item;
  }

  #of(group: Group): DueShown[] {
    return this.#items.filter(item => item.group === group);
  }
}

function itemOf(shown: DueShown): TreeItem {
  const { key, folder, journal, what, id, plant, place, writes, at, group, kind } = shown;
  const item = new TreeItem(briefly(shown));
  item.id = `${folder} ${key}`;
  item.description = [shortly(shown), journal].filter(Boolean).join(' · ');
  item.iconPath = new ThemeIcon(icons[kind] ?? 'circle', group === 'overdue' ? new ThemeColor('list.warningForeground') : undefined);
  item.tooltip = tooltip([
    `${id}${plant ? ` ${plant}` : ''}`, what, place && `at ${place}`, writes && `will write for today: ${writes}`,
    journal && `in the journal ${journal}`,
  ]);
  item.command = openAt(Uri.parse(at.uri), at.range);
  item.contextValue = writes === undefined ? 'plumule.due' : 'plumule.due.writable';
  item.accessibilityInformation = { label: spoken(shown) };
  return item;
}

/** What the eye takes from icon, colour and group. */
function spoken({ id, plant, what, place, when, overdueDays, journal }: DueShown): string {
  const late = overdueDays > 0 && `overdue by ${days(overdueDays)}`;
  return [id, plant, what, place && `at ${place}`, `due ${when}`, late, journal && `in the journal ${journal}`].filter(Boolean).join(', ');
}
