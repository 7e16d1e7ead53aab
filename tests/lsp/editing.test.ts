import { describe, expect, test } from 'vitest';
import { CancellationTokenSource, ErrorCodes, LSPErrorCodes, type TextEdit, type WorkspaceEdit } from 'vscode-languageserver';
import { filesOnDisk } from '../../server/src/disk/files.ts';
import type { Files, Listing } from '../../server/src/lsp/files.ts';
import { inSession, type Session } from '../support/lsp-client.ts';

const settings = { asOf: '2026-02-01' };
const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds, B 24 seeds\n';
const workspace = { configuration: true, workspaceFolders: true, workspaceEdit: { documentChanges: true } };
const capabilities = { workspace, textDocument: { rename: { prepareSupport: true } } };

describe('formatting', () => {
  const text = `${lot}SOW VER-24/A  2026-01-11,24 seeds\nsow VER-24/B 2026-01-11,  18,5 C\n  a   remark\ncount VER-24/A 2026-01-19,3\n`;
  const options = { tabSize: 2, insertSpaces: true };

  async function lines(session: Session, kind: string, more: object): Promise<number[]> {
    const textDocument = { uri: session.uri('a.germ') };
    const edits = await session.ask<TextEdit[]>(`textDocument/${kind}`, { textDocument, options, ...more });
    return edits.map(({ range }) => range.start.line);
  }

  test('changes what needs it, one edit a line, and never a line with a problem', () => inSession(
    { settings, capabilities },
    async session => {
      await session.open('a.germ', text);
      expect(await lines(session, 'formatting', {})).toEqual([2, 5]);
    }));

  test('leaves facts in their order, unless the setting asks for another', async () => {
    for (const factOrder of [false, true]) {
      await inSession({ settings: { ...settings, format: { factOrder } }, capabilities }, async session => {
        await session.open('a.germ', 'lot V Iris, from own bed, 5 seeds\nlot W Iris, 5 seeds, from own bed\n');
        expect(await lines(session, 'formatting', {})).toEqual(factOrder ? [0] : []);
      });
    }
  });

  test('of a range changes its lines alone; one that ends before a line leaves that', () => inSession(
    { settings, capabilities },
    async session => {
      await session.open('a.germ', text);
      const range = (from: number, to: number, character: number) =>
        ({ range: { start: { line: from, character: 0 }, end: { line: to, character } } });
      expect(await lines(session, 'rangeFormatting', range(0, 5, 0))).toEqual([2]);
      expect(await lines(session, 'rangeFormatting', range(3, 5, 1))).toEqual([5]);
      expect(await lines(session, 'rangeFormatting', range(2, 2, 0))).toEqual([2]);
    }));

  test('at the end of a line is of that line, whatever it is', () => inSession({ settings, capabilities }, async session => {
    await session.open('a.germ', text);
    const typed = (line: number) => lines(session, 'onTypeFormatting', { position: { line, character: 0 }, ch: '\n' });
    expect(await Promise.all([0, 1, 2, 3, 4, 5, 6].map(typed))).toEqual([[], [], [], [2], [], [], [5]]);
  }));
});

describe('rename', () => {
  const at = (session: Session, character = 5) => ({ textDocument: { uri: session.uri('a.germ') }, position: { line: 0, character } });

  test('is of all files, each bound to its version, and a clash is refused with the reason', () => inSession(
    { settings, capabilities, files: { 'b.germ': 'sow VER-24/A 2026-01-11\nlot IRI-1 Iris, 5 seeds\n' } },
    async session => {
      expect(session.initialized.capabilities.renameProvider).toEqual({ prepareProvider: true });
      await session.open('a.germ', lot, 7);
      expect(await session.ask('textDocument/prepareRename', at(session))).toEqual({
        range: { start: { line: 0, character: 4 }, end: { line: 0, character: 10 } }, placeholder: 'VER-24',
      });
      const edit = await session.ask<WorkspaceEdit>('textDocument/rename', { ...at(session), newName: 'VER-25' });
      expect(edit.documentChanges).toMatchObject([
        { textDocument: { uri: session.uri('a.germ'), version: 7 }, edits: [{ newText: 'VER-25' }, { newText: 'VER-25' }] },
        { textDocument: { uri: session.uri('b.germ'), version: null }, edits: [{ newText: 'VER-25' }] },
      ]);
      await expect(session.ask('textDocument/rename', { ...at(session), newName: 'IRI-1' })).rejects.toMatchObject({
        code: LSPErrorCodes.RequestFailed, message: 'This journal already uses the name IRI-1.',
      });
    }));

  test('is refused before it begins, and nothing is offered where nothing has a name', () => inSession(
    { settings, capabilities },
    async session => {
      await session.open('a.germ', 'sow VER-24 2026-01-11\n');
      await expect(session.ask('textDocument/prepareRename', at(session))).rejects.toThrow('This journal does not define VER-24');
      expect(await session.ask('textDocument/prepareRename', at(session, 15))).toBeNull();
    }));

  test('is in plain changes, and not prepared, where the client knows no more', () => inSession(
    { settings, capabilities: { workspace: { configuration: true } } },
    async session => {
      expect(session.initialized.capabilities.renameProvider).toBe(true);
      await session.open('a.germ', lot);
      const edit = await session.ask<WorkspaceEdit>('textDocument/rename', { ...at(session), newName: 'VER-25' });
      expect(Object.keys(edit)).toEqual(['changes']);
      expect(Object.keys(edit.changes!)).toEqual([session.uri('a.germ')]);
    }));
});

function deferred<Value>(): { readonly promise: Promise<Value>; readonly resolve: (value: Value) => void } {
  let resolve!: (value: Value) => void;
  return { promise: new Promise<Value>(done => (resolve = done)), resolve: value => resolve(value) };
}

describe('what is asked while the other files are still read', () => {
  /** A session whose disk says what the folder holds when the test says so. */
  function whileReading(work: (session: Session, go: () => void) => Promise<void>): Promise<void> {
    const { promise, resolve } = deferred<Listing>();
    const disk: Files = { ...filesOnDisk, list: () => promise };
    return inSession({ settings, capabilities: {}, folder: false, disk }, async session => {
      await session.open('a.germ', lot);
      await work(session, () => resolve({ files: [], faults: [] }));
    });
  }
  /** Once this is answered, all that was sent before has been taken: the server reads its messages in order. */
  const taken = (session: Session) => expect(session.ask('plumule/nothing', {}))
    .rejects.toMatchObject({ code: ErrorCodes.MethodNotFound });
  const request = (session: Session) => ({
    textDocument: { uri: session.uri('a.germ') }, position: { line: 0, character: 5 }, newName: 'VER-25',
  });

  test('is answered for the document as it is, if that stayed', () => whileReading(async (session, go) => {
    const answer = session.ask<WorkspaceEdit>('textDocument/rename', request(session));
    go();
    expect(Object.values((await answer).changes!)).toHaveLength(1);
  }));

  test('is not answered for another text than it was asked of', () => whileReading(async (session, go) => {
    const answer = session.ask('textDocument/rename', request(session));
    const closed = session.ask('textDocument/formatting', { ...request(session), options: { tabSize: 2, insertSpaces: true } });
    await session.change('a.germ', 2, [0, 0, 0], 'lot IRI-1 Iris\n');
    await taken(session);
    go();
    await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.ContentModified });
    await expect(closed).rejects.toMatchObject({ code: LSPErrorCodes.ContentModified });
    expect(session.logged).toEqual([]);
  }));

  test('is answered as cancelled where it was', () => whileReading(async (session, go) => {
    const token = new CancellationTokenSource();
    const answer = session.connection.sendRequest('textDocument/rename', request(session), token.token);
    token.cancel();
    await session.change('a.germ', 2, [0, 36, 36], ', from a friend');
    await taken(session);
    go();
    await expect(answer).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
  }));
});
