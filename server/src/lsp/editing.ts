/** Requests that change the journal by name or by form: rename and formatting. */
import {
  LSPErrorCodes, ResponseError,
  type ClientCapabilities, type Connection, type PrepareRenameResult, type ServerCapabilities, type TextEdit,
  type WorkspaceEdit,
} from './protocol.ts';
import { formatEdits } from '../features/format.ts';
import { rename, renameTarget } from '../features/rename.ts';
import { rangeOf } from './convert.ts';
import type { About } from './features.ts';
import type { Service, Snapshot } from './service.ts';
import { workspaceEdit } from './workspace-edit.ts';

export function editingCapabilities({ textDocument }: ClientCapabilities): ServerCapabilities {
  return {
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' },
    renameProvider: textDocument?.rename?.prepareSupport ? { prepareProvider: true } : true,
  };
}

export function serveEditing(connection: Connection, about: About, service: Service): void {
  connection.onDocumentFormatting(about('formatting', null, snapshot => formatted(snapshot, service)));

  connection.onDocumentRangeFormatting(about('range formatting', null, (snapshot, { range: { start, end } }) =>
    formatted(snapshot, service, start.line, end.character === 0 && end.line > start.line ? end.line - 1 : end.line)));

  // The line that was just left; the new one is being written.
  connection.onDocumentOnTypeFormatting(about('formatting as you type', null, (snapshot, { position: { line } }) =>
    line > 0 ? formatted(snapshot, service, line - 1, line - 1) : []));

  connection.onPrepareRename(about('rename', null, ({ journal, file }, { position }): PrepareRenameResult | ResponseError | null => {
    const target = renameTarget(journal, file, position);
    if (!target) return null;
    if ('refused' in target) return refusal(target.refused);
    return { range: rangeOf(target.place), placeholder: target.text };
  }));

  connection.onRenameRequest(about('rename', null, ({ journal, file }, { position, newName }): WorkspaceEdit | ResponseError | null => {
    const result = rename(journal, file, position, newName);
    return 'refused' in result ? refusal(result.refused) : workspaceEdit(result.edits, service);
  }));
}

function formatted({ journal, file }: Snapshot, service: Service, from?: number, to?: number): TextEdit[] {
  const text = journal.files.get(file)?.text;
  const order = service.settings().format.factOrder ? 'as listed' : 'as written';
  return text ? formatEdits(text, { from, to, order }).map(edit => ({ range: rangeOf(edit), newText: edit.text })) : [];
}

function refusal(reason: string): ResponseError {
  return new ResponseError(LSPErrorCodes.RequestFailed, reason);
}
