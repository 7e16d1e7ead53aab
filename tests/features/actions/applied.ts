/** What edits of an action make of a journal's files. */
import type { ActionEdit } from '../../../server/src/features/actions/action.ts';
import { Journal } from '../../../server/src/journal/journal.ts';

/** The texts by file; throws where two edits overlap, or where one is in a file that is not there at another place. */
export function applied(journal: Journal, edits: readonly ActionEdit[]): Record<string, string> {
  const texts = Object.fromEntries([...journal.files].map(([name, { text }]) => [name, text.text()]));
  for (const file of new Set(edits.map(edit => edit.file))) {
    const text = journal.files.get(file)?.text;
    const spans = edits.filter(edit => edit.file === file).map(({ line, start, endLine = line, end, text: put }) => {
      if (!text && (line !== 0 || start !== 0 || endLine !== 0 || end !== 0)) throw new RangeError(`no such place in ${file}`);
      const offset = (at: number, character: number) => text?.offsetAt({ line: at, character }) ?? 0;
      return { from: offset(line, start), to: offset(endLine, end), put };
    }).sort((a, b) => a.from - b.from || a.to - b.to);
    let at = 0;
    let after = '';
    const before = texts[file] ?? '';
    for (const { from, to, put } of spans) {
      if (from < at) throw new RangeError(`two edits of ${file} overlap`);
      after += before.slice(at, from) + put;
      at = to;
    }
    texts[file] = after + before.slice(at);
  }
  return texts;
}

/** A journal of texts by file. */
export function journalIn(texts: Readonly<Record<string, string>>): Journal {
  const journal = new Journal();
  for (const [name, text] of Object.entries(texts)) journal.set(name, text);
  return journal;
}
