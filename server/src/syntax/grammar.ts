/**
 * The grammar of one record line: a keyword, the head, then facts behind commas, each a row of pieces. It says how
 * tokens hang together (`9 germinated` is one amount); what a row of pieces means depends on the keyword and is read
 * in facts.ts. Every row of tokens that begins with a word has a parse.
 */
import { EmbeddedActionsParser, type IOrAlt, type IToken } from 'chevrotain';
import * as t from './tokens.ts';
import { once } from '../model/once.ts';
import type { Span } from '../model/record.ts';

/** A number, as written, with the word or the % right behind it, be it a unit or not. */
export interface Amount extends Span {
  readonly kind: 'amount';
  readonly number: IToken;
  readonly unit: IToken | undefined;
}

/** Anything that is not an amount: one token. */
export interface Atom extends Span {
  readonly kind: 'date' | 'time' | 'word' | 'quoted' | 'mark';
  readonly text: string;
}

export type Piece = Amount | Atom;

export interface RecordSyntax {
  readonly keyword: IToken;
  readonly head: Piece[];
  /** The facts, and where each one's comma stands. */
  readonly facts: { readonly comma: number; readonly pieces: Piece[] }[];
}

export class RecordParser extends EmbeddedActionsParser {
  // Made once: chevrotain would take a new array at every call, too, and spend its time on making them.
  private readonly kinds: IOrAlt<Piece>[] = [
    { ALT: () => this.amount() },
    { ALT: () => atom('word', this.CONSUME(t.Word)) },
    { ALT: () => atom('date', this.CONSUME(t.DateLike)) },
    { ALT: () => atom('time', this.CONSUME(t.Time)) },
    { ALT: () => atom('quoted', this.CONSUME(t.Quoted)) },
    { ALT: () => atom('mark', this.CONSUME(t.Mark)) },
  ];
  private readonly unit = () => this.CONSUME2(t.Word);

  /** Tests have the grammar validated, so that no start pays for it. */
  constructor(skipValidations = true) {
    super(t.allTokens, { recoveryEnabled: false, maxLookahead: 1, skipValidations });
    this.performSelfAnalysis();
  }

  readonly record = this.RULE('record', (): RecordSyntax => {
    const keyword = this.CONSUME(t.Word);
    const head = this.SUBRULE(this.row);
    const facts: { comma: number; pieces: Piece[] }[] = [];
    this.MANY(() => {
      const comma = startOf(this.CONSUME(t.Comma));
      facts.push({ comma, pieces: this.SUBRULE2(this.row) });
    });
    return { keyword, head, facts };
  });

  private readonly row = this.RULE('row', (): Piece[] => {
    const pieces: Piece[] = [];
    this.MANY(() => pieces.push(this.OR(this.kinds)));
    return pieces;
  });

  private amount(): Amount {
    const number = this.CONSUME(t.Num);
    const unit = this.OPTION(this.unit);
    return this.ACTION(() => amountOf(number, unit));
  }
}

function amountOf(number: IToken, unit: IToken | undefined): Amount {
  return { kind: 'amount', number, unit, start: startOf(number), end: endOf(unit ?? number) };
}

function atom(kind: Atom['kind'], token: IToken): Atom {
  return { kind, text: token.image, start: startOf(token), end: endOf(token) };
}

/**
 * The column of a token. The library's token for the end of its input has NaN for one, so V8 keeps the columns of all
 * tokens as boxed doubles, and of all that is made from them: 120 bytes a line.
 */
export function startOf(token: IToken): number {
  return token.startOffset | 0;
}

function endOf(token: IToken): number {
  return startOf(token) + token.image.length;
}

const parserOnce = once(() => new RecordParser());

/** The syntax of a line that begins with a letter; undefined for any other line. */
export function syntaxOf(line: string): RecordSyntax | undefined {
  const parser = parserOnce();
  parser.input = t.lexer().tokenize(line).tokens;
  const record = parser.record();
  return parser.errors.length === 0 ? record : undefined;
}
