/** Requests that show what the journal says: hover and folding. */
import {
  FoldingRangeKind, MarkupKind, type Connection, type Hover, type ServerCapabilities,
} from 'vscode-languageserver';
import { foldsOf } from '../features/folding.ts';
import { hoverAt } from '../features/hover/hover.ts';
import { rangeOf } from './convert.ts';
import type { About } from './features.ts';

export const readingCapabilities: ServerCapabilities = { hoverProvider: true, foldingRangeProvider: true };

export function serveReading(connection: Connection, about: About): void {
  connection.onHover(about('hover', null, (snapshot, { position }): Hover | null => {
    const { journal, file, now } = snapshot;
    const hover = hoverAt(journal, file, position, now);
    if (!hover) return null;
    return { contents: { kind: MarkupKind.Markdown, value: hover.markdown }, range: rangeOf(hover.place) };
  }));

  connection.onFoldingRanges(about('folding', null, ({ journal, file }) => {
    const text = journal.files.get(file)?.text;
    return text ? foldsOf(text).map(({ start, end, kind }) => ({
      startLine: start, endLine: end, ...(kind === 'heading' && { kind: FoldingRangeKind.Region }),
    })) : null;
  }));
}
