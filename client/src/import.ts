/** A spreadsheet into a journal: what it would add is shown as a difference, and written only when it is accepted. */
import { commands, EventEmitter, FileType, Uri, window, workspace, WorkspaceEdit, type ExtensionContext } from 'vscode';
import type { Answers } from '../../server/src/import/answers.ts';
import type { Question } from '../../server/src/import/questions.ts';
import type { ImportShown, SheetAsked } from '../../server/src/lsp/import.ts';
import { ask, choose, type Heading } from './asking.ts';
import type { JournalServer } from './server.ts';

const SCHEME = 'plumule-import';
const TITLE = 'Import a Spreadsheet';
const SHEETS = /\.(csv|tsv|txt)$/i;

/** A text that is shown and not yet written: the journal as it would be, or what is said of the rows. */
const shownTexts = new Map<string, string>();

export function registerImport(context: ExtensionContext, server: JournalServer): void {
  const changed = new EventEmitter<Uri>();
  const show = (uri: Uri, text: string) => {
    shownTexts.set(uri.toString(), text);
    changed.fire(uri);
  };
  context.subscriptions.push(
    changed,
    workspace.registerTextDocumentContentProvider(SCHEME, {
      onDidChange: changed.event, provideTextDocumentContent: uri => shownTexts.get(uri.toString()) ?? '',
    }),
    commands.registerCommand('plumule.import', async (given?: Uri) => {
      const sheet = given ?? await chosenSheet();
      if (sheet) await importSheet(sheet, server, show);
    }),
  );
}

async function chosenSheet(): Promise<Uri | undefined> {
  const open = window.activeTextEditor?.document.uri;
  if (open && SHEETS.test(open.path)) return open;
  const chosen = await window.showOpenDialog({ title: TITLE, filters: { 'Tables as text': ['csv', 'tsv', 'txt'] } });
  return chosen?.[0];
}

const fileName = ({ path }: Uri) => path.slice(path.lastIndexOf('/') + 1);

async function importSheet(sheet: Uri, server: JournalServer, show: (uri: Uri, text: string) => void): Promise<void> {
  const folder = Uri.joinPath(sheet, '..');
  const names = (await workspace.fs.readDirectory(folder))
    .filter(([name, type]) => type === FileType.File && /\.germ$/i.test(name)).map(([name]) => name).sort();
  const name = await chosenJournal(fileName(sheet).replace(SHEETS, '.germ'), names);
  if (name === undefined) return;
  const target = Uri.joinPath(folder, name);
  const mappingUri = Uri.joinPath(folder, `${fileName(sheet)}.mapping.json`);
  const texts = await Promise.all(names.map(async each => {
    const uri = Uri.joinPath(folder, each);
    return [uri.toString(), (await workspace.openTextDocument(uri)).getText()] as const;
  }));
  const files = Object.fromEntries(texts);
  const asked: Omit<SheetAsked, 'answers'> = {
    name: fileName(sheet), bytes: base64Of(await workspace.fs.readFile(sheet)), files, target: target.toString(),
    mapping: await workspace.fs.readFile(mappingUri).then(bytes => new TextDecoder().decode(bytes), () => undefined),
  };
  const shown = await answered(asked, server);
  if (!shown) return;
  if (shown.fault !== undefined) {
    void window.showErrorMessage(shown.fault);
    return;
  }
  const mapping = new TextEncoder().encode(shown.mapping);
  if (shown.mapping !== asked.mapping) await workspace.fs.writeFile(mappingUri, mapping);
  await offer(shown, { target, before: files[target.toString()], mappingUri, show });
}

function base64Of(bytes: Uint8Array): string {
  let letters = '';
  for (const byte of bytes) letters += String.fromCharCode(byte);
  return btoa(letters);
}

async function chosenJournal(fresh: string, names: readonly string[]): Promise<string | undefined> {
  const items = [
    ...names.map(name => ({ label: name, description: '', name })),
    ...(names.includes(fresh) ? [] : [{ label: fresh, description: 'a new journal', name: fresh }]),
  ];
  const placeHolder = 'Which journal takes the records? You see them before they are written.';
  return (await window.showQuickPick(items, { title: TITLE, placeHolder }))?.name;
}

/** Asks what the sheet leaves open; undefined where the person gave up. */
async function answered(asked: Omit<SheetAsked, 'answers'>, server: JournalServer): Promise<ImportShown | undefined> {
  let answers: Answers = {};
  for (;;) {
    const shown = await server.import({ ...asked, answers });
    const [question] = shown?.questions ?? [];
    if (!question) return shown ?? undefined;
    const answer = await answerTo(question);
    if (answer === undefined) return undefined;
    answers = { ...answers, [question.about]: answer };
  }
}

async function answerTo({ text, choices, about }: Question): Promise<string | number | undefined> {
  const heading: Heading = { title: TITLE, step: 1, totalSteps: 1 };
  if (choices.length > 0) {
    const chosen = await choose(heading, text, choices.map(({ value, says }) => ({ label: says, value })));
    return typeof chosen === 'object' ? chosen.value : undefined;
  }
  const [least, most] = about === 'year' ? [1800, 2200] : [1, 7];
  const typed = await ask(heading, {
    prompt: text, check: given => Promise.resolve(/^\d+$/.test(given.trim()) && Number(given) >= least && Number(given) <= most
      ? undefined : `Write a whole number from ${least} to ${most}.`),
  });
  return typeof typed === 'string' ? Number(typed) : undefined;
}

const WRITE = 'Write the Records';
const LIST = 'Show the List';
const COLUMNS = 'Change the Columns';

interface Offer {
  readonly target: Uri;
  /** Undefined for a journal that is new. */
  readonly before: string | undefined;
  readonly mappingUri: Uri;
  readonly show: (uri: Uri, text: string) => void;
}

async function offer(shown: ImportShown, { target, before, mappingUri, show }: Offer): Promise<void> {
  const { after, records, result, list } = shown;
  const name = fileName(target);
  const listUri = Uri.from({ scheme: SCHEME, path: `/${name}.import.txt` });
  show(listUri, list);
  if (records > 0) {
    const afterUri = Uri.from({ scheme: SCHEME, path: `/${name}` });
    const emptyUri = Uri.from({ scheme: SCHEME, path: `/new/${name}` });
    show(afterUri, after);
    await commands.executeCommand('vscode.diff', before === undefined ? emptyUri : target, afterUri, `${name}: with the records of the sheet`);
  }
  for (;;) {
    const chosen = await window.showInformationMessage(`${result}.`, ...(records > 0 ? [WRITE] : []), LIST, COLUMNS);
    if (chosen === LIST) await window.showTextDocument(listUri, { preview: false });
    else if (chosen === COLUMNS) await window.showTextDocument(mappingUri, { preview: false });
    else if (chosen === WRITE && !await write(target, before, after)) void window.showErrorMessage('The journal has changed. Import again.');
    if (chosen !== LIST) return;
  }
}

/** Puts in what is new, where the journal is still as it was. */
async function write(target: Uri, before: string | undefined, after: string): Promise<boolean> {
  const edit = new WorkspaceEdit();
  if (before === undefined) edit.createFile(target, { contents: new TextEncoder().encode(after) });
  else {
    const document = await workspace.openTextDocument(target);
    if (document.getText() !== before) return false;
    let same = 0;
    while (same < before.length && before.charCodeAt(same) === after.charCodeAt(same)) same++;
    edit.insert(target, document.positionAt(same), after.slice(same, same + after.length - before.length));
  }
  if (!await workspace.applyEdit(edit)) return false;
  const document = await workspace.openTextDocument(target);
  await document.save();
  await window.showTextDocument(document, { preview: false });
  return true;
}
