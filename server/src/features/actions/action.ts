/** What an action of the editor would change. */
import type { JournalText } from '../../journal/journal-file.ts';
import type { Place } from '../place.ts';

/** A text that takes the place of another one; it may bring new lines along. */
export interface ActionEdit extends Place {
  readonly text: string;
  /** The line that `end` is a column of, where it is a later one: whole lines are taken out. */
  readonly endLine?: number;
}

export interface Action {
  readonly title: string;
  readonly edits: readonly ActionEdit[];
}

interface Texts {
  readonly files: ReadonlyMap<string, { readonly text: JournalText }>;
}

/**
 * Edits within lines as one for each line, in the order of the files and of the lines. What stands between two of a
 * line is written again. Of two that overlap the first counts.
 */
export function oneALine(edits: readonly ActionEdit[], { files }: Texts): ActionEdit[] {
  const joined: ActionEdit[] = [];
  for (const edit of edits.toSorted(compareEdits)) {
    const last = joined.at(-1);
    if (last?.file !== edit.file || last.line !== edit.line) {
      joined.push(edit);
      continue;
    }
    if (edit.start < last.end) continue;
    const between = files.get(edit.file)!.text.at(edit.line).text.slice(last.end, edit.start);
    joined[joined.length - 1] = { ...last, end: edit.end, text: last.text + between + edit.text };
  }
  return joined;
}

function compareEdits(a: ActionEdit, b: ActionEdit): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.line - b.line || a.start - b.start || a.end - b.end;
}
