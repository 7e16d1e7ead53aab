/** Requests that show what the journal says: hover and folding. */
import { FoldingRangeKind, type Connection, type Hover, type ServerCapabilities } from './protocol.ts';
import { foldsOf } from '../features/folding.ts';
import { hoverAt } from '../features/hover/hover.ts';
import { markdownBlocks } from '../features/markdown.ts';
import { rangeOf } from './convert.ts';
import type { About } from './features.ts';
import { pictureMarkdown } from './pictures.ts';
import { hoverContents } from './plain.ts';
import type { Service } from './service.ts';

const STILL_READING = 'Plumule is still reading the folder, so its other files are missing here.';

export const readingCapabilities: ServerCapabilities = { hoverProvider: true, foldingRangeProvider: true };

export function serveReading(connection: Connection, about: About, service: Service): void {
  connection.onHover(about('hover', null, async (snapshot, { position, textDocument: { uri } }): Promise<Hover | null> => {
    const { journal, file, now } = snapshot;
    const hover = hoverAt(journal, file, position, now, service.theme());
    if (!hover) return null;
    const { markdown, place, picture } = hover;
    const text = picture ? await pictureMarkdown(picture, uri, snapshot, service) : markdown;
    const shown = snapshot.room.isLoaded ? text : markdownBlocks([text, STILL_READING]);
    return { contents: hoverContents(shown, service.client()), range: rangeOf(place) };
  }));

  connection.onFoldingRanges(about('folding', null, ({ journal, file }) => {
    const text = journal.files.get(file)?.text;
    return text ? foldsOf(text).map(({ start, end, kind }) => ({
      startLine: start, endLine: end, ...(kind === 'heading' && { kind: FoldingRangeKind.Region }),
    })) : null;
  }));
}
