/** Amounts where no number is typed yet: the purity on the label, what is left of a stock, what makes a strength. */
import { ledger } from '../../journal/draws.ts';
import { printQuantity, type Dimension } from '../../model/quantity.ts';
import type { Keyword } from '../../model/keywords.ts';
import { factOf, purityForms } from '../../model/record.ts';
import type { Agent } from '../../solutions/agent.ts';
import { saltOf } from '../../solutions/agents.ts';
import { isPositive, volumeInMl } from '../../solutions/amounts.ts';
import { numberText } from '../../solutions/display.ts';
import { keepingTime, type StockRule } from '../../solutions/keeping.ts';
import { strengthInPpm } from '../../solutions/strength.ts';
import { stocksOf } from './defined.ts';
import type { Scene } from './scene.ts';
import type { SpotOf } from './spot.ts';
import { strengthsFor } from './strengths.ts';
import type { Suggestion } from './suggestion.ts';

/** Digits of a volume that is easily measured. */
const ROUND = 3;

/** mL that are taken for a soak. */
const USUAL = 10;
/** mg that are weighed for a stock. */
const USUAL_MG = 20;

export function likelyAmounts({ of, name, has, keyword }: SpotOf<'amount'>, scene: Scene): Suggestion[] {
  const { agents } = scene.journal;
  switch (of) {
    case 'keeps': {
      const { value, isDefault } = keepingIn(scene);
      return [amount(printQuantity(value), isDefault ? 'common practice' : 'the limit')];
    }
    case 'to': return madeUpTo(scene);
    case 'purity': return purities(scene);
    case 'draw': return amountsOf(name, keyword, scene);
    case 'substance': {
      const agent = agents.get(name);
      return agent ? powders(agent, keyword) : amountsOf(name, keyword, scene);
    }
    case 'stage': return ofStage(name.toLowerCase() === 'chill' ? 'chill' : 'warm', has);
    case 'halved': return ['1 time', '2 times', '3 times'].map(text => amount(text));
    default: return [];
  }
}

function amount(label: string, detail?: string): Suggestion {
  return { kind: 'number', label, ...(detail !== undefined && { detail }) };
}

function ofStage(stage: 'chill' | 'warm', has: Dimension | undefined): Suggestion[] {
  const [temperature, duration] = stage === 'chill' ? ['4 C', '90 days'] : ['20 C', '60 days'];
  const texts = [...(has === 'temperature' ? [] : [temperature]), ...(has === 'duration' ? [] : [duration])];
  return texts.map(text => amount(text));
}

/** Behind a mass how often the packet was halved; behind a purity what it is of, where an agent has two forms. */
export function wordsBehind({ of }: SpotOf<'behind'>, scene: Scene): Suggestion[] {
  if (of === 'purity') return formsOf(scene);
  const halved = 'halved 2 times';
  return [{ kind: 'word', label: halved, detail: 'a packet, divided by eye' }];
}

/** Of a stock that names no agent yet, both forms. */
function formsOf(scene: Scene): Suggestion[] {
  const agent = agentIn(scene);
  if (agent && !agent.acid && !saltOf(agent)) return [];
  return purityForms.map(form => ({ kind: 'word', label: form, detail: `the percentage is of the ${form}` }));
}

function agentIn({ entry, journal }: Scene): Agent | undefined {
  const substance = entry && factOf(entry.record, 'substance');
  return substance && journal.agents.get(substance.name.text);
}

/** How long the bottle that the line tells of can be relied on. */
export function keepingIn(scene: Scene): StockRule {
  const { entry, journal } = scene;
  const draw = entry && factOf(entry.record, 'draw');
  const form = entry?.record.keyword === 'powder' ? 'powder' : entry?.record.keyword === 'dilute' ? 'dilution' : 'stock';
  if (draw) return keepingTime(journal.solution(draw.stock.text)?.agent, form, journal.limits.stock);
  const isBought = entry && factOf(entry.record, 'substance')?.strength !== undefined;
  return keepingTime(agentIn(scene), isBought ? 'bought' : form, journal.limits.stock);
}

/** What stands on the packet or the bottle. */
export function usualPowder({ form }: Agent): string {
  return form === 'liquid' ? '3 %' : '100 mg';
}

function powders(agent: Agent, keyword: Keyword): Suggestion[] {
  const isHalved = keyword !== 'powder' && agent.form !== 'liquid';
  return [usualPowder(agent), ...(isHalved ? ['100 mg halved 2 times'] : [])].map(text => amount(text));
}

/** Purities of the agent in stocks made before, the latest first: it may be the same packet. Else an example. */
export function purities(scene: Scene): Suggestion[] {
  const agent = agentIn(scene);
  const seen = new Map<string, string>();
  for (const { id, agent: of, entry } of stocksOf(scene.journal).reverse()) {
    const purity = of === agent && entry.line !== scene.line ? factOf(entry.record, 'purity') : undefined;
    if (!purity) continue;
    const text = `${purity.percent} %${purity.form ? ` ${purity.form}` : ''}`;
    if (!seen.has(text)) seen.set(text, `as ${id}`);
  }
  return seen.size === 0 ? [amount('90 %')] : Array.from(seen, ([text, like]) => amount(text, like));
}

/** Of a stock a usual volume, of a packet a usual mass, and all that is left. */
function amountsOf(id: string, keyword: Keyword, { journal, line }: Scene): Suggestion[] {
  const solution = journal.solution(id);
  if (!solution) return [];
  const isPacket = solution.form === 'powder';
  const { left } = ledger(solution, journal.accountOf(id).filter(({ entry }) => entry.line !== line));
  const [usual, unit] = isPacket ? [USUAL_MG, 'mg'] : [USUAL, 'mL'];
  const rest = left && isPositive(left.most) ? numberText(left.most) : undefined;
  const words = !left?.likely ? `at most: some was taken without a ${isPacket ? 'mass' : 'volume'}`
    : left.least.equals(left.most) ? 'all that is left' : 'at most: some was halved by eye';
  return [
    ...(left?.most.lt(usual) ? [] : [amount(`${usual} ${unit}`)]),
    ...(isPacket && keyword === 'stock' ? [amount('halved 2 times', 'a quarter of what is left')] : []),
    ...(rest?.exact && rest.text !== String(usual) ? [amount(`${rest.text} ${unit}`, words)] : []),
  ];
}

/** What a dilution is made up to for a strength that is in use, where that volume is a round one. */
export function madeUpTo({ entry, journal }: Scene): Suggestion[] {
  const draw = entry && factOf(entry.record, 'draw');
  const source = draw && journal.solution(draw.stock.text);
  if (!draw?.volume || !source?.agent || !source.ppm.ok) return [];
  const { agent, ppm: { value: held } } = source;
  const ml = volumeInMl(draw.volume.value);
  return strengthsFor(agent, undefined, journal).flatMap(({ text, value }) => {
    const ppm = strengthInPpm(value, agent);
    if (!ppm.ok || !ppm.value.lt(held)) return [];
    const made = numberText(ml.mul(held).div(ppm.value));
    const isRound = made.exact && made.text.replace('.', '').length <= ROUND;
    return isRound ? [amount(`${made.text} mL`, `${agent.word} ${text}`)] : [];
  });
}
