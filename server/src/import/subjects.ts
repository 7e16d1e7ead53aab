/** Which lot and batch each row of a sheet is about. */
import type { Journal } from '../journal/journal.ts';
import type { Entry } from '../journal/life.ts';
import { lotsOfPlant } from '../journal/lots.ts';
import { plantKey } from '../model/plant.ts';
import { parse } from '../syntax/parse.ts';
import { eventsOf, type EventLine } from './events.ts';
import { pathOf, partOf, stemOf } from './ids.ts';
import { factKeys } from './lines.ts';
import { lotLine } from './lots.ts';
import type { RowReader } from './row-reader.ts';

export interface Subject {
  readonly lot: string;
  readonly part: string | undefined;
}

/** A row without a subject stays out, for a reason. */
export type Assigned = Subject | { readonly left: string };

export function subjectsOf(rows: readonly RowReader[], journal: Journal): Map<RowReader, Assigned> {
  const namer = new Namer(journal);
  const assigned = new Map<RowReader, Assigned>();
  const waiting: RowReader[] = [];
  for (const row of rows) {
    const named = isSum(row) ? { left: 'it looks like a row of sums' } : row.has('lot') ? namer.named(row) : namer.known(row);
    if (named) assigned.set(row, named);
    else waiting.push(row);
  }
  // The likeliest pairs first; and new ids last: what the journal has must not be given away to a row above.
  const pairs = waiting.flatMap(row => likely(row, journal).map(each => ({ row, ...each })));
  for (const { row, id, isSaid } of pairs.toSorted((a, b) => b.events - a.events)) {
    const own = isSaid && !assigned.has(row) ? namer.take(row, id) : undefined;
    if (own) assigned.set(row, own);
  }
  for (const row of waiting) {
    const perhaps = pairs.filter(pair => pair.row === row).map(({ id }) => id);
    if (!assigned.has(row)) assigned.set(row, namer.fresh(row, perhaps));
  }
  return assigned;
}

const SUM = new RegExp(`(?:^|\\s)(?:${[
  'totals?', 'sub-?totals?', 'sums?', 'averages?', 'means?', 'summen?', 'gesamt', 'zwischensumme', 'mittel(?:wert)?', 'durchschnitt',
  'somme', 'moyenne', 'Σ',
].join('|')})[:.]?$`, 'i');

/** `Total`, `Penstemon total`: a line below others that adds them up, which would count their seed once more. */
function isSum(row: RowReader): boolean {
  const name = row.has('lot') && row.cell('lot') ? row.cell('lot')?.text : row.plant()?.text;
  return name !== undefined && name.length < 60 && SUM.test(name);
}

interface Likeness {
  readonly id: string;
  /** Records of the row that the lot has. */
  readonly events: number;
  /** Whether its record says all that the row says of the lot. */
  readonly isSaid: boolean;
}

/** The lots of the journal that a row without an id may be about: of the same plant and not of another life. */
function likely(row: RowReader, journal: Journal): Likeness[] {
  const wanted = factKeys(lotLine('X', row).facts);
  return lotsOfPlant(journal.lots(), row.plant()!.text).flatMap(({ id, definition }) => {
    const has = factKeys(definition.record.facts);
    const entries = journal.mentionsOf(id).filter(({ record }) => record.keyword !== 'lot' && record.keyword !== 'split');
    const events = eventsOf({ row: row.again(), path: id, counting: 'new', isStock: stock => journal.solution(stock) !== undefined });
    const same = events.filter(event => entries.some(entry => isSameEvent(event, entry))).length;
    const isOther = same === 0 && events.length > 0 && entries.length > 0;
    return isOther ? [] : [{ id, events: same, isSaid: wanted.every(fact => has.includes(fact)) }];
  });
}

/** Counts are new or totals: which, may not be known yet. */
function isSameEvent({ keyword, day, line }: EventLine, { record, moment }: Entry): boolean {
  if (record.keyword !== keyword || moment?.day !== day) return false;
  const has = factKeys(record.facts);
  return keyword === 'count' || factKeys(parse(line).record?.facts ?? []).every(fact => has.includes(fact));
}

class Namer {
  readonly #journal: Journal;
  /** The cell behind each id: two that differ only in signs would be one lot. */
  readonly #cells = new Map<string, string>();
  readonly #taken = new Set<string>();
  readonly #byPlant = new Map<string, string>();

  constructor(journal: Journal) {
    this.#journal = journal;
  }

  /** By the ids of the sheet. */
  named(row: RowReader): Assigned {
    const cell = row.cell('lot');
    if (!cell) return { left: 'it names no lot' };
    const path = pathOf(cell.text);
    if (!path) return { left: `“${cell.text}” cannot be the id of a lot` };
    const { lot, part } = path;
    const kind = this.#journal.kindOf(lot);
    if (kind !== undefined && kind !== 'lot') return { left: `“${lot}” is the name of a ${kind} in the journal` };
    const written = part === undefined ? cell.text : cell.text.slice(0, cell.text.indexOf('/')).trim();
    const other = this.#cells.get(lot) ?? written;
    if (other !== written) return { left: `“${other}” and “${written}” would both be the lot ${lot}` };
    this.#cells.set(lot, written);
    row.take([cell.column]);
    return this.#withPart(row, lot, part);
  }

  /** By the plant alone, where that is all that the sheet has. Undefined where the journal does not know it yet. */
  known(row: RowReader): Assigned | undefined {
    const plant = row.plant();
    if (!plant) return { left: 'it names no lot and no plant' };
    if (row.mapping.lots === 'row') return undefined;
    const [only, ...others] = lotsOfPlant(this.#journal.lots(), plant.text);
    if (others.length > 0) return { left: `the journal has ${others.length + 1} lots of ${plant.text}; give the sheet a column with ids` };
    return only && this.#withPart(row, only.id);
  }

  /** Undefined where another row has the lot already. */
  take(row: RowReader, id: string): Assigned | undefined {
    if (this.#taken.has(id) || row.mapping.lots === 'plant') return undefined;
    this.#taken.add(id);
    return this.#withPart(row, id);
  }

  /** A new id, unless a lot of the journal may be this one and says something else. */
  fresh(row: RowReader, perhaps: readonly string[]): Assigned {
    const plant = row.plant()!.text;
    const key = plantKey(plant);
    const before = row.mapping.lots === 'plant' ? this.#byPlant.get(key) : undefined;
    if (before !== undefined) return this.#withPart(row, before);
    const other = row.mapping.lots === 'row' ? perhaps.find(id => !this.#taken.has(id)) : undefined;
    if (other !== undefined) {
      return { left: `the journal has ${other} ${plant}, which says something else; make both say the same, or give the sheet a column with ids` };
    }
    const stem = stemOf(plant, lotLine('X', row).year);
    for (let n = 1; ; n++) {
      const id = n === 1 ? stem : `${stem}-${n}`;
      if (this.#taken.has(id) || this.#journal.mentionsOf(id).length > 0) continue;
      this.#taken.add(id);
      this.#byPlant.set(key, id);
      return this.#withPart(row, id);
    }
  }

  #withPart(row: RowReader, lot: string, part?: string): Assigned {
    const cell = row.cell('batch');
    if (!cell || part !== undefined) return { lot, part };
    const named = partOf(cell.text);
    if (named === undefined) return { left: `“${cell.text}” cannot be the name of a batch` };
    row.take([cell.column]);
    return { lot, part: named };
  }
}
