/** An agent: what it is, how it dissolves, its limit, what growers use of it. */
import { printQuantity } from '../../model/quantity.ts';
import type { Agent } from '../../solutions/agent.ts';
import { longestIn } from '../../solutions/dangers.ts';
import { keepingSummary } from '../../solutions/keeping.ts';
import { numberText } from '../../solutions/display.ts';
import { usualRangeText } from '../../solutions/slips.ts';
import { escapeMarkdown, markdownList } from '../markdown.ts';
import { originOfLimit } from '../../words/limits.ts';
import { dissolvedText } from '../../words/strengths.ts';
import { cautionLine } from './cautions.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

const heading: Section<Agent> = ({ word, name, formula, molarMass, molarMassIs, role }) => {
  const mass = molarMass && `${numberText(molarMass, 6).text} g/mol (${molarMassIs === 'computed' ? 'from standard atomic weights' : molarMassIs})`;
  const facts = [name === word ? undefined : name, formula, mass, role === 'water' || role === 'declared' ? undefined : role];
  return [`**${escapeMarkdown(word)}**`, ...facts.filter(fact => fact !== undefined).map(escapeMarkdown)].join(' · ');
};

const figures: Section<Agent> = (agent, { journal }) => {
  const { solubility, usual, keeping, remark, role } = agent;
  const limit = journal.limits.strength(agent, undefined);
  const longest = longestIn(agent);
  const items = [
    limit && `Limit ${printQuantity(limit.value)}${limit.of === agent.word ? '' : ` ${limit.of}`} (${originOfLimit(limit)})`,
    usual && `Outside ${usualRangeText(usual)} the unit is probably wrong (common practice, no source)`,
    solubility && `Dissolves in water to ${dissolvedText(solubility)} (${solubility.source.text})`,
    keepingSummary(agent, journal.limits.stock),
    longest && `Leave seed in it for ${printQuantity(longest)} at most (common practice, no source)`,
    keeping,
    remark,
  ].filter(item => item !== undefined);
  return role === 'water' || items.length === 0 ? undefined : markdownList(items.map(escapeMarkdown));
};

const cautions: Section<Agent> = agent => cautionLine(agent.form === 'powder' ? 'powder' : 'dilution', [agent]);

/** Add to these what else there is to say of an agent. */
const agentSections: readonly Section<Agent>[] = [heading, figures, cautions];

export function hoverAgent(agent: Agent | undefined, context: HoverContext): string | undefined {
  return agent && sectionsOf(agentSections, agent, context);
}
