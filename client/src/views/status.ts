/** The status bar's item: the next thing that is due. */
import { StatusBarAlignment, ThemeColor, window, type StatusBarItem } from 'vscode';
import type { DueShown } from '../../../server/src/lsp/calendar-shapes.ts';
import { nextInFull, nextInWords } from './brief.ts';

export class NextDue {
  readonly #item: StatusBarItem = window.createStatusBarItem('plumule.next', StatusBarAlignment.Left, 10);

  constructor() {
    this.#item.name = 'Plumule: next due';
    this.#item.command = 'plumule.due.focus';
  }

  show(items: readonly DueShown[]): void {
    const overdue = items.filter(({ group }) => group === 'overdue').length;
    const text = nextInWords(items);
    if (text === undefined) return this.#item.hide();
    this.#item.text = `$(${overdue > 0 ? 'warning' : 'bell'}) ${text}`;
    this.#item.tooltip = nextInFull(items);
    this.#item.backgroundColor = overdue > 0 ? new ThemeColor('statusBarItem.warningBackground') : undefined;
    this.#item.accessibilityInformation = { label: `Due: ${text}` };
    this.#item.show();
  }

  dispose(): void {
    this.#item.dispose();
  }
}
