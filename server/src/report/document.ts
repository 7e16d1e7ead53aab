/** A document of HTML around what is in it. */
import { element, type Content } from '../pictures/markup.ts';
import { PAGE_POLICY } from './html-style.ts';
import { printable } from './printable.ts';

export interface Document {
  readonly title: string;
  /** Rules of CSS. Text of ours alone. */
  readonly style: string;
  /** What it may load and run; without it nothing. */
  readonly policy?: string | undefined;
  readonly body: readonly Content[];
}

export function documentOf({ title, style, policy = PAGE_POLICY, body }: Document): string {
  const head = element(
    'head',
    {},
    element('meta', { charset: 'utf-8' }),
    element('meta', { 'http-equiv': 'Content-Security-Policy', 'content': policy }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('title', {}, printable(title)),
    { markup: `<style>${style}</style>` },
  );
  return `<!DOCTYPE html>\n${element('html', { lang: 'en' }, head, element('body', {}, ...body)).markup}\n`;
}
