/**
 * The grammar of one record line: a keyword, the head, then facts behind commas, each a row of pieces. It says how
 * pieces hang together (`=9 germinated` is one amount, `20/10 C` is one); what a row of pieces means depends on the
 * keyword and is read in facts.ts. Every row of tokens that begins with a word has a parse.
 */
import { EmbeddedActionsParser, type IToken } from 'chevrotain';
import * as t from './tokens.ts';
import type { Span } from '../model/record.ts';

/** A number with what belongs to it. */
export interface Amount extends Span {
  readonly kind: 'amount';
  readonly number: IToken;
  /** Behind a slash: the temperature of the night. */
  readonly second: IToken | undefined;
  readonly equals: boolean;
  /** The word right behind the number, be it a unit or not. */
  readonly unit: IToken | undefined;
}

/** Anything that is not an amount: one token. */
export interface Atom extends Span {
  readonly kind: 'date' | 'month' | 'time' | 'word' | 'quoted' | 'mark';
  readonly text: string;
}

export type Piece = Amount | Atom;

export interface RecordSyntax {
  readonly keyword: IToken;
  readonly head: Piece[];
  /** The facts, and where each one's comma stands. */
  readonly facts: { readonly comma: number; readonly pieces: Piece[] }[];
}

class RecordParser extends EmbeddedActionsParser {
  constructor() {
    super(t.allTokens, { recoveryEnabled: false, maxLookahead: 2 });
    this.performSelfAnalysis();
  }

  readonly record = this.RULE('record', (): RecordSyntax => {
    const keyword = this.CONSUME(t.Word);
    const head = this.SUBRULE(this.pieces);
    const facts: { comma: number; pieces: Piece[] }[] = [];
    this.MANY(() => {
      const comma = this.CONSUME(t.Comma);
      const pieces = this.SUBRULE2(this.pieces);
      facts.push({ comma: comma.startOffset, pieces });
    });
    return { keyword, head, facts };
  });

  private readonly pieces = this.RULE('pieces', (): Piece[] => {
    const pieces: Piece[] = [];
    this.MANY(() => pieces.push(this.SUBRULE(this.piece)));
    return pieces;
  });

  private readonly piece = this.RULE('piece', (): Piece =>
    this.OR([
      { ALT: () => this.SUBRULE(this.amount) },
      { ALT: () => this.atom('date', this.CONSUME(t.DateLike)) },
      { ALT: () => this.atom('month', this.CONSUME(t.YearMonth)) },
      { ALT: () => this.atom('time', this.CONSUME(t.Time)) },
      { ALT: () => this.atom('word', this.CONSUME(t.Word)) },
      { ALT: () => this.atom('quoted', this.CONSUME(t.Quoted)) },
      { ALT: () => this.atom('mark', this.CONSUME(t.Percent)) },
      { ALT: () => this.atom('mark', this.CONSUME(t.Slash)) },
      { ALT: () => this.atom('mark', this.CONSUME(t.Equals)) },
      { ALT: () => this.atom('mark', this.CONSUME(t.Mark)) },
    ]),
  );

  private readonly amount = this.RULE('amount', (): Amount => {
    const equals = this.OPTION(() => this.CONSUME(t.Equals));
    const number = this.number(1);
    // The grammar's own look-ahead does not see past this rule: a slash before anything else is a piece of its own.
    const second = this.OPTION2({
      GATE: () => isNumber(this.LA(2)),
      DEF: () => {
        this.CONSUME(t.Slash);
        return this.number(2);
      },
    });
    const unit = this.OPTION3(() =>
      this.OR3([{ ALT: () => this.CONSUME(t.Word) }, { ALT: () => this.CONSUME(t.Percent) }]),
    );
    return this.ACTION(() => amountOf(equals, number, second, unit));
  });

  private number(place: 1 | 2): IToken {
    return place === 1
      ? this.OR1([{ ALT: () => this.CONSUME1(t.Num) }, { ALT: () => this.CONSUME1(t.CommaNumber) }])
      : this.OR2([{ ALT: () => this.CONSUME2(t.Num) }, { ALT: () => this.CONSUME2(t.CommaNumber) }]);
  }

  private atom(kind: Atom['kind'], token: IToken): Atom {
    return { kind, text: token.image, start: token.startOffset, end: token.startOffset + token.image.length };
  }
}

function isNumber({ tokenType }: IToken): boolean {
  return tokenType === t.Num || tokenType === t.CommaNumber;
}

function amountOf(equals: IToken | undefined, number: IToken, second: IToken | undefined, unit: IToken | undefined): Amount {
  const last = unit ?? second ?? number;
  return {
    kind: 'amount', number, second, unit, equals: equals !== undefined,
    start: (equals ?? number).startOffset, end: last.startOffset + last.image.length,
  };
}

const parser = new RecordParser();

/** The syntax of a line that begins with a letter; undefined for any other line. */
export function syntaxOf(line: string): RecordSyntax | undefined {
  const { tokens } = t.lexer.tokenize(line);
  parser.input = tokens;
  const record = parser.record();
  return parser.errors.length === 0 ? record : undefined;
}
