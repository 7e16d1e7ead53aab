import type { JournalFile } from '../journal/journal-file.ts';
import { found, type Found } from './check.ts';

/** Two versions of some lines, with the marks that a merge puts around them. */
export function mergeConflicts({ conflicts, text }: JournalFile): Found[] {
  return conflicts.map(({ start, middle, end }) => {
    const spanOf = (number: number) => ({ line: text.at(number), start: 0, end: text.at(number).text.length });
    const { line, ...span } = spanOf(start);
    const related = [
      { ...spanOf(middle), message: 'The second version begins here' }, { ...spanOf(end), message: 'It ends here' },
    ];
    return found(line, 'merge-conflict', span, {}, { related });
  });
}
