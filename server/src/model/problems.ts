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
  'unknown-line': ['error', '“{sign}” cannot begin a line.', '{suggestion}'],
  'unknown-keyword': ['error', '“{word}” is not a keyword.', '{suggestion}'],
  'missing-subject': ['error', '“{keyword}” needs {what} after it.', '{suggestion}'],
  'bad-id': ['error', '“{id}” cannot be {what}.', '{suggestion}'],
  'stray-text': ['error', '“{text}” does not belong here.', '{suggestion}'],
  'unknown-fact': ['error', '“{keyword}” does not take “{text}”.', '{suggestion}'],
  'repeated-fact': ['error', 'This line gives {fact} twice.', 'Keep one of the two.'],
  'missing-fact': ['error', '“{keyword}” needs {shape}.', 'For example: {example}'],
  'missing-agent': ['error', '“{written}” does not name its agent.', 'Write the agent first: “{example}”.'],
  'empty-fact': ['error', 'Nothing follows this comma.', 'Take it out, or write what you meant.'],
  'bad-number': ['error', '“{written}” is not {expected}.', '{suggestion}'],
  'decimal-comma': ['error', '“{written}” has a comma inside a number.', '{suggestion}'],
  'bad-unit': ['error', '“{unit}” is not a unit {of}.', '{suggestion}'],
  'missing-unit': ['error', '“{written}” has no unit.', '{suggestion}'],
  'bad-value': ['error', '{fact} needs {expected}{instead}.', 'For example: {example}'],
  'impossible-date': ['error', 'There is no {written} in the calendar.', '{suggestion}'],
  'day-first-date': ['error', '“{written}” does not begin with a whole year.', 'Write year, month and day: {readings}.'],
  'bad-date': ['error', '“{written}” is not a date.', '{suggestion}'],
  'bad-time': ['error', '“{written}” is not a time of day.', '{suggestion}'],
  'missing-date': ['error', '{which}, and there is no “day” line above {it}.', 'Write a date before the first comma, or a “day” line above.'],
  'unclosed-quote': ['error', 'This quotation mark is not closed.', 'Put a second " at the end of the text.'],
  'unknown-lot': ['error', 'No lot “{id}” is defined in this journal{more}.', '{suggestion}'],
  'unknown-batch': ['error', 'No “split” gives out a batch “{id}”{more}.', '{suggestion}'],
  'unknown-stock': ['error', 'No stock “{id}” is defined in this journal{more}.', '{suggestion}'],
  'unknown-packet': ['error', 'No packet of powder “{id}” is defined in this journal{more}.', '{suggestion}'],
  'unknown-regime': ['error', 'No regime “{id}” is defined in this journal{more}.', '{suggestion}'],
  'unknown-agent': ['error', '“{word}” is neither an agent nor a stock of this journal{more}.', '{suggestion}'],
  'unknown-id': ['error', 'Nothing in this journal is called “{id}”{more}.', '{suggestion}'],
  'unknown-zone': ['error', '“{zone}” is not a time zone of the IANA list.', '{suggestion}'],
  'replaces-itself': ['error', '{chain}.', 'Correct the id, or take out “replaces {older}”.'],
  'duplicate-definition': ['error', '{what} “{id}” is already defined {place}.', 'Keep one of the two, or rename one.'],
  'split-exceeds-seeds': ['error', 'This {takes} {asked} of {batch}, but {left} left.', 'Give out fewer, or correct the number of seeds.'],
  'sown-exceeds-seeds': ['error', 'This sows {asked} of {batch}, but {left} left to sow.', 'Sow fewer, or correct the number of seeds.'],
  'nothing-left': ['error', 'All seeds of {batch} were split off into {children}.', 'Write this record for one of those.'],
  'count-exceeds-sown': ['error', 'In {batch} {germinated} germinated, {rotted} rotted and {lost} lost make {sum}, more than the {tested}.', '{suggestion}'],
  'more-than-germinated': ['error', '{n} {what} in {batch} {are} more than the {germinated} that germinated.', 'Correct a number. A seedling that died or is leggy must have germinated first.'],
  'total-falls': ['error', 'The total of {what} in {batch} falls from {before} to {now}.', 'A total (“=”) cannot go down. Count losses as rotted, died or lost.'],
  'cut-does-not-add-up': ['error', 'The cut test of {batch} counts {sum}, but {left} had not germinated ({how}).', 'Count again, or correct the wrong number.'],
  'end-before-start': ['error', 'This ends {end}, before it begins {start}.', 'Correct the date or the time.'],
  'after-close': ['error', '{batch} was closed by “{keyword}” on {date}.', 'Correct a date, or take this record out. Afterwards you can only write “note”, “photo” and “due”, and after a cut test what becomes of the seedlings.'],
  'count-in-future': ['error', 'This {what} is dated {date}, after today ({today}).', 'Correct the date: it says what you saw.'],
  'lift-without-soak': ['error', '{batch} is not in a soak at that time.', 'Correct the batch, the date or the time, or write the “soak”.'],
  'impossible-dilution': ['error', '{why}', 'Correct a volume, or the stock that you dilute.'],
  'total-below-parts': ['error', '{parts} {are} more than the {total} written as the total.', 'Correct a volume: one without a name is all of the liquid, water included.'],
  'stock-overdrawn': ['error', 'This takes {asked} of {stock}, but {left}.', 'Correct an amount, or the name of what you took it from.'],
  'draw-before-made': ['error', 'This {does} {stock} on {date}, but {what} on {made}.', 'Correct one of the two dates, or the stock.'],
  'powder-by-volume': ['error', '“{packet}” is a packet of powder, so you cannot take {volume} of it.', 'Write the mass that you took, or name the stock that you made from it.'],
  'left-in-wrong-unit': ['error', '{stock} is {what}, so {written} cannot be left in it.', 'Write {how}.'],
  'more-left-than-possible': ['warning', '{written} cannot be left of {stock}: {most}.', 'Correct a number, or the record of what was made or taken.'],
  'soak-too-long': ['warning', '{batch} {lay} for {hours}; the limit is {limit} ({origin}).', '{suggestion}'],
  'lift-missing': ['warning', '{batch}: {how}.', '{suggestion}'],
  'dose-above-limit': ['warning', '{agent} {strength} is above the limit of {limit} ({origin}).', 'Too strong a dose kills seed or makes weak, leggy seedlings. Check the number, or change the limit.'],
  'limit-twice': ['warning', 'There are two limits of {what}: this one, {limit}, counts, and {other} {place} does not.', 'Keep one of them. A limit has no day, so it holds for the whole journal.'],
  'above-solubility': ['warning', '{agent} {strength} is more than dissolves in water ({solubility}; {source}).', 'Check the number and its unit.'],
  'stock-expired': ['warning', '{stock} was good until {until} ({origin}); this takes from it {days} later.', 'Make up a fresh one: an old solution is weaker than its label. If you know that it keeps longer, write “keeps” on its record.'],
  'taken-after-empty': ['warning', 'This {does} {stock} on {date}, but a note of {emptied} says that it is gone.', 'Correct a date or the name, or change the note.'],
  'strength-of-stock': ['warning', '{stock} holds {agent} {holds}, but {written} is written beside it, so the strength here is unclear.', '{suggestion}'],
  'dangerous-together': ['warning', '{what}: together they give off {danger}.', 'Never mix bleach with acid, alcohol, peroxide or ammonia. Rinse the seed well in between, and write the rinse as a soak in water.'],
  'disinfectant-too-long': ['warning', 'Seed is {hours} in {agent}; {limit} at most is common practice, no source.', 'A disinfectant kills seed too. Lift the seed, rinse it with water, and write “lift”.'],
  'unit-slip': ['warning', '{written} {what}.', '{suggestion}'],
  'volume-missing': ['warning', 'The strength in the dish is unknown, because {name} is mixed there without a volume.', '{suggestion}'],
  'strengths-disagree': ['warning', '{agent} has two strengths here: {strengths}.', 'A strength without a volume is that of the whole liquid: keep the one that is true.'],
  'apply-exceeds-seedlings': ['warning', 'This is given to {asked} of {batch}, but there are at most {there} ({how}).', 'Correct the number, or write a “count” of what has come up.'],
  'strength-slip': ['warning', '{agent} {strength} is far from what growers use, so the unit is probably wrong.', '{suggestion}'],
  'nothing-held-back': ['warning', 'Every seed of {lot} is treated with {agent}; none is held back.', 'Keep some untreated. You still have seed if the dose harms, and only a comparison shows whether it helped.'],
  'count-before-sowing': ['warning', 'This count of {batch} is dated {date}, {before}.', 'Correct a date, or write the “sow” record.'],
  'sown-before-collected': ['warning', '{batch} is dated {date}, before the seed was collected ({collected}).', 'Correct one of the two dates.'],
  'slot-taken': ['warning', '{batch} is put at “{place}”, but {other} is there{since}.', 'You cannot tell two batches in one slot apart. Correct a place, or write the missing “move”.'],
  'far-ahead': ['warning', '“{keyword}” of {batch} is dated {date}, {days} days from now.', '{suggestion}'],
  'year-slip': ['warning', '{date} is out of order between {before} and {after}.', 'Is the year right? It may be {meant}.'],
  'not-beforehand': ['warning', 'This “judge” of {batch} does not count: {why}.', '{suggestion}'],
  'total-as-new': ['warning', '{what}', '{suggestion}'],
  'no-control': ['hint', '{batch} is treated, but no untreated batch of {lot} was sown to compare it with.', 'Sow an untreated part beside it: only a comparison shows whether the treatment helped.'],
  'ready-untreated': ['hint', 'Untreated {plant} germinated readily before: {x} of {n} seeds of {batches} ({percent} %), half of the seed by day {day}.', 'It may need no {agent}. If you treat it, keep untreated seed beside it.'],
  'split-too-small': ['hint', 'With {treated} treated and {untreated} untreated seeds, no verdict is likely even if 10 % germinate untreated and 90 % treated.', '{suggestion}'],
  'beyond-guides': ['hint', '{what} than every guide for {plant}: {guides}.', 'Check the number. If you mean it, treat some of the seed at the guide’s dose too.'],
  'strength-missing': ['hint', 'The strength of {agent} is missing.', '{suggestion}'],
  'stock-near-expiry': ['hint', '{stock} is good until {until}, {days} from now ({origin}).', 'Use it up, or make a fresh one.'],
  'look-alike': ['hint', '“{name}” {how}{more}.', 'Write it in the same way everywhere: what you cannot see, you cannot find.'],
  'not-counted': ['hint', 'This count has no number yet.', 'Write what you saw, even if it is 0. Until then it does not count as a look, and {batch} stays due.'],
  'no-recent-count': ['hint', '{batch} has not been counted for {days} days.', 'Look at it and write a count, even if it is 0, or close the batch with “cut” or “discard”.'],
} as const satisfies Record<string, readonly [Severity, string, string]>;

export type ProblemCode = keyof typeof table;

export const problemKinds = Object.fromEntries(
  Object.entries(table).map(([code, [severity, message, advice]]) => [code, { severity, message, advice }]),
) as Readonly<Record<ProblemCode, ProblemKind>>;

/** A change within the problem's line that would fix it. */
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
