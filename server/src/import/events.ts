/** The dated records of a row: soak, sowing, stages, counts, what else has a day. */
import { dayOfIso, isoOf, type Day } from '../model/day.ts';
import type { Keyword } from '../model/keywords.ts';
import { factsOf } from '../model/record.ts';
import { parse } from '../syntax/parse.ts';
import type { Counted } from './counting.ts';
import type { CellDate } from './dates.ts';
import { buildLine, oneLine, textWanted, type FactWanted } from './lines.ts';
import { placeWanted } from './lots.ts';
import type { Counting } from './answers.ts';
import type { Column } from './mapping.ts';
import { howMany, wholeIn, withPoints } from './numbers.ts';
import { counted, type Role } from './roles.ts';
import type { Cell, RowReader } from './row-reader.ts';
import { isNoTreatment, soakFacts } from './treatment.ts';

export interface EventLine {
  readonly keyword: Keyword;
  readonly day: Day;
  readonly line: string;
}

export interface EventContext {
  readonly row: RowReader;
  /** The lot or the batch. */
  readonly path: string;
  readonly counting: Counting;
  readonly isStock: (id: string) => boolean;
}

const whenOf = ({ day, time }: CellDate) => `${isoOf(day)}${time === undefined ? '' : ` ${time}`}`;

/** All that the row gives, in no order; the columns that it is made of are taken. */
export function eventsOf(context: EventContext): EventLine[] {
  const soak = soakOf(context);
  return [
    ...soak, ...sowingOf(context),
    ...stageOf(context, 'chilled', 'chill', durationWanted(context.row, 'cold time')), ...stageOf(context, 'warmed', 'warm', []),
    ...stageOf(context, 'potted', 'pot', []), ...stageOf(context, 'planted', 'plant', []), ...stageOf(context, 'discarded', 'discard', []),
    ...notedOf(context), ...countsOf(context),
  ];
}

function built(
  context: EventContext, keyword: Keyword, when: CellDate, wanted: readonly FactWanted[], columns: readonly number[],
): EventLine[] {
  const { line, unused } = buildLine(keyword, `${context.path} ${whenOf(when)}`, wanted);
  if (line === undefined) return [];
  context.row.take([...columns, ...wanted.filter(want => !unused.includes(want)).flatMap(each => each.columns)]);
  return [{ keyword, day: when.day, line }];
}

function stageOf(context: EventContext, role: Role, keyword: Keyword, wanted: readonly FactWanted[]): EventLine[] {
  const when = context.row.date(role);
  return when ? built(context, keyword, when, wanted, [when.column]) : [];
}

function sowingOf(context: EventContext): EventLine[] {
  const when = sowDay(context.row);
  return when ? built(context, 'sow', when, sowFacts(context.row), [when.column]) : [];
}

/** Its own day; or that of a row that says how many seeds were sown and counts nothing. */
function sowDay(row: RowReader): (CellDate & Cell) | undefined {
  const own = row.date('sown');
  const isSowing = row.cells('seeds sown').length > 0 && counted.every(role => row.cells(role).length === 0);
  return own ?? (isSowing ? row.date('date') : undefined);
}

function sowFacts(row: RowReader): FactWanted[] {
  const seeds = row.cells('seeds sown').flatMap(({ text, column }) => {
    const many = howMany(text);
    return many === undefined ? [] : [{ type: 'seeds' as const, ways: [`${many} seeds`], columns: [column] }];
  });
  const temperature = row.cells('temperature').map(({ text, column, as: { unit } }) => {
    const cell = withPoints(text).replaceAll(/(?<!\s)\s*º/g, ' °');
    return { type: 'temperature' as const, ways: [cell, ...(unit === undefined ? [] : [`${cell} ${unit}`])], columns: [column] };
  });
  return [...seeds, ...temperature, ...row.cells('medium').map(({ text, column }) => textWanted('in', text, column)), ...placeWanted(row)];
}

/** A time span with its unit in the cell, in the brackets of the heading, or as a word of the heading. */
function durationWanted(row: RowReader, role: 'cold time' | 'soak time'): FactWanted[] {
  return row.cells(role).map(({ text, column, as: { unit, heading } }) => {
    const words = `${unit ?? ''} ${heading}`.toLowerCase();
    const named = [['weeks', /week|woche|semaine/], ['days', /day|tag|jour/], ['h', /hour|\bhrs?\b|\bh\b|std|stund|heure/]] as const;
    const [word] = named.find(([, pattern]) => pattern.test(words)) ?? [];
    const cell = withPoints(text);
    return { type: 'duration' as const, ways: [cell, ...(word === undefined ? [] : [`${cell} ${word}`])], columns: [column] };
  });
}

/** The day of the soak: its own; or so many days before the sowing, if the grower says that it always was. */
function soakDay(row: RowReader): (CellDate & { readonly columns: readonly number[] }) | undefined {
  const own = row.date('soaked');
  if (own) return { ...own, columns: [own.column] };
  const before = row.mapping.soakedBefore;
  const sown = before === undefined ? undefined : sowDay(row);
  return sown && { day: sown.day - before!, columns: [] };
}

function soakOf(context: EventContext): EventLine[] {
  const { row, isStock } = context;
  const [cell] = row.cells('treatment');
  const words = cell && !isNoTreatment(cell.text) ? cell : undefined;
  const facts = words && soakFacts(withAgent(words), isStock);
  const strengths = row.cells('strength').map(({ text, column, as: { agent, unit } }): FactWanted => {
    const strength = withPoints(text);
    return { type: 'substance', ways: [`${agent} ${strength}`, `${agent} ${strength} ${unit}`], columns: [column] };
  });
  const wanted: FactWanted[] = [
    ...(facts ?? []).map(fact => ({ type: factTypeOf(fact), ways: [fact], columns: [words!.column] })),
    ...strengths, ...durationWanted(row, 'soak time'),
  ];
  const day = soakDay(row);
  const hasDose = facts !== undefined || strengths.length > 0;
  if (words && !facts && strengths.length === 0) {
    row.leave(words.column, 'it does not say what was in the soak and how strong; write “GA3 500 ppm, 24 h”, or “GA3 unmeasured”');
  }
  if (!day || !hasDose) {
    for (const { columns: [column] } of wanted) row.leave(column!, day ? 'there is nothing to soak in' : 'the day of the soak is unknown');
    return [];
  }
  return built(context, 'soak', day, wanted, day.columns);
}

/** Below a heading that names the agent, a cell may say no more than its strength. */
function withAgent({ text, as: { agent } }: Cell & { readonly as: Column }): string {
  return agent !== undefined && /^\d/.test(text) ? `${agent} ${text}` : text;
}

function factTypeOf(fact: string): FactWanted['type'] {
  return parse(`soak X 2000-01-01, water, ${fact}`).record?.facts.at(-1)?.type ?? 'substance';
}

/** A day of something that the heading says; and of a soak of which the sheet does not say enough. */
function notedOf({ row, path }: EventContext): EventLine[] {
  const own = (['noted', 'soaked'] as const).flatMap(role => row.cells(role)).filter(({ column }) => !row.isTaken(column));
  return own.flatMap(cell => {
    const when = row.dateIn(cell);
    const dose = cell.as.is === 'soaked' ? row.cells('treatment') : [];
    const words = dose.map(({ text, as }) => (as.agent === undefined ? text : `${as.heading} ${text}`));
    const text = [cell.as.heading, ...words].join(': ');
    return when ? note(row, path, when, text, [cell, ...dose].map(({ column }) => column)) : [];
  });
}

function note(row: RowReader, path: string, when: CellDate, text: string, columns: readonly number[]): EventLine[] {
  const line = `note ${path} ${whenOf(when)}, ${oneLine(text)}`;
  const { record, problems } = parse(line);
  const [fact] = record ? factsOf(record, 'text') : [];
  if (problems.length > 0 || fact?.value.text !== oneLine(text)) return [];
  row.take(columns);
  return [{ keyword: 'note', day: when.day, line }];
}

interface CountCell extends Cell {
  readonly as: Column;
  readonly when: CellDate;
}

/** The cells of counts that have a day, each with it. */
function countCells(row: RowReader): CountCell[] {
  return counted.flatMap(role => row.cells(role)).flatMap(cell => {
    const when = dayOfCount(row, cell.as);
    if (!when) row.leave(cell.column, 'the day of the count is unknown');
    return when ? [{ ...cell, when }] : [];
  });
}

function dayOfCount(row: RowReader, { date, day, week }: Column): CellDate | undefined {
  if (date !== undefined) return { day: dayOfIso(date)! };
  const { weekDay } = row.mapping;
  const after = day ?? (week !== undefined && weekDay !== undefined ? (week - 1) * 7 + weekDay : undefined);
  if (day === undefined && week === undefined) return row.date('date');
  const sown = after === undefined ? undefined : row.date('sown');
  return sown && { day: sown.day + after! };
}

function numberCounted(text: string): number | undefined {
  return /^(?:none|nil|zero|nothing|keine?|aucune?)$/i.test(text) ? 0 : wholeIn(text);
}

/** A cell that is written as a count: `3, 1 rotted`. */
function countFacts(text: string): string[] | undefined {
  const { record, problems } = parse(`count X 2000-01-01, ${text}`);
  const facts = record ? factsOf(record, 'count') : [];
  const isAll = facts.length > 0 && facts.length === record?.facts.length && !facts.some(({ total }) => total);
  return isAll && problems.length === 0 ? text.split(',').map(part => part.trim()) : undefined;
}

/** For telling whether numbers are new or totals; those of columns that say so themselves are left out. */
export function countedIn(row: RowReader, path: string): Counted[] {
  return countCells(row).flatMap(({ text, when, as }) => {
    const n = numberCounted(text);
    return n === undefined || as.counts !== undefined ? [] : [{ path, what: as.is, day: when.day, n }];
  });
}

/** One record for each day of the row; what is no number becomes a note of that day. */
function countsOf(context: EventContext): EventLine[] {
  const { row, path, counting } = context;
  const days = new Map<string, { when: CellDate; wanted: FactWanted[] }>();
  const notes: EventLine[] = [];
  const cells = countCells(row);
  for (const { text, column, when, as } of cells) {
    const n = numberCounted(text);
    const facts = n === undefined && (as.counts ?? counting) === 'new' && as.is === 'germinated' ? countFacts(text) : undefined;
    if (n === undefined && !facts) {
      const isDated = as.date !== undefined && as.is === 'germinated';
      notes.push(...note(row, path, when, isDated ? text : `${as.heading}: ${text}`, [column, ...dayColumn(row, when)]));
      continue;
    }
    // A total of 0 is no other than none new, as long as nothing was there before.
    const isFirst = n === 0 && !cells.some(other =>
      other.as.is === as.is && other.when.day < when.day && numberCounted(other.text) !== 0);
    const total = (as.counts ?? counting) === 'total' && !isFirst ? '=' : '';
    const day = days.get(whenOf(when)) ?? { when, wanted: [] };
    days.set(whenOf(when), day);
    if (facts) day.wanted.push(...facts.map(fact => ({ type: 'count' as const, ways: [fact], columns: [column] })));
    else day.wanted.push({ type: 'count', ways: [`${total}${n}${as.is === 'germinated' && total === '' ? '' : ` ${as.is}`}`], columns: [column] });
  }
  const counts = [...days.values()].flatMap(({ when, wanted }) => {
    return built(context, 'count', when, wanted, dayColumn(row, when));
  });
  return [...counts, ...notes, ...dayNote(context, counts.length > 0)];
}

/** The column with the day of the row, if that is the day. */
function dayColumn(row: RowReader, { day }: CellDate): number[] {
  const dated = row.date('date');
  return dated?.day === day ? [dated.column] : [];
}

/** A row with a day and words, and nothing counted: an entry of a diary. */
function dayNote({ row, path }: EventContext, hasCount: boolean): EventLine[] {
  const when = row.date('date');
  const remarks = row.cells('remark');
  if (!when || hasCount || remarks.length === 0) return [];
  const text = remarks.map(({ text: words, as: { heading } }) => (isPlainRemark(heading) ? words : `${heading}: ${words}`)).join('; ');
  return note(row, path, when, text, [when.column, ...remarks.map(({ column }) => column)]);
}

/** Whether a heading says no more than that its cells are remarks. */
export function isPlainRemark(heading: string): boolean {
  return /^(?:remarks?|notes?|comments?|observations?|bemerkung(?:en)?|notiz(?:en)?|anmerkung(?:en)?|remarques?|commentaires?)\b/i.test(heading);
}
