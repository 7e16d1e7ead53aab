import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { CodeLens, Position, SemanticTokens, WorkspaceEdit } from 'vscode-languageserver';
import { deviations, offered, wrongNumbers, type Typed } from '../support/protocol.ts';
import { servers, Wire, type Message } from '../support/wire.ts';

const samples = fileURLToPath(new URL('../../samples', import.meta.url));
const folder = pathToFileURL(samples).href;
const names = (await readdir(samples)).filter(name => name.endsWith('.germ'));
const texts = new Map(await Promise.all(names.map(
  async name => [`${folder}/${name}`, await readFile(`${samples}/${name}`, 'utf8')] as const)));

const dynamicRegistration = true;
const contentFormat = ['markdown', 'plaintext'];
const documentationFormat = contentFormat;

/** A client that takes everything that the server can give. */
const capable = {
  workspace: {
    configuration: true, workspaceFolders: true, didChangeConfiguration: { dynamicRegistration },
    didChangeWatchedFiles: { dynamicRegistration }, workspaceEdit: { documentChanges: true },
    codeLens: { refreshSupport: true }, inlayHint: { refreshSupport: true }, semanticTokens: { refreshSupport: true },
  },
  textDocument: {
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
    hover: { contentFormat },
    completion: {
      completionItem: {
        snippetSupport: true, insertReplaceSupport: true, labelDetailsSupport: true, documentationFormat,
      },
    },
    signatureHelp: {
      signatureInformation: { documentationFormat, parameterInformation: { labelOffsetSupport: true } },
    },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor', 'source'] } } },
    rename: { prepareSupport: true },
  },
};

/** A session with all that came and went in it. */
class Recorded extends Wire {
  readonly messages: Typed[] = [];
  readonly failed: Message[] = [];

  async does<Result>(method: string, params?: unknown): Promise<Result> {
    const { result, error } = await this.ask(method, params);
    this.messages.push({ method, part: 'params', value: params });
    if (error) this.failed.push({ method, params, error });
    else this.messages.push({ method, part: 'result', value: result });
    return result as Result;
  }

  tells(method: string, params: unknown): void {
    this.notify(method, params);
    this.messages.push({ method, part: 'params', value: params });
  }

  /** What the server sent of its own accord. */
  get sent(): Typed[] {
    return this.received.flatMap(({ method, params }) => (method === undefined ? [] : [{ method, part: 'params', value: params }]));
  }
}

/** Every request about a place in a line. */
async function atPlace(wire: Recorded, uri: string, position: Position): Promise<void> {
  const here = { textDocument: { uri }, position };
  for (const method of ['hover', 'definition', 'documentHighlight', 'signatureHelp']) {
    await wire.does(`textDocument/${method}`, here);
  }
  await wire.does('textDocument/references', { ...here, context: { includeDeclaration: true } });
  await wire.does('textDocument/completion', { ...here, context: { triggerKind: 2, triggerCharacter: ' ' } });
  await wire.does('textDocument/codeAction', {
    textDocument: here.textDocument, range: { start: position, end: position }, context: { diagnostics: [] },
  });
}

/** Every request about a whole file. */
async function ofFile(wire: Recorded, uri: string, capabilities: object): Promise<void> {
  const textDocument = { uri };
  const range = { start: { line: 0, character: 0 }, end: { line: 60, character: 0 } };
  const options = { tabSize: 2, insertSpaces: true };
  for (const method of ['documentSymbol', 'foldingRange', 'documentLink']) {
    await wire.does(`textDocument/${method}`, { textDocument });
  }
  await wire.does('textDocument/inlayHint', { textDocument, range });
  await wire.does('textDocument/formatting', { textDocument, options });
  await wire.does('textDocument/rangeFormatting', { textDocument, range, options });
  await wire.does('textDocument/onTypeFormatting', { textDocument, position: { line: 12, character: 0 }, ch: '\n', options });
  await wire.does('textDocument/selectionRange', { textDocument, positions: [{ line: 5, character: 9 }, { line: 7, character: 1 }] });
  const { resultId } = await wire.does<SemanticTokens>('textDocument/semanticTokens/full', { textDocument });
  await wire.does('textDocument/semanticTokens/range', { textDocument, range });
  await wire.does('textDocument/semanticTokens/full/delta', { textDocument, previousResultId: resultId });
  const lenses = await wire.does<CodeLens[]>('textDocument/codeLens', { textDocument });
  for (const lens of lenses.slice(0, 3)) await wire.does('codeLens/resolve', lens);
  if (!offered(capabilities).includes('textDocument/codeAction')) return;
  await wire.does('textDocument/codeAction', { textDocument, range, context: { diagnostics: [], only: ['source.fixAll'] } });
}

async function session(server: (typeof servers)[number], client: object): Promise<Recorded> {
  const wire = new Recorded(server);
  Object.assign(wire.answers, {
    'workspace/configuration': ({ items }: { items: unknown[] }) => items.map(() => ({ asOf: '2026-11-25T08:00' })),
    'client/registerCapability': () => null,
    'workspace/codeLens/refresh': () => null,
    'workspace/inlayHint/refresh': () => null,
    'workspace/semanticTokens/refresh': () => null,
  });
  const { capabilities } = await wire.does<{ capabilities: object }>('initialize', {
    processId: null, rootUri: folder, capabilities: client, workspaceFolders: [{ uri: folder, name: 'samples' }],
    clientInfo: { name: 'test' }, trace: 'verbose',
  });
  wire.tells('initialized', {});
  for (const [uri, text] of texts) {
    wire.tells('textDocument/didOpen', { textDocument: { uri, languageId: 'plumule', version: 1, text } });
  }
  for (const [uri, text] of texts) {
    const lines = text.split('\n');
    for (let line = 0; line < lines.length; line += 19) {
      for (const character of [0, Math.ceil(lines[line]!.length / 3), lines[line]!.length]) {
        await atPlace(wire, uri, { line, character });
      }
    }
    await ofFile(wire, uri, capabilities);
  }
  await wire.does('workspace/symbol', { query: 'PEN' });
  await renames(wire, capabilities);
  await changes(wire);
  await wire.does('shutdown');
  wire.notify('exit');
  expect(await wire.ended).toBe(0);
  const unasked = offered(capabilities).filter(method => !wire.messages.some(each => each.method === method));
  // A question of the server’s, which it has no need to ask.
  expect(unasked).toEqual(['workspace/workspaceFolders']);
  return wire;
}

async function renames(wire: Recorded, capabilities: object): Promise<void> {
  const [uri, text] = [...texts].find(([name]) => name.endsWith('2025-26.germ'))!;
  const line = text.split('\n').findIndex(each => each.startsWith('lot PEN-25'));
  const here = { textDocument: { uri }, position: { line, character: 5 } };
  if (offered(capabilities).includes('textDocument/prepareRename')) await wire.does('textDocument/prepareRename', here);
  const edit = await wire.does<WorkspaceEdit>('textDocument/rename', { ...here, newName: 'PEN-99' });
  expect(JSON.stringify(edit)).toContain('PEN-99');
  expect((await wire.ask('textDocument/rename', { ...here, newName: 'GEN-25' })).error?.message).toContain('GEN-25');
}

/** All that tells the server of a change. */
async function changes(wire: Recorded): Promise<void> {
  const [uri] = [...texts.keys()];
  const range = { start: { line: 2, character: 0 }, end: { line: 2, character: 3 } };
  wire.tells('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges: [{ range, text: 'sowed' }, { range, text: '' }] });
  wire.tells('textDocument/didChange', { textDocument: { uri, version: 3 }, contentChanges: [{ text: 'lot V-1 Iris\n' }] });
  wire.tells('workspace/didChangeConfiguration', { settings: null });
  wire.tells('workspace/didChangeWatchedFiles', { changes: [{ uri: `${folder}/gone.germ`, type: 3 }, { uri, type: 2 }] });
  wire.tells('workspace/didRenameFiles', { files: [{ oldUri: `${folder}/old`, newUri: `${folder}/new` }] });
  wire.tells('workspace/didDeleteFiles', { files: [{ uri: `${folder}/gone` }] });
  wire.tells('workspace/didChangeWorkspaceFolders', { event: { added: [{ uri: 'file:///nowhere', name: 'no' }], removed: [] } });
  wire.tells('workspace/didRenameFiles', { files: [{ oldUri: `${folder}/old`, newUri: `${folder}/new` }] });
  wire.tells('workspace/didDeleteFiles', { files: [{ uri: `${folder}/new` }] });
  await wire.does('textDocument/hover', { textDocument: { uri }, position: { line: 0, character: 5 } });
  wire.tells('textDocument/didClose', { textDocument: { uri } });
}

describe('the types of the protocol', () => {
  test('find what is wrong in a message, and nothing in a right one', () => {
    const hover = { contents: { kind: 'markdown', value: 'x' } };
    const result = (method: string, value: unknown): Typed => ({ method, part: 'result', value });
    const right = [result('textDocument/hover', hover), result('textDocument/hover', null), result('shutdown', null)];
    const wrong = [
      ...[{ ...hover, rang: 1 }, { contents: { kind: 'html', value: '' } }, { contents: null }, [hover], 'x']
        .map(value => result('textDocument/hover', value)),
      result('textDocument/rain', null),
      { method: 'window/logMessage', part: 'params', value: { type: 9, message: '' } } as const,
    ];
    const found = deviations([...right, ...wrong]);
    expect([...new Set(found.map(each => each.of))]).toEqual(wrong.map((_, i) => right.length + i));
    for (const { of: i, text } of found) expect(text).toContain([...right, ...wrong][i!]!.method);
    expect(wrongNumbers({ range: { start: { line: -1, character: 1.5 } }, data: [1] })).toEqual([
      '.range.start.line: -1', '.range.start.character: 1.5',
    ]);
  });

  test('tell what a server offers', () => {
    expect(offered({ hoverProvider: true, renameProvider: { prepareProvider: true }, codeLensProvider: {} })).toEqual([
      'textDocument/hover', 'textDocument/codeLens', 'textDocument/rename', 'textDocument/prepareRename',
    ]);
  });
});

describe('a session keeps to the types of the protocol', () => {
  test.each([
    { name: 'with a client that can do everything', client: capable, server: servers[0] },
    { name: 'with one that can do nothing, and by the command line', client: {}, server: servers[2] },
  ])('$name', async ({ client, server }) => {
    const wire = await session(server, client);
    expect(wire.failed).toEqual([]);
    const errors = wire.sent.filter(({ method, value }) => method === 'window/logMessage' && (value as { type: number }).type === 1);
    expect(errors).toEqual([]);
    const messages = [...wire.messages, ...wire.sent];
    expect(messages.length).toBeGreaterThan(1000);
    // The last of them are nonsense: no type lets everything pass.
    const asked = [...new Set(wire.messages.filter(({ part }) => part === 'result').map(({ method }) => method))];
    const nonsense = asked.map((method): Typed => ({ method, part: 'result', value: [{ nonsense: 1 }, 'x'] }));
    const found = deviations([...messages, ...nonsense]);
    expect(found.filter(({ of }) => of === undefined || of < messages.length)).toEqual([]);
    expect(nonsense.filter((_, i) => !found.some(({ of }) => of === messages.length + i))).toEqual([]);
    expect(messages.flatMap(({ method, value }) => wrongNumbers(value, method))).toEqual([]);
  });
});
