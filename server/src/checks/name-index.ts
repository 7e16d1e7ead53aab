/** What a journal names, by how it is spelt: which names are usual, which are not, and where those are. */
import { placeKey } from '../calendar/place-text.ts';
import type { Entry } from '../journal/life.ts';
import { forEachMention, rootOf, subjectIdOf } from '../journal/mentions.ts';
import { plantKey } from '../model/plant.ts';
import type { JournalRecord, Written } from '../model/record.ts';
import { isMixed, isPlain, usualSpelling } from '../model/spelling.ts';

/** A name, among those of its kind. */
export interface Name {
  readonly written: Written;
  /** Equal for names that the journal takes for the same. */
  readonly key: string;
  /** The key of what it looks like. */
  readonly usual: string;
}

export type NameUse = readonly [Entry, Name];

/** A name that is not spelt as usual. */
interface Odd {
  /** By thing its uses. */
  readonly uses: Map<string, NameUse[]>;
  readonly usual: string;
  readonly isMixed: boolean;
}

export class NameIndex {
  /** By thing the keys of what its records name. */
  readonly #keys = new Map<string, { readonly usual: ReadonlySet<string>; readonly odd: ReadonlySet<string> }>();
  /** By key how many things have records that name it. */
  readonly #usual = new Map<string, number>();
  /** By the key and what it looks like. */
  readonly #odd = new Map<string, Odd>();

  /** Takes over what the records about a thing name now. */
  follow(id: string, entries: readonly Entry[]): void {
    this.#forget(id);
    const [usual, odd] = [new Set<string>(), new Set<string>()];
    for (const entry of entries) {
      for (const name of namesIn(entry.record)) {
        if (isOdd(name)) odd.add(this.#learn(id, [entry, name]));
        else usual.add(name.key);
      }
    }
    for (const key of usual) this.#count(key, 1);
    if (usual.size > 0 || odd.size > 0) this.#keys.set(id, { usual, odd });
  }

  /** Of each name that is not spelt as usual, and looks like another one or mixes alphabets, all uses in no order. */
  *alike(): IterableIterator<NameUse[]> {
    for (const { uses, usual, isMixed: mixes } of this.#odd.values()) {
      if (mixes || this.hasUsual(usual)) yield [...uses.values()].flat();
    }
  }

  hasUsual(key: string): boolean {
    return this.#usual.has(key);
  }

  #learn(id: string, use: NameUse): string {
    const [, { key, usual, written }] = use;
    const both = `${key}\n${usual}`;
    const odd = this.#odd.get(both) ?? { uses: new Map<string, NameUse[]>(), usual, isMixed: isMixed(written.text) };
    this.#odd.set(both, odd);
    const same = odd.uses.get(id);
    if (same) same.push(use);
    else odd.uses.set(id, [use]);
    return both;
  }

  #forget(id: string): void {
    const { usual = [], odd = [] } = this.#keys.get(id) ?? {};
    for (const key of usual) this.#count(key, -1);
    for (const both of odd) {
      const { uses } = this.#odd.get(both)!;
      uses.delete(id);
      if (uses.size === 0) this.#odd.delete(both);
    }
    this.#keys.delete(id);
  }

  #count(key: string, by: number): void {
    const count = (this.#usual.get(key) ?? 0) + by;
    if (count > 0) this.#usual.set(key, count);
    else this.#usual.delete(key);
  }
}

/** Of records that name an id those that are about it, so that each record is in one part. */
export function entriesAbout(id: string, mentions: readonly Entry[]): Entry[] {
  return mentions.filter(({ record }) => subjectIdOf(record) === id);
}

/** Whether a line has a name that is not spelt as usual. */
export function isSpeltOddly({ line, record }: Entry): boolean {
  return !isPlain(line.text) && namesIn(record).some(isOdd);
}

function isOdd({ key, usual }: Name): boolean {
  return key !== usual;
}

/** Ids and batches below them; plants; places. */
function namesIn(record: JournalRecord): Name[] {
  const names: Name[] = [];
  forEachMention(record, (id, role, written) => {
    names.push(named('id', { ...written, text: id, end: written.start + id.length }, String));
    if (role === 'subject') names.push(...batchesIn(written));
  });
  const { keyword, subject, plant } = record;
  if (plant) names.push(named('plant', plant, plantKey));
  if (keyword === 'guide' && subject) names.push(named('plant', subject, plantKey));
  for (const fact of record.facts) {
    if (fact.type === 'at') names.push(named('place', fact.value, placeKey));
    if (fact.type === 'part' && subject) names.push(named(`batch of ${usualSpelling(subject.text)}`, fact.name, String));
  }
  return names;
}

/** The parts of a batch's path, each below the one before. */
function batchesIn({ text, start }: Written): Name[] {
  const names: Name[] = [];
  for (let slash = rootOf(text).length; slash < text.length;) {
    const next = text.indexOf('/', slash + 1);
    const end = next < 0 ? text.length : next;
    const part = { text: text.slice(slash + 1, end), start: start + slash + 1, end: start + end };
    names.push(named(`batch of ${usualSpelling(text.slice(0, slash))}`, part, String));
    slash = end;
  }
  return names;
}

function named(kind: string, written: Written, keyOf: (text: string) => string): Name {
  const keyed = (text: string) => `${kind} ${keyOf(text)}`;
  return { written, key: keyed(written.text), usual: keyed(usualSpelling(written.text)) };
}
