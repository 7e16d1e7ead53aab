/** A first journal, or one for this winter: a file in the folder that is open, else a text that has no place yet. */
import {
  commands, Range, SnippetString, Uri, window, workspace, type ExtensionContext, type TextDocument, type TextEditor,
} from 'vscode';
import type { JournalServer } from './server.ts';

export function registerNewJournal(context: ExtensionContext, server: JournalServer): void {
  context.subscriptions.push(commands.registerCommand('plumule.newJournal', () => newJournal(server)));
}

async function newJournal(server: JournalServer): Promise<void> {
  const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
  const folder = await chosenFolder();
  if (folder === undefined) return;
  const others = folder === null ? [] : await journalsIn(folder);
  const [other] = others;
  const beside = folder && other !== undefined ? Uri.joinPath(folder, other).toString() : undefined;
  const journal = await server.newJournal(timeZone, beside);
  if (!journal) return;
  const { file: name, head, lot } = journal;
  if (folder === null) {
    await fill(await shown(await workspace.openTextDocument({ language: 'plumule', content: head })), lot);
    return;
  }
  const uri = Uri.joinPath(folder, name);
  if (others.includes(name)) {
    // A journal that is there is somebody's diary: it is opened, never written into.
    await shown(await workspace.openTextDocument(uri));
    void window.showInformationMessage(`This winter already has a journal: ${name}`);
    return;
  }
  await workspace.fs.writeFile(uri, new TextEncoder().encode(head));
  await fill(await shown(await workspace.openTextDocument(uri)), lot);
}

/** Null where no folder is open; undefined where none was chosen of several. */
async function chosenFolder(): Promise<Uri | null | undefined> {
  const { workspaceFolders = [] } = workspace;
  if (workspaceFolders.length < 2) return workspaceFolders[0]?.uri ?? null;
  return (await window.showWorkspaceFolderPick({ placeHolder: 'Which folder should hold the journal?' }))?.uri;
}

async function journalsIn(folder: Uri): Promise<string[]> {
  const entries = await workspace.fs.readDirectory(folder);
  return entries.map(([name]) => name).filter(name => name.endsWith('.germ'));
}

/** In a tab that stays: as a preview it would take the place of the walkthrough that led here. */
function shown(document: TextDocument): Thenable<TextEditor> {
  return window.showTextDocument(document, { preview: false });
}

async function fill(editor: TextEditor, snippet: string): Promise<void> {
  const end = editor.document.lineAt(editor.document.lineCount - 1).range.end;
  await editor.insertSnippet(new SnippetString(snippet), new Range(end, end));
}
