/** Texts that go into a file of the grower's choice. */
import { Uri, window, workspace } from 'vscode';

/** Asks where to put a text, first offering a name in the open folder. Undefined where the person gave up. */
export async function saveAs(
  name: string, filters: Record<string, string[]>, text: () => Promise<string>,
): Promise<Uri | undefined> {
  const folder = workspace.workspaceFolders?.[0]?.uri;
  const target = await window.showSaveDialog({ filters, ...(folder && { defaultUri: Uri.joinPath(folder, name) }) });
  if (target) await workspace.fs.writeFile(target, new TextEncoder().encode(await text()));
  return target;
}
