/** While a record is typed: what it is made of, and which part of that is being written. */
import type { Journal } from '../journal/journal.ts';
import { keywords, type FactUse, type Keyword, type SubjectKind } from '../model/keywords.ts';
import type { FactType } from '../model/record.ts';
import { taken, typeOf } from '../syntax/fact-types.ts';
import type { Position } from '../text/line-store.ts';
import { segmentAt, type Segment } from './completion/segment.ts';

export interface Signature {
  /** `soak BATCH [DATE] [TIME], GA3 500 ppm, 24 h, …`: facts that the line has already are left out. */
  readonly label: string;
  /** What the record is for. */
  readonly says: string;
  /** Columns within the label. */
  readonly parts: readonly { readonly start: number; readonly end: number; readonly says: string | undefined }[];
  /** The part that is being written; undefined where it is none of them. */
  readonly active: number | undefined;
}

const subjects: Readonly<Record<SubjectKind, string>> = {
  'date': 'DATE', 'new lot': 'ID', 'batch': 'BATCH', 'any': 'ID', 'new stock': 'ID', 'new packet': 'ID', 'stock': 'ID', 'new regime': 'NAME',
  'plant': 'PLANT', 'limited': 'WHAT', 'new agent': 'WORD', 'zone': 'ZONE',
};

const subjectWords: Partial<Record<SubjectKind, string>> = {
  'batch': 'a lot or a batch', 'any': 'a lot, a batch, a stock, a regime or an agent', 'plant': 'a plant or a genus', 'stock': 'a bottle or a packet',
  'limited': 'soak, stock, count or an agent', 'new lot': 'an id of your choice', 'zone': 'a name such as Europe/Vienna',
};

interface Part {
  readonly text: string;
  readonly says: string | undefined;
  /** What stands in front of it. */
  readonly gap: string;
  readonly is: 'subject' | 'plant' | 'date' | 'time' | FactType;
}

/** Undefined outside a record, and on its keyword. */
export function signatureAt(
  journal: Journal, file: string, { line: number, character }: Position,
): Signature | undefined {
  const text = journal.files.get(file)?.text;
  if (!text || number < 0 || number >= text.lineCount) return undefined;
  const line = text.at(number);
  const segment = segmentAt(line, character);
  if (!segment || segment.part === 'keyword') return undefined;
  const { keyword } = segment;
  const isHere = ({ start, end }: { start: number; end: number }) =>
    segment.part === 'fact' && start <= segment.end && end >= segment.start;
  const written = new Set(line.content.record?.facts.filter(fact => !isHere(fact)).map(({ type }) => type));
  const parts = [...headParts(keyword), ...factParts(keyword, written)];
  const active = parts.findIndex(({ is }) => is === activePart(segment, character, parts));
  return { ...laidOut(keyword, parts), says: keywords[keyword].says, active: active < 0 ? undefined : active };
}

function headParts(keyword: Keyword): Part[] {
  const { subject, dated } = keywords[keyword];
  const parts: Part[] = [{ text: subjects[subject], says: subjectWords[subject], gap: ' ', is: 'subject' }];
  if (subject === 'new lot') parts.push({ text: 'PLANT', says: 'the plant’s name, up to the comma', gap: ' ', is: 'plant' });
  if (dated === 'no') return parts;
  const isOwn = dated === 'own';
  const where = isOwn ? 'the day of the reminder' : 'year-month-day; without one, that of the “day” line above';
  parts.push({ text: isOwn ? 'DATE' : '[DATE]', says: where, gap: ' ', is: 'date' });
  parts.push({ text: '[TIME]', says: 'of day, such as 19:30', gap: ' ', is: 'time' });
  return parts;
}

function factParts(keyword: Keyword, written: ReadonlySet<FactType>): Part[] {
  const uses: readonly FactUse[] = keywords[keyword].facts;
  return uses.filter(({ type, many }) => many === true || !written.has(type)).map(({ type, shape, required, many }) => {
    const needed = required && !written.has(type) ? 'needed' : undefined;
    const words = [needed, many ? 'can be repeated' : undefined];
    return { text: shape, says: words.filter(word => word !== undefined).join('; ') || undefined, gap: ', ', is: type };
  });
}

function activePart(segment: Segment, character: number, parts: readonly Part[]): Part['is'] | undefined {
  if (segment.part === 'keyword') return undefined;
  if (segment.part === 'head') {
    const before = segment.runs.filter(({ end }) => end < character);
    if (before.length === 0) return 'subject';
    const dated = before.slice(1).some(({ text }) => /^\d+-\d/.test(text));
    if (dated) return 'time';
    const current = segment.runs[before.length]?.text ?? '';
    if (/^\d{1,2}:/.test(current)) return 'time';
    return keywords[segment.keyword].subject === 'new lot' && !/^\d/.test(current) ? 'plant' : 'date';
  }
  const [first] = segment.pieces;
  // Nothing is written yet: what is needed, or whatever stands first.
  const facts = parts.filter(({ gap }) => gap === ', ');
  if (!first) return (facts.find(({ says }) => says?.startsWith('needed')) ?? facts[0])?.is;
  return typeOf(taken(segment.keyword), segment.pieces);
}

function laidOut(keyword: Keyword, parts: readonly Part[]): Pick<Signature, 'label' | 'parts'> {
  let label: string = keyword;
  const spans = parts.map(({ text, gap, says }) => {
    const start = label.length + gap.length;
    label += gap + text;
    return { start, end: label.length, says };
  });
  return { label, parts: spans };
}
