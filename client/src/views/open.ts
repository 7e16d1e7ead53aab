import { Range, type Command, type Uri } from 'vscode';
import type { Range as ServerRange } from 'vscode-languageclient';

/** The command that shows a place of a file, for a click in a view. */
export function openAt(uri: Uri, { start, end }: ServerRange): Command {
  const selection = new Range(start.line, start.character, end.line, end.character);
  return { command: 'vscode.open', title: 'Show the record', arguments: [uri, { selection }] };
}
