/** What the bench measures of the core, bundled for it. */
export { due } from '../../server/src/calendar/due.ts';
export { placesNow } from '../../server/src/calendar/places.ts';
export { ProblemBook } from '../../server/src/checks/problem-book.ts';
export { completionsAt } from '../../server/src/features/completion/completion.ts';
export { documentSymbols } from '../../server/src/features/document-symbols.ts';
export { foldsOf } from '../../server/src/features/folding.ts';
export { formatEdits } from '../../server/src/features/format.ts';
export { hoverAt } from '../../server/src/features/hover/hover.ts';
export { hintsIn } from '../../server/src/features/inlay.ts';
export { lensesOf, lensTitle } from '../../server/src/features/lens.ts';
export { lotRows } from '../../server/src/features/lots.ts';
export { referencesAt } from '../../server/src/features/references.ts';
export { forEachToken } from '../../server/src/features/semantic-tokens.ts';
export { Journal } from '../../server/src/journal/journal.ts';
export { merge } from '../../server/src/merge/merge.ts';
export { reportOf } from '../../server/src/report/report.ts';
export { reportText } from '../../server/src/report/text.ts';
export { parse } from '../../server/src/syntax/parse.ts';
