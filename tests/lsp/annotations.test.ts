import { expect, test } from 'vitest';
import type {
  CodeLens, DocumentLink, InlayHint, SelectionRange, SemanticTokens, SemanticTokensDelta,
} from 'vscode-languageserver';
import { inSession, type Session } from '../support/lsp-client.ts';

const settings = { asOf: '2026-01-26' };
const journal = `lot V-1 Veratrum nigrum, 60 seeds
split V-1, A 24 seeds, B 24 seeds
sow V-1/A 2026-01-11
sow V-1/B 2026-01-11
count V-1/A 2026-01-18, 3
count V-1/B 2026-01-18, 0
`;

function ask<Result>(session: Session, what: string, params: object = {}): Promise<Result> {
  return session.ask(`textDocument/${what}`, { textDocument: { uri: session.uri('a.germ') }, ...params });
}

const whole = { range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } } };

async function titles(session: Session): Promise<unknown[]> {
  const lenses = await ask<CodeLens[]>(session, 'codeLens');
  expect(lenses.every(({ command }) => command === undefined)).toBe(true);
  const resolved = await Promise.all(lenses.map(lens => session.ask<CodeLens>('codeLens/resolve', lens)));
  return resolved.map(({ command }) => [command?.title, command?.command]);
}

const state = ['2 of 2 open · count A, B due yesterday', ''];
const shares = ['A 3 of 24 = 12.5 % · B 0 of 24 = 0 %', ''];

test('lenses over a lot have their titles when they come into view, and lead nowhere for a client without commands', () => inSession({ settings }, async session => {
  await session.open('a.germ', journal);
  expect(await titles(session)).toEqual([state, shares]);
}));

test('a client that has the command gets the way to the comparison', () => inSession(
  { settings, initializationOptions: { commands: ['plumule.compare'] } }, async session => {
    await session.open('a.germ', journal);
    expect(await titles(session)).toEqual([['compare', 'plumule.compare'], state, shares]);
  }));

test('a lot that nothing was done to has the way to the advice', () => inSession(
  { settings, initializationOptions: { commands: ['plumule.advise'] } }, async session => {
    await session.open('a.germ', 'lot V-1 Veratrum nigrum, 60 seeds\nsplit V-1, A 24 seeds, B 24 seeds\n');
    expect(await titles(session)).toEqual([['what to do with it', 'plumule.advise']]);
  }));

/** What our own client tells of the last commit. */
function commit(session: Session, texts: Readonly<Record<string, string>>): Promise<void> {
  const files = Object.entries(texts).map(([name, text]) => ({ uri: session.uri(name), text }));
  return session.connection.sendNotification('plumule/committed', { files });
}

const before = journal.replace(/count V-1\/B.*\n/, '');
const since = 'since the last commit: B none germinated on 18 January 2026';

test('a lens says what changed since the last commit, and leads to the difference', () => inSession(
  { settings, initializationOptions: { commands: ['plumule.changes'] } }, async session => {
    await session.open('a.germ', journal);
    await commit(session, { 'a.germ': before });
    const lenses = await ask<CodeLens[]>(session, 'codeLens');
    expect(await titles(session)).toEqual([state, [since, 'plumule.changes'], shares]);
    const changes = await session.ask<CodeLens>('codeLens/resolve', lenses[1]!);
    expect(changes.command?.arguments).toEqual([session.uri('a.germ')]);
    await commit(session, { 'a.germ': journal });
    expect(await titles(session)).toEqual([state, shares]);
  }));

test('what changed in another file is told above the lot, and the way leads there', () => inSession(
  { settings, initializationOptions: { commands: ['plumule.changes'] } }, async session => {
    await session.open('a.germ', before);
    await session.open('b.germ', 'count V-1/B 2026-01-18, 0\n');
    await commit(session, { 'a.germ': before, 'b.germ': '' });
    const [, lens] = await ask<CodeLens[]>(session, 'codeLens');
    const { command } = await session.ask<CodeLens>('codeLens/resolve', lens!);
    expect(command).toEqual({ title: since, command: 'plumule.changes', arguments: [session.uri('b.germ')] });
  }));

test.each([
  ['what changed', { changes: false }, [state, shares]],
  ['how the lots do', { lots: false }, [[since, '']]],
])('a setting turns off the lens of %s', (_, lens, shown) => inSession({ settings: { ...settings, lens } }, async session => {
  await session.open('a.germ', journal);
  await commit(session, { 'a.germ': before });
  expect(await titles(session)).toEqual(shown);
}));

test('a lens of a lot that is gone has a dash', () => inSession({ settings }, async session => {
  await session.open('a.germ', journal);
  const [lens] = await ask<CodeLens[]>(session, 'codeLens');
  await session.change('a.germ', 2, [0, 0, 3], 'not');
  expect((await session.ask<CodeLens>('codeLens/resolve', lens!)).command?.title).toBe('–');
}));

test('hints stand at the ends of lines, with what they are based on; each kind can be turned off', async () => {
  await inSession({ settings }, async session => {
    await session.open('a.germ', journal);
    expect(await ask<InlayHint[]>(session, 'inlayHint', whole)).toEqual([
      {
        position: { line: 4, character: 25 }, label: 'day 7 · 3 of 24 = 12.5 %', paddingLeft: true,
        tooltip: 'Germinated so far, 95 % Wilson interval 4.3 to 31 %; 24 sown. Day 7 from the sowing on 2026-01-11.',
      },
      {
        position: { line: 5, character: 25 }, label: 'day 7 · 0 of 24 = 0 %', paddingLeft: true,
        tooltip: 'Germinated so far, 95 % Wilson interval 0 to 13.8 %; 24 sown. Day 7 from the sowing on 2026-01-11.',
      },
    ]);
  });
  await inSession({ settings: { ...settings, hints: { counts: false }, lens: { lots: false } } }, async session => {
    await session.open('a.germ', journal);
    expect(await ask(session, 'inlayHint', whole)).toEqual([]);
    expect(await ask(session, 'codeLens')).toEqual([]);
  });
});

/** Tokens as line, column, text length, type and modifiers, by their names. */
function decoded({ data }: SemanticTokens, session: Session): unknown[] {
  const { legend } = session.initialized.capabilities.semanticTokensProvider!;
  const tokens: unknown[] = [];
  let [line, start] = [0, 0];
  for (let i = 0; i < data.length; i += 5) {
    const [down, across, length, type, bits] = data.slice(i, i + 5) as [number, number, number, number, number];
    start = down > 0 ? across : start + across;
    line += down;
    const marks = legend.tokenModifiers.filter((_, bit) => bits & (1 << bit));
    tokens.push([line, start, length, legend.tokenTypes[type], ...marks]);
  }
  return tokens;
}

test('colours come for the file, for a part of it, and as what changed', () => inSession({ settings }, async session => {
  await session.open('a.germ', 'lot V-1 Iris\nsow V-2/A 2026-01-11\n');
  const full = await ask<SemanticTokens>(session, 'semanticTokens/full');
  expect(decoded(full, session)).toEqual([
    [0, 4, 3, 'function', 'definition'], [0, 8, 4, 'class'], [1, 4, 3, 'function', 'unresolved'], [1, 8, 1, 'variable', 'unresolved'],
  ]);
  const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 5 } };
  expect(decoded(await ask(session, 'semanticTokens/range', { range }), session)).toEqual([
    [1, 4, 3, 'function', 'unresolved'], [1, 8, 1, 'variable', 'unresolved'],
  ]);
  await session.change('a.germ', 2, [1, 4, 9], 'V-1');
  const since = { previousResultId: full.resultId };
  const delta = await ask<SemanticTokensDelta>(session, 'semanticTokens/full/delta', since);
  const data = [...full.data];
  for (const edit of delta.edits.toReversed()) data.splice(edit.start, edit.deleteCount, ...edit.data ?? []);
  expect(decoded({ data }, session)).toEqual([[0, 4, 3, 'function', 'definition'], [0, 8, 4, 'class'], [1, 4, 3, 'function']]);
  const lost = await ask<SemanticTokens>(session, 'semanticTokens/full/delta', { previousResultId: 'of another time' });
  expect(decoded(lost, session)).toHaveLength(3);
  expect(decoded(await ask<SemanticTokens>(session, 'semanticTokens/full'), session)).toHaveLength(3);
}));

test('a selection range holds those around it', () => inSession({ settings }, async session => {
  await session.open('a.germ', journal);
  const [smallest] = await ask<SelectionRange[]>(session, 'selectionRange', { positions: [{ line: 2, character: 6 }] });
  const widths = [];
  for (let each: SelectionRange | undefined = smallest; each; each = each.parent) {
    widths.push(each.range.end.character - each.range.start.character);
  }
  expect(widths).toEqual([3, 5, 20, 0]);
}));

test('links lead to pictures within the folder and to the web, and nowhere else', () => inSession({ settings }, async session => {
  await session.open('deep/a.germ', [
    'photo V-1 2026-01-19, photos/tray 4.jpg', 'photo V-1 2026-01-19, ../b#1.jpg', 'photo V-1 2026-01-19, ../../c.jpg',
    'photo V-1 2026-01-19, photos/../../../c.jpg', 'photo V-1 2026-01-19, %2e%2e/%2e%2e/c.jpg',
    'guide Iris, source https://example.org/a',
  ].join('\n'));
  const textDocument = { uri: session.uri('deep/a.germ') };
  const links = await session.ask<DocumentLink[]>('textDocument/documentLink', { textDocument });
  expect(links.map(({ range, target }) => [range.start.line, decodeURIComponent(target!.replace(session.uri(''), ''))])).toEqual([
    [0, '/deep/photos/tray 4.jpg'], [1, '/b#1.jpg'], [4, '/deep/%2e%2e/%2e%2e/c.jpg'], [5, 'https://example.org/a'],
  ]);
}));

test('a link says what it opens, to a client that shows it', async () => {
  const photo = 'photo V-1 2026-01-19, a.jpg\nguide Iris, source https://example.org/a\n';
  const tooltips = async (session: Session) => {
    await session.open('a.germ', photo);
    return (await ask<DocumentLink[]>(session, 'documentLink')).map(({ tooltip }) => tooltip);
  };
  await inSession({ settings }, async session => {
    expect(await tooltips(session)).toEqual([undefined, undefined]);
  });
  await inSession({ capabilities: { textDocument: { documentLink: { tooltipSupport: true } } } }, async session => {
    expect(await tooltips(session)).toEqual(['Open the picture', 'Open the page']);
  });
});

test('what another file changed is asked for again, by a client that can', () => inSession({
  settings, files: { 'b.germ': 'sow V-1 2026-01-11\n' },
  capabilities: {
    workspace: {
      configuration: true, workspaceFolders: true, codeLens: { refreshSupport: true },
      inlayHint: { refreshSupport: true }, semanticTokens: { refreshSupport: true },
    },
  },
}, async session => {
  const asked = new Set<string>();
  for (const what of ['codeLens', 'inlayHint', 'semanticTokens']) {
    session.connection.onRequest(`workspace/${what}/refresh`, () => {
      asked.add(what);
      return null;
    });
  }
  await session.open('b.germ', 'sow V-1 2026-01-11\n');
  await session.open('a.germ', journal);
  await expect.poll(() => [...asked].sort(), { timeout: 5000 }).toEqual(['codeLens', 'inlayHint', 'semanticTokens']);
}));
