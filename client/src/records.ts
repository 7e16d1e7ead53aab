/** From a record of a batch to the next one and to the one before, wherever they stand. */
import { commands, Range, Uri, window, type ExtensionContext } from 'vscode';
import type { Location } from 'vscode-languageclient';
import type { Direction } from '../../server/src/features/neighbours.ts';
import { cursorOf } from './cursor.ts';
import type { JournalServer } from './server.ts';

export function registerRecords(context: ExtensionContext, server: JournalServer): void {
  context.subscriptions.push(
    commands.registerCommand('plumule.nextRecord', () => go('next', server)),
    commands.registerCommand('plumule.previousRecord', () => go('previous', server)),
  );
}

async function go(direction: Direction, server: JournalServer): Promise<void> {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== 'plumule') return;
  const found = await server.neighbour(editor.document.uri.toString(), cursorOf(editor), direction);
  if (!found) window.setStatusBarMessage('This line is about no lot or batch.', SHOWN);
  else if (!found.at) window.setStatusBarMessage(`${found.path} has no ${direction === 'next' ? 'later' : 'earlier'} record.`, SHOWN);
  else await show(found.at);
}

/** How long it is said that there is nothing further (ms). */
const SHOWN = 4000;

async function show({ uri, range: { start, end } }: Location): Promise<void> {
  const editor = await window.showTextDocument(Uri.parse(uri), {
    // The cursor stands in the name, so that the same key leads on.
    selection: new Range(start.line, start.character, start.line, start.character), preview: true,
  });
  editor.revealRange(new Range(start.line, 0, end.line, end.character));
}
