/** The sheet of places: a page of HTML, to be printed by a browser. */
import { env, UIKind, window, type Uri } from 'vscode';
import { saveAs } from './saving.ts';
import type { JournalServer } from './server.ts';

const OPEN = 'Open in the Browser';

export async function printPlaces(server: JournalServer): Promise<void> {
  const target = await saveAs('places.html', { HTML: ['html'] }, () => server.sheet());
  if (!target) return;
  const name = target.path.slice(target.path.lastIndexOf('/') + 1);
  const choice = await window.showInformationMessage(
    `Wrote the sheet ${name}. Open it in a browser to print it.`, ...(isOnThisMachine(target) ? [OPEN] : []));
  if (choice === OPEN && !await env.openExternal(target)) {
    void window.showErrorMessage(`Plumule could not open ${name}. Open it yourself: ${target.fsPath}`);
  }
}

/** A browser cannot reach the files of another machine, nor can an editor in a browser open one of this. */
function isOnThisMachine({ scheme }: Uri): boolean {
  return scheme === 'file' && env.uiKind === UIKind.Desktop && env.remoteName === undefined;
}
