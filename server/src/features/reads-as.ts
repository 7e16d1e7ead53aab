/** Whether a line still says the same once a name on it is another one. */
import type { JournalLine } from '../journal/journal-file.ts';
import { mentionsOf } from '../journal/mentions.ts';
import { factsOf } from '../model/record.ts';
import { parse, type Reading } from '../syntax/parse.ts';
import type { ActionEdit } from './actions/action.ts';

/** An id or a batch's path, and what it becomes. */
interface Renamed {
  readonly from: string;
  readonly to: string;
}

/**
 * A name can be a word of the format: a stock called `at` is none in a soak. Whether it is depends on the line, and the
 * line alone can tell.
 */
export function readsAs({ text, content }: JournalLine, edit: ActionEdit, renamed: Renamed): boolean {
  const after = parse(text.slice(0, edit.start) + edit.text + text.slice(edit.end));
  return JSON.stringify(said(after)) === JSON.stringify(said(content, renamed));
}

/** The problems, the kinds of the facts, and the names, with the new one in its places. */
function said({ record, problems }: Reading, renamed?: Renamed): unknown {
  const codes = problems.map(({ code }) => code);
  if (!record) return codes;
  const named = (id: string) => {
    const { from, to } = renamed ?? { from: id, to: id };
    return id === from || id.startsWith(`${from}/`) ? to + id.slice(from.length) : id;
  };
  const { keyword, subject, plant, facts } = record;
  const parent = subject ? `${subject.text}/` : '/';
  return [
    codes, keyword, subject && named(subject.text), plant?.text, facts.map(({ type }) => type),
    mentionsOf(record).map(({ written }) => named(written.text)),
    factsOf(record, 'part').map(({ name }) => named(parent + name.text)),
  ];
}
