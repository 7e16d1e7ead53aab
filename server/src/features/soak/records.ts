/** The records of batches that are soaked alike, from what somebody answered; and what is wrong with the answers. */
import { stockNow } from '../../calendar/left.ts';
import type { Journal } from '../../journal/journal.ts';
import { printTime, type Moment } from '../../journal/moment.ts';
import type { Solution } from '../../journal/solutions.ts';
import { printQuantity, type Volume } from '../../model/quantity.ts';
import { volumeInMl } from '../../solutions/amounts.ts';
import { showVolume } from '../../solutions/display.ts';
import { strengthInPpm } from '../../solutions/strength.ts';
import type { Bench } from '../../solutions/tools.ts';
import { parse } from '../../syntax/parse.ts';
import { quantityOf } from '../../syntax/quantity-text.ts';
import { mixAnswer } from '../mix/answer.ts';
import { WATER } from './choices.ts';

/** As far as it has been asked by now; all but the names as typed. */
export interface SoakQuestion {
  /** Paths, in the order of their records. */
  readonly batches: readonly string[];
  /** A stock of the journal, or `water`. */
  readonly liquid?: string;
  /** Of what the seed lies in. Empty: that of the stock. */
  readonly strength?: string;
  /** For each batch. Empty: it is not said. */
  readonly amount?: string;
  /** Empty: no end is said. */
  readonly long?: string;
  /** One for all, or one for each with commas between. Empty: none is said. */
  readonly places?: string;
}

export type SoakField = 'strength' | 'amount' | 'long' | 'places';

export interface SoakReply {
  readonly problems: Partial<Readonly<Record<SoakField, string>>>;
  /** Where nothing is wrong and the liquid is known; without dates, for they stand below a `day` line. */
  readonly records: readonly string[];
}

type Problems = Partial<Record<SoakField, string>>;

/** What the seed lies in as a fact of its record, and the record that makes it up, if one is needed. */
interface Liquid {
  readonly fact: string;
  readonly made: readonly string[];
}

/** `now` tells the day, for what is left and still good, and the time of the soaks. */
export function soakRecords(
  question: SoakQuestion, journal: Journal, now: Moment, bench: Bench = 'laboratory',
): SoakReply {
  const problems: Problems = {};
  const { batches, liquid = WATER } = question;
  const long = question.long?.trim() ?? '';
  const places = placesOf(question.places ?? '', batches.length);
  const stock = journal.solution(liquid);
  const { fact, made } = stock ? drawnFrom(stock, question, journal, now, bench, problems) : { fact: liquid, made: [] };
  note(problems, 'long', long === '' ? undefined : problemOf(`soak X, water, ${long}`));
  note(problems, 'places', places === undefined
    ? `Write one place for all of them, or ${batches.length} with commas between.`
    : places.map(place => problemOf(`soak X, water${at(place)}`)).find(problem => problem !== undefined));
  if (Object.keys(problems).length > 0) return { problems, records: [] };
  const time = now.minutes === undefined ? '' : ` ${printTime(now.minutes)}`;
  const soaks = batches.map((path, i) => `soak ${path}${time}, ${fact}${long && `, ${long}`}${at(places?.[i] ?? '')}`);
  return { problems, records: [...made, ...soaks] };
}

function note(problems: Problems, field: SoakField, problem: string | undefined): void {
  if (problem !== undefined) problems[field] ??= problem;
}

/** The stock as it is, or a dilution of it for all batches together. */
function drawnFrom(
  stock: Solution, question: SoakQuestion, journal: Journal, now: Moment, bench: Bench, problems: Problems,
): Liquid {
  const { batches, strength = '', amount = '' } = question;
  const each = amount.trim() === '' ? undefined : volumeOf(amount, problems);
  // Twelve digits: parts of a millilitre have no exact binary number.
  const all = each && { ...each, value: Number((each.value * batches.length).toPrecision(12)) };
  if (strength.trim() === '' || isAsStrong(stock, strength, problems)) {
    note(problems, 'amount', all && shortText(stock, all, journal, now));
    return { fact: each ? `${stock.id} ${printQuantity(each)}` : stock.id, made: [] };
  }
  const none = { fact: '', made: [] };
  if (problems.strength !== undefined) return none;
  if (!each || !all) {
    note(problems, 'amount', 'Write how much each batch gets, such as 10 mL: the solution is made up for all of them.');
    return none;
  }
  const asked = { agent: stock.agent?.word, strength, volume: printQuantity(all), stock: stock.id };
  const { record, id, refusal } = mixAnswer(asked, journal, now.day, bench);
  if (refusal) note(problems, 'amount', [refusal.message, refusal.nearest[0]?.text].filter(text => text).join(' '));
  return record === undefined || id === undefined ? none : { fact: `${id} ${printQuantity(each)}`, made: [record] };
}

/** Why so much cannot be taken of a bottle; undefined where it can, and where nobody knows what is left. */
function shortText(stock: Solution, wanted: Volume, journal: Journal, now: Moment): string | undefined {
  const left = stockNow(stock, journal, now)?.left?.most;
  if (!left || volumeInMl(wanted).lte(left)) return undefined;
  return `It takes ${printQuantity(wanted)} of ${stock.id}, and ${showVolume(left).text} of it is left.`;
}

function volumeOf(text: string, problems: Problems): Volume | undefined {
  const volume = quantityOf('volume', text);
  if (!volume.ok) note(problems, 'amount', volume.message);
  return volume.ok ? volume.value : undefined;
}

/** Notes a strength that cannot be read, or that nobody can make of the stock. */
function isAsStrong({ id, agent, ppm: held }: Solution, text: string, problems: Problems): boolean {
  const strength = quantityOf('strength', text);
  if (!strength.ok) {
    note(problems, 'strength', strength.message);
    return false;
  }
  if (!agent || !held.ok) {
    note(problems, 'strength', `The strength of ${id} is unknown, so another cannot be made of it. Leave it empty.`);
    return false;
  }
  const wanted = strengthInPpm(strength.value, agent);
  if (!wanted.ok) {
    note(problems, 'strength', wanted.refusal.message);
    return false;
  }
  if (wanted.value.gt(held.value)) {
    note(problems, 'strength', `${id} is weaker than that. Write less, or leave it empty to use it as it is.`);
  }
  return wanted.value.equals(held.value);
}

/** A place for each; undefined where there are neither one nor as many as batches. */
function placesOf(text: string, many: number): string[] | undefined {
  const places = text.split(',').map(place => place.trim());
  if (places.length === 1) return Array.from({ length: many }, () => places[0]!);
  return places.length === many ? places : undefined;
}

function at(place: string): string {
  return place === '' ? '' : `, at ${place}`;
}

/** What a journal would say of a line. */
function problemOf(line: string): string | undefined {
  return parse(line).problems[0]?.message;
}
