/** Requests for what is shown in and around the text: lenses, hints at the ends of lines, links; and selections. */
import {
  type CodeLens, type Connection, type DocumentLink, type InlayHint, type SelectionRange, type ServerCapabilities,
} from './protocol.ts';
import { URI, Utils } from 'vscode-uri';
import { hintsIn } from '../features/inlay.ts';
import { lensesOf, lensTitle, type Lens } from '../features/lens.ts';
import { linksOf, type DocumentLink as Link } from '../features/links.ts';
import { selectionsAt } from '../features/selection.ts';
import { sinceText } from '../features/since-commit.ts';
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
const LEADS = { compare: 'plumule.compare', advise: 'plumule.advise', changes: 'plumule.changes' } as const;

/** What a lens needs to find its title when it comes into view. */
interface LensData extends Pick<Lens, 'lot'> {
  readonly uri: string;
  readonly about: Lens['about'] | 'changes';
}

export function serveAnnotations(connection: Connection, about: About, service: Service): void {
  connection.onCodeLens(about('code lens', null, (snapshot, { textDocument: { uri } }): CodeLens[] => {
    const shown = service.settings().lens;
    const commands = service.commands();
    if (!shown.lots && !shown.changes) return [];
    const changed = shown.changes ? service.sinceCommit(snapshot).lots : undefined;
    return lensesOf(snapshot.journal, snapshot.file).flatMap(({ place, lot, about: what }) => {
      // A lens that leads nowhere would be a riddle.
      const leads = what === 'state' || what === 'shares' || commands.has(LEADS[what]);
      const abouts: LensData['about'][] = shown.lots && leads ? [what] : [];
      if ((what === 'state' || what === 'advise') && changed?.has(lot)) abouts.push('changes');
      return abouts.map(each => ({ range: rangeOf(place), data: { uri, lot, about: each } }));
    });
  }));

  connection.onCodeLensResolve((given, token) => guarded(connection, 'code lens', given, async (lens: CodeLens) => {
    const { uri, lot, about: what } = lens.data as LensData;
    const snapshot = await service.snapshot(uri);
    const title = snapshot && (what === 'changes' ? sinceText(service.sinceCommit(snapshot), lot)
      : lensTitle(snapshot.journal, { lot, about: what }, snapshot.now));
    const lead = snapshot ? leadOf(service, snapshot, lens.data as LensData) : { command: '' };
    return { ...lens, command: { title: title ?? '–', ...lead } };
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

/** What a click on a lens does. */
function leadOf(
  service: Service, snapshot: Snapshot, { uri, lot, about }: LensData,
): { command: string; arguments?: string[] } {
  if (about === 'state' || about === 'shares' || !service.commands().has(LEADS[about])) return { command: '' };
  if (about !== 'changes') return { command: LEADS[about], arguments: [uri, lot] };
  const { files } = service.sinceCommit(snapshot);
  // What changed may stand in another file than the lot itself.
  const file = files.has(snapshot.file) ? uri : [...files].map(each => service.uriOf(each))[0];
  return { command: LEADS[about], arguments: [file ?? uri] };
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
