/** The calendar in the editor: the views, the status bar, the soak alarm, and their commands. */
import { commands, window, type ExtensionContext } from 'vscode';
import type { Summary } from '../../server/src/features/summary.ts';
import type { DueShown, RoundShown } from '../../server/src/lsp/calendar-shapes.ts';
import { SoakAlarm } from './alarm.ts';
import type { Pictures } from './panel/panel.ts';
import { saveAs } from './saving.ts';
import type { JournalServer } from './server.ts';
import { printLabels, printPlaces, printRound } from './sheet.ts';
import { DueView } from './views/due.ts';
import { JournalStatus } from './views/language-status.ts';
import { LotsView } from './views/lots.ts';
import { PlacesView } from './views/places.ts';
import { StocksView } from './views/stocks.ts';
import { NextDue } from './views/status.ts';
import { writeRecord } from './writing.ts';

/** The views wait until the typing has paused for so long (ms). */
const QUIET = 700;

/** The views are there before the server is, so that they can say that the journal is being read. */
export function showCalendar(
  context: ExtensionContext, server: JournalServer, started: Promise<void>, pictures: Pictures,
): void {
  const due = new DueView();
  const lots = new LotsView(server, context.workspaceState);
  const places = new PlacesView();
  const stocks = new StocksView();
  const next = new NextDue();
  const status = new JournalStatus();
  const alarm = new SoakAlarm(server, context.workspaceState, uri => pictures.ring(uri));
  let onCount = false;
  let waiting: ReturnType<typeof setTimeout> | undefined;

  const read = async () => {
    const [items, containers, bottles, soaks, summary] = await Promise.all(
      [server.due(), server.places(), server.stocks(), server.soaks(), server.summary()]);
    due.show(items);
    places.show(containers);
    stocks.show(bottles);
    next.show(items);
    alarm.follow(soaks);
    status.show(summary);
    tellContext(summary);
    await lots.refresh();
  };
  const refresh = () => void read().catch(() => status.failed());

  context.subscriptions.push(
    due, lots, places, stocks, next, status, alarm,
    server.onChanged(() => {
      clearTimeout(waiting);
      waiting = setTimeout(refresh, QUIET);
    }),
    { dispose: () => clearTimeout(waiting) },
    commands.registerCommand('plumule.due.write', async (node?: { item?: DueShown }) => {
      const item = node?.item;
      if (item) await write(await server.write(item.key, item.at.uri));
    }),
    commands.registerCommand('plumule.countRound', () => countRound(server)),
    // In a round the key for the next blank must not take up a suggestion instead.
    window.onDidChangeTextEditorSelection(({ textEditor: { document }, selections }) => {
      const isCount = document.languageId === 'plumule' && selections.every(({ active }) => /^count\b/i.test(document.lineAt(active.line).text));
      if (isCount !== onCount) void commands.executeCommand('setContext', 'plumule.round', onCount = isCount);
    }),
    commands.registerCommand('plumule.countLeftOff', () => countLeftOff(server)),
    commands.registerCommand('plumule.exportCalendar', () => exportCalendar(server)),
    commands.registerCommand('plumule.printPlaces', () => printPlaces(server)),
    commands.registerCommand('plumule.printLabels', () => printLabels(server)),
    commands.registerCommand('plumule.printRound', () => printRound(server)),
  );
  void started.then(refresh, () => status.failed());
}

const NO_COUNT = 'No count is due.';
const COUNT_COLD = 'Count It Now';
const COUNT_LEFT_OFF = 'Count Them Now';

/** Where no count is due, seed in the cold can be counted all the same: who did so once is reminded from then on. */
async function countRound(server: JournalServer): Promise<void> {
  const { document } = window.activeTextEditor ?? {};
  const inHand = document?.languageId === 'plumule' ? document.uri.toString() : undefined;
  const journals = inHand === undefined ? await server.rounds(false) : [];
  const uri = inHand ?? await journalToCount(journals);
  if (journals.length > 1 && uri === undefined) return;
  const round = uri === undefined ? null : await server.round(uri);
  if (round) return write(round);
  if (!await server.coldRound(uri)) return offerLeftOff(server, uri);
  const question = `${NO_COUNT} Plumule leaves unsown seed in the cold alone until you have counted it once.`;
  const answer = await window.showInformationMessage(question, COUNT_COLD);
  if (answer === COUNT_COLD) await write(await server.coldRound(uri), NO_COUNT);
}

/** Batches that nobody wrote of for more than a year are in no round, unless the grower asks for them. */
async function offerLeftOff(server: JournalServer, uri: string | undefined): Promise<void> {
  if (!await server.leftOffRound(uri)) return write(null, NO_COUNT);
  const question = `${NO_COUNT} Some batches have no record for more than a year, so Plumule leaves them out.`;
  const answer = await window.showInformationMessage(question, COUNT_LEFT_OFF);
  if (answer === COUNT_LEFT_OFF) await write(await server.leftOffRound(uri), NO_COUNT);
}

async function countLeftOff(server: JournalServer): Promise<void> {
  const journals = await server.rounds(true);
  const uri = await journalToCount(journals);
  if (uri !== undefined || journals.length === 0) await write(uri === undefined ? null : await server.leftOffRound(uri), 'There is nothing to count.');
}

/** A file of the journal: of several, the grower picks one. */
async function journalToCount(journals: readonly RoundShown[]): Promise<string | undefined> {
  if (journals.length < 2) return journals[0]?.uri;
  const items = journals.map(({ name, batches, uri }) => ({ label: name, description: batches === 1 ? '1 batch' : `${batches} batches`, uri }));
  const options = { title: 'Count What Is Due', placeHolder: 'Which journal?' };
  return (await window.showQuickPick(items, options))?.uri;
}

/** For the words of empty views, and to tick the steps of the walkthrough that the journal shows to be done. */
function tellContext({ keywords }: Summary): void {
  void commands.executeCommand('setContext', 'plumule.read', true);
  for (const keyword of ['lot', 'soak', 'count'] as const) {
    void commands.executeCommand('setContext', `plumule.has.${keyword}`, keywords.includes(keyword));
  }
}

async function write(written: Parameters<typeof writeRecord>[0] | null, nothing = 'There is no record to write for this.'): Promise<void> {
  if (!written) void window.showInformationMessage(nothing);
  else if (!await writeRecord(written)) void window.showErrorMessage('The file has changed. Try again.');
}

async function exportCalendar(server: JournalServer): Promise<void> {
  if (await saveAs('plumule.ics', { iCalendar: ['ics'] }, () => server.ics())) {
    void window.showInformationMessage('Wrote the calendar. You can import it again later: entries are updated, not doubled.');
  }
}
