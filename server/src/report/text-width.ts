import { eastAsianWidth } from 'get-east-asian-width';
import { once } from '../model/once.ts';

/** Characters one column wide each; measuring others takes a hundred times as long. */
const NARROW = /^[ -~–]*$/;
const UNSEEN = /^[\p{Cc}\p{Cs}\p{M}\p{Default_Ignorable_Code_Point}]/u;

/** V8 takes time with the square of a text's length to divide it, so a long one is divided in parts of so many. */
const PART = /[^]{1,1000}/gu;

const segmenter = once(() => new Intl.Segmenter('en'));
const emoji = once(() => new RegExp('\\p{RGI_Emoji}', 'v'));

/** The columns that a terminal gives a text: two for CJK and emoji, none for a mark on a letter. */
export function widthOf(text: string): number {
  if (NARROW.test(text)) return text.length;
  let width = 0;
  for (const part of text.match(PART) ?? []) {
    for (const { segment } of segmenter().segment(part)) {
      if (!UNSEEN.test(segment)) width += emoji().test(segment) ? 2 : eastAsianWidth(segment.codePointAt(0)!);
    }
  }
  return width;
}
