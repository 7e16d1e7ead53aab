/** Puts records that the server made up into files. */
import { Position, Range, Selection, SnippetString, Uri, window, workspace, WorkspaceEdit } from 'vscode';
import type { Written } from '../../server/src/lsp/calendar-shapes.ts';

/**
 * Shows the file with the record in it and the cursor behind it, or in the first blank of what is to be filled in. A
 * file that had no unsaved changes before is saved, since the grower asked for the record; one that had some is left
 * for them to save, and so is what still has blanks.
 */
export async function writeRecord({ uri, version, at, text, cursor, snippet }: Written): Promise<boolean> {
  const document = await workspace.openTextDocument(Uri.parse(uri));
  // The place was worked out for a text that has changed since.
  if (version !== undefined && document.version !== version) return false;
  const place = new Position(at.line, at.character);
  if (snippet !== undefined) {
    const editor = await window.showTextDocument(document, { preview: false });
    return editor.insertSnippet(new SnippetString(snippet), place);
  }
  const { isDirty } = document;
  const edit = new WorkspaceEdit();
  edit.insert(document.uri, place, text);
  if (!await workspace.applyEdit(edit)) return false;
  const end = new Position(cursor.line, cursor.character);
  // Where it is seen already: what was asked from, such as a page, stays.
  const { viewColumn } = window.visibleTextEditors.find(each => each.document === document) ?? {};
  const editor = await window.showTextDocument(document, { preview: false, viewColumn });
  editor.selection = new Selection(end, end);
  editor.revealRange(new Range(end, end));
  // Last: who types on at once is to type behind the record.
  if (!isDirty) await document.save();
  return true;
}
