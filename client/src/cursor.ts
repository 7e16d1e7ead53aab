/** Where the cursor of an editor is. */
import type { TextEditor } from 'vscode';
import type { Position } from 'vscode-languageclient';

/** In plain values: a web worker takes no position of the editor's own kind. */
export function cursorOf({ selection: { active: { line, character } } }: TextEditor): Position {
  return { line, character };
}
