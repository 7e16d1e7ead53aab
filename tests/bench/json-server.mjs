// A language server for JSON on the library that editors have theirs from; publishes the problems of every version.
import { getLanguageService } from 'vscode-json-languageservice';
import { createConnection, ProposedFeatures, TextDocuments } from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';

const connection = createConnection(ProposedFeatures.all);
const documents = new TextDocuments(TextDocument);
const json = getLanguageService({});
connection.onInitialize(() => ({ capabilities: { textDocumentSync: 2 } }));
documents.onDidChangeContent(async ({ document }) => {
  const diagnostics = await json.doValidation(document, json.parseJSONDocument(document));
  void connection.sendDiagnostics({ uri: document.uri, version: document.version, diagnostics });
});
documents.listen(connection);
connection.listen();
