/** Entry of the server in a web worker. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { version } from '../../package.json';
import { plain } from './lsp/known-json.ts';
import { Lifecycle } from './lsp/lifecycle.ts';
import { serve } from './lsp/server.ts';

// The worker's own global is its port; this project compiles without the types of the browser.
const port = globalThis as never;
const lifecycle = new Lifecycle();
const writer = new BrowserMessageWriter(port);
const write = writer.write.bind(writer);
writer.write = message => write(plain(message));

// A timer would let a turn of the loop take four milliseconds, and work that leaves others their turn takes many.
const turns: (() => void)[] = [];
const { port1: bell, port2: hand } = new MessageChannel();
bell.addEventListener('message', () => turns.shift()!());
bell.start();
const later = (work: () => void) => {
  turns.push(work);
  hand.postMessage(null);
};

const connection = createConnection(new BrowserMessageReader(port), writer, { messageStrategy: lifecycle });
lifecycle.serve(connection);
serve(connection, { version, later });
connection.listen();
