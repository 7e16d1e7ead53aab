/** The documents that are open in the editor. Their text is the journal's own store of lines: nothing is kept twice. */
import {
  TextDocumentContentChangeEvent, type Position, type Range, type TextDocumentsConfiguration,
} from './protocol.ts';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { JournalText } from '../journal/journal-file.ts';
import type { Workspace } from './workspace.ts';

export class OpenDocument implements TextDocument {
  constructor(
    readonly uri: string,
    readonly languageId: string,
    public version: number,
    readonly text: () => JournalText,
  ) {}

  get lineCount(): number {
    return this.text().lineCount;
  }

  getText(range?: Range): string {
    return this.text().text(range);
  }

  positionAt(offset: number): Position {
    return this.text().positionAt(offset);
  }

  offsetAt(position: Position): number {
    return this.text().offsetAt(position);
  }

  getLineRange(line: number): Range {
    const text = this.text();
    const number = Math.min(line, text.lineCount - 1);
    const character = number < 0 ? 0 : text.at(number).text.length;
    const at = Math.max(0, number);
    return { start: { line: at, character: 0 }, end: { line: at, character } };
  }

  getEOLCharacters(line: number): string {
    const text = this.text();
    return line < 0 || line >= text.lineCount ? '' : text.at(line).end;
  }
}

/** How the library's manager makes and changes documents. */
export function documentsOf(workspace: () => Workspace): TextDocumentsConfiguration<OpenDocument> {
  return {
    create: (uri, languageId, version, content) => {
      const text = workspace().open(uri, content);
      return new OpenDocument(uri, languageId, version, text);
    },
    update: (document, changes, version) => {
      document.version = version;
      for (const change of changes) {
        if (TextDocumentContentChangeEvent.isIncremental(change)) {
          workspace().edit(document.uri, change.range, change.text);
        } else workspace().open(document.uri, change.text);
      }
      return document;
    },
  };
}
