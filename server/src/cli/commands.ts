/**
 * All that the commands do, and a bundle of its own (dist/commands.cjs): help and completions need none of it. What
 * one of them needs they share, so to divide it further would cost more than it saves.
 */
export { advise } from './advise.ts';
export { check } from './check.ts';
export { diff } from './diff.ts';
export { draw } from './draw.ts';
export { due } from './due.ts';
export { exportJournals } from './export.ts';
export { format } from './format.ts';
export { importSheet } from './import.ts';
export { mergeFiles } from './merge.ts';
export { mix } from './mix.ts';
export { printLabels, printRound } from './paper.ts';
export { planTrial } from './plan.ts';
export { publish } from './publish.ts';
export { report } from './report.ts';
export { setUp } from './setup.ts';
export { when } from './when.ts';
