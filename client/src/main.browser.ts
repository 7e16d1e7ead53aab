/** Entry of the extension in a browser: the server runs in a web worker. */
import { Uri, type ExtensionContext } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { activateWith, clientOptions, stop } from './activate.ts';

// The global of a browser; this project compiles without the types of one.
const { Worker } = globalThis as unknown as { Worker: new (url: string) => { terminate(): void } };

export async function activate(context: ExtensionContext): Promise<void> {
  const script = Uri.joinPath(context.extensionUri, 'dist/server.browser.js');
  const worker = new Worker(script.toString(true));
  const client = new LanguageClient('plumule', 'Plumule', worker, clientOptions);
  context.subscriptions.push({ dispose: () => worker.terminate() });
  await activateWith(context, client);
}

export { stop as deactivate };
