/**
 * The tokens of one record line. Together they cover every character, so the lexer never fails. Patterns avoid negated
 * classes and carry no custom code: chevrotain then picks a token by its first character.
 */
import { createToken, Lexer } from 'chevrotain';

// Letters of every script, signs such as × and °, emoji; not the white space and not the ASCII punctuation.
const letter = 'A-Za-z\\u00a1-\\u1fff\\u200b-\\u2027\\u202a-\\u202e\\u2030-\\u2fff\\u3001-\\ufefe\\uff00-\\uffff';
const name = `[${letter}][${letter}0-9._+'-]*`;

export const Blank = createToken({ name: 'Blank', pattern: /[ \t\u00a0\u2000-\u200a\u2028\u2029\u202f\u3000\ufeff]+/, group: Lexer.SKIPPED });
/** Only behind a blank or a comma: the inch mark of `in 3" pots` opens no quotation. */
export const Quoted = createToken({ name: 'Quoted', pattern: /(?<=[\s,])"[\x00-!#-\uffff]*"/, start_chars_hint: ['"'] });
/** Three numbers with separators: a date, or what was meant for one. */
export const DateLike = createToken({ name: 'DateLike', pattern: /\d{1,4}(?:-\d{1,4}-|\/\d{1,4}\/|\.\d{1,2}\.)\d{1,4}/ });
export const YearMonth = createToken({ name: 'YearMonth', pattern: /\d{4}-\d{1,2}/ });
export const Time = createToken({ name: 'Time', pattern: /\d{1,2}:\d{2}/ });
export const CommaNumber = createToken({ name: 'CommaNumber', pattern: /\d+(?:,\d+)+(?:\.\d+)?/ });
export const Num = createToken({ name: 'Num', pattern: /-?\d+(?:\.\d+)?/ });
/** A word, an id, a batch path, a unit such as mg/L. */
export const Word = createToken({
  name: 'Word',
  pattern: new RegExp(`${name}(?:/[${letter}0-9._+'-]+)*`),
  start_chars_hint: wordStarts(),
});
export const Percent = createToken({ name: 'Percent', pattern: /%/ });
export const Slash = createToken({ name: 'Slash', pattern: /\// });
export const Equals = createToken({ name: 'Equals', pattern: /=/ });
export const Comma = createToken({ name: 'Comma', pattern: /,/ });
/** Any other character. */
export const Mark = createToken({ name: 'Mark', pattern: /[\x00-\x08\x0a-\x1f!-+.:-<>-@\[-`{-\u00a0]/ });

export const allTokens = [Blank, Quoted, DateLike, YearMonth, Time, CommaNumber, Num, Word, Percent, Slash, Equals, Comma, Mark];

export const lexer = new Lexer(allTokens, { positionTracking: 'onlyOffset', ensureOptimizations: true });

/** First characters of a word, for chevrotain's look-up by character code: it keeps one bucket for all codes above 255. */
function wordStarts(): string[] {
  const starts: string[] = [];
  for (let code = 65; code <= 90; code++) starts.push(String.fromCharCode(code), String.fromCharCode(code + 32));
  for (let code = 0xa1; code <= 0xffff; code += code < 0x100 ? 1 : 0x40) starts.push(String.fromCharCode(code));
  return starts;
}
