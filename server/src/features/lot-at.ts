import type { Journal } from '../journal/journal.ts';
import { subjectIdOf } from '../journal/mentions.ts';

/**
 * The lot that a line is about; a remark is about what the record above it is about. Undefined for a line about none.
 *
 * Example: on 'count VER-24/A, 3', and on a remark below it, 'VER-24'
 */
export function lotAt(journal: Journal, file: string, line: number): string | undefined {
  const text = journal.files.get(file)?.text;
  if (!text) return undefined;
  for (let number = Math.min(line, text.lineCount - 1); number >= 0; number--) {
    const { kind, record } = text.at(number).content;
    if (record) {
      const id = subjectIdOf(record);
      return id !== undefined && journal.lot(id) ? id : undefined;
    }
    if (kind !== 'remark') return undefined;
  }
  return undefined;
}
