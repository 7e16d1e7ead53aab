/** A first journal: a file of this winter in the folder that is open, else a text that has no place yet. */
import { commands, Uri, window, workspace, type ExtensionContext } from 'vscode';
import { journalTemplate, winterName } from './journal-template.ts';

export function registerNewJournal(context: ExtensionContext): void {
  context.subscriptions.push(commands.registerCommand('plumule.newJournal', newJournal));
}

async function newJournal(): Promise<void> {
  const today = new Date();
  const [year, month, date] = [today.getFullYear(), today.getMonth() + 1, today.getDate()];
  const content = journalTemplate(year, month, date);
  const folder = workspace.workspaceFolders?.[0]?.uri;
  if (!folder) {
    await window.showTextDocument(await workspace.openTextDocument({ language: 'plumule', content }));
    return;
  }
  const uri = Uri.joinPath(folder, winterName(year, month));
  const exists = await workspace.fs.stat(uri).then(() => true, () => false);
  // A journal that is there is somebody's diary: it is opened, never written over.
  if (!exists) await workspace.fs.writeFile(uri, new TextEncoder().encode(content));
  await window.showTextDocument(uri);
}
