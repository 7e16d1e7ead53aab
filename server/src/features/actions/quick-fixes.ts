/** What would mend the problems of a file: the fixes that each carries, and those that are safe to make all at once. */
import type { Found } from '../../checks/check.ts';
import type { Fix, ProblemCode } from '../../model/problems.ts';
import type { Action, ActionEdit } from './action.ts';

export interface QuickFix extends Action {
  readonly code: ProblemCode;
  /** Line and columns of the problem that it mends. */
  readonly problem: { readonly line: number; readonly start: number; readonly end: number };
  /** Nothing else can be meant. */
  readonly only: boolean;
}

/** Slips whose one fix cannot change what was meant: the spelling of a number, a date or a unit. */
const evident: ReadonlySet<ProblemCode> = new Set([
  'decimal-comma', 'bad-unit', 'bad-date', 'day-first-date', 'empty-fact', 'unclosed-quote',
]);

/** The fixes of the problems on the lines from one to another, both included. */
export function quickFixes(found: readonly Found[], from: number, to: number): QuickFix[] {
  return found.flatMap(({ line, problem }) => {
    const { number, store: { name } } = line;
    if (number < from || number > to) return [];
    const { code, start, end, fixes } = problem;
    return fixes.map(fix => ({
      code, title: fix.title, edits: [editOf(fix, name, number)],
      problem: { line: number, start, end }, only: fixes.length === 1,
    }));
  });
}

/** One action for every evident slip of a file, if there is one. Of two on one line the first is mended. */
export function fixAll(found: readonly Found[]): Action | undefined {
  const edits = new Map<number, ActionEdit>();
  for (const { line, problem } of found) {
    const [fix, ...others] = problem.fixes;
    const { number } = line;
    if (fix && others.length === 0 && evident.has(problem.code) && !edits.has(number)) {
      edits.set(number, editOf(fix, line.store.name, number));
    }
  }
  return edits.size > 0 ? { title: 'Mend every evident slip of this file', edits: [...edits.values()] } : undefined;
}

function editOf({ start, end, text }: Fix, file: string, line: number): ActionEdit {
  return { file, line, start, end, text };
}
