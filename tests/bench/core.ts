/** What run.mjs measures of the core, bundled for it. */
export { ProblemBook } from '../../server/src/checks/problem-book.ts';
export { Journal } from '../../server/src/journal/journal.ts';
export { parse } from '../../server/src/syntax/parse.ts';
