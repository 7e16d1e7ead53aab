/** Entry of the server in Node: listens on the channel that the arguments name, over stdio where they name none. */
import {
  createConnection, ErrorCodes, ProposedFeatures, StreamMessageReader, StreamMessageWriter, type Connection,
  type Message,
} from 'vscode-languageserver/node';
import { version } from '../../package.json';
import { filesOnDisk } from './disk/files.ts';
import { encode } from './lsp/known-json.ts';
import { Lifecycle } from './lsp/lifecycle.ts';
import { serve } from './lsp/server.ts';

const lifecycle = new Lifecycle();
const options = { messageStrategy: lifecycle };
const channel = process.argv.some(argument => /^--(node-ipc|socket|pipe)/.test(argument));
const connection = channel ? createConnection(ProposedFeatures.all, options) : overStdio();
lifecycle.serve(connection);
serve(connection, { version, disk: filesOnDisk, later: work => setImmediate(work) });
connection.listen();

function overStdio(): Connection {
  const reader = new StreamMessageReader(process.stdin);
  const contentTypeEncoder = { name: 'application/json', encode: (message: Message) => Promise.resolve(encode(message)) };
  const writer = new StreamMessageWriter(process.stdout, { contentTypeEncoder });
  reader.onError(error => {
    if (!(error instanceof SyntaxError)) return;
    // JSON-RPC 2.0, section 5: nobody can tell which request it was.
    const answer = { jsonrpc: '2.0', id: null, error: { code: ErrorCodes.ParseError, message: error.message } };
    void writer.write(answer);
  });
  // An editor that crashed says no goodbye.
  process.stdin.on('end', () => process.exit(lifecycle.isDown ? 0 : 1));
  return createConnection(ProposedFeatures.all, reader, writer, options);
}
