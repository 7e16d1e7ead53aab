/** Entry of the server in Node: listens on the channel that the arguments name, over stdio where they name none. */
import {
  createConnection, ProposedFeatures, StreamMessageReader, StreamMessageWriter,
} from 'vscode-languageserver/node';
import { version } from '../../package.json';
import { filesOnDisk } from './disk/files.ts';
import { serve } from './lsp/server.ts';

const channel = process.argv.some(argument => /^--(node-ipc|socket|pipe)/.test(argument));
const connection = channel
  ? createConnection(ProposedFeatures.all)
  : createConnection(
    ProposedFeatures.all, new StreamMessageReader(process.stdin), new StreamMessageWriter(process.stdout));
serve(connection, { version, disk: filesOnDisk, later: work => setImmediate(work) });
connection.listen();
