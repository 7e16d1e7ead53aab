/** What stands at a position: which word, fact, date or number, and of which record. All features ask here. */
import type { Journal } from '../journal/journal.ts';
import type { Entry } from '../journal/life.ts';
import { rootOf } from '../journal/mentions.ts';
import { keywords, type Keyword } from '../model/keywords.ts';
import type { Day } from '../model/day.ts';
import type { CountFact, DaySpan, Fact, Placed, Span, SubstanceFact, Written } from '../model/record.ts';
import type { Strength } from '../model/quantity.ts';
import type { Position } from '../text/line-store.ts';
import { placeOf, type Place } from './place.ts';

/** A lot, a batch, a stock, a regime or an agent by its name; whether the journal defines it is not said. */
export type Named =
  | { readonly kind: 'lot' | 'stock' | 'regime' | 'agent'; readonly id: string }
  | { readonly kind: 'batch'; readonly path: string };

type What =
  | Named
  | { readonly kind: 'keyword'; readonly keyword: Keyword }
  | { readonly kind: 'plant'; readonly name: string }
  | { readonly kind: 'limited'; readonly word: string }
  | { readonly kind: 'date'; readonly day: Day }
  | { readonly kind: 'collected'; readonly when: DaySpan }
  | { readonly kind: 'strength'; readonly agent: string; readonly strength: Strength | 'unmeasured' }
  | { readonly kind: 'count'; readonly fact: CountFact }
  | { readonly kind: 'fact'; readonly fact: Fact };

export type Thing = What & {
  readonly entry: Entry;
  /** The words that the thing is made of; of a batch's path the part that names it. */
  readonly place: Place;
};

/**
 * The thing at a position; one right behind a word is still in it. In `VER-24/A` the first part is the lot, the
 * second the batch. Undefined where no record stands, and between its words.
 */
export function thingAt(journal: Journal, file: string, position: Position): Thing | undefined {
  const text = journal.files.get(file)?.text;
  if (!text || position.line < 0 || position.line >= text.lineCount) return undefined;
  const line = text.at(position.line);
  const entry = journal.entryAt(line);
  const found = entry && whatAt(journal, entry, position.character);
  return found && { ...found.what, entry, place: placeOf(line, found.span) };
}

interface Found {
  readonly what: What;
  readonly span: Span;
}

function whatAt(journal: Journal, { record, moment }: Entry, character: number): Found | undefined {
  const { keyword, keywordSpan, subject, plant, date, time, facts } = record;
  if (covers(keywordSpan, character)) return { what: { kind: 'keyword', keyword }, span: keywordSpan };
  if (subject && covers(subject, character)) return subjectAt(journal, keyword, subject, character);
  if (plant && covers(plant, character)) return { what: { kind: 'plant', name: plant.text }, span: plant };
  for (const span of [date, time]) {
    if (span && moment && covers(span, character)) return { what: { kind: 'date', day: moment.day }, span };
  }
  const fact = facts.find(each => covers(each, character));
  return fact && factAt(journal, fact, subject, character);
}

function subjectAt(journal: Journal, keyword: Keyword, subject: Written, character: number): Found | undefined {
  const named = (kind: 'lot' | 'stock' | 'regime' | 'agent'): Found => ({ what: { kind, id: subject.text }, span: subject });
  switch (keywords[keyword].subject) {
    case 'new lot': return named('lot');
    case 'new stock': case 'new packet': case 'stock': return named('stock');
    case 'new regime': return named('regime');
    case 'new agent': return named('agent');
    case 'plant': return { what: { kind: 'plant', name: subject.text }, span: subject };
    case 'limited': return journal.agents.has(subject.text) ? named('agent') : { what: { kind: 'limited', word: subject.text }, span: subject };
    case 'batch': return pathAt(subject, character);
    case 'any': {
      const kind = kindOf(journal, rootOf(subject.text));
      return kind === 'lot' ? pathAt(subject, character) : named(kind);
    }
    default: return undefined;
  }
}

/** What an id names; one that nothing defines counts as a lot. */
function kindOf(journal: Journal, id: string): 'lot' | 'stock' | 'regime' | 'agent' {
  const keyword = journal.kindOf(id);
  if (keyword === 'dilute' || keyword === 'powder') return 'stock';
  return keyword === 'stock' || keyword === 'regime' || keyword === 'agent' ? keyword : 'lot';
}

/** In `VER-24/A/1` the lot, the batch or the batch of that, up to the part that the position is in. */
function pathAt(subject: Written, character: number): Found {
  const slash = subject.text.indexOf('/', character - subject.start);
  const path = slash < 0 ? subject.text : subject.text.slice(0, slash);
  const span = { start: subject.start, end: subject.start + path.length };
  return { what: path.includes('/') ? { kind: 'batch', path } : { kind: 'lot', id: path }, span };
}

function factAt(journal: Journal, fact: Fact, subject: Written | undefined, character: number): Found {
  const at = (span: Span | undefined): span is Span => span !== undefined && covers(span, character);
  const whole: Found = { what: { kind: 'fact', fact }, span: fact };
  switch (fact.type) {
    case 'part':
      return at(fact.name) && subject ? { what: { kind: 'batch', path: `${subject.text}/${fact.name.text}` }, span: fact.name } : whole;
    case 'substance': return substanceAt(journal, fact, character) ?? whole;
    case 'draw': return at(fact.stock) ? { what: { kind: 'stock', id: fact.stock.text }, span: fact.stock } : whole;
    case 'regime': return at(fact.value) ? { what: { kind: 'regime', id: fact.value.text }, span: fact.value } : whole;
    case 'replaces': return at(fact.value) ? { what: { kind: 'lot', id: fact.value.text }, span: fact.value } : whole;
    case 'for': return at(fact.value) ? { what: { kind: 'plant', name: fact.value.text }, span: fact.value } : whole;
    case 'collected': return { what: { kind: 'collected', when: fact.when.value }, span: fact };
    case 'until': return { what: { kind: 'date', day: fact.date.day }, span: fact };
    case 'strength': case 'solubility':
      return { what: { kind: 'strength', agent: subject?.text ?? '', strength: fact.value }, span: fact };
    case 'count': return { what: { kind: 'count', fact }, span: fact };
    default: return whole;
  }
}

function substanceAt(journal: Journal, substance: SubstanceFact, character: number): Found | undefined {
  const { name, strength, unmeasured, volume } = substance;
  const isAgent = journal.agents.has(name.text);
  const strong = (span: Placed<Strength> | Span, value: Strength | 'unmeasured'): Found =>
    ({ what: { kind: 'strength', agent: name.text, strength: value }, span });
  if (covers(name, character)) return { what: { kind: isAgent ? 'agent' : 'stock', id: name.text }, span: name };
  if (strength && covers(strength, character)) return strong(strength, strength.value);
  if (unmeasured && covers(unmeasured, character)) return strong(unmeasured, 'unmeasured');
  if (volume && !isAgent && covers(volume, character)) return { what: { kind: 'stock', id: name.text }, span: volume };
  return undefined;
}

function covers({ start, end }: Span, character: number): boolean {
  return start <= character && character <= end;
}
