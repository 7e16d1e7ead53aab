/** The side bar's map of what lies where now: bags, shelves and boxes, with their slots. */
import { EventEmitter, ThemeIcon, TreeItem, TreeItemCollapsibleState, Uri, window, type TreeDataProvider } from 'vscode';
import type { PlaceShown } from '../../../server/src/lsp/calendar-shapes.ts';
import { openAt } from './open.ts';

type Place = PlaceShown['places'][number];
type Stay = Place['stays'][number];
type Node = { readonly container: PlaceShown } | { readonly stay: Stay; readonly place: Place };

export class PlacesView implements TreeDataProvider<Node> {
  readonly #changed = new EventEmitter<undefined>();
  readonly onDidChangeTreeData = this.#changed.event;
  readonly #view = window.createTreeView('plumule.places', { treeDataProvider: this, showCollapseAll: true });
  #places: readonly PlaceShown[] = [];

  show(places: readonly PlaceShown[]): void {
    if (JSON.stringify(places) === JSON.stringify(this.#places)) return;
    this.#places = places;
    this.#changed.fire(undefined);
  }

  dispose(): void {
    this.#view.dispose();
    this.#changed.dispose();
  }

  getChildren(node?: Node): Node[] {
    if (!node) return this.#places.map(container => ({ container }));
    if (!('container' in node)) return [];
    return node.container.places.flatMap(place => place.stays.map(stay => ({ stay, place })));
  }

  getTreeItem(node: Node): TreeItem {
    if ('container' in node) {
      const item = new TreeItem(node.container.name || 'Slots', TreeItemCollapsibleState.Expanded);
      item.description = node.container.journal ?? '';
      item.iconPath = new ThemeIcon('archive');
      return item;
    }
    const { stay, place } = node;
    const item = new TreeItem(place.slot === undefined ? stay.id : `${place.slot}: ${stay.id}`);
    item.description = [stay.plant, stay.what].filter(Boolean).join(' · ');
    item.command = openAt(Uri.parse(stay.at.uri), stay.at.range);
    item.accessibilityInformation = { label: [stay.id, stay.plant, stay.what, `at ${place.place}`].filter(Boolean).join(', ') };
    return item;
  }
}
