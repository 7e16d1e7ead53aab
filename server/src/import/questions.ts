/** What must be asked before a sheet can be imported: no date and no number is guessed. */
import type { DateAsked } from './row-reader.ts';
import type { Answers, Counting } from './answers.ts';
import type { Mapping } from './mapping.ts';

export interface Question {
  readonly about: keyof Answers;
  readonly text: string;
  /** What can be answered, and what it means; none where it is a number. */
  readonly choices: readonly { readonly value: string; readonly says: string }[];
}

export function questionsOf(
  mapping: Mapping, headings: ReadonlyMap<'order' | 'year', string>, cells: readonly DateAsked[], counting: Counting | undefined,
): Question[] {
  const order = headings.get('order') ?? wordsOf(cells.find(({ asks }) => asks === 'order'));
  const year = headings.get('year') ?? wordsOf(cells.find(({ asks }) => asks === 'year'));
  const hasWeeks = mapping.weekDay === undefined && mapping.columns.some(({ week }) => week !== undefined);
  return [
    ...(order === undefined ? [] : [orderQuestion(order)]),
    ...(year === undefined ? [] : [{ about: 'year' as const, text: `“${year}” has no year. Which year is it?`, choices: [] }]),
    ...(hasWeeks ? [weekQuestion(mapping)] : []),
    ...(counting === undefined && order === undefined && year === undefined ? [countsQuestion] : []),
  ];
}

function wordsOf(asked: DateAsked | undefined): string | undefined {
  return asked && `${asked.cell} (row ${asked.row}, ${asked.heading})`;
}

function orderQuestion(example: string): Question {
  return {
    about: 'dates', text: `“${example}” can be read in two ways, and the sheet does not show which. Does the day come first, or the month?`,
    choices: [{ value: 'day-month', says: 'the day first: 3/4 is 3 April' }, { value: 'month-day', says: 'the month first: 3/4 is 4 March' }],
  };
}

function weekQuestion({ columns }: Mapping): Question {
  const { heading } = columns.find(({ week }) => week !== undefined)!;
  return {
    about: 'weekDay', text: `“${heading}” does not say on which day you counted. Which day of the week after sowing was it, from 1 to 7?`, choices: [],
  };
}

const countsQuestion: Question = {
  about: 'counts', text: 'The counts of the sheet can be read in two ways. Is a number what was new since the last count, or the total so far?',
  choices: [{ value: 'new', says: 'what was new each time' }, { value: 'total', says: 'the total so far' }],
};
