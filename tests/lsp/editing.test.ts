import { expect, test } from 'vitest';
import type { CodeAction, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import { inSession, type Session } from '../support/lsp-client.ts';

const settings = { asOf: '2026-02-01' };
const lot = 'lot VER-24 Veratrum nigrum, 60 seeds\nsplit VER-24, A 24 seeds, B 24 seeds\n';
const workspace = { configuration: true, workspaceFolders: true, workspaceEdit: { documentChanges: true } };
const capabilities = {
  workspace,
  textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor', 'source'] } } } },
};

function actions(session: Session, line: number, character = 0, only?: string[]): Promise<CodeAction[] | null> {
  const position = { line, character };
  return session.ask('textDocument/codeAction', {
    textDocument: { uri: session.uri('a.germ') }, range: { start: position, end: position },
    context: { diagnostics: session.shown('a.germ') ?? [], ...(only && { only }) },
  });
}

test('a slip offers its fix, bound to the problem and to the version of the document', () => inSession(
  { settings, capabilities },
  async session => {
    await session.open('a.germ', `${lot}sow VER-24/A 2026-01-11, 18,5 C\n`, 5);
    await session.shows('a.germ', ['decimal-comma']);
    const [fix] = await actions(session, 2) ?? [];
    expect(fix).toMatchObject({
      kind: 'quickfix', isPreferred: true, diagnostics: [{ code: 'decimal-comma' }],
      edit: { documentChanges: [{ textDocument: { uri: session.uri('a.germ'), version: 5 }, edits: [{ newText: '18.5' }] }] },
    });
  }));

test('both readings of a date are offered, and neither is preferred', () => inSession(
  { settings, capabilities },
  async session => {
    await session.open('a.germ', `${lot}sow VER-24/A 3/4/2026\n`);
    await session.shows('a.germ', ['day-first-date']);
    const fixes = (await actions(session, 2, 0, ['quickfix'])) ?? [];
    expect(fixes.map(({ edit }) => (edit?.documentChanges?.[0] as { edits: TextEdit[] }).edits[0]?.newText)).toEqual(
      ['2026-04-03', '2026-03-04']);
    expect(fixes.some(({ isPreferred }) => isPreferred)).toBe(false);
  }));

test('every evident slip of a file is mended at once when asked for', () => inSession(
  { settings, capabilities },
  async session => {
    await session.open('a.germ', `${lot}sow VER-24/A 2026-1-11, 18,5 C\nsow VER-24/B 3/4/2026\n`);
    await session.shows('a.germ', ['bad-date', 'decimal-comma', 'day-first-date']);
    const [all] = await actions(session, 0, 0, ['source.fixAll']) ?? [];
    const [change] = all?.edit?.documentChanges as { edits: TextEdit[] }[];
    expect(change?.edits.map(({ newText }) => newText)).toEqual(['2026-01-11']);
  }));

test('a client that takes no actions as data gets none, and one without versions gets plain changes', async () => {
  await inSession({ settings, capabilities: { workspace } }, async session => {
    await session.open('a.germ', `${lot}sow VER-24/A 2026-01-11, 18,5 C\n`);
    expect(await actions(session, 2)).toBeNull();
  });
  const plain = { ...capabilities, workspace: { configuration: true } };
  await inSession({ settings, capabilities: plain }, async session => {
    await session.open('a.germ', `${lot}sow VER-24/A 2026-01-11, 18,5 C\n`);
    const [fix] = await actions(session, 2) ?? [];
    expect(Object.keys(fix?.edit?.changes ?? {})).toEqual([session.uri('a.germ')]);
  });
});

test('a stock offers its ladder', () => inSession({ settings, capabilities }, async session => {
  await session.open('a.germ', 'stock G1 2026-01-09, GA3 60 mg, purity 100 %, 60 mL\n');
  const titles = (await actions(session, 0, 7, ['refactor']))?.map(({ title }) => title);
  expect(titles?.some(title => title.startsWith('Write the ladder'))).toBe(true);
}));

test('a sowing in a regime offers to write its plan', () => inSession({ settings, capabilities }, async session => {
  await session.open('a.germ', `regime cold, chill 4 C 90 days, warm 18 C 60 days\n${lot}sow VER-24/A 2026-01-11, regime cold\n`);
  const found = await actions(session, 3, 0, ['refactor']);
  const plan = found?.find(({ title }) => title === 'Write the plan of regime cold for VER-24/A');
  expect(JSON.stringify(plan?.edit)).toContain(', regime cold ends');
}));

test('formatting changes what needs it, one edit a line, and never a line with a problem', () => inSession(
  { settings, capabilities },
  async session => {
    await session.open('a.germ', `${lot}SOW VER-24/A  2026-01-11,24 seeds\nsow VER-24/B 2026-01-11,  18,5 C\n  a   remark\n`);
    const edits = await session.ask<TextEdit[]>('textDocument/formatting', {
      textDocument: { uri: session.uri('a.germ') }, options: { tabSize: 2, insertSpaces: true },
    });
    expect(edits.map(({ range }) => range.start.line)).toEqual([2]);
    const typed = await session.ask<TextEdit[]>('textDocument/onTypeFormatting', {
      textDocument: { uri: session.uri('a.germ') }, position: { line: 3, character: 0 }, ch: '\n',
      options: { tabSize: 2, insertSpaces: true },
    });
    expect(typed).toEqual(edits);
  }));

test('a lot is renamed in all files, and a clash is refused with the reason', () => inSession(
  { settings, capabilities, files: { 'b.germ': 'sow VER-24/A 2026-01-11\nlot IRI-1 Iris, 5 seeds\n' } },
  async session => {
    await session.open('a.germ', lot);
    const at = { textDocument: { uri: session.uri('a.germ') }, position: { line: 0, character: 5 } };
    expect(await session.ask('textDocument/prepareRename', at)).toMatchObject({ placeholder: 'VER-24' });
    const edit = await session.ask<WorkspaceEdit>('textDocument/rename', { ...at, newName: 'VER-25' });
    expect(edit.documentChanges).toHaveLength(2);
    await expect(session.ask('textDocument/rename', { ...at, newName: 'IRI-1' })).rejects.toThrow(/IRI-1/);
  }));
