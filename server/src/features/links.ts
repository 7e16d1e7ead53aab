/** What a journal points to outside itself: pictures, and sources on the web. */
import type { JournalText } from '../journal/journal-file.ts';
import type { Fact, Span } from '../model/record.ts';
import { withoutEnd } from '../text/without-end.ts';

export interface DocumentLink extends Span {
  readonly line: number;
  readonly target:
    /** A relative path with `/`, as seen from the journal's own file. It may still lead out of the folder. */
    | { readonly kind: 'picture'; readonly path: string }
    | { readonly kind: 'web'; readonly url: string };
}

export function linksOf(text: JournalText): DocumentLink[] {
  const links: DocumentLink[] = [];
  let number = 0;
  for (const { text: written, content: { record } } of text) {
    const line = number;
    for (const fact of record?.facts ?? []) links.push(...linksIn(fact, written).map(link => ({ line, ...link })));
    number++;
  }
  return links;
}

function linksIn(fact: Fact, line: string): Omit<DocumentLink, 'line'>[] {
  switch (fact.type) {
    case 'path': {
      const path = picturePath(fact.value.text);
      const { start, end } = fact.value;
      return path === undefined ? [] : [{ start, end, target: { kind: 'picture', path } }];
    }
    case 'source': case 'from': case 'text': return webLinks(line, fact.value);
    default: return [];
  }
}

/**
 * The path of a picture with `/` between its parts. Undefined for one that begins at the root of a disk, names a host
 * or a scheme, or has a control or half a character in it, which no address can hold.
 *
 * Example: picturePath('photos\\a.jpg') is 'photos/a.jpg'; picturePath('/etc/passwd') is undefined
 */
export function picturePath(written: string): string | undefined {
  const path = written.replaceAll('\\', '/');
  const leadsAway = /^(?:\/|[A-Za-z][A-Za-z0-9+.-]*:)/.test(path);
  return leadsAway || /[\p{Cc}\p{Cs}]/u.test(path) ? undefined : path;
}

/** Addresses that begin with http:// or https://; signs that end a sentence or close a bracket around one are no part of it. */
function webLinks(line: string, { start, end }: Span): Omit<DocumentLink, 'line'>[] {
  return [...line.slice(start, end).matchAll(/\bhttps?:\/\/[^\s"<>\\^`{|}]+/gi)].flatMap(({ 0: found, index }) => {
    const url = addressIn(found);
    return isAddress(url) ? [{ start: start + index, end: start + index + url.length, target: { kind: 'web' as const, url } }] : [];
  });
}

function addressIn(address: string): string {
  const cut = withoutEnd(address, '.,;:!?\'’”»');
  const isOpen = cut.endsWith(')') && cut.split('(').length < cut.split(')').length;
  return isOpen ? addressIn(cut.slice(0, -1)) : cut;
}

function isAddress(text: string): boolean {
  try {
    return /^https?:$/.test(new URL(text).protocol);
  } catch {
    return false;
  }
}
