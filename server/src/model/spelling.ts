/** Names that look the same and are not: which letters of other alphabets no reader can tell from Latin ones. */

// Of the confusables of Unicode Technical Standard 39 those that look the same in any type.
const CYRILLIC = 'АВЕЅІЈКМНОРСТУХԚԜаеорсухіјѕԁһԛԝ';
const LIKE_CYRILLIC = 'ABESIJKMHOPCTYXQWaeopcyxijsdhqw';
const GREEK = 'ΑΒΕΖΗΙΚΜΝΟΡΤΥΧο';
const LIKE_GREEK = 'ABEZHIKMNOPTYXo';

const LATIN = new Map(
  Array.from(CYRILLIC + GREEK, (letter, i) => [letter, (LIKE_CYRILLIC + LIKE_GREEK).charAt(i)] as const));

/** Without a width, or turning the direction of what follows. Joiners belong to how some words are written. */
const UNSEEN = /[\u00ad\u061c\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/gu;

/**
 * A name as most keyboards write what it looks like: in Latin letters, if every letter looks like one; each accent one
 * sign with its letter; nothing invisible.
 *
 * Example: usualSpelling('\u0410') is 'A'; usualSpelling('Роза') is 'Роза'
 */
export function usualSpelling(name: string): string {
  if (isPlain(name)) return name;
  const signs = signsOf(name);
  return (looksLatin(signs) ? signs.map(sign => LATIN.get(sign) ?? sign) : signs).join('').normalize('NFC');
}

/** Without what is invisible, an accent apart from its letter, so that each letter is known by itself. */
function signsOf(name: string): string[] {
  return Array.from(name.replace(UNSEEN, '').normalize('NFD'));
}

function looksLatin(signs: readonly string[]): boolean {
  return signs.every(sign => !/\p{L}/u.test(sign) || LATIN.has(sign) || /\p{Script=Latin}/u.test(sign));
}

/** Whether a text has no sign but those of ASCII, as nearly all have. */
export function isPlain(text: string): boolean {
  return !/[^\x00-\x7f]/.test(text);
}

/**
 * Whether a word in a name has Latin letters and others that look like them, and none that shows which alphabet is
 * meant.
 *
 * Example: isMixed('V\u0415R-24') is true; isMixed('Rosa (роса)') is false
 */
export function isMixed(name: string): boolean {
  const words = name.match(/[\p{L}\p{M}]+/gu) ?? [];
  return words.some(word => /\p{Script=Latin}/u.test(word) && foreignIn(word) !== undefined);
}

/**
 * The first letter of a name that only looks Latin, where all of its letters look so.
 *
 * Example: foreignIn('V\u0415R') is { letter: '\u0415', alphabet: 'Cyrillic' }
 */
export function foreignIn(name: string): { readonly letter: string; readonly alphabet: string } | undefined {
  const signs = signsOf(name);
  const letter = signs.find(sign => LATIN.has(sign));
  if (letter === undefined || !looksLatin(signs)) return undefined;
  return { letter, alphabet: GREEK.includes(letter) ? 'Greek' : 'Cyrillic' };
}

/** Whether a name has an invisible character. */
export function hasUnseen(name: string): boolean {
  return name.search(UNSEEN) >= 0;
}
