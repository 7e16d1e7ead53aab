/**
 * The table of problems. Editor, command line, settings, documentation and quick fixes share it; every code has a
 * fixture under tests/ and a paragraph in syntaxes/README.md.
 */
import type { Span } from './record.ts';

export type Severity = 'error' | 'warning' | 'information' | 'hint';

export interface ProblemKind {
  readonly severity: Severity;
  /** What is wrong, with {names} to fill in. */
  readonly message: string;
  /** What to do about it, with the same names. */
  readonly advice: string;
}

const table = {
  'merge-conflict': ['error', 'A merge left two versions of these lines.', 'Keep the first, the second, or both. Until then only the first counts.'],
  'unknown-line': ['error', 'A line begins with a letter (a record), “#” (a comment) or a blank (a remark).', 'Begin it with a keyword, or put “#” or a blank before it.'],
  'unknown-keyword': ['error', '“{word}” is not a keyword.', '{suggestion}'],
  'missing-subject': ['error', '“{keyword}” must be followed by {what}.', 'For example: {example}'],
  'bad-id': ['error', '“{id}” cannot be {what}.', '{suggestion}'],
  'stray-text': ['error', '“{text}” does not belong here.', '{suggestion}'],
  'unknown-fact': ['error', '“{keyword}” does not take “{text}”.', '{suggestion}'],
  'repeated-fact': ['error', 'This line gives {fact} twice.', 'Keep one of the two.'],
  'missing-fact': ['error', '“{keyword}” needs {shape}.', 'For example: {example}'],
  'missing-agent': ['error', '“{written}” does not say of which agent.', 'Write the agent before it: {example}.'],
  'empty-fact': ['error', 'Nothing follows this comma.', 'Take it out, or write the fact.'],
  'bad-number': ['error', '“{written}” is not {expected}.', '{suggestion}'],
  'decimal-comma': ['error', '“{written}” has a comma inside a number.', '{suggestion}'],
  'bad-unit': ['error', '“{unit}” is not a unit {of}.', '{suggestion}'],
  'missing-unit': ['error', '“{written}” has no unit.', '{suggestion}'],
  'bad-value': ['error', '{fact} needs {expected}{instead}.', 'For example: {example}'],
  'impossible-date': ['error', 'There is no {written} in the calendar.', '{suggestion}'],
  'day-first-date': ['error', '“{written}” does not begin with the year.', 'Write the date as year-month-day: {readings}.'],
  'bad-date': ['error', '“{written}” is not a date.', '{suggestion}'],
  'bad-time': ['error', '“{written}” is not a time of day.', 'Write hours from 00 to 23 and minutes from 00 to 59: 19:30.'],
  'missing-date': ['error', 'This record has no date, and there is no “day” line above it.', 'Write its date after the subject, or a “day” line above.'],
  'unclosed-quote': ['error', 'This quotation mark is not closed.', 'Put a second " at the end of the text.'],
  'unknown-lot': ['error', 'No lot “{id}” is defined in this journal.', '{suggestion}'],
  'unknown-batch': ['error', 'No batch “{id}” has been split off.', '{suggestion}'],
  'unknown-stock': ['error', 'No stock “{id}” is defined in this journal.', '{suggestion}'],
  'unknown-regime': ['error', 'No regime “{id}” is defined in this journal.', '{suggestion}'],
  'unknown-agent': ['error', '“{word}” is neither an agent nor a stock of this journal.', '{suggestion}'],
  'unknown-id': ['error', 'Nothing named “{id}” is defined in this journal.', '{suggestion}'],
  'unknown-zone': ['error', '“{zone}” is no time zone of the IANA list.', 'Write a name such as Europe/Vienna or America/New_York.'],
  'duplicate-definition': ['error', '{what} “{id}” is already defined {place}.', 'Keep one of the two, or give one of them another name.'],
  'split-exceeds-seeds': ['error', 'This gives out {asked} seeds of {batch}, more than are left: {left} of {seeds}.', 'Give out fewer, or correct the number of seeds.'],
  'sown-exceeds-seeds': ['error', 'This sows {asked} seeds of {batch}, but only {left} are there to sow.', 'Sow fewer, or correct the number of seeds.'],
  'nothing-left': ['error', 'All seeds of {batch} were given out to {children}.', 'Write the record for one of these.'],
  'count-exceeds-sown': ['error', 'In {batch} {germinated} germinated, {rotted} rotted and {lost} lost make {sum}, more than the {tested}.', 'Correct a number; with = a number is the total so far, without it is what is new.'],
  'more-than-germinated': ['error', '{n} {what} in {batch} are more than the {germinated} that germinated.', 'Correct a number; a seedling that died or is leggy has germinated before.'],
  'total-falls': ['error', 'The total of {what} in {batch} falls from {before} to {now}.', 'A total (=) can only stay or rise; losses are counted as rotted, died or lost.'],
  'cut-does-not-add-up': ['error', 'The cut test of {batch} sorts {sum} seeds, but {left} had not germinated ({how}).', 'Count again, or correct the number that is wrong.'],
  'end-before-start': ['error', 'This ends {end}, before it begins {start}.', 'Correct the date or the time.'],
  'after-close': ['error', '{batch} was closed by “{keyword}” on {date}.', 'Correct a date, or take the record out; only note, photo and due may follow, and after a cut test what becomes of the seedlings.'],
  'count-in-future': ['error', 'This count is dated {date}, after today ({today}).', 'A count says what was seen: correct the date.'],
  'lift-without-soak': ['error', '{batch} is in no soak that it could be lifted from.', 'Correct the batch, the date or the time, or write the “soak”.'],
  'impossible-dilution': ['error', '{why}', 'Correct a volume, or the stock that it is made from.'],
  'total-below-parts': ['error', '{parts} {are} {sum} together, more than the {total} written as the total.', 'Correct a volume: one without a name is all of the liquid, water included.'],
  'stock-overdrawn': ['error', 'This takes {asked} of {stock}, but {left}.', 'Correct a volume, or the stock that it was taken from.'],
  'draw-before-made': ['error', 'This takes from {stock} on {date}, before it was made up on {made}.', 'Correct one of the two dates, or the stock.'],
  'soak-too-long': ['warning', '{batch} {lay} for {hours}; the limit is {limit} ({origin}).', '{suggestion}'],
  'lift-missing': ['warning', '{batch}: {how}.', '{suggestion}'],
  'dose-above-limit': ['warning', '{agent} {strength} is above the limit of {limit} ({origin}).', 'Too much hormone kills seed or makes weak, leggy seedlings: check the number, or change the limit.'],
  'above-solubility': ['warning', '{agent} {strength} is more than dissolves in water ({solubility}; {source}).', 'Check the number and its unit.'],
  'stock-expired': ['warning', '{stock} was good until {until} ({origin}); this takes from it {days} later.', 'Make up a fresh one: an old solution is weaker than its label. If you know that it keeps longer, write “keeps” on its record.'],
  'strength-of-stock': ['warning', '{stock} is {agent} {holds}; the {written} written beside it counts for nothing.', '{suggestion}'],
  'volume-missing': ['warning', 'The strength in the dish is unknown, because {name} is mixed there without a volume.', '{suggestion}'],
  'strengths-disagree': ['warning', '{agent} has two strengths here: {strengths}.', 'A strength without a volume is that of the whole liquid: keep the one that is true.'],
  'apply-exceeds-seedlings': ['warning', 'This is given to {asked} seedlings of {batch}, but there are {there} at most ({how}).', 'Correct the number, or write a “count” of what has come up.'],
  'strength-slip': ['warning', '{agent} {strength} looks like a slip of the unit.', '{suggestion}'],
  'nothing-held-back': ['warning', 'Every seed of {lot} is treated with {agent}; nothing is held back.', 'Keep a part untreated: if the dose harms, the seed is not all lost, and only a comparison tells whether it paid.'],
  'count-before-sowing': ['warning', 'This count of {batch} is dated {date}, {before}.', 'Correct a date, or write the “sow” record.'],
  'sown-before-collected': ['warning', '{batch} is dated {date}, before the seed was collected ({collected}).', 'Correct one of the two dates.'],
  'slot-taken': ['warning', '{batch} is put at “{place}”, where {other} lies{since}.', 'Two batches in one slot cannot be told apart: correct a place, or write the “move” that is missing.'],
  'no-control': ['hint', '{batch} is treated, but no untreated batch of {lot} was sown to compare it with.', 'Sow an untreated part beside it; without one no record can tell whether the treatment paid.'],
  'ready-untreated': ['hint', 'Untreated {plant} came up readily before: {x} of {n} seeds of {batches} ({percent} %), half of the seed by day {day}.', 'It may need no {agent}: if you treat it, keep untreated seed beside it.'],
  'split-too-small': ['hint', 'With {treated} treated and {untreated} untreated seeds not even 10 % can be told from 90 % (Fisher’s exact test, power 80 %).', '{suggestion}'],
  'beyond-guides': ['hint', '{what} than every guide for {plant}: {guides}.', 'Check the number. If it is meant, keep a part at what the guides say, to compare.'],
  'strength-missing': ['hint', 'The strength of {agent} is not written.', '{suggestion}'],
  'stock-near-expiry': ['hint', '{stock} is good until {until}, {days} from now ({origin}).', 'Use it up, or make up a fresh one.'],
  'no-recent-count': ['hint', 'No count of {batch} for {days} days.', 'Look at it and write a count (0 is a count too), or close the batch with “cut” or “discard”.'],
} as const satisfies Record<string, readonly [Severity, string, string]>;

export type ProblemCode = keyof typeof table;

export const problemKinds = Object.fromEntries(
  Object.entries(table).map(([code, [severity, message, advice]]) => [code, { severity, message, advice }]),
) as Readonly<Record<ProblemCode, ProblemKind>>;

/** A change within the problem's line that would mend it. */
export interface Fix {
  readonly title: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface Problem extends Span {
  readonly code: ProblemCode;
  /** What is wrong and what to do, in plain words. */
  readonly message: string;
  readonly fixes: readonly Fix[];
}

/**
 * A problem from the table, its message filled in. A name that the message needs and `values` lacks stays in braces;
 * a test holds that this never happens.
 */
export function problem(
  code: ProblemCode,
  { start, end }: Span,
  values: Readonly<Record<string, string | number>> = {},
  fixes: readonly Fix[] = [],
): Problem {
  const { message, advice } = problemKinds[code];
  const fill = (text: string) => text.replace(/\{(\w+)\}/g, (all, name: string) => String(values[name] ?? all));
  return { code, start, end, message: `${fill(message)} ${fill(advice)}`.trim(), fixes };
}
