/** Texts for clients that show no Markdown. */
import { MarkupKind, type ClientCapabilities, type MarkupContent } from './protocol.ts';

/** An escaped sign; a picture; the fence of an example, marks of emphasis; the line below the head of a table. */
const marks = /\\([!-/:-@[-`{-~])|!\[((?:\\.|[^\]\\])*)\]\([^)]*\)|^```.*\n?|\*\*|`|^\|(?: :-- \|)+\n/gm;

/** Markdown of the features as somebody would type it: signs as they were in the journal, pictures as their words. */
export function plainOf(markdown: string): string {
  return markdown.replace(marks, (_, escaped?: string, alt?: string) => escaped ?? plainOf(alt ?? ''));
}

/** The text of a hover in a form that the client takes. */
export function hoverContents(markdown: string, client: ClientCapabilities): MarkupContent {
  return client.textDocument?.hover?.contentFormat?.includes(MarkupKind.Markdown) === true
    ? { kind: MarkupKind.Markdown, value: markdown }
    : { kind: MarkupKind.PlainText, value: plainOf(markdown) };
}
