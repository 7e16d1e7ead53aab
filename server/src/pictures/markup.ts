/** SVG and HTML as text. Journal text is untrusted: what goes through here comes out as the characters written. */
import { TURNING } from '../model/turning.ts';

/** Markup that is safe to put into more markup; made here alone. */
export interface Markup {
  readonly markup: string;
}

type Value = string | number | undefined;

export type Content = Markup | string | number | undefined;

/** Controls, and the marks that turn the direction of what follows. */
const unprintable = new RegExp(`[\\p{Cc}${TURNING}]+`, 'gu');

/** Lone surrogates and characters that XML does not have would make a file that no program opens. */
const unheard = /[\ufffe\uffff]|\p{Cs}/gu;

/** Void elements of HTML: they are written without an end. */
const empty: ReadonlySet<string> = new Set(['meta', 'br', 'link', 'img', 'hr']);

/** Elements of SVG that end in themselves where nothing is in them; HTML knows no such end. */
const leaves: ReadonlySet<string> = new Set(['path', 'rect', 'line', 'circle']);

/**
 * An element. Attributes that are undefined are left out, numbers keep two decimal places.
 *
 * @example
 * element('text', { x: 1.005, class: undefined }, 'a < b').markup // '<text x="1">a &#60; b</text>'
 */
export function element(
  name: string,
  attributes: Readonly<Record<string, Value>> = {},
  ...content: readonly Content[]
): Markup {
  const written = Object.entries(attributes)
    .flatMap(([key, value]) => (value === undefined ? [] : [` ${key}="${escaped(valueText(value))}"`]))
    .join('');
  if (empty.has(name)) return { markup: `<${name}${written}>` };
  const inner = content.map(textOf).join('');
  return {
    markup:
      inner === '' && leaves.has(name)
        ? `<${name}${written}/>`
        : `<${name}${written}>${inner}</${name}>`,
  };
}

/** Several pieces of markup in a row. */
export function joined(parts: readonly Content[]): Markup {
  return { markup: parts.map(textOf).join('') };
}

function textOf(content: Content): string {
  if (content === undefined) return '';
  return typeof content === 'object' ? content.markup : escaped(valueText(content));
}

function valueText(value: string | number): string {
  return typeof value === 'number' ? shortNumber(value) : value;
}

/** Two decimal places are a hundredth of a pixel. */
export function shortNumber(value: number): string {
  const rounded = Math.round(value * 100) / 100;
  return String(Object.is(rounded, -0) ? 0 : rounded);
}

function escaped(text: string): string {
  return text
    .replace(unprintable, ' ')
    .replace(unheard, '\ufffd')
    .replace(/[&<>"']/g, sign => `&#${sign.charCodeAt(0)};`);
}
