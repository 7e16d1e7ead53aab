/** Pages that are made for paper: no script, nothing loaded, text of the journal as the characters written. */
import { element, type Content } from '../../pictures/markup.ts';
import { PAGE_POLICY } from '../html-style.ts';
import { printable } from '../printable.ts';

export function paperPage(title: string, style: string, body: readonly Content[]): string {
  const page = element(
    'html',
    { lang: 'en' },
    element(
      'head',
      {},
      element('meta', { charset: 'utf-8' }),
      element('meta', { 'http-equiv': 'Content-Security-Policy', 'content': PAGE_POLICY }),
      element('title', {}, printable(title)),
      { markup: `<style>${style}</style>` },
    ),
    element('body', {}, ...body),
  );
  return `<!DOCTYPE html>\n${page.markup}\n`;
}

/** An element with a class, and a text of the journal in it; nothing where there is none. */
export function text(name: string, kind: string, written: string | undefined): Content {
  return written === undefined || written === '' ? undefined : element(name, { class: kind }, printable(written));
}
