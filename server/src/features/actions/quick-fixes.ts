/** What would mend the problems of a file: the fixes that each carries, what the journal gives, and all at once. */
import type { Found } from '../../checks/check.ts';
import type { Journal } from '../../journal/journal.ts';
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Fix, Problem, ProblemCode } from '../../model/problems.ts';
import { unitOf } from '../../model/quantity.ts';
import type { Span } from '../../model/record.ts';
import { parse } from '../../syntax/parse.ts';
import { oneALine, type Action, type ActionEdit } from './action.ts';
import { menders } from './mends/all.ts';
import { mergeConflict } from './mends/conflicts.ts';
import { datedLine } from './mends/diary.ts';
import { replace, type Mend, type MendContext } from './mends/mend.ts';

export interface QuickFix extends Action {
  readonly code: ProblemCode;
  /** Line and columns of the problem that it mends. */
  readonly problem: Span & { readonly line: number };
  /** Hardly anything else can be meant. */
  readonly evident: boolean;
}

/** Slips whose one fix cannot change what was meant: the spelling of a number, a date or a unit. */
const safe: ReadonlySet<ProblemCode> = new Set([
  'decimal-comma', 'bad-unit', 'bad-date', 'day-first-date', 'empty-fact', 'unclosed-quote',
]);

/** What is offered is one of several things that may have been meant: a look at the calendar or the bottle tells. */
const open: ReadonlySet<ProblemCode> = new Set(['impossible-date', 'strength-slip', 'strength-of-stock']);

/** What is offered is the nearest of the names that there are. */
const named: ReadonlySet<ProblemCode> = new Set([
  'unknown-lot', 'unknown-batch', 'unknown-stock', 'unknown-regime', 'unknown-agent', 'unknown-id',
]);

/** The fixes of the problems on the lines from one to another, both included. */
export function quickFixes(found: readonly Found[], from: number, to: number, context: MendContext): QuickFix[] {
  return found.filter(({ line }) => line.number >= from && line.number <= to).flatMap(({ line, problem }) => {
    const { code, start, end, fixes } = problem;
    const mends: Mend[] = [
      ...fixes.map((fix, n): Mend => ({
        title: fix.title, edits: [editOf(fix, line)], ...(isEvident(problem, line, n) && { evident: true }),
      })),
      ...mendsOf({ line, problem }, context),
    ];
    const isOnly = mends.filter(({ evident }) => evident).length === 1;
    return mends.map(({ title, edits, evident }) => ({
      code, title, edits: oneALine(edits, context.journal),
      problem: { line: line.number, start, end }, evident: isOnly && evident === true,
    }));
  }).filter(isFirst);
}

/** Of two batches that one line gives out again, both problems have the same fix. */
function isFirst({ code, title, problem }: QuickFix, n: number, all: readonly QuickFix[]): boolean {
  const { line, start } = problem;
  return n === all.findIndex(other =>
    other.title === title && other.code === code && other.problem.line === line && other.problem.start === start);
}

/**
 * The one fix there is, unless it takes out what somebody wrote; of an unknown keyword the word that is nearest. A unit
 * that is spelt nearly so may be a thousand times as much.
 */
function isEvident(problem: Problem, { text, content: { problems } }: JournalLine, n: number): boolean {
  const { code, fixes } = problem;
  const fix = fixes[n]!;
  if (code === 'unknown-keyword') return n === 0 && fixes.length > 1;
  if (open.has(code)) return false;
  if (fixes.length > 1 || (fix.text.trim() === '' && !safe.has(code))) return false;
  const after = text.slice(0, fix.start) + fix.text + text.slice(fix.end);
  const others = problems.filter(each => each !== problem);
  if (parse(after).problems.length > others.length) return false;
  const written = text.slice(fix.start, fix.end);
  // The stock of another number is another stock.
  if (named.has(code) && digitsOf(written) !== digitsOf(fix.text)) return false;
  return !unitOf(fix.text) || fix.text.toLowerCase() === written.toLowerCase();
}

function digitsOf(text: string): string {
  return text.replaceAll(/\D/g, '');
}

function mendsOf({ line, problem }: Pick<Found, 'line' | 'problem'>, context: MendContext): Mend[] {
  if (problem.code === 'merge-conflict') return mergeConflict(line, context);
  if (problem.code === 'unknown-line' || problem.code === 'unknown-keyword') return datedLine(line, context);
  const entry = context.journal.entryAt(line);
  return entry ? (menders[problem.code] ?? []).flatMap(mender => mender({ entry, problem }, context)) : [];
}

/** One action for every slip of a file that is safe to mend unseen, if there is one. */
export function fixAll(found: readonly Found[], journal: Journal): Action | undefined {
  const edits = found.flatMap(({ line, problem }) => {
    const [fix] = problem.fixes;
    return fix && safe.has(problem.code) && isEvident(problem, line, 0) ? [editOf(fix, line)] : [];
  });
  return edits.length > 0 ? { title: 'Fix every obvious slip in this file', edits: oneALine(edits, journal) } : undefined;
}

function editOf(fix: Fix, line: JournalLine): ActionEdit {
  return replace(line, fix, fix.text);
}
