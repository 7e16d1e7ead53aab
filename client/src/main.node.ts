/** Entry of the extension in Node: the server runs in a process of its own. */
import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { activateWith, clientOptions, stop } from './activate.ts';

export async function activate(context: ExtensionContext): Promise<void> {
  const module = context.asAbsolutePath('dist/server.node.cjs');
  const server = { module, transport: TransportKind.stdio };
  const client = new LanguageClient('plumule', 'Plumule', { run: server, debug: server }, clientOptions);
  await activateWith(context, client);
}

export { stop as deactivate };
