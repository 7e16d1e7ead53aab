/** From a record of a batch to the next one, to the one before, and to any from a list, wherever they stand. */
import { commands, Range, Uri, window, workspace, type ExtensionContext } from 'vscode';
import type { Location } from 'vscode-languageclient';
import type { Direction } from '../../server/src/features/neighbours.ts';
import { cursorOf } from './cursor.ts';
import type { JournalServer } from './server.ts';

export function registerRecords(context: ExtensionContext, server: JournalServer): void {
  context.subscriptions.push(
    commands.registerCommand('plumule.nextRecord', () => go('next', server)),
    commands.registerCommand('plumule.previousRecord', () => go('previous', server)),
    commands.registerCommand('plumule.records', () => list(server)),
  );
}

async function go(direction: Direction, server: JournalServer): Promise<void> {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== 'plumule') return;
  const found = await server.neighbour(editor.document.uri.toString(), cursorOf(editor), direction);
  if (!found) window.setStatusBarMessage(NO_BATCH, SHOWN);
  else if (!found.at) window.setStatusBarMessage(`${found.path} has no ${direction === 'next' ? 'later' : 'earlier'} record.`, SHOWN);
  else await show(found.at);
}

/** All records of the batch with their days; each is shown as one goes over them, and Escape leads back. */
async function list(server: JournalServer): Promise<void> {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== 'plumule') return;
  const { document, selection, viewColumn } = editor;
  const found = await server.records(document.uri.toString(), cursorOf(editor));
  if (!found) {
    window.setStatusBarMessage(NO_BATCH, SHOWN);
    return;
  }
  const items = found.records.map(({ when, text, at }) => ({
    label: when ?? 'no date', description: text, at,
    detail: `${workspace.asRelativePath(Uri.parse(at.uri))}:${at.range.start.line + 1}`,
  }));
  const pick = window.createQuickPick<typeof items[number]>();
  pick.title = `Records of ${found.path}`;
  pick.placeholder = 'Type a day or words of a record';
  pick.matchOnDescription = true;
  pick.matchOnDetail = true;
  pick.items = items;
  pick.activeItems = [items[found.here]!];
  let isTaken = false;
  pick.onDidChangeActive(([item]) => item && void show(item.at, true));
  pick.onDidAccept(() => {
    const [item] = pick.activeItems;
    isTaken = item !== undefined;
    pick.hide();
    if (item) void show(item.at);
  });
  pick.onDidHide(() => {
    pick.dispose();
    if (!isTaken) void window.showTextDocument(document, { selection, viewColumn });
  });
  pick.show();
}

const NO_BATCH = 'This line is about no lot or batch.';

/** How long it is said that there is nothing further (ms). */
const SHOWN = 4000;

async function show({ uri, range: { start, end } }: Location, preserveFocus = false): Promise<void> {
  const editor = await window.showTextDocument(Uri.parse(uri), {
    // The cursor stands in the name, so that the same key leads on.
    selection: new Range(start.line, start.character, start.line, start.character), preview: true, preserveFocus,
  });
  editor.revealRange(new Range(start.line, 0, end.line, end.character));
}
