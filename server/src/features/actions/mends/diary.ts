/** A line of a diary that begins with a date: a record where it can surely be read, the rest as a remark. */
import { readCellDate } from '../../../import/dates.ts';
import { rootOf } from '../../../journal/mentions.ts';
import type { Journal } from '../../../journal/journal.ts';
import type { JournalLine } from '../../../journal/journal-file.ts';
import { isoOf, type Day } from '../../../model/day.ts';
import { factsOf } from '../../../model/record.ts';
import { parse } from '../../../syntax/parse.ts';
import { shown } from '../../../syntax/reader.ts';
import { withoutEnd } from '../../../text/without-end.ts';
import { lineEndAt } from '../below.ts';
import { replace, type Mend, type MendContext } from './mend.ts';

interface DatedWords {
  readonly day: Day;
  readonly words: string;
}

/** Words of a date that may stand before the text: `Thu 12 Feb 2026`. */
const LONGEST_DATE = 4;
/** What may stand between the date and the words. */
const DATE_SIGNS = ',:;–—-';

/** The date at the beginning, and what follows; undefined where there is none, or one that may be two. */
function datedWords(text: string): DatedWords | undefined {
  const parts = text.trim().split(/\s+/);
  for (let n = Math.min(LONGEST_DATE, parts.length - 1); n > 0; n--) {
    const reading = readCellDate(withoutEnd(parts.slice(0, n).join(' '), DATE_SIGNS), {});
    if (!reading || 'asks' in reading || reading.time !== undefined) continue;
    return { day: reading.day, words: parts.slice(n).join(' ').replace(/^[:;,–—-]+\s*/, '') };
  }
  return undefined;
}

/** The one lot or batch that the words name; undefined where they name none, or several. */
function batchIn(words: string, journal: Journal): string | undefined {
  const named = new Set(words.split(/[\s,;:()]+/).map(word => withoutEnd(word, '.!?'))
    .filter(word => word !== '' && journal.lot(rootOf(word))?.batches.has(word)));
  const [only] = named;
  return named.size === 1 ? only : undefined;
}

const spoken: Readonly<Record<string, string>> = {
  germinated: 'germinated', sprouted: 'germinated', up: 'emerged', emerged: 'emerged', rotted: 'rotted', rotten: 'rotted',
  died: 'died', lost: 'lost',
};
const counts = new RegExp(String.raw`(?<![\w.,/=-])(\d{1,6}) (${Object.keys(spoken).join('|')})\b`, 'gi');
const sown = /\b(?:sowed|sown|sow) (?:(\d{1,6})(?: seeds?\b)?)/gi;

interface Read {
  readonly record: string;
  /** The words for a remark; '' where the record says them all. */
  readonly rest: string;
  /** What the numbers are taken for, where they may be either. */
  readonly as?: string;
}

/** What a number of a count is: what was new, or the total so far. The same as long as nothing was counted before. */
function countsRead(id: string, { day, words }: DatedWords, journal: Journal): Read[] {
  const found = [...words.matchAll(counts)];
  const kinds = found.map(([, , word = '']) => spoken[word.toLowerCase()]!);
  if (found.length === 0 || new Set(kinds).size < kinds.length) return [];
  const before = journal.mentionsOf(rootOf(id)).some(({ record, moment }) => record.subject?.text === id
    && moment !== undefined && moment.day <= day && factsOf(record, 'count').some(({ n }) => n.value > 0));
  const readAs = (sign: string): string =>
    `count ${id} ${isoOf(day)}, ${found.map(([, n], i) => `${sign}${Number(n)} ${kinds[i]!}`).join(', ')}`;
  const rest = saysMore(words.replaceAll(counts, ' '), id) ? words : '';
  return before
    ? [{ record: readAs(''), rest, as: 'new since the last count' }, { record: readAs('='), rest, as: 'the total so far' }]
    : [{ record: readAs(''), rest }];
}

function sowingRead(id: string, { day, words }: DatedWords): Read[] {
  const found = [...words.matchAll(sown)];
  return found.length !== 1 ? [] : [{
    record: `sow ${id} ${isoOf(day)}, ${Number(found[0]![1])} seeds`, rest: saysMore(words.replace(found[0]![0], ' '), id) ? words : '',
  }];
}

/** Whether words are left besides the id. */
function saysMore(words: string, id: string): boolean {
  return /[^\s,;:.–—-]/.test(words.replace(id, ' '));
}

/** The records that a dated line can be; and, where no record holds it, a remark or a comment. */
export function datedLine(line: JournalLine, { journal }: MendContext): Mend[] {
  const dated = datedWords(line.text);
  if (!dated || dated.words === '') return [];
  const id = batchIn(dated.words, journal);
  const text = line.text.trim();
  const whole = { start: 0, end: line.text.length };
  const put = (title: string, written: string): Mend => ({ title, edits: [replace(line, whole, written)] });
  if (id === undefined) return [put('Make it a remark', `  ${text}`), put('Make it a comment', `# ${text}`)];
  const [events, sowings] = [countsRead(id, dated, journal), sowingRead(id, dated)];
  // Of a line that tells of both, a note loses nothing.
  const read = events.length > 0 && sowings.length > 0 ? [] : [...events, ...sowings];
  const note = { record: `note ${id} ${isoOf(dated.day)}, ${dated.words}`, rest: '' };
  return [...read, note].filter(({ record }) => parse(record).problems.length === 0).map(each => {
    const as = 'as' in each && each.as !== undefined ? `: ${each.as}` : '';
    const rest = each.rest === '' ? '' : `${lineEndAt(line)}  ${each.rest}`;
    return put(`Write “${shown(each.record)}”${as}`, `${each.record}${rest}`);
  });
}
