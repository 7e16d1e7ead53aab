/** Lines that begin with no keyword: what was probably meant, and how to write it. */
import { keywords, type Keyword } from '../model/keywords.ts';
import { noneUnread, type JournalRecord, type Span } from '../model/record.ts';
import { withoutEnd } from '../text/without-end.ts';
import type { Piece } from './grammar.ts';
import { keywordOfForm } from './keyword-forms.ts';
import { nearest } from './nearest.ts';
import { insertion, replacement, UNDATED, type LineReader } from './reader.ts';

/** Words that growers begin a line with. */
const otherWords: Partial<Record<Keyword, readonly string[]>> = {
  day: ['date'], lot: ['seed', 'seeds', 'packet', 'harvest', 'batch'], split: ['divide', 'part', 'parts'],
  soak: ['steep', 'treat', 'treated', 'treatment'], lift: ['out', 'drain', 'stop'],
  scarify: ['nick', 'nicked', 'sand', 'sanded', 'file', 'filed'], sow: ['plant', 'planted', 'seeded'],
  chill: ['cold', 'cool', 'stratify', 'stratified', 'stratification', 'fridge'], warm: ['hot', 'heat'],
  move: ['shift', 'transfer', 'place'], count: ['germinated', 'germination', 'check', 'checked', 'sprouted', 'total'],
  plant: ['planted'], give: ['gave', 'given'], sell: ['sold'], send: ['sent'], lose: ['lost', 'spilled', 'spilt'],
  pot: ['prick', 'pricked', 'repot', 'transplant', 'transplanted'], discard: ['remove', 'removed', 'throw', 'threw', 'end', 'close'],
  judge: ['decide', 'verdict', 'evaluate'], note: ['remark', 'comment', 'diary', 'observation'], photo: ['picture', 'image', 'pic'],
  due: ['remind', 'reminder', 'todo', 'task'], stock: ['solution', 'mix', 'bottle'], dilute: ['dilution'], left: ['rest', 'remaining', 'remains', 'weigh', 'weighed', 'measured'],
  guide: ['book'], limit: ['max', 'maximum'], agent: ['hormone', 'chemical'], zone: ['timezone'],
};

const byOtherWord = new Map((Object.keys(otherWords) as Keyword[]).flatMap(keyword =>
  otherWords[keyword]!.map(word => [word, keyword] as const)));

const date = /^(?:\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4})(?![\w/.-])/;
const bullet = /^[-*•–+][ \t]+(?=(\p{L}+))/u;

/** Reports a line whose first character begins none. A date alone is read as a `day` whose date is not known. */
export function reportLine(reader: LineReader, start: number, first: number): JournalRecord | undefined {
  const rest = reader.line.slice(start);
  const found = date.exec(rest);
  if (found) {
    const span = { start, end: start + found[0].length };
    reader.report('unknown-line', span, { sign: found[0], suggestion: 'Write “day” before a date.' }, [insertion(start, 'day ', 'Write “day” before it')]);
    reader.add(UNDATED);
    return unreadDay(span);
  }
  const sign = { start, end: start + (first > 0xffff ? 2 : 1) };
  const mark = bullet.exec(rest);
  if (mark && keywordMeantBy(mark[1]!) === mark[1]!.toLowerCase()) {
    reader.report('unknown-line', sign, { sign: reader.shown(sign), suggestion: 'Begin with the keyword.' }, [
      { title: `Take out “${reader.shown(sign)}”`, start, end: start + mark[0].length, text: '' },
    ]);
    return undefined;
  }
  reader.report('unknown-line', sign, {
    sign: reader.shown(sign),
    suggestion: 'Begin with a keyword such as “count”, with “#” for a comment, or with a blank for a remark.',
  }, [insertion(start, '# ', 'Make it a comment'), insertion(start, '  ', 'Make it a remark')]);
  return undefined;
}

/** Reports a first word that is no keyword. A word for `day` with a date gives a `day` whose date is not known. */
export function reportKeyword(reader: LineReader, span: Span, head: readonly Piece[]): JournalRecord | undefined {
  const word = reader.slice(span);
  const next = head.find(({ start }) => start >= span.end);
  const turned = next?.kind === 'word' && Object.hasOwn(keywords, next.text.toLowerCase()) ? next : undefined;
  const near = turned ? undefined : keywordMeantBy(word);
  const remark = insertion(span.start, '  ', 'Make it a remark');
  const suggestion = turned ? `Begin with “${turned.text}”.` : near ? `Did you mean “${near}”?`
    : 'Begin with a keyword such as “count”, with “#” for a comment, or with a blank for a remark.';
  const fixes = turned
    ? [{ title: `Put “${turned.text}” first`, start: span.start, end: turned.end, text: `${turned.text} ${word}` }, remark]
    : near ? [replacement(span, near), remark] : [remark];
  reader.report('unknown-keyword', span, { word: reader.shown(span), suggestion }, fixes);
  if (near !== 'day' || !next || !/^\d/.test(reader.slice(next))) return undefined;
  reader.add(UNDATED);
  return unreadDay(span);
}

function keywordMeantBy(word: string): Keyword | undefined {
  const plain = withoutEnd(word.toLowerCase(), ':.!');
  const near = nearest(word, Object.keys(keywords)) as Keyword | undefined;
  return byOtherWord.get(plain) ?? keywordOfForm(plain) ?? near;
}

function unreadDay(keywordSpan: Span): JournalRecord {
  return {
    keyword: 'day', keywordSpan, subject: undefined, plant: undefined, date: undefined, time: undefined, facts: [],
    unread: noneUnread, broken: true,
  };
}
