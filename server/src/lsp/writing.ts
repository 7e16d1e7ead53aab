/** Requests that help to write: completion and signatures, in the shapes that the client can take. */
import {
  CompletionItemKind, InsertTextFormat, InsertTextMode, MarkupKind, CompletionTriggerKind,
  type ClientCapabilities, type CompletionItem, type CompletionList, type Connection, type ServerCapabilities,
  type SignatureHelp,
} from './protocol.ts';
import { completionsAt, type Trigger } from '../features/completion/completion.ts';
import type { Completions, Suggestion, SuggestionKind } from '../features/completion/suggestion.ts';
import { plainText } from '../features/completion/template.ts';
import { signatureAt } from '../features/signature.ts';
import type { Journal } from '../journal/journal.ts';
import { rangeOf } from './convert.ts';
import type { About } from './features.ts';
import type { Service } from './service.ts';
import { snippetOf } from './snippets.ts';

export const writingCapabilities: ServerCapabilities = {
  completionProvider: { triggerCharacters: [' ', ',', '/'], completionItem: { labelDetailsSupport: true } },
  signatureHelpProvider: { triggerCharacters: [' ', ','] },
};

const kinds: Readonly<Record<SuggestionKind, CompletionItemKind>> = {
  keyword: CompletionItemKind.Keyword, lot: CompletionItemKind.Class, batch: CompletionItemKind.Field,
  stock: CompletionItemKind.Constant, regime: CompletionItemKind.Event, agent: CompletionItemKind.Unit,
  plant: CompletionItemKind.Text, date: CompletionItemKind.Value, fact: CompletionItemKind.Property,
  number: CompletionItemKind.Value, word: CompletionItemKind.EnumMember, text: CompletionItemKind.Text,
  place: CompletionItemKind.Folder, zone: CompletionItemKind.Enum, lines: CompletionItemKind.Snippet,
};

export function serveWriting(connection: Connection, about: About, service: Service): void {
  connection.onCompletion(about('completion', null, (
    { journal, file, now }, { position, context },
  ): CompletionList | null => {
    const found = completionsAt(journal, file, position, now, triggerOf(context));
    if (!found) return null;
    const shape = { ...shapeFor(service.client()), line: position.line, lineEnd: lineEndOf(journal, file) };
    return { isIncomplete: found.incomplete, items: found.items.map((item, rank) => itemOf(item, rank, found, shape)) };
  }));

  connection.onSignatureHelp(about('signature', null, ({ journal, file }, { position }): SignatureHelp | null => {
    const signature = signatureAt(journal, file, position);
    if (!signature) return null;
    const { label, says, parts, active } = signature;
    const taken = service.client().textDocument?.signatureHelp?.signatureInformation?.parameterInformation;
    const offsets = taken?.labelOffsetSupport === true;
    const parameters = parts.map(({ start, end, says: documentation }) => ({
      label: offsets ? [start, end] as [number, number] : label.slice(start, end),
      ...(documentation && { documentation }),
    }));
    // Out of range: none of them.
    const activeParameter = active ?? parameters.length;
    return { signatures: [{ label, documentation: says, parameters }], activeSignature: 0, activeParameter };
  }));
}

/** As the file has it. */
function lineEndOf(journal: Journal, file: string): string {
  const end = journal.files.get(file)?.text.at(0).end ?? '';
  return end === '' ? '\n' : end;
}

function triggerOf(context: { triggerKind: CompletionTriggerKind; triggerCharacter?: string } | undefined): Trigger {
  const typed = context?.triggerKind === CompletionTriggerKind.TriggerCharacter ? context.triggerCharacter : undefined;
  return typed === ' ' || typed === ',' || typed === '/' ? typed : undefined;
}

/** What the client can do with an item, and where it stands. */
interface Shape {
  readonly line: number;
  readonly lineEnd: string;
  readonly snippets: boolean;
  readonly insertAndReplace: boolean;
  readonly details: boolean;
  readonly modes: boolean;
}

function shapeFor({ textDocument }: ClientCapabilities): Omit<Shape, 'line' | 'lineEnd'> {
  const item = textDocument?.completion?.completionItem;
  return {
    snippets: item?.snippetSupport === true, insertAndReplace: item?.insertReplaceSupport === true,
    details: item?.labelDetailsSupport === true,
    modes: item?.insertTextModeSupport?.valueSet.includes(InsertTextMode.asIs) === true,
  };
}

function itemOf(item: Suggestion, rank: number, { start, end, cursor }: Completions, shape: Shape): CompletionItem {
  const { line, lineEnd } = shape;
  const { label, kind, detail, more, find, write = [label] } = item;
  const isSnippet = shape.snippets && write.some(part => typeof part !== 'string');
  const newText = (isSnippet ? snippetOf(write) : item.plain ?? plainText(write)).replaceAll('\n', lineEnd);
  const replace = rangeOf({ line, start, end });
  return {
    label, kind: kinds[kind], sortText: String(rank).padStart(4, '0'),
    ...(find !== undefined && find !== label && { filterText: find }),
    ...(detail !== undefined && (shape.details ? { labelDetails: { description: detail } } : { detail })),
    ...(more !== undefined && { documentation: { kind: MarkupKind.PlainText, value: more } }),
    ...(isSnippet && { insertTextFormat: InsertTextFormat.Snippet }),
    ...(shape.modes && { insertTextMode: InsertTextMode.asIs }),
    textEdit: shape.insertAndReplace
      ? { newText, insert: rangeOf({ line, start, end: cursor }), replace } : { newText, range: replace },
  };
}
