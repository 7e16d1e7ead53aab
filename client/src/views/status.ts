/** The status bar's item: the next thing that is due. */
import { StatusBarAlignment, ThemeColor, window, type StatusBarItem } from 'vscode';
import type { DueShown } from '../../../server/src/lsp/calendar-shapes.ts';
import { briefly, shortly } from './brief.ts';

export class NextDue {
  readonly #item: StatusBarItem = window.createStatusBarItem('plumule.next', StatusBarAlignment.Left, 10);

  constructor() {
    this.#item.name = 'Plumule: next due';
    this.#item.command = 'plumule.due.focus';
  }

  show(items: readonly DueShown[]): void {
    const overdue = items.filter(({ group }) => group === 'overdue').length;
    const [next] = items;
    if (!next) return this.#item.hide();
    const soon = next.group === 'overdue' || next.group === 'today' || next.group === 'this week';
    if (!soon) return this.#item.hide();
    const words = `${next.id}: ${next.what}, ${next.when}`;
    const brief = [briefly(next), shortly(next) || 'today'].join(', ');
    this.#item.text = `$(bell) ${overdue > 1 ? `${overdue} overdue` : brief}`;
    this.#item.tooltip = `${overdue > 1 ? 'First of these: ' : ''}${words}`;
    this.#item.backgroundColor = overdue > 0 ? new ThemeColor('statusBarItem.warningBackground') : undefined;
    this.#item.accessibilityInformation = { label: `Due next: ${words}. ${overdue} overdue.` };
    this.#item.show();
  }

  dispose(): void {
    this.#item.dispose();
  }
}
