/** What to mind at the bench, in one line at the end of a hover. */
import type { Agent } from '../../solutions/agent.ts';
import { cautionsFor, type BenchWork, type Caution } from '../../solutions/cautions.ts';
import { escapeMarkdown } from '../markdown.ts';

/** Undefined for water alone. */
export function cautionLine(work: BenchWork, agents: readonly Agent[]): string | undefined {
  const real = agents.filter(({ role }) => role !== 'water');
  return real.length === 0 ? undefined : cautionsText(cautionsFor(work, real));
}

/** Undefined where there are none. */
export function cautionsText(cautions: readonly Caution[]): string | undefined {
  return cautions.length === 0 ? undefined : `⚠ ${escapeMarkdown(cautions.map(({ text }) => text).join(' '))}`;
}
