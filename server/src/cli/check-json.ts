import { version } from '../../../package.json';
import { printMoment } from '../journal/moment.ts';
import { printableJson } from '../report/printable.ts';
import { tally, type ListedProblem } from './listed.ts';
import type { Opening } from './open.ts';

/** Version of the shape below; it grows when something in it changes its meaning or goes, not when something comes. */
const SHAPE = 1;

/** What `plumule check --format json` prints; the README describes it. */
export function checkJson({ journals, unread }: Opening, problems: readonly ListedProblem[]): string {
  return printableJson({
    version: SHAPE,
    plumule: version,
    journals: journals.map(({ asked, journal, now }) => ({ files: asked, zone: journal.zone ?? null, now: printMoment(now).replace(' ', 'T') })),
    counts: tally(problems),
    problems,
    unread,
  });
}
