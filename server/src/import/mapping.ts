/** What each column of a sheet is, and how its dates and counts are meant: guessed, shown, kept beside the sheet. */
import { dayOfIso } from '../model/day.ts';
import { nearest } from '../syntax/nearest.ts';
import { countings, dateOrders, delimiters, type Answers, type Counting, type Delimiter } from './answers.ts';
import { isRole, roles, type Role } from './roles.ts';

export interface Column {
  readonly heading: string;
  readonly is: Role;
  /** The day on which all its cells were counted, as ISO 8601. */
  readonly date?: string;
  /** The same in days after sowing. */
  readonly day?: number;
  /** The same as a week after sowing, counted from 1; `weekDay` says which day of it. */
  readonly week?: number;
  readonly counts?: Counting;
  readonly unit?: string;
  readonly agent?: string;
}

export interface Mapping extends Answers {
  readonly delimiter: Delimiter;
  readonly headingRow: number;
  /** Without ids in the sheet: each row is a lot of its own, or all rows of a plant are one. */
  readonly lots: 'row' | 'plant';
  readonly columns: readonly Column[];
}

export function mappingText(mapping: Mapping): string {
  const { columns, ...rest } = mapping;
  const lines = columns.map(column => `    ${JSON.stringify(column)}`).join(',\n');
  return `${JSON.stringify(rest, undefined, 2).slice(0, -2)},\n  "columns": [\n${lines}\n  ]\n}\n`;
}

/** Reads a mapping that a grower may have edited. Gives the reason where it is none. */
export function readMapping(text: string): Mapping | { readonly fault: string } {
  try {
    return checked(JSON.parse(text.replace(/^\uFEFF/, '')) as unknown);
  } catch (error) {
    return { fault: error instanceof SyntaxError ? `it is not JSON (${error.message})` : (error as Error).message };
  }
}

type Members = Readonly<Record<string, unknown>>;

function checked(value: unknown): Mapping {
  const all = membersOf(value, 'it', ['delimiter', 'headingRow', 'lots', 'columns', ...Object.keys(answers)]);
  const columns = all.columns;
  if (!Array.isArray(columns)) throw new Error('“columns” must be a list; delete the file to have it guessed again');
  return {
    ...readAnswers(all),
    delimiter: oneOf('delimiter', all.delimiter, delimiters),
    headingRow: wholeNumber('headingRow', all.headingRow, 1, 1e6),
    lots: oneOf('lots', all.lots, ['row', 'plant'] as const),
    columns: columns.map(readColumn),
  };
}

const answers: { readonly [Key in keyof Answers]-?: (value: unknown) => Required<Answers>[Key] } = {
  dates: value => oneOf('dates', value, dateOrders),
  year: value => wholeNumber('year', value, 1800, 2200),
  counts: value => oneOf('counts', value, countings),
  weekDay: value => wholeNumber('weekDay', value, 1, 7),
  soakedBefore: value => wholeNumber('soakedBefore', value, 0, 30),
  sameAsAbove: value => oneOf('sameAsAbove', value, [true, false] as const),
};

function readAnswers(all: Members): Answers {
  const given = Object.entries(answers).filter(([key]) => all[key] !== undefined);
  return Object.fromEntries(given.map(([key, read]) => [key, read(all[key])]));
}

function readColumn(value: unknown): Column {
  const all = membersOf(value, 'a column', ['heading', 'is', 'date', 'day', 'week', 'counts', 'unit', 'agent']);
  const { heading, is, date } = all;
  if (typeof heading !== 'string') throw new Error('each column needs its “heading” as a text');
  if (typeof is !== 'string' || !isRole(is)) {
    const near = typeof is === 'string' ? nearest(is, Object.keys(roles)) : undefined;
    const meant = near === undefined ? `it can be ${Object.keys(roles).join(', ')}` : `did you mean “${near}”?`;
    throw new Error(`“is” of the column “${heading}” cannot be “${String(is)}”; ${meant}`);
  }
  if (date !== undefined && (typeof date !== 'string' || dayOfIso(date) === undefined)) {
    throw new Error(`“date” of the column “${heading}” must be a day such as 2026-01-19`);
  }
  return {
    heading, is, ...(date !== undefined && { date }),
    ...(all.day !== undefined && { day: wholeNumber('day', all.day, 0, 9999) }),
    ...(all.week !== undefined && { week: wholeNumber('week', all.week, 0, 999) }),
    ...(all.counts !== undefined && { counts: oneOf('counts', all.counts, countings) }),
    ...(typeof all.unit === 'string' && { unit: all.unit }), ...(typeof all.agent === 'string' && { agent: all.agent }),
  };
}

function membersOf(value: unknown, what: string, known: readonly string[]): Members {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new Error(`${what} must be an object in braces`);
  const stray = Object.keys(value).find(key => !known.includes(key));
  if (stray !== undefined) throw new Error(`${what} has a member “${stray}”; it can have ${known.join(', ')}`);
  return value as Members;
}

function oneOf<Value>(name: string, value: unknown, allowed: readonly Value[]): Value {
  const found = allowed.find(each => each === value);
  if (found === undefined) throw new Error(`“${name}” must be ${allowed.map(each => JSON.stringify(each)).join(' or ')}`);
  return found;
}

function wholeNumber(name: string, value: unknown, least: number, most: number): number {
  if (typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most) return value;
  throw new Error(`“${name}” must be a whole number from ${least} to ${most}`);
}
