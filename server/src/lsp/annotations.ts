/** Requests for what is shown in and around the text: lenses, hints at the ends of lines, links; and selections. */
import {
  type CodeLens, type Connection, type DocumentLink, type InlayHint, type SelectionRange, type ServerCapabilities,
} from './protocol.ts';
import { URI, Utils } from 'vscode-uri';
import { hintsIn } from '../features/inlay.ts';
import { lensesOf, lensTitle, type Lens } from '../features/lens.ts';
import { linksOf, type DocumentLink as Link } from '../features/links.ts';
import { selectionsAt } from '../features/selection.ts';
import type { Range } from '../text/line-store.ts';
import { isInside } from './addresses.ts';
import { rangeOf } from './convert.ts';
import type { About } from './features.ts';
import { guarded } from './guard.ts';
import type { Service, Snapshot } from './service.ts';

export const annotationCapabilities: ServerCapabilities = {
  codeLensProvider: { resolveProvider: true }, inlayHintProvider: true, documentLinkProvider: {},
  selectionRangeProvider: true,
};

/** Of our own client; other clients that have them say so. */
const LEADS = { compare: 'plumule.compare', advise: 'plumule.advise' } as const;

/** What a lens needs to find its title when it comes into view. */
interface LensData extends Pick<Lens, 'lot' | 'about'> {
  readonly uri: string;
}

export function serveAnnotations(connection: Connection, about: About, service: Service): void {
  connection.onCodeLens(about('code lens', null, ({ journal, file }, { textDocument: { uri } }): CodeLens[] => {
    if (!service.settings().lens.lots) return [];
    // A lens that leads nowhere would be a riddle.
    const lenses = lensesOf(journal, file)
      .filter(({ about: what }) => what === 'state' || service.commands().has(LEADS[what]));
    return lenses.map(({ place, lot, about: what }) => ({ range: rangeOf(place), data: { uri, lot, about: what } }));
  }));

  connection.onCodeLensResolve((given, token) => guarded(connection, 'code lens', given, async (lens: CodeLens) => {
    const { uri, lot, about: what } = lens.data as LensData;
    const snapshot = await service.snapshot(uri);
    const title = snapshot && lensTitle(snapshot.journal, { lot, about: what }, snapshot.now);
    const command = what === 'state' ? { command: '' } : { command: LEADS[what], arguments: [uri, lot] };
    return { ...lens, command: { title: title ?? '–', ...command } };
  })(given, token));

  connection.languages.inlayHint.on(about('hints', null, ({ journal, file, now }, { range }): InlayHint[] => {
    const hints = hintsIn(journal, file, range.start.line, range.end.line, service.settings().hints, now);
    return hints.map(({ line, character, text, more }) => ({
      position: { line, character }, label: text, paddingLeft: true, ...(more !== undefined && { tooltip: more }),
    }));
  }));

  connection.onSelectionRanges(about('selection', null, ({ journal, file }, { positions }): SelectionRange[] | null => {
    const text = journal.files.get(file)?.text;
    return text ? selectionsAt(text, positions).map(nested) : null;
  }));

  connection.onDocumentLinks(about('links', null, (snapshot, { textDocument: { uri } }): DocumentLink[] => {
    const text = snapshot.journal.files.get(snapshot.file)?.text;
    const links = text ? linksOf(text).flatMap(link => linkOf(link, uri, snapshot) ?? []) : [];
    if (service.client().textDocument?.documentLink?.tooltipSupport === true) return links;
    return links.map(({ range, target }) => ({ range, target }));
  }));
}

/** The smallest range, with those around it. */
function nested(ranges: readonly Range[]): SelectionRange {
  return ranges.reduceRight<SelectionRange | undefined>(
    (parent, range) => ({ range, ...(parent && { parent }) }), undefined)!;
}

/** Pictures are linked within the journal's folder only. */
function linkOf({ target, ...place }: Link, uri: string, { room: { folder } }: Snapshot): DocumentLink | undefined {
  const range = rangeOf(place);
  if (target.kind === 'web') return { range, target: target.url, tooltip: 'Open the page' };
  const picture = Utils.joinPath(Utils.dirname(URI.parse(uri)), target.path).toString();
  return isInside(picture, folder) ? { range, target: picture, tooltip: 'Open the picture' } : undefined;
}
