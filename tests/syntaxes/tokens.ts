/** The grammar as an editor runs it: vscode-textmate on Oniguruma, one line after the other. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';

export const syntaxes = new URL('../../syntaxes/', import.meta.url);

/** A run of characters of one line with the same scopes, outermost first. */
export interface Token {
  readonly text: string;
  /** UTF-16 units from the start of the line; `end` is exclusive. */
  readonly start: number;
  readonly end: number;
  readonly scopes: readonly string[];
}

/** The grammar's `source.plumule` and the records' own scope say what a text is part of, not what it is. */
export function namesOf(token: Token): string[] {
  return token.scopes.filter(scope => !scope.startsWith('source.') && !scope.startsWith('meta.'));
}

async function loadGrammar(): Promise<textmate.IGrammar> {
  const wasm = await readFile(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm'));
  await oniguruma.loadWASM(wasm);
  const file = new URL('plumule.tmLanguage.json', syntaxes);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: patterns => oniguruma.createOnigScanner(patterns),
      createOnigString: text => oniguruma.createOnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(await readFile(file, 'utf8'), file.pathname),
  });
  const grammar = await registry.loadGrammar('source.plumule');
  if (!grammar) throw new Error('no grammar with the scope source.plumule');
  return grammar;
}

const grammar = await loadGrammar();

/** The tokens of each line of a text that is given as lines. */
export function tokenize(lines: readonly string[]): Token[][] {
  let state: textmate.StateStack = textmate.INITIAL;
  return lines.map(line => {
    const result = grammar.tokenizeLine(line, state);
    state = result.ruleStack;
    return result.tokens
      .map(({ startIndex, endIndex, scopes }) => {
        // The last token also covers the line end that vscode-textmate adds.
        const end = Math.min(endIndex, line.length);
        return { text: line.slice(startIndex, end), start: startIndex, end, scopes };
      })
      .filter(({ start, end }) => end > start);
  });
}
