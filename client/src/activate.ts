/** What both entries of the extension share. */
import { commands, type ExtensionContext } from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient';
import { showCalendar } from './calendar.ts';
import { followCommits } from './committed.ts';
import { answerFiles } from './files.ts';
import { registerImport } from './import.ts';
import { registerMix } from './mix.ts';
import { registerNewJournal } from './new-journal.ts';
import { Pictures } from './panel/panel.ts';
import { registerRecords } from './records.ts';
import { registerReports } from './reports.ts';
import { journalServer } from './server.ts';
import { registerSoak } from './soak.ts';
import { followTheme, themeName } from './theme.ts';

let running: BaseLanguageClient | undefined;

export const clientOptions: LanguageClientOptions = {
  documentSelector: [{ language: 'plumule' }],
  diagnosticCollectionName: 'plumule',
  initializationOptions: {
    files: true, pictures: true, theme: themeName(),
    commands: ['plumule.compare', 'plumule.advise', 'plumule.changes'],
  },
};

export async function activateWith(context: ExtensionContext, client: BaseLanguageClient): Promise<void> {
  running = client;
  context.subscriptions.push({ dispose: stop });
  // The views belong into windows with a journal, not into every window of the editor.
  void commands.executeCommand('setContext', 'plumule.active', true);
  answerFiles(client);
  const server = journalServer(client);
  registerNewJournal(context, server);
  const pictures = new Pictures(context, server);
  registerReports(context, server, pictures);
  registerRecords(context, server);
  const started = client.start();
  showCalendar(context, server, started, pictures);
  await started;
  context.subscriptions.push(followTheme(client));
  context.subscriptions.push(followCommits(client));
  registerMix(context, server);
  registerSoak(context, server);
  registerImport(context, server);
}

export async function stop(): Promise<void> {
  const client = running;
  running = undefined;
  await client?.stop();
}
