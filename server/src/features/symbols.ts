/** What the journal defines: the kinds that outline and search tell apart, and how each is called there. */
import type { JournalLine } from '../journal/journal-file.ts';
import type { Journal } from '../journal/journal.ts';
import type { Moment } from '../journal/moment.ts';
import { replacingOf } from '../journal/replacing.ts';
import { counted } from '../model/counted.ts';
import type { Keyword } from '../model/keywords.ts';
import { factOf, factsOf, type JournalRecord } from '../model/record.ts';
import { lotState, verdictTexts } from '../words/lot-line.ts';
import { replacingTexts } from '../words/replacing.ts';
import { howManyText } from '../words/seeds.ts';
import { strengthHeld } from '../words/held.ts';

export type SymbolKind = 'heading' | 'lot' | 'batch' | 'stock' | 'regime' | 'agent' | 'guide';

export interface SymbolText {
  readonly kind: SymbolKind;
  readonly name: string;
  /** A few words more, or none. */
  readonly detail: string;
}

/** Undefined for a record that defines nothing. */
export function symbolOf(journal: Journal, record: JournalRecord): SymbolText | undefined {
  const id = record.subject?.text;
  const name = symbolName(record);
  if (!id || name === undefined) return undefined;
  switch (record.keyword) {
    case 'lot': return { kind: 'lot', name, detail: lotText(journal, record) };
    case 'stock': case 'powder': case 'dilute': return { kind: 'stock', name, detail: strengthText(journal, id) };
    case 'regime': return { kind: 'regime', name, detail: counted(factsOf(record, 'stage').length, 'stage') };
    case 'agent': return { kind: 'agent', name, detail: factOf(record, 'text')?.value.text ?? '' };
    case 'guide': return { kind: 'guide', name, detail: factOf(record, 'source')?.value.text ?? '' };
    default: return undefined;
  }
}

/**
 * The same with where a lot stands, and on request the verdict, which takes some milliseconds a lot at first.
 *
 * Example of its detail: '60 seeds · 2 of 2 open: sown, day 30 · worth repeating so far'
 */
export function symbolNow(journal: Journal, line: JournalLine, now: Moment, isJudged: boolean): SymbolText | undefined {
  const { record } = line.content;
  const symbol = record && symbolOf(journal, record);
  const lot = symbol?.kind === 'lot' ? journal.lot(record!.subject!.text) : undefined;
  if (lot?.definition.line !== line) return symbol;
  const detail = [symbol!.detail, lotState(lot, now).text, ...isJudged ? verdictTexts(lot, now.day) : []].filter(text => text !== '').join(' · ');
  return { kind: 'lot', name: symbol!.name, detail };
}

const named: ReadonlySet<Keyword> = new Set(['lot', 'stock', 'powder', 'dilute', 'regime', 'agent', 'guide']);

/** How it is called; plants stand in the name, since editors search that alone. Undefined where nothing is defined. */
export function symbolName({ keyword, subject, plant }: JournalRecord): string | undefined {
  if (!subject?.text || !named.has(keyword)) return undefined;
  return plant?.text ? `${subject.text} ${plant.text}` : subject.text;
}

/** Example: '60 seeds, replaces VER-22' */
function lotText(journal: Journal, record: JournalRecord): string {
  return [howManyText(factOf(record, 'seeds')), ...replacingTexts(replacingOf(journal, record.subject!.text))]
    .filter(text => text !== '').join(', ');
}

function strengthText(journal: Journal, id: string): string {
  const solution = journal.solution(id);
  if (!solution?.agent) return '';
  return `${solution.agent.word} ${strengthHeld(solution, journal) ?? ''}`.trim();
}
