/** The records of a lot that is over put into a file of their own, out of the way. */
import { counted } from '../../model/counted.ts';
import type { Journal } from '../../journal/journal.ts';
import { isDayLine, type JournalLine, type JournalText } from '../../journal/journal-file.ts';
import type { Entry, Lot } from '../../journal/life.ts';
import { tellsOf } from '../../journal/mentions.ts';
import { closedPaths } from '../closed-paths.ts';
import type { Action, ActionEdit } from './action.ts';
import { lineEndAt, withoutLines } from './below.ts';
import { writeDate } from './own-date.ts';

const ARCHIVE = 'archive.germ';

export interface MoveAction extends Action {
  /** A file that is not there yet and that the edits write into. */
  readonly creates: string | undefined;
}

/**
 * All records of a lot, with the remarks below them, go to `archive.germ` beside the file of the lot, in the order of
 * the journal and each with its own date. A `day` line with nothing left below it goes too. Undefined for a lot of
 * which something can still come, of which a record cannot be read in full, or is in that file already.
 */
export function archiveAction(lot: Lot, journal: Journal): MoveAction | undefined {
  const { id, definition, strays, twice } = lot;
  const isClear = strays.length === 0 && twice.length === 0 && journal.definitionsOf(id).length === 1;
  if (!isClear || !closedPaths(lot).has(id)) return undefined;
  const archive = beside(definition.line.store.name);
  const entries = journal.mentionsOf(id).filter(({ record }) => tellsOf(record, id));
  if (!entries.every(entry => isMovable(entry, archive))) return undefined;
  const blocks = entries.map(({ line }) => withRemarks(line));
  const records = counted(entries.length, 'record');
  const written = entries.flatMap((entry, n) => [datedText(entry), ...blocks[n]!.slice(1).map(({ text }) => text)]);
  return {
    title: `Move ${id}, which is finished, to ${ARCHIVE} (${records})`,
    edits: [...takenOut(blocks.flat()), placed(journal, archive, written, lineEndAt(definition.line))],
    creates: journal.files.has(archive) ? undefined : archive,
  };
}

/** The file of that name in the same folder. */
function beside(name: string): string {
  return name.slice(0, Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1) + ARCHIVE;
}

function isMovable({ line, record, moment }: Entry, archive: string): boolean {
  const { name } = line.store;
  const needsDate = record.keyword !== 'lot' && record.keyword !== 'split';
  // The path of a picture begins at the file that names it.
  const fits = record.keyword !== 'photo' || beside(name) === archive;
  return name !== archive && fits && line.content.problems.length === 0 && (moment !== undefined || !needsDate);
}

/** A record and all remarks up to the next line that is neither one nor blank. */
function withRemarks(line: JournalLine): JournalLine[] {
  const { store } = line;
  const block = [line];
  for (let n = line.number + 1; n < store.lineCount; n++) {
    const { kind } = store.at(n).content;
    if (kind === 'remark') for (let m = block.at(-1)!.number + 1; m <= n; m++) block.push(store.at(m));
    else if (kind !== 'blank') break;
  }
  return block;
}

function datedText({ line, record, moment }: Entry): string {
  const { text } = line;
  const mark = record.keywordSpan.start;
  if (record.date || !moment) return text.slice(mark);
  const { start, end, text: date } = writeDate(line, record, moment.day);
  return text.slice(mark, start) + date + text.slice(end);
}

/** Takes lines out of their files, and with them the `day` lines and the blanks that nothing is left of. */
function takenOut(lines: readonly JournalLine[]): ActionEdit[] {
  const gone = new Set(lines);
  const edits: ActionEdit[] = [];
  for (const store of new Set(lines.map(line => line.store))) {
    for (const line of emptiedDays(store, gone)) gone.add(line);
    for (const [first, last] of runsOf(store, gone)) edits.push(withoutLines(store, first, last));
  }
  return edits;
}

/** The `day` lines that dated nothing but what goes; the last one of a file may be there for what comes next. */
function emptiedDays(store: JournalText, gone: ReadonlySet<JournalLine>): JournalLine[] {
  const emptied: JournalLine[] = [];
  let day: JournalLine | undefined;
  let isEmptied = false;
  for (const line of store) {
    if (isDayLine(line)) {
      if (day && isEmptied) emptied.push(day);
      [day, isEmptied] = [line, false];
    } else if (gone.has(line)) isEmptied ||= day !== undefined;
    else if (line.content.kind !== 'blank') day = undefined;
  }
  return emptied;
}

function runsOf(store: JournalText, gone: ReadonlySet<JournalLine>): [first: number, last: number][] {
  const runs: [number, number][] = [];
  const isBlank = (n: number) => n < 0 || (n < store.lineCount && store.at(n).content.kind === 'blank');
  for (let n = 0; n < store.lineCount; n++) {
    if (!gone.has(store.at(n))) continue;
    const first = n;
    while (n + 1 < store.lineCount && gone.has(store.at(n + 1))) n++;
    // Of the blank lines before and behind one is enough.
    const isFree = n + 2 < store.lineCount && !gone.has(store.at(n + 2));
    runs.push([first, isFree && isBlank(first - 1) && isBlank(n + 1) ? n + 1 : n]);
  }
  return runs;
}

/** Above the first `day` line, which would date what is without a date, else at the end. */
function placed({ files }: Journal, file: string, lines: readonly string[], lineEnd: string): ActionEdit {
  const text = files.get(file)?.text;
  const end = text ? lineEndAt(text.at(0)) : lineEnd;
  const written = lines.join(end);
  const at = (line: number, start: number, put: string): ActionEdit => ({ file, line, start, end: start, text: put });
  if (!text) return at(0, 0, `# Finished lots${end}${end}${written}${end}`);
  const day = [...text].findIndex(isDayLine);
  if (day >= 0) return at(day, text.at(day).content.record!.keywordSpan.start, `${written}${end}${end}`);
  const last = [...text].findLastIndex(({ content }) => content.kind !== 'blank');
  if (last < 0) return at(0, 0, `${written}${end}`);
  return at(last, text.at(last).text.length, `${end}${end}${written}${last === text.lineCount - 1 ? end : ''}`);
}

