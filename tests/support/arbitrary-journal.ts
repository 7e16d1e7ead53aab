/** Whole journals for property tests, in which everything adds up: no check finds an error in them. */
import fc from 'fast-check';
import { isoOf, dayOf, type Day } from '../../server/src/model/day.ts';

export interface ArbitraryJournal {
  readonly files: readonly { readonly name: string; readonly text: string }[];
  /** The day after the last record. */
  readonly today: Day;
}

interface CountPlan {
  readonly what: readonly ('germinated' | 'emerged' | 'leaf' | 'rotted' | 'died' | 'lost')[];
  readonly share: number;
  readonly totals: boolean;
}

interface BatchPlan {
  readonly dose: string | undefined;
  readonly end: 'lift' | 'until' | 'duration';
  readonly chilled: boolean;
  readonly counts: readonly CountPlan[];
  readonly close: 'cut' | 'discard' | 'pot' | undefined;
}

interface LotPlan {
  readonly plant: string;
  readonly seeds: number;
  readonly batches: readonly BatchPlan[];
  readonly dated: 'day' | 'own' | 'own, last first';
}

interface Dated {
  readonly day: Day;
  readonly time: string;
  readonly head: string;
  readonly facts: string;
}

const count: fc.Arbitrary<CountPlan> = fc.record({
  what: fc.subarray(['germinated', 'emerged', 'leaf', 'rotted', 'died', 'lost'] as const, { minLength: 1 }),
  share: fc.integer({ min: 0, max: 4 }), totals: fc.boolean(),
});

const batch: fc.Arbitrary<BatchPlan> = fc.record({
  dose: fc.constantFrom(undefined, 'water', 'GA3 500 ppm', 'G2 1 mL', 'GA3 unmeasured', 'KNO3 0.2 %'),
  end: fc.constantFrom('lift', 'until', 'duration'), chilled: fc.boolean(),
  counts: fc.array(count, { maxLength: 4 }), close: fc.constantFrom(undefined, 'cut', 'discard', 'pot'),
});

const lot: fc.Arbitrary<LotPlan> = fc.record({
  plant: fc.constantFrom('Veratrum nigrum', 'Primula vialii', 'Crocus 🌱', '種子'),
  seeds: fc.integer({ min: 8, max: 90 }), batches: fc.array(batch, { minLength: 1, maxLength: 3 }),
  dated: fc.constantFrom('day', 'own', 'own, last first'),
});

const common = [
  '# Stocks and limits', 'limit soak, 24 h', 'limit GA3, 1000 ppm, for Primula', 'regime twowinters, warm 20 C 60 days, chill 4 C 90 days',
  'stock G1 2025-09-20, GA3 20 mg, 20 mL, keeps 4 years', 'dilute G2 2025-09-21, from G1 10 mL, to 20 mL', '  Both in the fridge.', '',
];

const FIRST = dayOf(2025, 10, 1)!;

/** Up to four lots in one to three files. */
export const journal: fc.Arbitrary<ArbitraryJournal> =
  fc.tuple(fc.array(lot, { minLength: 1, maxLength: 4 }), fc.integer({ min: 1, max: 3 })).map(([lots, files]) => {
    const lines: string[][] = Array.from({ length: files }, () => []);
    lines[0]!.push(...common);
    let last = FIRST;
    for (const [index, plan] of lots.entries()) {
      const written = new LotWriter(`LOT-${index + 1}`, plan, FIRST + index);
      lines[index % files]!.push(...written.lines(), '');
      last = Math.max(last, written.last);
    }
    return {
      files: lines.map((each, index) => ({ name: `${index + 1}.germ`, text: each.map(line => `${line}\n`).join('') })),
      today: last + 1,
    };
  });

class LotWriter {
  readonly #records: Dated[] = [];
  readonly #undated: string[] = [];

  constructor(readonly id: string, readonly plan: LotPlan, first: Day) {
    const { plant, seeds, batches } = plan;
    this.#undated.push(`lot ${id} ${plant}, ${seeds} seeds, collected 2025-08-01, from own garden`);
    if (batches.length === 1) {
      this.#batch(id, batches[0]!, seeds, first);
      return;
    }
    const each = Math.floor(seeds / (batches.length + 1));
    const names = batches.map((_, index) => 'ABC'[index]!);
    this.#undated.push(`split ${id}, ${names.map(name => `${name} ${each} seeds`).join(', ')}`);
    for (const [index, name] of names.entries()) this.#batch(`${id}/${name}`, batches[index]!, each, first);
  }

  get last(): Day {
    return Math.max(...this.#records.map(({ day }) => day));
  }

  lines(): string[] {
    const { dated } = this.plan;
    const records = this.#records.map((record, index) => ({ ...record, index }))
      .sort((a, b) => a.day - b.day || (a.time < b.time ? -1 : a.time > b.time ? 1 : a.index - b.index));
    if (dated === 'own, last first') records.reverse();
    const lines = [...this.#undated];
    let day: Day | undefined;
    for (const record of records) {
      if (dated === 'day' && record.day !== day) lines.push('', `day ${isoOf(record.day)}`);
      ({ day } = record);
      lines.push(`${record.head}${dated === 'day' ? '' : ` ${isoOf(day)}`} ${record.time}${record.facts}`);
      // No two alike: after a merge nobody could tell which of them is gone.
      if (record.index % 3 === 0) lines.push(`  Looked at it, ${record.index} of them.`);
    }
    return lines;
  }

  #put(day: Day, time: string, head: string, facts = ''): void {
    this.#records.push({ day, time, head, facts });
  }

  #batch(path: string, { dose, end, chilled, counts, close }: BatchPlan, seeds: number, first: Day): void {
    if (dose) {
      const length = end === 'duration' ? ', 24 h' : end === 'until' ? `, until ${isoOf(first + 1)} 18:00` : '';
      this.#put(first, '19:00', `soak ${path}`, `, ${dose}${length}, at jar`);
      if (end === 'lift') this.#put(first + 1, '18:30', `lift ${path}`);
    }
    this.#put(first + 1, '19:30', `sow ${path}`, `, ${seeds} seeds, 18 C, in grit`);
    if (chilled) this.#put(first + 2, '08:00', `chill ${path}`, ', 4 C, 10 days');
    let day = first + 3;
    const state = new Counted(seeds);
    for (const plan of counts) {
      this.#put(day, '09:00', `count ${path}`, state.count(plan));
      day += 5;
    }
    if (close === 'cut') this.#put(day, '10:00', `cut ${path}`, state.cut());
    if (close === 'discard') this.#put(day, '10:00', `discard ${path}`, ', all soft, or so it looked');
    if (close === 'pot') this.#put(day, '10:00', `pot ${path}`, `, ${state.alive} seedlings`);
    this.#put(day + 1, '10:00', `note ${path}`, ', still, 3 to look at');
  }
}

/** What was counted of a batch so far, and what can still be. */
class Counted {
  readonly #n = { germinated: 0, emerged: 0, leaf: 0, rotted: 0, died: 0, lost: 0 };

  constructor(readonly seeds: number) {}

  get #left(): number {
    return this.seeds - this.#n.germinated - this.#n.rotted - this.#n.lost;
  }

  get alive(): number {
    return this.#n.germinated - this.#n.died;
  }

  count({ what, share, totals }: CountPlan): string {
    const n = this.#n;
    const possible = {
      germinated: () => this.#left, emerged: () => n.germinated - n.emerged, leaf: () => n.emerged - n.leaf,
      rotted: () => this.#left, died: () => this.alive, lost: () => this.#left,
    };
    return what.map(kind => {
      const more = Math.floor((possible[kind]() * share) / 5);
      n[kind] += more;
      return totals ? `, =${n[kind]} ${kind}` : `, ${more} ${kind}`;
    }).join('');
  }

  cut(): string {
    const fresh = Math.floor(this.#left / 2);
    return `, ${fresh} fresh, ${this.#left - fresh} dead`;
  }
}
