/** Requests for code actions: what mends a problem, and what rewrites without changing what is said. */
import {
  CodeActionKind, type ClientCapabilities, type CodeAction, type CodeActionContext, type Connection, type Range,
  type ServerCapabilities,
} from './protocol.ts';
import { URI } from 'vscode-uri';
import type { Action } from '../features/actions/action.ts';
import { adviceActions } from '../features/actions/advised.ts';
import { archiveAction, type MoveAction } from '../features/actions/archive.ts';
import { dayLinesAction } from '../features/actions/day-lines.ts';
import { ladderAction } from '../features/actions/ladder.ts';
import { planActions } from '../features/actions/plan.ts';
import { fixAll, quickFixes, type QuickFix } from '../features/actions/quick-fixes.ts';
import { splitActions } from '../features/actions/split.ts';
import { rewriteCounts } from '../features/actions/totals.ts';
import { batchPathAt } from '../features/batch-at.ts';
import type { Batch, Lot } from '../journal/life.ts';
import { rootOf } from '../journal/mentions.ts';
import type { About } from './features.ts';
import type { Service, Snapshot } from './service.ts';
import { createsFiles, workspaceEdit } from './workspace-edit.ts';

const FIX_ALL = `${CodeActionKind.SourceFixAll}.plumule`;
const REWRITE = CodeActionKind.RefactorRewrite;
/** Of version 3.18 of the protocol. Kinds are open: clients go by the first part of one that they do not know. */
const MOVE = 'refactor.move';

/** A client that takes no actions as data would need commands: it gets none rather than wrong ones. */
export function actionCapabilities({ textDocument }: ClientCapabilities): ServerCapabilities {
  if (!textDocument?.codeAction?.codeActionLiteralSupport) return {};
  return { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, REWRITE, MOVE, FIX_ALL] } };
}

export function serveActions(connection: Connection, about: About, service: Service): void {
  connection.onCodeAction(about('code actions', null, (snapshot, { range, context }): CodeAction[] | null => {
    if (!service.client().textDocument?.codeAction?.codeActionLiteralSupport) return null;
    const found = snapshot.room.book.of(snapshot.file);
    const asked = askedBy(context);
    const fixes = asked(CodeActionKind.QuickFix) ? quickFixes(found, range.start.line, range.end.line, snapshot) : [];
    const rewrites = asked(REWRITE) ? rewritesAt(snapshot, range) : [];
    const moves = asked(MOVE) ? movesAt(snapshot, range, service) : [];
    // Only where it is asked for by name: it is about more than the place.
    const all = context.only && asked(FIX_ALL) ? fixAll(found, snapshot.journal) : undefined;
    return [
      ...fixes.map(fix => mending(fix, context, service)),
      ...rewrites.map(action => shaped(action, REWRITE, service)),
      ...moves.map(action => shaped(action, MOVE, service)),
      ...(all ? [shaped(all, FIX_ALL, service)] : []),
    ];
  }));
}

/** A kind asks for all that are more special; none at all asks for every kind. */
function askedBy({ only }: CodeActionContext): (kind: string) => boolean {
  return kind => !only || only.some(wanted => wanted === '' || kind === wanted || kind.startsWith(`${wanted}.`));
}

function mending(fix: QuickFix, { diagnostics: shown }: CodeActionContext, service: Service): CodeAction {
  const diagnostics = shown.filter(({ code, range: { start } }) =>
    code === fix.code && start.line === fix.problem.line && start.character === fix.problem.start);
  return {
    ...shaped(fix, CodeActionKind.QuickFix, service),
    ...(diagnostics.length > 0 && { diagnostics }), ...(fix.evident && { isPreferred: true }),
  };
}

function rewritesAt({ journal, file, now }: Snapshot, { start, end }: Range): Action[] {
  const { lot, batch } = livedAt({ journal, file }, start);
  // A selection of whole lines ends at the beginning of the next one.
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  return [
    ...lot ? adviceActions(lot, journal, now) : [],
    ...lot && batch ? splitActions(lot, batch, journal) : [],
    ladderAction(journal, file, start, now),
    batch && rewriteCounts(batch, 'totals', journal),
    batch && rewriteCounts(batch, 'new', journal),
    ...planActions(journal, file, start, now),
    dayLinesAction(journal, file, start.line, last),
  ].filter(action => action !== undefined);
}

function movesAt({ journal, file }: Snapshot, { start }: Range, service: Service): MoveAction[] {
  const { lot } = livedAt({ journal, file }, start);
  const action = lot && archiveAction(lot, journal);
  // What was never saved has no folder to put a file into.
  const isPossible = action && (action.creates === undefined
    || (createsFiles(service.client()) && URI.parse(file).scheme !== 'untitled'));
  return isPossible ? [action] : [];
}

interface Named {
  readonly lot: Lot | undefined;
  readonly batch: Batch | undefined;
}

/** The lot and the batch whose name or seeds the cursor is in. */
function livedAt({ journal, file }: Pick<Snapshot, 'journal' | 'file'>, position: Range['start']): Named {
  const path = batchPathAt(journal, file, position);
  const lot = path === undefined ? undefined : journal.lot(rootOf(path));
  return { lot, batch: lot?.batches.get(path!) };
}

function shaped(action: Action | MoveAction, kind: string, service: Service): CodeAction {
  const creates = 'creates' in action ? action.creates : undefined;
  return { title: action.title, kind, edit: workspaceEdit(action.edits, service, creates) };
}
