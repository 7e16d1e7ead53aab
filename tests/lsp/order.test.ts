import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, onTestFinished, test } from 'vitest';
import { servers, Wire, type Message } from '../support/wire.ts';

/**
 * Error codes of the specification (LSP 3.17, Error Codes; JSON-RPC 2.0, section 5.1).
 * https://microsoft.github.io/language-server-protocol/specifications/lsp/3.17/specification/#errorCodes
 */
const code = {
  parseError: -32700, invalidRequest: -32600, methodNotFound: -32601,
  serverNotInitialized: -32002, requestCancelled: -32800,
} as const;

const uri = 'file:///nowhere/a.germ';
const at = { textDocument: { uri }, position: { line: 0, character: 5 } };
const open = { textDocument: { uri, languageId: 'plumule', version: 1, text: 'lot V-1 Iris, 5 seeds\nsow V-1 2026-01-11\n' } };

const codeOf = ({ error }: Message) => error?.code;

/** The server still answers. */
async function works(wire: Wire): Promise<void> {
  expect((await wire.ask('textDocument/hover', at)).result).toMatchObject({ contents: { kind: 'plaintext' } });
}

/** What depends on how it was started. */
describe.each(servers.map(server => ({ name: server.join(' '), server })))('$name', ({ server }) => {
  test('after shutdown every request is refused, and exit ends it with 0', async () => {
    const wire = new Wire(server);
    await wire.start();
    wire.notify('textDocument/didOpen', open);
    await works(wire);
    expect((await wire.ask('shutdown')).result).toBeNull();
    expect(codeOf(await wire.ask('textDocument/hover', at))).toBe(code.invalidRequest);
    expect(codeOf(await wire.ask('shutdown'))).toBe(code.invalidRequest);
    wire.notify('exit');
    expect(await wire.ended).toBe(0);
  });

  test('exit without shutdown ends it with 1, before initialize too', async () => {
    const begun = new Wire(server);
    await begun.start();
    begun.notify('exit');
    expect(await begun.ended).toBe(1);
    const fresh = new Wire(server);
    fresh.notify('exit');
    expect(await fresh.ended).toBe(1);
  });

  test('it does not outlive the client at the other end', async () => {
    const wire = new Wire(server);
    await wire.start();
    wire.close();
    expect(await wire.ended).toBe(1);
    const told = new Wire(server);
    await told.start();
    await told.ask('shutdown');
    told.close();
    expect(await told.ended).toBe(0);
  });
});

describe('a server', () => {
  const server = servers[2];

  test('what comes before initialize is refused, or dropped where it asks for nothing', async () => {
    const wire = new Wire(server);
    wire.notify('textDocument/didOpen', open);
    expect(codeOf(await wire.ask('textDocument/hover', at))).toBe(code.serverNotInitialized);
    expect(codeOf(await wire.ask('no/such/thing'))).toBe(code.serverNotInitialized);
    expect(codeOf(await wire.ask('shutdown'))).toBe(code.serverNotInitialized);
    await wire.start();
    expect((await wire.ask('textDocument/hover', at)).result).toBeNull();
    expect(await wire.stop()).toBe(0);
  });

  test('initialize comes once', async () => {
    const wire = new Wire(server);
    expect(codeOf(await wire.start())).toBeUndefined();
    expect(codeOf(await wire.start())).toBe(code.invalidRequest);
    expect(await wire.stop()).toBe(0);
  });

  test('an unknown request is answered as such, an unknown notification is ignored', async () => {
    const wire = new Wire(server);
    await wire.start();
    expect(codeOf(await wire.ask('textDocument/rain', at))).toBe(code.methodNotFound);
    expect(codeOf(await wire.ask('$/rain', at))).toBe(code.methodNotFound);
    wire.notify('$/rain', {});
    wire.notify('textDocument/rain', at);
    wire.notify('textDocument/didOpen', open);
    await works(wire);
    expect(await wire.stop()).toBe(0);
  });

  test('what is no JSON is answered with a parse error, and what follows is read', async () => {
    const wire = new Wire(server);
    await wire.start();
    wire.body('{ "jsonrpc": "2.0", "id": 7, "method": ');
    expect(codeOf(await wire.answer(null))).toBe(code.parseError);
    wire.notify('textDocument/didOpen', open);
    await works(wire);
    expect(await wire.stop()).toBe(0);
  });

  test('a message in pieces, or with umlauts, is put together', async () => {
    const wire = new Wire(server);
    await wire.start();
    const text = JSON.stringify({
      jsonrpc: '2.0', method: 'textDocument/didOpen',
      params: { textDocument: { ...open.textDocument, text: 'lot V-1 Iris, 5 seeds, from Müllers Gärtchen 🌱\n' } },
    });
    const message = `Content-Length: ${Buffer.byteLength(text)}\r\nContent-Type: application/vscode-jsonrpc; charset=utf-8\r\n\r\n${text}`;
    for (const part of [message.slice(0, 9), message.slice(9, 60), message.slice(60)]) {
      wire.raw(part);
      await new Promise(resolve => setTimeout(resolve, 20));
    }
    await works(wire);
    expect(await wire.stop()).toBe(0);
  });

  test('cancelling is answered too, and what is cancelled after its answer is left alone', async () => {
    const wire = new Wire(server);
    await wire.start();
    wire.notify('textDocument/didOpen', open);
    wire.send({ id: 'one', method: 'textDocument/hover', params: at });
    wire.notify('$/cancelRequest', { id: 'one' });
    const cancelled = await wire.answer('one');
    expect([code.requestCancelled, undefined]).toContain(codeOf(cancelled));
    wire.send({ id: 'two', method: 'textDocument/hover', params: at });
    await wire.answer('two');
    wire.notify('$/cancelRequest', { id: 'two' });
    wire.notify('$/cancelRequest', { id: 'never asked' });
    await works(wire);
    expect(wire.received.filter(({ id }) => id === 'two')).toHaveLength(1);
    expect(await wire.stop()).toBe(0);
  });
});

describe('a client that', () => {
  const wire = () => new Wire(servers[2]);

  async function folder(): Promise<string> {
    const place = await mkdtemp(path.join(tmpdir(), 'plumule-order-'));
    onTestFinished(() => rm(place, { recursive: true, force: true }));
    await writeFile(path.join(place, 'a.germ'), 'sowed V-1\n');
    return place;
  }
  const published = (of: Wire) => of.message(({ method }) => method === 'textDocument/publishDiagnostics');

  test('can do nothing is sent nothing that it did not ask for', async () => {
    const plain = wire();
    const { result } = await plain.start({ rootUri: pathToFileURL(await folder()).href });
    expect(result).toMatchObject({ capabilities: { hoverProvider: true } });
    expect(JSON.stringify((await published(plain)).params)).not.toMatch(/relatedInformation|codeDescription|tags/);
    plain.notify('textDocument/didOpen', open);
    await works(plain);
    // Requests of the server's own need a capability each.
    expect(plain.received.filter(({ id, method }) => id !== undefined && method !== undefined)).toEqual([]);
    expect(await plain.stop()).toBe(0);
  });

  test.each([
    ['a root address only', (place: string) => ({ rootUri: pathToFileURL(place).href })],
    ['a root address and no folders', (place: string) => ({ rootUri: pathToFileURL(place).href, workspaceFolders: null })],
    ['a root path only', (place: string) => ({ rootPath: place, rootUri: undefined })],
    ['folders beside another root', (place: string) => ({
      rootUri: 'file:///nowhere', rootPath: '/nowhere', workspaceFolders: [{ uri: pathToFileURL(place).href, name: 'a' }],
    })],
  ])('names %s has its journals read', async (_, params) => {
    const place = await folder();
    const named = wire();
    await named.start(params(place));
    expect((await published(named)).params).toMatchObject({
      uri: pathToFileURL(path.join(place, 'a.germ')).href, diagnostics: [{ code: 'unknown-keyword' }],
    });
    expect(await named.stop()).toBe(0);
  });

  test.each([
    ['no root', { rootPath: null, rootUri: null, workspaceFolders: null }],
    ['no folders', { rootUri: null, workspaceFolders: [] }],
    ['a root that is not there', { rootUri: 'file:///not/here' }],
    ['a root that is no file', { rootUri: 'untitled:nothing' }],
  ])('names %s can still write a journal', async (_, params) => {
    const lost = wire();
    await lost.start(params);
    lost.notify('textDocument/didOpen', open);
    await works(lost);
    expect(await lost.stop()).toBe(0);
  });

  test('changes or closes what is not open, or opens it twice, does no harm', async () => {
    const odd = wire();
    await odd.start();
    const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 3 } };
    odd.notify('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges: [{ range, text: 'sow' }] });
    odd.notify('textDocument/didClose', { textDocument: { uri } });
    odd.notify('textDocument/didSave', { textDocument: { uri } });
    odd.notify('textDocument/didOpen', open);
    odd.notify('textDocument/didOpen', { textDocument: { ...open.textDocument, text: 'lot V-1 Crocus, 7 seeds\n', version: 4 } });
    expect(JSON.stringify((await odd.ask('textDocument/hover', at)).result)).toContain('Crocus');
    odd.notify('textDocument/didClose', { textDocument: { uri } });
    odd.notify('textDocument/didClose', { textDocument: { uri } });
    expect((await odd.ask('textDocument/hover', at)).result).toBeNull();
    expect(await odd.stop()).toBe(0);
  });

  test('names places beyond the text gets the answer for its end, or none', async () => {
    const far = wire();
    await far.start();
    far.notify('textDocument/didOpen', open);
    const huge = 2 ** 31 - 1; // The largest that the specification allows.
    for (const [line, character] of [[0, huge], [huge, 0], [huge, huge]]) {
      const position = { line, character };
      for (const method of ['hover', 'definition', 'completion', 'signatureHelp', 'prepareRename', 'documentHighlight']) {
        expect(codeOf(await far.ask(`textDocument/${method}`, { textDocument: { uri }, position }))).toBeUndefined();
      }
      const range = { start: { line: 0, character: 0 }, end: position };
      const options = { tabSize: 2, insertSpaces: true };
      for (const method of ['rangeFormatting', 'inlayHint', 'semanticTokens/range', 'codeAction']) {
        const params = { textDocument: { uri }, range, options, context: { diagnostics: [] } };
        expect(codeOf(await far.ask(`textDocument/${method}`, params))).toBeUndefined();
      }
      far.notify('textDocument/didChange', {
        textDocument: { uri, version: 9 }, contentChanges: [{ range: { start: position, end: position }, text: '# more' }],
      });
    }
    await works(far);
    const errors = far.received.filter(({ method, params }) =>
      method === 'window/logMessage' && (params as { type: number }).type === 1);
    expect(errors).toEqual([]);
    expect(await far.stop()).toBe(0);
  });

  test('opens what is no journal, or asks for a document that nobody knows, gets empty answers', async () => {
    const other = wire();
    await other.start();
    const others = 'file:///nowhere/readme.md';
    const textDocument = { uri: others, languageId: 'markdown', version: 1, text: '# Title\n\n| a | b |\n\u0000\u{1F331}\n' };
    other.notify('textDocument/didOpen', { textDocument });
    for (const unknown of [others, 'file:///nowhere/b.germ', 'not an address', 'git:/a.germ?x#y']) {
      const asked = await other.ask('textDocument/hover', { ...at, textDocument: { uri: unknown } });
      expect([null, undefined]).toContain(asked.result);
      expect(asked.error).toBeUndefined();
    }
    other.notify('textDocument/didOpen', open);
    await works(other);
    expect(await other.stop()).toBe(0);
  });
});
