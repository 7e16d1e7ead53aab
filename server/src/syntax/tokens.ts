/**
 * The tokens of one record line. Together they cover every character, so the lexer never fails. Patterns avoid
 * negated classes and carry no custom code: chevrotain then picks a token by its first character. None of them can
 * take more than linear time: no repetition stands within or beside one that matches the same characters.
 */
import { createToken, Lexer, type ILexerConfig, type TokenType } from 'chevrotain';
import { once } from '../model/once.ts';

// Letters of every script, signs such as × and °, emoji, lone surrogates; no white space, no ASCII punctuation, and
// none of the commas of other scripts: Arabic, ideographic, full-width.
const letter =
  'A-Za-z\\u00a1-\\u060b\\u060d-\\u1fff\\u200b-\\u2027\\u202a-\\u202e\\u2030-\\u2fff\\u3002-\\ufefe\\uff00-\\uff0b\\uff0d-\\uffff';
const inName = `${letter}0-9._+'-`;

const Blank = createToken({
  name: 'Blank',
  pattern: /[ \t\u00a0\u2000-\u200a\u2028\u2029\u202f\u3000\ufeff]+/,
  group: Lexer.SKIPPED,
});
/** Only from a blank or a comma to one, or to the end: the inch mark of `in 3" pots` opens and closes nothing. */
export const Quoted = createToken({
  name: 'Quoted',
  pattern: /(?<=[\s,])"[\x00-!#-\uffff]*"(?![^\s,])/,
  start_chars_hint: ['"'],
});
/** A year and a month, or three numbers with separators, perhaps with a time: a date, or what was meant for one. */
export const DateLike = createToken({
  name: 'DateLike',
  pattern: new RegExp(
    String.raw`\d{1,4}(?:-\d{1,4}-\d{1,4}|/\d{1,4}/\d{1,4}|\.\d{1,2}\.\d{1,4})(?:T[0-9:.]+(?:Z|[+-][0-9:]+)?)?` +
    String.raw`|\d{4}-\d{1,2}(?![\d-])`,
  ),
});
export const Time = createToken({ name: 'Time', pattern: /\d{1,2}:\d{1,2}(?::\d{1,2})?/ });
/** A number, a pair of them (`20/10`), a total (`=9`), or what was meant for a number: `1,5`, `12-24`, `−3`. */
export const Num = createToken({ name: 'Num', pattern: /(?:=[ \t]*)?[-−–]?\d+(?:(?:[.,−–-]|\/-?)\d+)*/ });
/** A word, an id, a batch path, a unit such as mg/L, % or °C. */
export const Word = createToken({
  name: 'Word',
  pattern: new RegExp(`° ?[CFcf](?![/${inName}])|%|[${letter}][${inName}]*(?:/[${inName}]+)*`),
  start_chars_hint: wordStarts(),
});
export const Comma = createToken({ name: 'Comma', pattern: /,/ });
/** Any other character. */
export const Mark = createToken({
  name: 'Mark',
  pattern: /[\x00-\x08\x0a-\x1f!-+.-/:-@[-`{-\u009f\u060c\u3001\uff0c-]/,
});

export const allTokens: TokenType[] = [Blank, Quoted, DateLike, Time, Num, Word, Comma, Mark];

export const lexing: ILexerConfig = { positionTracking: 'onlyOffset', ensureOptimizations: true };

/** Made for the first line that is read. Tests have its tokens validated, so that no start pays for it. */
export const lexer = once(() => new Lexer(allTokens, { ...lexing, skipValidations: true }));

/**
 * First characters of a word, for chevrotain's look-up by character code: below 256 it tells codes apart, above it
 * keeps them in bows of 256 codes and more, so that one of each 64 names them all.
 */
function wordStarts(): string[] {
  const starts: string[] = ['%'];
  for (let code = 65; code <= 90; code++) starts.push(String.fromCharCode(code), String.fromCharCode(code + 32));
  for (let code = 0xa1; code <= 0xffff; code += code < 0x100 ? 1 : 0x40) starts.push(String.fromCharCode(code));
  return starts;
}
