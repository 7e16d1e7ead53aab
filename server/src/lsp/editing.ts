/** Requests that change the journal: quick fixes and other actions, formatting, rename. */
import {
  CodeActionKind, LSPErrorCodes, ResponseError,
  type ClientCapabilities, type CodeAction, type Connection, type ServerCapabilities, type TextEdit, type WorkspaceEdit,
} from 'vscode-languageserver';
import type { Action, ActionEdit } from '../features/actions/action.ts';
import { ladderAction } from '../features/actions/ladder.ts';
import { planActions } from '../features/actions/plan.ts';
import { fixAll, quickFixes } from '../features/actions/quick-fixes.ts';
import { rewriteCounts } from '../features/actions/totals.ts';
import { formatEdits } from '../features/format.ts';
import { rename, renameTarget } from '../features/rename.ts';
import { thingAt } from '../features/thing.ts';
import { rootOf } from '../journal/mentions.ts';
import { rangeOf } from './convert.ts';
import type { About } from './features.ts';
import type { Service, Snapshot } from './service.ts';

const FIX_ALL = `${CodeActionKind.SourceFixAll}.plumule`;

export function editingCapabilities({ textDocument }: ClientCapabilities): ServerCapabilities {
  return {
    // A client that takes no actions as data would need commands: it gets none rather than wrong ones.
    ...(textDocument?.codeAction?.codeActionLiteralSupport && {
      codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.RefactorRewrite, FIX_ALL] },
    }),
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' },
    renameProvider: textDocument?.rename?.prepareSupport ? { prepareProvider: true } : true,
  };
}

export function serveEditing(connection: Connection, about: About, service: Service): void {
  connection.onCodeAction(about('code actions', null, (snapshot, { range, context }): CodeAction[] | null => {
    if (!service.client().textDocument?.codeAction?.codeActionLiteralSupport) return null;
    const asked = (kind: string) => !context.only || context.only.some(only => kind === only || kind.startsWith(`${only}.`));
    const found = snapshot.room.book.of(snapshot.file);
    const actions: CodeAction[] = [];
    if (asked(CodeActionKind.QuickFix)) {
      for (const fix of quickFixes(found, range.start.line, range.end.line)) {
        const diagnostics = context.diagnostics.filter(({ code, range: at }) =>
          code === fix.code && at.start.line === fix.problem.line && at.start.character === fix.problem.start);
        actions.push({
          ...actionOf(fix, CodeActionKind.QuickFix, service), ...(diagnostics.length > 0 && { diagnostics }),
          ...(fix.only && { isPreferred: true }),
        });
      }
    }
    if (asked(CodeActionKind.RefactorRewrite)) {
      const kind = CodeActionKind.RefactorRewrite;
      actions.push(...rewrites(snapshot, range.start).map(action => actionOf(action, kind, service)));
    }
    const all = context.only && asked(FIX_ALL) ? fixAll(found) : undefined;
    return all ? [...actions, actionOf(all, FIX_ALL, service)] : actions;
  }));

  connection.onDocumentFormatting(about('formatting', null, snapshot => formatted(snapshot)));

  connection.onDocumentRangeFormatting(about('range formatting', null, (snapshot, { range: { start, end } }) =>
    formatted(snapshot, start.line, end.character === 0 && end.line > start.line ? end.line - 1 : end.line)));

  // The line that was just left; the new one is being written.
  connection.onDocumentOnTypeFormatting(about('formatting as you type', null, (snapshot, { position: { line } }) =>
    line > 0 ? formatted(snapshot, line - 1, line - 1) : []));

  connection.onPrepareRename(about('rename', null, ({ journal, file }, { position }) => {
    const target = renameTarget(journal, file, position);
    if (!target) return null;
    if ('refused' in target) return refusal(target.refused) as never;
    return { range: rangeOf(target.place), placeholder: target.text };
  }));

  connection.onRenameRequest(about('rename', null, ({ journal, file }, { position, newName }): WorkspaceEdit | null => {
    const result = rename(journal, file, position, newName);
    return 'refused' in result ? refusal(result.refused) as never : workspaceEdit(result.edits, service);
  }));
}

function rewrites({ journal, file, now }: Snapshot, position: { line: number; character: number }): Action[] {
  const thing = thingAt(journal, file, position);
  const path = thing?.kind === 'batch' ? thing.path : thing?.kind === 'lot' ? thing.id : undefined;
  const batch = path === undefined ? undefined : journal.lot(rootOf(path))?.batches.get(path);
  return [
    ladderAction(journal, file, position, now),
    batch && rewriteCounts(batch, 'totals'),
    batch && rewriteCounts(batch, 'new'),
    ...planActions(journal, file, position, now),
  ].filter(action => action !== undefined);
}

function formatted({ journal, file }: Snapshot, from?: number, to?: number): TextEdit[] {
  const text = journal.files.get(file)?.text;
  return text ? formatEdits(text, from, to).map(edit => ({ range: rangeOf(edit), newText: edit.text })) : [];
}

function refusal(reason: string): ResponseError {
  return new ResponseError(LSPErrorCodes.RequestFailed, reason);
}

function actionOf({ title, edits }: Action, kind: string, service: Service): CodeAction {
  return { title, kind, edit: workspaceEdit(edits, service) };
}

/** Bound to the version that the edits were worked out for, where the client can hold to it. */
function workspaceEdit(edits: readonly ActionEdit[], service: Service): WorkspaceEdit {
  const byFile = new Map<string, TextEdit[]>();
  for (const edit of edits) {
    byFile.set(edit.file, [...byFile.get(edit.file) ?? [], { range: rangeOf(edit), newText: edit.text }]);
  }
  const files = [...byFile].map(([file, changes]) => ({ uri: service.uriOf(file), changes }));
  if (!service.client().workspace?.workspaceEdit?.documentChanges) {
    return { changes: Object.fromEntries(files.map(({ uri, changes }) => [uri, changes])) };
  }
  return {
    documentChanges: files.map(({ uri, changes }) => ({
      textDocument: { uri, version: service.versionOf(uri) ?? null }, edits: changes,
    })),
  };
}
