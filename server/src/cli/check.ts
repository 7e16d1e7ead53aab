import type { Moment } from '../journal/moment.ts';
import type { Severity } from '../model/problems.ts';
import { checkGithub } from './check-github.ts';
import { checkJson } from './check-json.ts';
import { checkSarif } from './check-sarif.ts';
import { checkText } from './check-text.ts';
import { exits, type Exit } from './exits.ts';
import { listProblems, tally, type ListedProblem, type Tally } from './listed.ts';
import { openJournals, type Opening } from './open.ts';
import { counted } from '../model/counted.ts';
import { complain, complainOf, print, wantsColours } from './output.ts';
import type { checkFormats } from './program/choices.ts';
import { openStaged } from './staged.ts';

export interface CheckOptions {
  readonly format: (typeof checkFormats)[number];
  readonly severity: Severity;
  readonly today?: Moment;
  /** What is staged in the repository of git, in place of paths. */
  readonly staged?: true;
}

/** `plumule check`: prints the problems of the journals. */
export async function check(paths: readonly string[], options: CheckOptions): Promise<Exit> {
  const { format, severity, today, staged } = options;
  if (staged && paths.length > 0) {
    complain('--staged checks everything that is staged, so leave the paths out');
    return exits.unread;
  }
  const opening = staged ? await openStaged(today) : await openJournals(paths, today);
  const problems = listProblems(opening.journals, severity);
  print(written(format, opening, problems));
  complainOf(opening.unread);
  const counts = tally(problems);
  const files = opening.journals.reduce((sum, { asked }) => sum + asked.length, 0);
  // Where nothing could be read, “no problems” would be wrong.
  if (files > 0 || opening.unread.length === 0) complain(summary(files, counts));
  if (opening.unread.length > 0) return exits.unread;
  return counts.error + counts.warning > 0 ? exits.problems : exits.clean;
}

function written(format: CheckOptions['format'], opening: Opening, problems: readonly ListedProblem[]): string {
  switch (format) {
    case 'text': return checkText(problems, wantsColours());
    case 'json': return checkJson(opening, problems);
    case 'sarif': return checkSarif(problems, opening.unread);
    case 'github': return checkGithub(problems);
  }
}

function summary(files: number, { error, warning, information, hint }: Tally): string {
  const parts = [
    [error, 'error'], [warning, 'warning'], [information, 'remark'], [hint, 'hint'],
  ] as const;
  const found = parts.filter(([n]) => n > 0).map(([n, word]) => counted(n, word));
  return `checked ${counted(files, 'file')}: ${found.length > 0 ? found.join(', ') : 'no problems'}`;
}
