/** Changes of files in the protocol's shape, as the client takes them. */
import type {
  ClientCapabilities, CreateFile, Range, TextDocumentEdit, TextEdit, WorkspaceEdit,
} from './protocol.ts';
import type { ActionEdit } from '../features/actions/action.ts';
import { rangeOf } from './convert.ts';
import type { Service } from './service.ts';

/** Whether an edit can make a file. */
export function createsFiles({ workspace }: ClientCapabilities): boolean {
  const { documentChanges, resourceOperations } = workspace?.workspaceEdit ?? {};
  return documentChanges === true && resourceOperations?.includes('create') === true;
}

/**
 * Bound to the version that the edits were worked out for, where the client can hold to it; of a document that is not
 * open there is none. `creates` is a file that the edits write into and that is not there yet.
 */
export function workspaceEdit(edits: readonly ActionEdit[], service: Service, creates?: string): WorkspaceEdit {
  const byFile = new Map<string, TextEdit[]>();
  for (const edit of edits) {
    byFile.set(edit.file, [...byFile.get(edit.file) ?? [], { range: editRange(edit), newText: edit.text }]);
  }
  const files = [...byFile].map(([file, changes]) => ({ uri: service.uriOf(file), changes }));
  if (!service.client().workspace?.workspaceEdit?.documentChanges) {
    return { changes: Object.fromEntries(files.map(({ uri, changes }) => [uri, changes])) };
  }
  const documents: TextDocumentEdit[] = files.map(({ uri, changes }) => ({
    textDocument: { uri, version: service.versionOf(uri) ?? null }, edits: changes,
  }));
  const made: CreateFile[] = creates === undefined ? []
    : [{ kind: 'create', uri: service.uriOf(creates), options: { ignoreIfExists: true } }];
  return { documentChanges: [...made, ...documents] };
}

function editRange({ endLine, ...edit }: ActionEdit): Range {
  const range = rangeOf(edit);
  return endLine === undefined ? range : { ...range, end: { line: endLine, character: edit.end } };
}
