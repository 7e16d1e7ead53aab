/** Text of the journal on pages that are made for paper: the characters as written. */
import { element, type Content } from '../../pictures/markup.ts';
import { printable } from '../printable.ts';

/** An element with a class, and a text of the journal in it; nothing where there is none. */
export function text(name: string, kind: string, written: string | undefined): Content {
  return written === undefined || written === '' ? undefined : element(name, { class: kind }, printable(written));
}
