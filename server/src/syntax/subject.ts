/** What a record is about: the id, the agent or the zone right after the keyword. */
import { keywords, type Keyword, type SubjectKind } from '../model/keywords.ts';
import type { Span, Written } from '../model/record.ts';
import type { Piece } from './grammar.ts';
import { replacement, shown, type LineReader } from './reader.ts';

export const subjectWords: Record<SubjectKind, string> = {
  date: 'a date', 'new lot': 'an id for the lot', batch: 'a lot or a batch', any: 'an id',
  'new stock': 'a name for the stock', 'new regime': 'a name for the regime', plant: 'a plant or a genus',
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
export function readSubject(reader: LineReader, kind: SubjectKind, { start, end }: Piece): Written | undefined {
  const text = reader.line.slice(start, end);
  if (standsAlone(reader.line, end) && isShaped(kind, text)) return { text, start, end };
  const run = { start, end: runEnd(reader.line, end) };
  const whole = reader.slice(run);
  if (isShaped(kind, whole)) return { text: whole, ...run };
  reportId(reader, kind, run);
  return undefined;
}

function reportId(reader: LineReader, kind: SubjectKind, span: Span): void {
  const text = reader.slice(span);
  const meant = meantId(text, kind);
  const path = kind === 'batch' || kind === 'any' ? '; a batch of it follows a “/”' : '';
  const signs = kind === 'limited' || kind === 'new agent' ? '“-”, “.”, “_” and “+”' : '“-”, “.” and “_”';
  const suggestion = meant ? `Did you mean “${shown(meant)}”?` : `It begins with a letter; then come letters, digits, ${signs}${path}.`;
  reader.report('bad-id', span, { id: shown(text), what: subjectWords[kind], suggestion }, meant ? [replacement(span, meant)] : []);
}

/** The id in common letters and digits, without quotation marks and without signs at its end. */
function meantId(text: string, kind: SubjectKind): string | undefined {
  if (text.length > 60) return undefined;
  const plain = text.normalize('NFKC').replace(/^["'“”„‘’]+|["'“”„‘’:;!?/()]+$/g, '');
  return plain !== text && isShaped(kind, plain) ? plain : undefined;
}

/** Reports that the subject is missing. */
export function reportNoSubject(reader: LineReader, keyword: Keyword, span: Span, what: string): void {
  reader.report('missing-subject', span, { keyword, what, example: keywords[keyword].example });
}
