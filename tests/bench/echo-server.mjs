// The least that a language server on the usual library can do: keeps the document and answers every change with no
// problems at all. What it takes is the cost of the protocol, not of the journal.
import { createConnection, ProposedFeatures, TextDocuments, TextDocumentSyncKind } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

const connection = createConnection(ProposedFeatures.all, process.stdin, process.stdout);
const documents = new TextDocuments(TextDocument);
connection.onInitialize(() => ({ capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental } }));
documents.onDidChangeContent(({ document: { uri, version } }) =>
  connection.sendDiagnostics({ uri, version, diagnostics: [] }));
documents.listen(connection);
connection.listen();
