/** The limits that hold: a `limit` record of the journal, else the editor's setting, else the default. */
import type { Duration, Strength } from '../model/quantity.ts';
import { factOf, type JournalRecord } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { stockDefault } from '../solutions/keeping.ts';
import { parse } from '../syntax/parse.ts';
import { fileName, type JournalLine } from './journal-file.ts';
import type { LimitSettings } from './settings.ts';

export interface Limit<Value> {
  readonly value: Value;
  /** In words: where the limit comes from. */
  readonly origin: string;
  /** The `limit` record; undefined where none says it. */
  readonly line: JournalLine | undefined;
  /** Neither a record nor a setting says it. */
  readonly isDefault?: true;
}

export interface StrengthLimit extends Limit<Strength> {
  /** The agent that it speaks of: for a salt it may be its acid. */
  readonly of: string;
}

/** The longest soak, how long a stock keeps dark and cold, the days between counts: common practice, no source. */
const defaults = {
  soak: { value: 24, unit: 'h' },
  stock: stockDefault.value,
  count: { value: 7, unit: 'days' },
} as const satisfies Record<string, Duration>;

type Named = keyof typeof defaults;

interface LimitRecord {
  readonly line: JournalLine;
  readonly record: JournalRecord;
}

export class Limits {
  readonly #strengthsFound = new Map<string, StrengthLimit | undefined>();
  readonly #durationsFound = new Map<string, Limit<Duration>>();
  /** By subject in lower case, the last one first: of two for the same the later one counts. */
  readonly #records = new Map<string, LimitRecord[]>();
  readonly #settings: LimitSettings;
  readonly #strengths: ReadonlyMap<string, Strength>;

  /** `lines` hold the journal's `limit` records, in the order of the journal. */
  constructor(lines: readonly JournalLine[], settings: LimitSettings) {
    for (const line of lines.toReversed()) {
      const { record } = line.content;
      const subject = record?.subject?.text.toLowerCase();
      if (!record || subject === undefined) continue;
      const records = this.#records.get(subject);
      if (records) records.push({ line, record });
      else this.#records.set(subject, [{ line, record }]);
    }
    this.#settings = settings;
    this.#strengths = new Map(Object.entries(settings.strengths ?? {}).flatMap(([word, text]) => {
      const strength = readStrength(text);
      return strength ? [[word, strength]] : [];
    }));
  }

  soak(plant: string | undefined): Limit<Duration> {
    return this.#duration('soak', plant, this.#settings.soakHours, 'h', 'soakHours');
  }

  /** How long a stock keeps. */
  get stock(): Limit<Duration> {
    return this.#duration('stock', undefined, this.#settings.stockYears, 'years', 'stockYears');
  }

  /** How often an open batch is to be looked at. */
  count(plant: string | undefined): Limit<Duration> {
    return this.#duration('count', plant, this.#settings.countDays, 'days', 'countDays');
  }

  /** The strongest dose of an agent for a plant: a limit for its genus goes before one for all. */
  strength(agent: Agent, plant: string | undefined): StrengthLimit | undefined {
    const key = `${agent.word}\n${plant ?? ''}`;
    if (!this.#strengthsFound.has(key)) this.#strengthsFound.set(key, this.#strength(agent, plant));
    return this.#strengthsFound.get(key);
  }

  #strength(agent: Agent, plant: string | undefined): StrengthLimit | undefined {
    const words = [agent.word, ...(agent.acid ? [agent.acid.word] : [])];
    const strengths = words.flatMap(of => (this.#records.get(of.toLowerCase()) ?? []).flatMap(({ line, record }) => {
      const strength = factOf(record, 'strength');
      return strength ? [{ line, record, of, value: strength.value }] : [];
    }));
    const record = nearest(strengths, plant);
    if (record) return { value: record.value, origin: originOf(record.line), line: record.line, of: record.of };
    const fallback = agent.limit && {
      value: agent.limit.strength, origin: `default: ${agent.limit.source.text}`, line: undefined, of: agent.limit.of,
    };
    for (const of of words) {
      const value = this.#strengths.get(of);
      // The editor hands its defaults over as settings.
      if (value && !(fallback?.of === of && isSame(value, fallback.value))) {
        return { value, origin: 'setting plumule.limits.strengths', line: undefined, of };
      }
    }
    return fallback;
  }

  #duration(
    name: Named, plant: string | undefined, setting: number | undefined, unit: Duration['unit'], settingName: string,
  ): Limit<Duration> {
    const key = `${name}\n${plant ?? ''}`;
    let found = this.#durationsFound.get(key);
    if (!found) this.#durationsFound.set(key, found = this.#readDuration(name, plant, setting, unit, settingName));
    return found;
  }

  #readDuration(
    name: Named, plant: string | undefined, setting: number | undefined, unit: Duration['unit'], settingName: string,
  ): Limit<Duration> {
    const durations = (this.#records.get(name) ?? []).flatMap(({ line, record }) => {
      const duration = factOf(record, 'duration');
      return duration ? [{ line, record, value: duration.value }] : [];
    });
    const record = nearest(durations, plant);
    if (record) return { value: record.value, origin: originOf(record.line), line: record.line };
    const fallback: Limit<Duration> = {
      value: defaults[name], origin: 'default: common practice, no source', line: undefined, isDefault: true,
    };
    if (setting === undefined || !Number.isFinite(setting) || setting <= 0) return fallback;
    const value: Duration = { value: setting, unit };
    if (isSame(value, fallback.value)) return fallback;
    return { value, origin: `setting plumule.limits.${settingName}`, line: undefined };
  }
}

/** Of those for this plant the first that names it most fully, a species before its genus; else the first for all. */
function nearest<Item extends LimitRecord>(items: readonly Item[], plant: string | undefined): Item | undefined {
  const own = items.filter(({ record }) => isFor(record, plant))
    .sort((a, b) => genusOf(b.record).length - genusOf(a.record).length);
  return own[0] ?? items.find(({ record }) => !factOf(record, 'for'));
}

function isFor(record: JournalRecord, plant: string | undefined): boolean {
  const genus = genusOf(record);
  const name = plant?.toLowerCase();
  return genus !== '' && name !== undefined && (name === genus || name.startsWith(`${genus} `));
}

/** The genus or the species that a limit is for; empty where it is for all. */
function genusOf(record: JournalRecord): string {
  return factOf(record, 'for')?.value.text.toLowerCase() ?? '';
}

function isSame<Unit>(a: { value: number; unit: Unit }, b: { value: number; unit: Unit }): boolean {
  return a.value === b.value && a.unit === b.unit;
}

/** No line number: the record stays the same when lines above it come and go. */
function originOf(line: JournalLine): string {
  return `the “limit” record in ${fileName(line.store.name)}`;
}

function readStrength(text: string): Strength | undefined {
  const { record } = parse(`limit GA3, ${text.replaceAll(/[\r\n]/g, ' ')}`);
  return record && factOf(record, 'strength')?.value;
}
