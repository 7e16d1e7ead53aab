/** What a record is about: the id, the agent or the zone right after the keyword. */
import { keywords, type Keyword, type SubjectKind } from '../model/keywords.ts';
import type { Span, Written } from '../model/record.ts';
import { withoutEnd } from '../text/without-end.ts';
import { beginsFact, unitType, type Taken } from './fact-types.ts';
import type { Piece } from './grammar.ts';
import { replacement, shown, type LineReader } from './reader.ts';

export const subjectWords: Record<SubjectKind, string> = {
  date: 'a date', 'new lot': 'an id for the lot', batch: 'the id of a lot or a batch', any: 'an id',
  'new stock': 'a name for the stock', 'new packet': 'a name for the packet', 'new regime': 'a name for the regime', plant: 'a plant or a genus',
  stock: 'the name of a bottle or a packet',
  limited: '“soak”, “stock”, “count” or an agent', 'new agent': 'a word for the agent', zone: 'a time zone',
};

// Marks are what vowels are in some scripts, and accents in some spellings.
const inId = String.raw`[\p{L}\p{M}\p{N}._-]`;
const id = new RegExp(`^\\p{L}${inId}*$`, 'u');
const batch = new RegExp(`^\\p{L}${inId}*(?:/[\\p{L}\\p{N}]${inId}*)*$`, 'u');
const agent = /^\p{L}[\p{L}\p{M}\p{N}._+-]*$/u;
const ascii = /^[A-Za-z][\w.-]*$/;
const asciiBatch = /^[A-Za-z][\w.-]*(?:\/[A-Za-z0-9][\w.-]*)*$/;

/** Whether a text can be the last part of a batch's path: `A` of `VER-24/A`, and `1` too. */
export function isBatchName(text: string): boolean {
  return /^[A-Za-z0-9][\w.-]*$/.test(text) || new RegExp(`^[\\p{L}\\p{N}]${inId}*$`, 'u').test(text);
}

/** Whether a text can be the subject of a record that takes one of this kind. */
export function isShaped(kind: SubjectKind, text: string): boolean {
  switch (kind) {
    case 'batch': case 'any': return asciiBatch.test(text) || batch.test(text);
    case 'limited': case 'new agent': return ascii.test(text) || agent.test(text);
    // Which zones there are is known to the journal's checks.
    case 'zone': return true;
    default: return ascii.test(text) || id.test(text);
  }
}

/** The end of the text without a blank or a comma that begins in a place. */
export function runEnd(line: string, start: number): number {
  let end = start;
  while (end < line.length && !/[\s,\u060c\u3001\uff0c]/.test(line.charAt(end))) end++;
  return end;
}

/** Whether a piece or the keyword stands alone: a blank, a comma or the line's end follows. */
export function standsAlone(line: string, end: number): boolean {
  const code = line.charCodeAt(end);
  return code === 32 || code === 44 || end >= line.length || runEnd(line, end) === end;
}

/** Reads the subject; a problem over the whole run of characters when it cannot be one. */
export function readSubject(reader: LineReader, takes: Taken, pieces: readonly Piece[]): Written | undefined {
  const kind = keywords[takes.keyword].subject;
  const { start, end } = pieces[0]!;
  const parted = partedId(reader, takes, pieces);
  if (parted) {
    reportId(reader, kind, { start, end: parted.end }, parted.meant);
    return undefined;
  }
  const text = reader.line.slice(start, end);
  if (standsAlone(reader.line, end) && isShaped(kind, text)) return { text, start, end };
  const run = { start, end: runEnd(reader.line, end) };
  const whole = reader.slice(run);
  if (isShaped(kind, whole)) return { text: whole, ...run };
  const meant = meantId(whole, kind);
  const next = pieces.findIndex(piece => piece.start >= run.end);
  // `count VER-24/A: 3`: the colon stands for the comma.
  const colon = meant && whole === `${meant}:` && next > 0 && beginsFact(takes, pieces, next) ? ',' : '';
  reportId(reader, kind, run, meant && `${meant}${colon}`);
  return undefined;
}

/** An id with a blank in it: `LIL 23`, `GEN-25 /A`, `GEN-25 A`, `two winters`. */
function partedId(
  reader: LineReader, takes: Taken, pieces: readonly Piece[],
): { readonly end: number; readonly meant: string } | undefined {
  const kind = keywords[takes.keyword].subject;
  const [first, second, third] = pieces;
  if (first?.kind !== 'word' || !second || second.start === first.end) return undefined;
  const end = runEnd(reader.line, second.start);
  const rest = reader.line.slice(second.start, end);
  const isPath = kind === 'batch' || kind === 'any';
  const signs = [];
  if (isPath && /^\/\w/.test(rest)) signs.push('');
  // A bare number may be a count whose comma is missing.
  const followed = kind === 'new lot' || rest.includes('/') || third?.kind === 'date';
  if (/^\p{L}+$/u.test(first.text) && /^\d[\w.-]*(?:\/\w+)*$/.test(rest) && followed && second.kind === 'amount' && kind !== 'limited') {
    if (!unitType(takes, second)) signs.push(kind === 'new stock' || kind === 'new packet' ? '' : '-');
  }
  if (isPath && third?.kind === 'date' && /^[A-Za-z]\w{0,2}$/.test(rest) && !takes.leads.has(rest.toLowerCase())) signs.push('/');
  if (kind === 'new regime' && second.kind === 'word' && pieces.length === 2) signs.push('-');
  const [sign] = signs;
  const meant = sign === undefined ? undefined : `${first.text}${sign}${rest}`;
  return meant !== undefined && isShaped(kind, meant) ? { end, meant } : undefined;
}

function reportId(reader: LineReader, kind: SubjectKind, span: Span, meant: string | undefined): void {
  const text = reader.slice(span);
  const path = kind === 'batch' || kind === 'any' ? '; a batch follows its lot after “/”' : '';
  const signs = kind === 'limited' || kind === 'new agent' ? '“-”, “.”, “_” and “+”' : '“-”, “.” and “_”';
  const suggestion = meant ? `Did you mean “${shown(meant)}”?` : `Begin it with a letter, and go on with letters, digits, ${signs}${path}.`;
  reader.report('bad-id', span, { id: shown(text), what: subjectWords[kind], suggestion }, meant ? [replacement(span, meant)] : []);
}

/** The id in common letters and digits, without quotation marks and without signs at its end. */
function meantId(text: string, kind: SubjectKind): string | undefined {
  if (text.length > 60) return undefined;
  const bare = withoutEnd(text.normalize('NFKC').replace(/^["'“”„‘’]+/, ''), '"\'“”„‘’:;!?/()');
  const signed = kind === 'batch' || kind === 'any' ? bare.replaceAll('\\', '/') : bare.replaceAll(/[/\\#&]/g, '-');
  // 23-LIL
  const plain = signed.replace(/^(\d+)[-_.]?(\p{L}+)$/u, '$2-$1');
  return plain !== text && isShaped(kind, plain) ? plain : undefined;
}

/** Reports that the subject is missing. */
export function reportNoSubject(reader: LineReader, keyword: Keyword, span: Span, what: string): void {
  reader.report('missing-subject', span, { keyword, what, suggestion: `For example: ${keywords[keyword].example}` });
}
