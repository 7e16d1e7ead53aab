/** What the journal has already of what a sheet gives: by what records say, however they are written. */
import { itemsOf, newReader, type Item } from '../merge/items.ts';
import { dayNameOf } from '../merge/identity.ts';
import { sheetOf } from '../merge/rows.ts';
import { plantKey } from '../model/plant.ts';
import { factsOf, type JournalRecord } from '../model/record.ts';
import { parse } from '../syntax/parse.ts';
import { isoOf } from '../model/day.ts';
import type { Composed, Draft, PartDraft, Told } from './compose.ts';
import { factKeys } from './lines.ts';

/** Texts of files by their names. */
export type Files = ReadonlyMap<string, string>;

interface Standing {
  readonly record: JournalRecord;
  readonly text: string;
  readonly facts: ReadonlySet<string>;
  readonly remarks: ReadonlySet<string>;
}

export interface Sifted {
  readonly drafts: readonly Draft[];
  readonly parts: readonly PartDraft[];
  /** Rows of which nothing is new. */
  readonly known: ReadonlySet<number>;
  /** What the sheet says otherwise than the journal, and remarks that stand nowhere. */
  readonly told: readonly Told[];
}

/** Leaves out what the journal says already; what it says otherwise stays as it is, and is told. */
export function sifted({ drafts, parts, rows }: Composed, files: Files): Sifted {
  const standing = new Map<string, Standing[]>();
  const splits = new Map<string, { readonly fact: string; readonly in: Standing }>();
  for (const item of recordsIn(files)) take(item, standing, splits);
  const told: Told[] = [];
  const fresh = new Set<Draft | PartDraft>();
  const matched = new Map<Draft, Standing>();
  for (const draft of drafts) {
    const others = standing.get(keyOf(draft)) ?? [];
    const same = others.findIndex(each => saysAll(each, draft));
    if (same >= 0) matched.set(draft, others.splice(same, 1)[0]!);
  }
  for (const draft of drafts) {
    // Of notes there can be many a day.
    const [other] = matched.has(draft) || draft.keyword === 'note' ? [] : standing.get(keyOf(draft))?.splice(0, 1) ?? [];
    const own = matched.get(draft) ?? other;
    if (!own) fresh.add(draft);
    if (other) told.push(otherwise(draft.row, other.text, draft.line));
    if (own) told.push(...lostRemarks(draft, own));
  }
  for (const part of parts) {
    const own = splits.get(`${part.parent}/${part.name}`);
    if (!own) fresh.add(part);
    else {
      if (own.fact !== partKey(part)) told.push(otherwise(part.row, own.in.text, part.fact));
      told.push(...lostRemarks(part, own.in));
    }
  }
  const touched = new Set([...fresh].map(({ row }) => row));
  return {
    drafts: drafts.filter(draft => fresh.has(draft)), parts: parts.filter(part => fresh.has(part)),
    known: new Set([...rows].filter(row => !touched.has(row))), told,
  };
}

function otherwise(row: number, journal: string, sheet: string): Told {
  return { row, why: `the journal has “${journal}”, the sheet “${sheet}”; it stays as it is` };
}

function recordsIn(files: Files): Item[] {
  const read = newReader();
  return [...files].sort(([a], [b]) => (a < b ? -1 : 1)).flatMap(([, text]) => itemsOf(sheetOf(text).rows, read));
}

function take(
  item: Item, standing: Map<string, Standing[]>, splits: Map<string, { fact: string; in: Standing }>,
): void {
  const record = item.kind === 'record' ? item.reading?.record : undefined;
  if (!record?.subject || !item.head) return;
  const own: Standing = {
    record, text: item.head.text, facts: new Set(factKeys(record.facts)),
    remarks: new Set(item.tail.map(({ text }) => text.trim())),
  };
  const day = record.keyword === 'lot' ? '' : dayNameOf(item);
  const key = `${record.keyword} ${record.subject.text} ${day}`;
  const all = standing.get(key);
  if (all) all.push(own);
  else standing.set(key, [own]);
  if (record.keyword !== 'split') return;
  for (const part of factsOf(record, 'part')) {
    const path = `${record.subject.text}/${part.name.text}`;
    if (!splits.has(path)) splits.set(path, { fact: factKeys([part])[0]!, in: own });
  }
}

function keyOf({ keyword, subject, line }: Draft): string {
  const day = parse(line).record?.date?.day;
  return `${keyword} ${subject} ${day === undefined ? '' : isoOf(day)}`;
}

function saysAll({ record, facts }: Standing, { line }: Draft): boolean {
  const wanted = parse(line).record!;
  const isPlant = wanted.plant === undefined || plantKey(wanted.plant.text) === plantKey(record.plant?.text ?? '');
  const isTime = wanted.time === undefined || wanted.time.minutes === record.time?.minutes;
  return isPlant && isTime && factKeys(wanted.facts).every(fact => facts.has(fact));
}

function partKey({ parent, fact }: PartDraft): string | undefined {
  const { record } = parse(`split ${parent}, ${fact}`);
  return record && factKeys(factsOf(record, 'part'))[0];
}

function lostRemarks({ row, remarks }: Draft | PartDraft, { remarks: standing, text }: Standing): Told[] {
  return remarks.filter(remark => !standing.has(remark))
    .map(remark => ({ row, why: `“${remark}” is not among the remarks below “${text}”` }));
}
