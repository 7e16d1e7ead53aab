/**
 * What lsp/ takes from the protocol's library, by one import: the bundle copies the whole library's names for each file
 * that imports a value from it, which every start would pay for.
 */
export type * from 'vscode-languageserver';
export {
  CodeActionKind, CodeLensRefreshRequest, CompletionItemKind, CompletionTriggerKind, DiagnosticSeverity,
  DidChangeConfigurationNotification, DidChangeWatchedFilesNotification, DocumentHighlightKind, ErrorCodes,
  FileOperationPatternKind, FoldingRangeKind, InsertTextFormat, InsertTextMode, LSPErrorCodes, MarkupKind, Message,
  RequestType, ResponseError, SymbolKind, TextDocumentContentChangeEvent, TextDocuments, TextDocumentSyncKind,
} from 'vscode-languageserver';
