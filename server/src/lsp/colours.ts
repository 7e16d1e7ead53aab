/** Requests for semantic tokens: the file, a part of it, or what changed since the last time. */
import type { Connection, SemanticTokens, SemanticTokensDelta, ServerCapabilities } from './protocol.ts';
import { forEachToken, type Mark, type TokenType } from '../features/semantic-tokens.ts';
import type { About } from './features.ts';
import type { Service, Snapshot } from './service.ts';
import { TokenAnswers, TokenData } from './token-data.ts';

/** The protocol's own types, so that every theme has colours for them; the grammar's scopes have the same. */
const types = ['function', 'variable', 'type', 'class'] as const;
/** The last two are ours: package.json says which colours they have in VS Code. */
const modifiers = ['definition', 'defaultLibrary', 'closed', 'unresolved'] as const;

const typeOf: Readonly<Record<TokenType, number>> = {
  name: types.indexOf('function'), part: types.indexOf('variable'),
  agent: types.indexOf('type'), plant: types.indexOf('class'),
};
const bitOf: Readonly<Record<Mark, number>> = {
  definition: 1 << modifiers.indexOf('definition'), builtIn: 1 << modifiers.indexOf('defaultLibrary'),
  closed: 1 << modifiers.indexOf('closed'), unresolved: 1 << modifiers.indexOf('unresolved'),
};

export const colourCapabilities: ServerCapabilities = {
  semanticTokensProvider: {
    legend: { tokenTypes: [...types], tokenModifiers: [...modifiers] }, range: true, full: { delta: true },
  },
};

export function serveColours(connection: Connection, about: About, service: Service): void {
  const answers = new TokenAnswers();
  const { semanticTokens } = connection.languages;

  semanticTokens.on(about('colours', null, (snapshot, { textDocument: { uri } }): SemanticTokens => {
    answers.keepOnly(known => service.versionOf(known) !== undefined);
    return answers.full(uri, dataOf(snapshot));
  }));

  semanticTokens.onDelta(about('colours', null, (
    snapshot, { textDocument: { uri }, previousResultId },
  ): SemanticTokens | SemanticTokensDelta => answers.since(uri, previousResultId, dataOf(snapshot))));

  semanticTokens.onRange(about('colours', null, (snapshot, { range: { start, end } }): SemanticTokens => (
    { data: dataOf(snapshot, start.line, end.line).list() })));
}

function dataOf({ journal, file }: Snapshot, from?: number, to?: number): TokenData {
  const data = new TokenData();
  const bits = new Map<readonly Mark[], number>();
  forEachToken(journal, file, (line, start, end, type, marks) => {
    let set = bits.get(marks);
    if (set === undefined) bits.set(marks, set = marks.reduce((all, mark) => all | bitOf[mark], 0));
    data.add(line, start, end - start, typeOf[type], set);
  }, from, to);
  return data;
}
