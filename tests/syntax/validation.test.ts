import { Lexer } from 'chevrotain';
import { describe, expect, it } from 'vitest';
import { RecordParser } from '../../server/src/syntax/grammar.ts';
import { allTokens, lexing } from '../../server/src/syntax/tokens.ts';

describe('what the programs leave out at their start', () => {
  it('finds no mistake in the tokens', () => {
    expect(new Lexer(allTokens, lexing).lexerDefinitionErrors).toEqual([]);
  });

  it('finds no mistake in the grammar, which it would throw', () => {
    expect(() => new RecordParser(false)).not.toThrow();
  });
});
