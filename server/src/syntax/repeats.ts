/**
 * Reads lines as `parse` does, but only once what journals repeat: `count VER-24/A`, `, 3`, `, 24 h, at jar 2`. Lines
 * that say the same share what was read of it, which spares time and memory.
 */
import { keywords, type Keyword } from '../model/keywords.ts';
import { noneUnread, type Fact, type JournalRecord } from '../model/record.ts';
import { parse, type Reading } from './parse.ts';

/** So many heads and so many tails are kept before the older ones are let go. */
const MOST = 8192;

type Head = Omit<JournalRecord, 'facts' | 'unread' | 'broken'>;

const none: Reading['problems'] = [];

export class Repeats {
  /** By what stands before the first comma. */
  readonly #heads = new Recent<Head>();
  /** The facts, by the column of the first comma, the keyword, and all from the comma on. */
  readonly #tails = new Recent<readonly Fact[]>();

  /** The same as `parse(line)`. */
  read(line: string): Reading {
    const comma = partingComma(line);
    if (comma < 0) return parse(line);
    const head = this.#heads.get(line.slice(0, comma));
    const facts = head && this.#tails.get(tailKey(head.keyword, line, comma));
    return head && facts ? readingOf(head, facts) : this.#readNew(line, comma, head);
  }

  #readNew(line: string, comma: number, known: Head | undefined): Reading {
    // A part of a line would keep the whole text alive that the line was cut from.
    const own = ` ${line}`.slice(1);
    const reading = parse(own);
    const { record, problems } = reading;
    if (!record || problems.length > 0 || !isOfTwoParts(record.keyword)) return reading;
    const { keyword, keywordSpan, subject, plant, date, time, facts } = record;
    const head = known ?? { keyword, keywordSpan, subject, plant, date, time };
    if (!known) this.#heads.set(own.slice(0, comma), head);
    const key = tailKey(keyword, own, comma);
    const same = this.#tails.get(key);
    if (!same) this.#tails.set(key, facts);
    return readingOf(head, same ?? facts);
  }
}

function readingOf({ keyword, keywordSpan, subject, plant, date, time }: Head, facts: readonly Fact[]): Reading {
  const record = { keyword, keywordSpan, subject, plant, date, time, facts, unread: noneUnread, broken: false };
  return { kind: 'record', record, problems: none };
}

/**
 * The comma that ends the head, whatever stands on either side of it; -1 where that is not sure. A comma within
 * quotation marks ends none, nor does one that may be part of a number.
 */
function partingComma(line: string): number {
  const comma = line.indexOf(',');
  if (comma < 0 || line.charCodeAt(comma + 1) !== 32) return -1;
  const quote = line.indexOf('"');
  return quote >= 0 && quote < comma ? -1 : comma;
}

/**
 * Whether the facts of a record mean the same behind any head without a problem. What a soak is in may be a batch of
 * its own lot, and what a limit limits says how.
 */
function isOfTwoParts(keyword: Keyword): boolean {
  const { subject, facts } = keywords[keyword];
  return subject !== 'limited' && !(subject === 'batch' && facts.some(({ type }) => type === 'substance'));
}

function tailKey(keyword: Keyword, line: string, comma: number): string {
  return `${comma}${keyword}${line.slice(comma)}`;
}

/** What was asked for or set of late, at most twice `MOST` of them. */
class Recent<Value> {
  #now = new Map<string, Value>();
  #before = new Map<string, Value>();

  get(key: string): Value | undefined {
    const found = this.#now.get(key);
    if (found !== undefined) return found;
    const older = this.#before.get(key);
    if (older !== undefined) this.set(key, older);
    return older;
  }

  set(key: string, value: Value): void {
    if (this.#now.size >= MOST) {
      this.#before = this.#now;
      this.#now = new Map();
    }
    this.#now.set(key, value);
  }
}
