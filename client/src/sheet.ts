/** Pages of HTML, to be printed by a browser: the sheet of places, labels, the counting sheet. */
import { env, UIKind, window, type Uri } from 'vscode';
import type { LabelSheetName } from '../../server/src/report/paper/label-sheets.ts';
import { saveAs } from './saving.ts';
import type { JournalServer } from './server.ts';

const OPEN = 'Open in the Browser';

export function printPlaces(server: JournalServer): Promise<void> {
  return printPage('places.html', () => server.sheet());
}

export function printRound(server: JournalServer): Promise<void> {
  return printPage('counting-sheet.html', () => server.roundSheet());
}

const papers: readonly { readonly label: string; readonly description: string; readonly paper: LabelSheetName }[] = [
  { label: 'A4, plain', description: 'with lines to cut along', paper: 'a4-cut' },
  { label: 'Letter, plain', description: 'with lines to cut along', paper: 'letter-cut' },
  { label: 'A4, 3 by 8 labels', description: '70 by 37 mm', paper: 'a4-3x8' },
  { label: 'Letter, 3 by 10 labels', description: '2 5/8 by 1 inch', paper: 'letter-3x10' },
];

export async function printLabels(server: JournalServer): Promise<void> {
  const chosen = await window.showQuickPick(papers, { title: 'Labels', placeHolder: 'Which sheet?' });
  if (chosen) await printPage('labels.html', () => server.labels(chosen.paper));
}

async function printPage(page: string, text: () => Promise<string>): Promise<void> {
  const target = await saveAs(page, { HTML: ['html'] }, text);
  if (!target) return;
  const name = target.path.slice(target.path.lastIndexOf('/') + 1);
  const choice = await window.showInformationMessage(
    `Wrote ${name}. Open it in a browser to print it.`, ...(isOnThisMachine(target) ? [OPEN] : []));
  if (choice === OPEN && !await env.openExternal(target)) {
    void window.showErrorMessage(`Plumule could not open ${name}. Open it yourself: ${target.fsPath}`);
  }
}

/** A browser cannot reach the files of another machine, nor can an editor in a browser open one of this. */
function isOnThisMachine({ scheme }: Uri): boolean {
  return scheme === 'file' && env.uiKind === UIKind.Desktop && env.remoteName === undefined;
}
