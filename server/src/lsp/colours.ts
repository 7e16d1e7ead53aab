/** Requests for semantic tokens: the file, a part of it, or what changed since the last time. */
import {
  SemanticTokensBuilder, type Connection, type SemanticTokens, type SemanticTokensDelta, type ServerCapabilities,
} from './protocol.ts';
import { tokensIn, type Mark, type Token } from '../features/semantic-tokens.ts';
import type { About } from './features.ts';
import type { Service } from './service.ts';

/** The protocol's own types, so that every theme has colours for them; the grammar's scopes have the same. */
const types = ['function', 'variable', 'type', 'class'] as const;
/** The last two are ours: package.json says which colours they have in VS Code. */
const modifiers = ['definition', 'defaultLibrary', 'closed', 'unresolved'] as const;

const typeOf: Readonly<Record<Token['type'], number>> = {
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
  /** What each open document was coloured with last. */
  const builders = new Map<string, SemanticTokensBuilder>();
  const { semanticTokens } = connection.languages;

  semanticTokens.on(about('colours', null, ({ journal, file }, { textDocument: { uri } }): SemanticTokens => {
    for (const known of builders.keys()) if (service.versionOf(known) === undefined) builders.delete(known);
    const builder = new SemanticTokensBuilder();
    builders.set(uri, builder);
    push(builder, tokensIn(journal, file));
    return builder.build();
  }));

  semanticTokens.onDelta(about('colours', null, (
    { journal, file }, { textDocument: { uri }, previousResultId },
  ): SemanticTokens | SemanticTokensDelta => {
    const builder = builders.get(uri) ?? new SemanticTokensBuilder();
    builders.set(uri, builder);
    builder.previousResult(previousResultId);
    push(builder, tokensIn(journal, file));
    return builder.buildEdits();
  }));

  semanticTokens.onRange(about('colours', null, ({ journal, file }, { range: { start, end } }): SemanticTokens => {
    const builder = new SemanticTokensBuilder();
    push(builder, tokensIn(journal, file, start.line, end.line));
    return builder.build();
  }));
}

function push(builder: SemanticTokensBuilder, tokens: Iterable<Token>): void {
  for (const { line, start, end, type, marks } of tokens) {
    builder.push(line, start, end - start, typeOf[type], marks.reduce((bits, mark) => bits | bitOf[mark], 0));
  }
}
