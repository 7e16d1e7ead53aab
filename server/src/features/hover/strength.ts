/** A strength: the same in other units, what that takes for granted, and how it stands to the limit. */
import type { Entry } from '../../journal/life.ts';
import { printQuantity, type Strength } from '../../model/quantity.ts';
import type { Agent } from '../../solutions/agent.ts';
import { exceededSolubility } from '../../solutions/stock.ts';
import { strengthInPpm } from '../../solutions/strength.ts';
import { plantOf } from '../events.ts';
import { escapeMarkdown } from '../markdown.ts';
import { limitText } from '../../words/limits.ts';
import { equivalentsOf, solubilityText } from '../../words/strengths.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

interface StrengthOfAgent {
  readonly agent: Agent;
  readonly strength: Strength;
  readonly entry: Entry;
}

const equivalents: Section<StrengthOfAgent> = ({ agent, strength }) => {
  const { texts } = equivalentsOf(strength, agent);
  return escapeMarkdown([`${agent.word} ${printQuantity(strength)}`, ...texts].join(' '));
};

/** Only a dose on seed or seedlings is held against the limit. */
const limit: Section<StrengthOfAgent> = ({ agent, strength, entry }, { journal }) => {
  const { keyword } = entry.record;
  if (keyword !== 'soak' && keyword !== 'apply' && keyword !== 'guide') return undefined;
  const text = limitText(journal, agent, strength, plantOf(journal, entry));
  return text === undefined ? undefined : escapeMarkdown(`${text.charAt(0).toUpperCase()}${text.slice(1)}.`);
};

const solubility: Section<StrengthOfAgent> = ({ agent, strength }) => {
  const ppm = strengthInPpm(strength, agent);
  const exceeded = ppm.ok ? exceededSolubility(ppm.value, agent) : undefined;
  return exceeded && escapeMarkdown(solubilityText(exceeded));
};

const assumptions: Section<StrengthOfAgent> = ({ agent, strength }) => {
  const { assumptions: taken, refusals } = equivalentsOf(strength, agent);
  const texts = [...refusals.map(({ message }) => message), ...taken.map(({ text }) => text)];
  return texts.length === 0 ? undefined : escapeMarkdown(texts.join(' '));
};

/** Add to these what else there is to say of a strength. */
const strengthSections: readonly Section<StrengthOfAgent>[] = [equivalents, limit, solubility, assumptions];

export function hoverStrength(
  { agent: word, strength, entry }: { agent: string; strength: Strength | 'unmeasured'; entry: Entry }, context: HoverContext,
): string | undefined {
  const agent = context.journal.agents.get(word) ?? context.journal.solution(word)?.agent;
  if (!agent) return undefined;
  if (strength === 'unmeasured') {
    const ppm = strengthInPpm(strength, agent);
    return ppm.ok ? undefined : escapeMarkdown(`${agent.word} unmeasured: ${ppm.refusal.message}`);
  }
  return sectionsOf(strengthSections, { agent, strength, entry }, context);
}
