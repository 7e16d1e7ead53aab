import { describe, expect, test } from 'vitest';
import type { CodeAction, TextDocumentEdit, TextEdit } from 'vscode-languageserver';
import { inSession, type Session } from '../support/lsp-client.ts';

const settings = { asOf: '2026-02-01T08:30' };
const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds, B 24 seeds\n';
const workspaceEdit = { documentChanges: true, resourceOperations: ['create'] };
const workspace = { configuration: true, workspaceFolders: true, workspaceEdit };
const codeAction = { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor', 'source'] } } };
const capabilities = { workspace, textDocument: { codeAction } };

type Lines = number | readonly [from: number, to: number];

async function actions(session: Session, lines: Lines, character = 0, only?: string[]): Promise<CodeAction[] | null> {
  const [from, to] = typeof lines === 'number' ? [lines, lines] : lines;
  return session.ask('textDocument/codeAction', {
    textDocument: { uri: session.uri('a.germ') },
    range: { start: { line: from, character }, end: { line: to, character } },
    context: { diagnostics: session.shown('a.germ') ?? [], ...(only && { only }) },
  });
}

const titlesOf = (found: CodeAction[] | null) => (found ?? []).map(({ title }) => title);
const editsOf = ({ edit }: CodeAction) => edit!.documentChanges as TextDocumentEdit[];
const textsOf = (action: CodeAction) => editsOf(action).flatMap(({ edits }) =>
  (edits as TextEdit[]).map(({ newText }) => newText));

describe('a quick fix', () => {
  test('is bound to the problem and to the version of the document', () => inSession(
    { settings, capabilities },
    async session => {
      await session.open('a.germ', `${lot}sow VER-24/A 2026-01-11, 18,5 C\n`, 5);
      await session.shows('a.germ', ['decimal-comma']);
      expect(await actions(session, 2, 0, ['quickfix'])).toEqual([{
        title: 'Change to “18.5”', kind: 'quickfix', isPreferred: true, diagnostics: session.shown('a.germ'),
        edit: {
          documentChanges: [{
            textDocument: { uri: session.uri('a.germ'), version: 5 },
            edits: [{ range: { start: { line: 2, character: 25 }, end: { line: 2, character: 29 } }, newText: '18.5' }],
          }],
        },
      }]);
      await session.change('a.germ', 6, [2, 0, 0], '');
      expect(editsOf((await actions(session, 2, 0, ['quickfix']))![0]!)[0]!.textDocument.version).toBe(6);
    }));

  test('for a date has both readings, and neither is preferred', () => inSession(
    { settings, capabilities },
    async session => {
      await session.open('a.germ', `${lot}sow VER-24/A 3/4/2026\n`);
      await session.shows('a.germ', ['day-first-date']);
      const fixes = (await actions(session, 2, 0, ['quickfix'])) ?? [];
      expect(fixes.flatMap(textsOf)).toEqual(['2026-04-03', '2026-03-04']);
      expect(fixes.some(({ isPreferred }) => isPreferred)).toBe(false);
    }));

  test('that the journal gives may be of another file, and of another version', () => inSession(
    { settings, capabilities, files: { 'b.germ': 'lot IRI-1 Iris, 20 seeds\n' } },
    async session => {
      await session.open('a.germ', 'sow IRI-1 2026-01-11, 24 seeds\n', 3);
      await session.shows('a.germ', ['sown-exceeds-seeds']);
      const [fewer, more] = (await actions(session, 0, 0, ['quickfix']))!;
      expect(fewer!.title).toBe('Sow 20: all that are left');
      expect(editsOf(more!)[0]).toMatchObject({ textDocument: { uri: session.uri('b.germ'), version: null }, edits: [{ newText: '24' }] });
    }));

  test('is worked out from what the document says now, though its problems are of before', () => inSession(
    { settings, capabilities },
    async session => {
      await session.open('a.germ', 'lot IRI-1 Iris, 20 seeds\nsow IRI-1 2026-01-11, 24 seeds\n');
      await session.shows('a.germ', ['sown-exceeds-seeds']);
      // Sent in one turn: nothing is published between the two.
      void session.change('a.germ', 2, [0, 16, 18], '22');
      expect(titlesOf(await actions(session, 1, 0, ['quickfix']))[0]).toBe('Sow 22: all that are left');
    }));
});

describe('all evident slips of a file', () => {
  const text = `${lot}sow VER-24/A 2026-1-11, 18,5 C\nsow VER-24/B 3/4/2026\n`;

  test.each(['source', 'source.fixAll', 'source.fixAll.plumule'])('are mended when %s is asked for', only => inSession(
    { settings, capabilities },
    async session => {
      await session.open('a.germ', text);
      await session.shows('a.germ', ['bad-date', 'decimal-comma', 'day-first-date']);
      const found = await actions(session, 0, 0, [only]);
      expect(found).toMatchObject([{ title: 'Fix every obvious slip in this file', kind: 'source.fixAll.plumule' }]);
      expect(textsOf(found![0]!)).toEqual(['2026-01-11, 18.5']);
    }));

  test('are not offered unasked, nor where there are none', () => inSession({ settings, capabilities }, async session => {
    await session.open('a.germ', text);
    await session.shows('a.germ', ['bad-date', 'decimal-comma', 'day-first-date']);
    const kinds = new Set((await actions(session, 2))!.map(({ kind }) => kind));
    expect([...kinds]).toEqual(['quickfix']);
    await session.open('a.germ', lot);
    expect(await actions(session, 0, 0, ['source.fixAll'])).toEqual([]);
    expect(await actions(session, 0, 0, ['source.organizeImports', 'quickfix.other'])).toEqual([]);
  }));
});

describe('what is rewritten', () => {
  test('is offered where it can be: a split, a ladder, a plan, totals', () => inSession({ settings, capabilities }, async session => {
    await session.open('a.germ', `stock G1 2026-01-09, GA3 60 mg, purity 100 %, 60 mL
lot IRI-1 Iris, 60 seeds
regime cold, chill 4 C 90 days, warm 18 C 60 days
lot IRI-2 Iris, 20 seeds
sow IRI-2 2026-01-11, regime cold
count IRI-2 2026-01-20, 3
`);
    // A `day` line above the stock would date the lots.
    expect(titlesOf(await actions(session, 0, 7, ['refactor']))).toEqual([expect.stringMatching(/^Write the ladder/)]);
    expect(titlesOf(await actions(session, 1, 5, ['refactor.rewrite']))).toEqual([
      expect.stringMatching(/^Split IRI-1 into A \(30/), expect.stringMatching(/^Split IRI-1 into 4 dishes of 7/),
    ]);
    expect(titlesOf(await actions(session, 4, 5))).toEqual([
      'Write the counts of IRI-2 as totals so far (“=”)', 'Write the plan of regime cold for IRI-2', 'Move this record below “day 2026-01-11”',
    ]);
    expect(titlesOf(await actions(session, 4, 0))).toEqual(['Write the plan of regime cold for IRI-2', 'Move this record below “day 2026-01-11”']);
  }));

  test('is what is selected: whole lines end at the beginning of the next one', () => inSession({ settings, capabilities }, async session => {
    await session.open('a.germ', `${lot}sow VER-24/A 2026-01-11\r\nsow VER-24/B 2026-01-11\r\nnote VER-24 2026-01-12, x\r\n`);
    const [move] = (await actions(session, [2, 4], 0, ['refactor.rewrite']))!;
    expect(move!.title).toBe('Move these 2 records below “day 2026-01-11”');
    expect(textsOf(move!)).toEqual(['\r\nday 2026-01-11\r\nsow VER-24/A', '']);
  }));
});

describe('a lot that is over', () => {
  const over = 'lot VER-24 Veratrum nigrum, 60 seeds\ndiscard VER-24 2026-01-11, soft\n';
  const archived = (session: Session) => actions(session, 0, 5, ['refactor.move']);

  test('moves into a file that is made for it', () => inSession({ settings, capabilities }, async session => {
    await session.open('a.germ', over);
    const [move] = (await archived(session))!;
    expect(move).toMatchObject({
      kind: 'refactor.move', edit: {
        documentChanges: [
          { kind: 'create', uri: session.uri('archive.germ'), options: { ignoreIfExists: true } },
          { textDocument: { uri: session.uri('a.germ'), version: 1 }, edits: [{ newText: '', range: { start: { line: 0 }, end: { line: 2, character: 0 } } }] },
          { textDocument: { uri: session.uri('archive.germ'), version: null }, edits: [{ newText: `# Finished lots\n\n${over}` }] },
        ],
      },
    });
  }));

  test.each([
    ['versions', { documentChanges: true }], ['files that are made', { documentChanges: false, resourceOperations: ['create'] }],
  ])('stays where the client takes no %s, unless the file is there', (_, taken) => inSession(
    { settings, capabilities: { ...capabilities, workspace: { ...workspace, workspaceEdit: taken } } },
    async session => {
      await session.open('a.germ', over);
      expect(await archived(session)).toEqual([]);
      await session.open('archive.germ', 'lot IRI-1 Iris\n');
      expect(titlesOf(await archived(session))).toEqual(['Move VER-24, which is finished, to archive.germ (2 records)']);
    }));
});

test('a client that takes no actions as data gets none, and one without versions gets plain changes', async () => {
  await inSession({ settings, capabilities: { workspace } }, async session => {
    expect(session.initialized.capabilities.codeActionProvider).toBeUndefined();
    await session.open('a.germ', `${lot}sow VER-24/A 2026-01-11, 18,5 C\n`);
    expect(await actions(session, 2)).toBeNull();
  });
  const plain = { ...capabilities, workspace: { configuration: true } };
  await inSession({ settings, capabilities: plain }, async session => {
    await session.open('a.germ', `${lot}sow VER-24/A 2026-01-11, 18,5 C\n`);
    const [fix] = await actions(session, 2) ?? [];
    expect(fix?.edit).toEqual({ changes: { [session.uri('a.germ')]: [expect.objectContaining({ newText: '18.5' })] } });
  });
});
