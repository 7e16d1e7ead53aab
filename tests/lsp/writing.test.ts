import { expect, test } from 'vitest';
import type { CompletionItem, CompletionList, SignatureHelp } from 'vscode-languageserver';
import { inSession, type Session } from '../support/lsp-client.ts';

const settings = { asOf: '2026-01-19T19:05' };
const journal = `lot VER-24 Veratrum nigrum, 60 seeds
split VER-24, A 24 seeds, B 24 seeds
sow VER-24/A 2026-01-11, 24 seeds, at shelf 1
sow VER-24/B 2026-01-11, 24 seeds, at shelf 2
`;
const workspace = { configuration: true, workspaceFolders: true };

const capable = {
  workspace,
  textDocument: {
    completion: {
      completionItem: {
        snippetSupport: true, insertReplaceSupport: true, labelDetailsSupport: true,
        insertTextModeSupport: { valueSet: [1, 2] },
      },
    },
    signatureHelp: { signatureInformation: { parameterInformation: { labelOffsetSupport: true } } },
  },
};
const plain = { workspace, textDocument: { completion: {} } };

/** The list at the end of a line that is added to the journal. */
async function listAt(
  session: Session, line: string, context: object = { triggerKind: 1 }, text = journal,
): Promise<CompletionList | null> {
  await session.open('a.germ', text + line);
  const position = { line: text.split('\n').length - 1, character: line.length };
  return session.ask('textDocument/completion', { textDocument: { uri: session.uri('a.germ') }, position, context });
}

function named(list: CompletionList | null, label: string): CompletionItem | undefined {
  return list?.items.find(item => item.label === label);
}

test('the server says what makes it help', () => inSession({ settings }, async ({ initialized: { capabilities } }) => {
  expect(capabilities.completionProvider?.triggerCharacters).toEqual([' ', ',', '/']);
  expect(capabilities.signatureHelpProvider?.triggerCharacters).toEqual([' ', ',']);
  return Promise.resolve();
}));

test('a client with snippets gets blanks to fill in, ranges to insert and to replace, and details beside the label', () => inSession(
  { settings, capabilities: capable }, async session => {
    const list = await listAt(session, 'cou');
    expect(list?.isIncomplete).toBe(false);
    expect(named(list, 'count')).toEqual({
      label: 'count', kind: 14, sortText: '0000', insertTextFormat: 2, insertTextMode: 1,
      labelDetails: { description: 'what you saw; a number is what is new, with = it is the total so far' },
      documentation: { kind: 'plaintext', value: 'For example: count VER-24/A 2026-01-19, 3 germinated, 1 rotted' },
      textEdit: {
        newText: 'count ${1|VER-24/A,VER-24/B,VER-24|} ${2:2026-01-19}, $3',
        insert: { start: { line: 4, character: 0 }, end: { line: 4, character: 3 } },
        replace: { start: { line: 4, character: 0 }, end: { line: 4, character: 3 } },
      },
    });
  }));

test('a client with neither gets plain text and one range', () => inSession({ settings, capabilities: plain }, async session => {
  const list = await listAt(session, 'cou');
  expect(named(list, 'count')).toEqual({
    label: 'count', kind: 14, sortText: '0000', detail: 'what you saw; a number is what is new, with = it is the total so far',
    documentation: { kind: 'plaintext', value: 'For example: count VER-24/A 2026-01-19, 3 germinated, 1 rotted' },
    textEdit: { newText: 'count ', range: { start: { line: 4, character: 0 }, end: { line: 4, character: 3 } } },
  });
  expect(named(list, 'counting round')?.textEdit).toMatchObject({ newText: 'day 2026-01-19\ncount VER-24/A, \ncount VER-24/B, ' });
}));

test('blanks of one name are one tab stop, and what snippets would read as their own is escaped', () => inSession(
  { settings, capabilities: capable }, async session => {
    const trial = named(await listAt(session, ''), 'trial');
    expect(trial?.textEdit?.newText.split('\n').slice(0, 2)).toEqual([
      'lot ${1:LOT-26} ${2:name of the plant}, ${3:60} seeds', 'split $1, A ${4:24} seeds, B ${5:24} seeds',
    ]);
    const odd = 'lot X-1 Iris, from the $hop}, at a|b\\c\nlot X-2 Iris, from own bed\n';
    const from = named(await listAt(session, 'lot X-3 Iris, ', undefined, odd), 'from …');
    expect(from?.textEdit?.newText).toBe('from ${1|own bed,the $hop}|}');
  }));

test('lines are ended as the file ends its own', () => inSession({ settings, capabilities: plain }, async session => {
  const list = await listAt(session, '', undefined, journal.replaceAll('\n', '\r\n'));
  expect(named(list, 'counting round')?.textEdit?.newText).toBe('day 2026-01-19\r\ncount VER-24/A, \r\ncount VER-24/B, ');
}));

test('a blank below a `day` line brings up no dates, asking does', () => inSession({ settings, capabilities: plain }, async session => {
  const text = `${journal}day 2026-01-19\n`;
  expect(await listAt(session, 'count VER-24/A ', { triggerKind: 2, triggerCharacter: ' ' }, text)).toBeNull();
  expect(named(await listAt(session, 'count VER-24/A ', { triggerKind: 1 }, text), '19:05')).toBeDefined();
}));

test('more than can be shown is said to be more', () => inSession({ settings, capabilities: plain }, async session => {
  const many = Array.from({ length: 120 }, (_, n) => `lot L-${n} Iris, 6 seeds\n`).join('');
  const list = await listAt(session, 'sow ', undefined, many);
  expect([list?.isIncomplete, list?.items.length]).toEqual([true, 100]);
  expect(list?.items.slice(0, 3).map(({ label, sortText }) => [label, sortText])).toEqual([['L-0', '0000'], ['L-1', '0001'], ['L-2', '0002']]);
}));

test('closed batches come behind the open ones, as far as there is room', () => inSession({ settings, capabilities: plain }, async session => {
  const open = Array.from({ length: 100 }, (_, n) => `lot L-${n} Iris, 6 seeds\n`).join('');
  const list = await listAt(session, 'sow L', undefined, `${open}lot L-OLD Iris\ndiscard L-OLD 2025-01-01\n`);
  expect([list?.isIncomplete, list?.items.length, named(list, 'L-OLD')]).toEqual([true, 100, undefined]);
  const narrowed = await listAt(session, 'sow L-O', undefined, `${open}lot L-OLD Iris\ndiscard L-OLD 2025-01-01\n`);
  expect(narrowed?.items.map(({ label }) => label)).toEqual(['L-OLD']);
}));

test('nothing is offered in prose, whatever is typed', () => inSession({ settings, capabilities: capable }, async session => {
  for (const [line, triggerCharacter] of [['  White, ', ' '], ['# Winter, ', ','], ['note VER-24 2026-01-19, at ', ' ']] as const) {
    expect(await listAt(session, line, { triggerKind: 2, triggerCharacter })).toBeNull();
  }
}));

test('a signature has its parts as columns for a client that takes them, else as texts', async () => {
  const ask = async (session: Session): Promise<SignatureHelp> => {
    await session.open('a.germ', `${journal}pot VER-24/A, `);
    return session.ask('textDocument/signatureHelp', { textDocument: { uri: session.uri('a.germ') }, position: { line: 4, character: 14 } });
  };
  await inSession({ settings, capabilities: capable }, async session => {
    const help = await ask(session);
    expect(help.signatures[0]?.label).toBe('pot BATCH [DATE] [TIME], 9 seedlings, at bag 3 slot 2');
    expect(help.signatures[0]?.parameters?.[3]).toEqual({ label: [25, 36] });
    expect([help.activeSignature, help.activeParameter]).toEqual([0, 3]);
  });
  await inSession({ settings, capabilities: plain }, async session => {
    expect((await ask(session)).signatures[0]?.parameters?.map(({ label }) => label)).toEqual([
      'BATCH', '[DATE]', '[TIME]', '9 seedlings', 'at bag 3 slot 2',
    ]);
  });
});
