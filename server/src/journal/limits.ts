/** The limits that hold: a `limit` record of the journal, else the editor's setting, else the default. */
import type { Duration, Strength } from '../model/quantity.ts';
import { factOf, type JournalRecord } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { parse } from '../syntax/parse.ts';
import { compareLines, type JournalLine } from './journal-file.ts';
import type { LimitSettings } from './settings.ts';

export interface Limit<Value> {
  readonly value: Value;
  /** In words: where the limit comes from. */
  readonly origin: string;
}

/** Days, of the longest soak, and of how long a stock keeps dark and cold: common practice, no source. */
const defaults = {
  soak: { value: 24, unit: 'h' },
  stock: { value: 4, unit: 'years' },
  count: { value: 7, unit: 'days' },
} as const satisfies Record<string, Duration>;

export class Limits {
  readonly #lines: readonly JournalLine[];
  readonly #settings: LimitSettings;

  /** `lines` hold the journal's `limit` records; of two for the same the later one counts. */
  constructor(lines: readonly JournalLine[], settings: LimitSettings) {
    this.#lines = lines.toSorted(compareLines).reverse();
    this.#settings = settings;
  }

  get soak(): Limit<Duration> {
    const { soakHours } = this.#settings;
    return this.#duration('soak', positive(soakHours) && { value: soakHours!, unit: 'h' }, 'plumule.limits.soakHours');
  }

  /** How long a stock keeps. */
  get stock(): Limit<Duration> {
    const { stockYears } = this.#settings;
    return this.#duration('stock', positive(stockYears) && { value: stockYears!, unit: 'years' }, 'plumule.limits.stockYears');
  }

  /** How often an open batch is to be looked at. */
  get count(): Limit<Duration> {
    const { countDays } = this.#settings;
    return this.#duration('count', positive(countDays) && { value: countDays!, unit: 'days' }, 'plumule.limits.countDays');
  }

  /** The strongest dose of an agent for a plant: a limit for its genus goes before one for all. */
  strength(agent: Agent, plant: string | undefined): Limit<Strength> | undefined {
    const words = [agent.word, ...(agent.acid ? [agent.acid.word] : [])];
    const records = this.#records(words).filter(({ record }) => factOf(record, 'strength'));
    const found = records.find(({ record }) => isFor(record, plant)) ?? records.find(({ record }) => !factOf(record, 'for'));
    const strength = found && factOf(found.record, 'strength');
    if (found && strength) return { value: strength.value, origin: this.#origin(found.line) };
    for (const word of words) {
      const set = readStrength(this.#settings.strengths?.[word]);
      if (set) return { value: set, origin: 'setting plumule.limits.strengths' };
    }
    return agent.limit && { value: agent.limit.strength, origin: `default: ${agent.limit.source.text}` };
  }

  #duration(name: keyof typeof defaults, setting: Duration | false, settingName: string): Limit<Duration> {
    for (const { line, record } of this.#records([name])) {
      const fact = factOf(record, 'duration');
      if (fact) return { value: fact.value, origin: this.#origin(line) };
    }
    if (setting && (setting.value !== defaults[name].value || setting.unit !== defaults[name].unit)) {
      return { value: setting, origin: `setting ${settingName}` };
    }
    return { value: defaults[name], origin: 'default: common practice, no source' };
  }

  #records(subjects: readonly string[]): { line: JournalLine; record: JournalRecord }[] {
    const wanted = new Set(subjects.map(subject => subject.toLowerCase()));
    return this.#lines.flatMap(line => {
      const { record } = line.content;
      return record?.subject && wanted.has(record.subject.text.toLowerCase()) ? [{ line, record }] : [];
    });
  }

  #origin(line: JournalLine): string {
    return `limit record in line ${line.number + 1} of ${fileName(line.store.name)}`;
  }
}

function positive(value: number | undefined): boolean {
  return value !== undefined && Number.isFinite(value) && value > 0;
}

function isFor(record: JournalRecord, plant: string | undefined): boolean {
  const genus = factOf(record, 'for')?.value.text.toLowerCase();
  const name = plant?.toLowerCase();
  return genus !== undefined && name !== undefined && (name === genus || name.startsWith(`${genus} `));
}

function readStrength(text: string | undefined): Strength | undefined {
  const record = text === undefined ? undefined : parse(`limit GA3, ${text.replaceAll(/[\r\n]/g, ' ')}`).record;
  return record && factOf(record, 'strength')?.value;
}

/** The last part of a file's name or address. */
export function fileName(name: string): string {
  const last = name.slice(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
