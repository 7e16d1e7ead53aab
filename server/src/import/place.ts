/** The new records as text, and where in a file they go. */
import { itemsOf, newReader } from '../merge/items.ts';
import { sheetOf } from '../merge/rows.ts';
import { parse } from '../syntax/parse.ts';
import type { Draft, PartDraft } from './compose.ts';
import { splitLines } from '../text/split-lines.ts';

/** The records lot by lot, each with its remarks; what happened is in the order of its days. */
export function recordLines(drafts: readonly Draft[], parts: readonly PartDraft[]): string[] {
  const ids = [...new Set([...drafts, ...parts].toSorted((a, b) => a.row - b.row).map(lotOf))];
  return ids.flatMap((id, n) => {
    const own = drafts.filter(draft => lotOf(draft) === id);
    const lot = own.filter(({ keyword }) => keyword === 'lot');
    const events = own.filter(({ keyword }) => keyword !== 'lot').map((draft, at) => ({ draft, at, day: parse(draft.line).record?.date?.day ?? 0 }));
    events.sort((a, b) => a.day - b.day || a.at - b.at);
    return [
      ...(n > 0 ? [''] : []), ...lot.flatMap(withRemarks), ...splitLinesOf(id, parts), ...events.flatMap(({ draft }) => withRemarks(draft)),
    ];
  });
}

function lotOf(draft: Draft | PartDraft): string {
  return ('parent' in draft ? draft.parent : draft.subject).split('/')[0]!;
}

function withRemarks({ line, remarks }: { readonly line: string; readonly remarks: readonly string[] }): string[] {
  return [line, ...remarks.map(remark => `  ${remark}`)];
}

function splitLinesOf(id: string, parts: readonly PartDraft[]): string[] {
  const own = parts.filter(({ parent }) => parent === id);
  if (own.length === 0) return [];
  return withRemarks({ line: `split ${id}, ${own.map(({ fact }) => fact).join(', ')}`, remarks: own.flatMap(({ remarks }) => remarks) });
}

/**
 * The text with records put in. Each carries its date, but a `lot` or a `split` without one would take that of a `day`
 * line above it: they go above the first such line, and above the comments right over it, else to the end.
 */
export function withRecords(text: string, lines: readonly string[], title: string): string {
  if (lines.length === 0) return text;
  const written = splitLines(text);
  const end = written.find(line => line.end !== '')?.end ?? '\n';
  const firstDay = linesAboveDay(text);
  if (firstDay === undefined) {
    const isEnded = written.at(-1)!.text === '';
    const gap = text.trim() === '' ? '' : `${isEnded ? '' : end}${end}`;
    return `${text}${gap}${[`# ${title}`, '', ...lines].join(end)}${end}`;
  }
  const above = written.slice(0, firstDay).map(line => line.text + line.end).join('');
  const below = written.slice(firstDay).map(line => line.text + line.end).join('');
  // No heading: it would take in all that is below.
  return `${above}${[`# ${title.charAt(0).toLowerCase()}${title.slice(1)}`, ...lines].join(end)}${end}${end}${below}`;
}

function linesAboveDay(text: string): number | undefined {
  const { rows } = sheetOf(text);
  let at = 0;
  for (const item of itemsOf(rows, newReader())) {
    if (item.kind === 'day') {
      let from = at + item.gap.length;
      while (from > 0 && rows[from - 1]!.text.startsWith('#')) from--;
      return from;
    }
    at += item.gap.length + (item.head ? 1 : 0) + item.tail.length;
  }
  return undefined;
}
