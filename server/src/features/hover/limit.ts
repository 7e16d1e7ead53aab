/** The subject of a `limit` record that is no agent: which limit holds, and where it comes from. */
import type { Limit } from '../../journal/limits.ts';
import { printQuantity, type Duration } from '../../model/quantity.ts';
import { escapeMarkdown } from '../markdown.ts';
import { originOfLimit } from '../../words/limits.ts';
import type { HoverContext } from './section.ts';

export function hoverLimit(word: string, { journal: { limits } }: HoverContext): string | undefined {
  switch (word.toLowerCase()) {
    case 'soak': return limitLine('soak', 'the longest soak', limits.soak(undefined));
    case 'stock': return limitLine('stock', 'how long a stock keeps dark and cold', limits.stock);
    case 'count': return limitLine('count', 'how often to look at an open batch', limits.count(undefined));
    default: return undefined;
  }
}

function limitLine(name: string, says: string, limit: Limit<Duration>): string {
  return escapeMarkdown(`${name}: ${says}. ${printQuantity(limit.value)} applies to all plants (${originOfLimit(limit)}).`);
}
