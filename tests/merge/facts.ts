/** What a journal file says, read by the journal itself and not by the merge: the measure that the merge is held to. */
import { hasUnreadDate, isDayLine, JournalFile, type JournalLine } from '../../server/src/journal/journal-file.ts';
import { keywords } from '../../server/src/model/keywords.ts';

/** How often each thing stands in a text. */
export type Tally = ReadonlyMap<string, number>;

/** Records with their days, however these are written; lines that cannot be read, with the day they stand below. */
export function factsOf(text: string): Tally {
  const file = new JournalFile('journal.germ', text.replace(/^\uFEFF/, ''));
  return tallyOf([...file.text].flatMap(line => factOf(file, line)));
}

function factOf(file: JournalFile, line: JournalLine): string[] {
  const { record, kind } = line.content;
  if (isDayLine(line) || (kind !== 'record' && kind !== 'unread')) return [];
  if (!record) return [/^\p{L}/u.test(line.text) ? `${line.text} @ ${aboveOf(file, line)}` : line.text];
  if (keywords[record.keyword].dated === 'no') return [line.text];
  const { date } = record;
  const words = date ? line.text.slice(0, date.start).trimEnd() + line.text.slice(date.end) : line.text;
  const day = file.dayOf(line) ?? (hasUnreadDate(line) ? 'its own day' : aboveOf(file, line));
  return [`${words.replaceAll(/\s+/g, ' ').trim()} @ ${day}`];
}

/** The day above; the `day` line itself where it cannot be read. */
function aboveOf(file: JournalFile, line: JournalLine): string {
  const above = [...file.text].slice(0, line.number).findLast(isDayLine);
  return above ? String(above.content.record?.date?.day ?? above.text) : 'no day';
}

export type Side = 'ours' | 'theirs';

/** The merged text where each conflict is resolved to a side: all to one, or each, from the first, to its own. */
export function resolved(text: string, sides: Side | readonly Side[]): string {
  const kept: string[] = [];
  let side: Side | undefined;
  let to: Side = 'ours';
  let n = 0;
  for (const line of text.split('\n')) {
    if (line.startsWith('<<<<<<< ')) [side, to] = ['ours', typeof sides === 'string' ? sides : sides[n++ % sides.length]!];
    else if (side === 'ours' && line.trimEnd() === '=======') side = 'theirs';
    else if (side === 'theirs' && line.startsWith('>>>>>>> ')) side = undefined;
    else if (side === undefined || side === to) kept.push(line);
  }
  return kept.join('\n');
}

/** Each thing as often as the tally that has it most often. */
export function mostOf(a: Tally, b: Tally): Tally {
  return new Map([...a.keys(), ...b.keys()].map(thing => [thing, Math.max(countIn(a, thing), countIn(b, thing))]));
}

export function remarksOf(text: string): Tally {
  return linesOf('remark', text);
}

export function commentsOf(text: string): Tally {
  return linesOf('comment', text);
}

function linesOf(kind: 'remark' | 'comment', text: string): Tally {
  const lines = [...new JournalFile('journal.germ', text).text];
  return tallyOf(lines.filter(({ content }) => content.kind === kind).map(line => line.text));
}

function tallyOf(things: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const thing of things) counts.set(thing, (counts.get(thing) ?? 0) + 1);
  return counts;
}

function countIn(tally: Tally, thing: string): number {
  return tally.get(thing) ?? 0;
}

/**
 * What is wrong with a merged tally. What one side alone changed is as that side has it; what both added, once; what
 * both took out, is gone as often as one of them, or both together, took it out.
 */
export function faultsOf(base: Tally, ours: Tally, theirs: Tally, merged: Tally): string[] {
  return [...new Set([...base.keys(), ...ours.keys(), ...theirs.keys(), ...merged.keys()])].flatMap(thing => {
    const [b, o, t, m] = [countIn(base, thing), countIn(ours, thing), countIn(theirs, thing), countIn(merged, thing)];
    const [least, most] = o > b && t > b ? [Math.max(o, t), Math.max(o, t)]
      : o < b && t < b ? [Math.max(0, o + t - b), Math.min(o, t)] : [o + t - b, o + t - b];
    return m >= least && m <= most ? [] : [`${thing}: ${b} in base, ${o} in ours, ${t} in theirs, ${m} merged`];
  });
}

/** What the merged text lacks: things that a side added, or that both left alone. */
export function lostFrom(base: Tally, ours: Tally, theirs: Tally, merged: Tally): string[] {
  return [...new Set([...base.keys(), ...ours.keys(), ...theirs.keys()])].filter(thing => {
    const [b, o, t, m] = [countIn(base, thing), countIn(ours, thing), countIn(theirs, thing), countIn(merged, thing)];
    return m < (o >= b && t >= b ? Math.max(o, t) : Math.max(0, o + t - b));
  });
}
