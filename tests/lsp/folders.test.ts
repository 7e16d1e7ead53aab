import { mkdir, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { DocumentSymbol, Hover, SemanticTokens, WorkspaceSymbol } from 'vscode-languageserver';
import { inSession, type Session } from '../support/lsp-client.ts';

const settings = { asOf: '2026-01-11 12:00' };
const lot = 'lot V-1 Iris, 60 seeds\nsplit V-1, A 30 seeds, B 30 seeds\nsoak V-1/A 2026-01-11 08:00, GA3 500 ppm, 24 h\n'
  + 'due V-1/B 2026-01-12, wash\n';

async function openAt(session: Session, uri: string, text: string): Promise<void> {
  await session.connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'plumule', version: 1, text } });
}

function changeFolders(session: Session, added: readonly string[], removed: readonly string[]): Promise<void> {
  const named = (names: readonly string[]) => names.map(name => ({ uri: session.uri(name), name }));
  return session.connection.sendNotification('workspace/didChangeWorkspaceFolders', { event: { added: named(added), removed: named(removed) } });
}

const hover = async (session: Session, uri: string, line: number, character: number) =>
  JSON.stringify((await session.ask<Hover | null>('textDocument/hover', { textDocument: { uri }, position: { line, character } }))?.contents ?? null);

const found = async (session: Session) =>
  (await session.ask<WorkspaceSymbol[]>('workspace/symbol', { query: 'V-1' })).map(({ location: { uri } }) => uri);

describe('the old side of a difference', () => {
  const inDiff = (work: (session: Session, old: string) => Promise<void>) => inSession(
    { settings, files: { 'a.germ': lot } }, async session => {
      const old = `git:${path.join(session.folder, 'a.germ')}?%7B%22ref%22%3A%22~%22%7D`;
      await session.open('a.germ', lot);
      await openAt(session, old, `${lot}sowed V-1\nlot OLD-1 Iris, 5 seeds\nsoak OLD-1 2026-01-11 08:00, 24 h\n`);
      await work(session, old);
    });

  test('doubles no lot, rings for no soak, reminds of nothing, and shows no problem', () => inDiff(async (session) => {
    const soaks = await session.ask<{ batch: string }[]>('plumule/soaks', {});
    expect(soaks.map(({ batch }) => batch)).toEqual(['V-1/A']);
    expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 1, lots: 1 });
    const due = await session.ask<{ id: string; kind: string }[]>('plumule/due', {});
    expect(due.filter(({ kind }) => kind === 'reminder').map(({ id }) => id)).toEqual(['V-1/B']);
    expect(await session.ask<string>('plumule/ics', {})).not.toContain('OLD-1');
    expect(await session.ask<string>('plumule/report', {})).not.toContain('OLD-1');
    expect(new Set(await found(session))).toEqual(new Set([session.uri('a.germ')]));
    await session.shows('a.germ', []);
    expect(session.published.filter(({ uri }) => uri.startsWith('git:'))).toEqual([]);
  }));

  test('has colours, an outline and hovers of its own text', () => inDiff(async (session, old) => {
    const textDocument = { uri: old };
    expect((await session.ask<SemanticTokens>('textDocument/semanticTokens/full', { textDocument })).data.length).toBeGreaterThan(0);
    const outline = await session.ask<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument });
    expect(outline.map(({ name }) => name)).toEqual(expect.arrayContaining(['OLD-1 Iris']));
    expect(await hover(session, old, 5, 5)).toContain('5 seeds');
    // Written there alone; the journal does not know it.
    expect(await session.ask<unknown[]>('workspace/symbol', { query: 'OLD-1' })).toEqual([]);
  }));

  test('is nothing to write into: it has no fixes, no format, no new name', () => inDiff(async (session, old) => {
    const textDocument = { uri: old };
    const range = { start: { line: 4, character: 0 }, end: { line: 4, character: 5 } };
    const options = { tabSize: 2, insertSpaces: true };
    expect(await session.ask('textDocument/codeAction', { textDocument, range, context: { diagnostics: [] } })).toBeNull();
    expect(await session.ask('textDocument/formatting', { textDocument, options })).toBeNull();
    expect(await session.ask('textDocument/codeLens', { textDocument })).toBeNull();
    expect(await session.ask('textDocument/rename', { textDocument, position: range.start, newName: 'X-1' })).toBeNull();
    expect(await session.ask('plumule/write', { uri: old, batch: 'V-1/A' })).toBeNull();
    expect(await session.ask('plumule/lift', { uri: old, batch: 'V-1/A' })).toBeNull();
  }));

  test('goes without a trace', () => inDiff(async (session, old) => {
    await session.connection.sendNotification('textDocument/didClose', { textDocument: { uri: old } });
    expect(await hover(session, old, 5, 5)).toBe('null');
    expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 1, lots: 1 });
  }));
});

describe('a document that is open', () => {
  test('stays whole when a folder within its folder comes and goes, and can be edited at every step', () => inSession(
    { settings, files: { 'a.germ': 'lot V-1 Iris, 60 seeds\n', 'in/b.germ': '' } },
    async session => {
      const text = 'split V-1, A 20 seeds\n';
      await session.open('in/b.germ', text);
      await session.shows('in/b.germ', []);
      await changeFolders(session, ['in'], []);
      // A journal of its own, which does not have the lot.
      await session.shows('in/b.germ', ['unknown-lot']);
      await session.change('in/b.germ', 2, [0, 21, 21], ', B 20 seeds');
      await changeFolders(session, [], ['in']);
      await session.shows('in/b.germ', []);
      expect(await hover(session, session.uri('in/b.germ'), 0, 7)).toContain('Iris');
      expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 2, lots: 1 });
    }));

  test('is in one journal when its folder is opened around it, and goes on alone when that is closed', () => inSession(
    { settings, folder: false, files: { 'a.germ': lot, 'in/b.germ': 'due V-1 2026-01-12, look\n' } },
    async session => {
      await session.open('a.germ', lot);
      expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 1, lots: 1 });
      await changeFolders(session, ['.'], []);
      expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 2, lots: 1 });
      await changeFolders(session, ['.'], ['.']);
      expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 2, lots: 1 });
      await changeFolders(session, [], ['.']);
      expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 1, lots: 1 });
      expect(await hover(session, session.uri('a.germ'), 0, 5)).toContain('Iris');
      await session.change('a.germ', 2, [0, 8, 12], 'Adonis');
      expect(await hover(session, session.uri('a.germ'), 0, 5)).toContain('Adonis');
    }));

  test('keeps its lots when a folder of the journal is renamed or deleted', () => inSession(
    { settings, files: { 'old/a.germ': 'lot V-1 Iris, 60 seeds\n', 'b.germ': '' } },
    async session => {
      await session.open('b.germ', 'split V-1, A 20 seeds\n');
      await session.shows('b.germ', []);
      await rename(path.join(session.folder, 'old'), path.join(session.folder, 'new'));
      await session.connection.sendNotification('workspace/didRenameFiles', { files: [{ oldUri: session.uri('old'), newUri: session.uri('new') }] });
      expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 2, lots: 1 });
      expect(await found(session)).toContain(session.uri('new/a.germ'));
      await rm(path.join(session.folder, 'new'), { recursive: true });
      await session.connection.sendNotification('workspace/didDeleteFiles', { files: [{ uri: session.uri('new') }] });
      await session.shows('b.germ', ['unknown-lot']);
    }));

  test('is not doubled by the copies that another program keeps beside it', () => inSession(
    { settings, files: { 'a.germ': lot } },
    async session => {
      await session.open('a.germ', lot);
      await mkdir(path.join(session.folder, '.history'));
      await writeFile(path.join(session.folder, '.history/a_2026.germ'), lot);
      await session.connection.sendNotification('workspace/didChangeWatchedFiles', { changes: [{ uri: session.uri('.history/a_2026.germ'), type: 1 }] });
      await new Promise(resolve => setTimeout(resolve, 50));
      expect(await session.ask('plumule/summary', {})).toMatchObject({ files: 1, lots: 1 });
      await session.shows('a.germ', []);
    }));
});

test('a disk that does not answer keeps nobody waiting for an open document: what its lines say is shown, and that it is not all', () => {
  const never = () => new Promise<never>(() => undefined);
  return inSession({ settings, disk: { list: never, read: never, picture: never } }, async session => {
    await session.open('a.germ', 'lot V-1 Iris, 60 seeds\nsowed V-1\nsow ELSEWHERE-1 2026-01-10\n');
    // Whether the lot of the last line is defined, nobody can tell yet.
    await session.shows('a.germ', ['unknown-keyword']);
    const told = await hover(session, session.uri('a.germ'), 0, 5);
    expect(told).toContain('60 seeds');
    expect(told).toContain('Plumule is still reading the folder');
    await session.change('a.germ', 2, [1, 0, 5], 'sow');
    await session.shows('a.germ', []);
  });
});
