/** What seed can lie in or be given: the journal's own stocks first, then agents with their strengths. */
import { stockNow } from '../../calendar/left.ts';
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Solution } from '../../journal/solutions.ts';
import type { Keyword } from '../../model/keywords.ts';
import type { Span } from '../../model/record.ts';
import { isoOf } from '../../model/day.ts';
import type { Agent, Role } from '../../solutions/agent.ts';
import { dangerOf, reactiveOf } from '../../solutions/dangers.ts';
import { isPositive } from '../../solutions/amounts.ts';
import type { Form } from '../../solutions/keeping.ts';
import type { Left } from '../../solutions/ledger.ts';
import { leftText } from '../../solutions/left-text.ts';
import { stocksOf } from './defined.ts';
import { usualPowder } from './likely-amounts.ts';
import { dayOfScene, fits, othersOf, plantIn, type Scene } from './scene.ts';
import { strengthsFor } from './strengths.ts';
import type { Suggestion } from './suggestion.ts';
import { choice, withBlanks, type Template } from './template.ts';
import { powderHeld, strengthHeld } from '../../words/held.ts';

const roles: readonly Role[] = ['hormone', 'water', 'promoter', 'declared', 'disinfectant'];

/** Those that the line does not name yet. */
export function substances(keyword: Keyword, segment: Span, scene: Scene): Suggestion[] {
  const named = new Set(othersOf(scene, segment, 'substance').map(({ name }) => name.text));
  const kinds = [...named].map(name => reactiveOf(name, agentNamed(name, scene)));
  const isSafe = (agent: Agent | undefined) =>
    kinds.every(kind => dangerOf(kind, reactiveOf(agent?.word ?? '', agent)) === undefined);
  const agents = [...scene.journal.agents.values()].filter(agent => !named.has(agent.word) && isSafe(agent))
    .sort((a, b) => roles.indexOf(a.role) - roles.indexOf(b.role));
  if (keyword === 'stock' || keyword === 'powder') {
    const isMade = agents.filter(({ role, form }) => role !== 'water' && (keyword === 'stock' || form !== 'liquid'));
    if (named.size > 0 || othersOf(scene, segment, 'draw').length > 0) return [];
    return [...(keyword === 'stock' ? packets(scene) : []), ...isMade.map(powder)];
  }
  const soaks = agents.filter(({ role }) => role !== 'water' || keyword === 'soak').map(agent => agentOf(agent, scene));
  return keyword === 'guide' ? soaks : [
    ...stocks(scene, keyword).filter(({ label }) => !named.has(label) && isSafe(agentNamed(label, scene))), ...soaks,
  ];
}

function agentNamed(name: string, { journal }: Scene): Agent | undefined {
  return journal.agents.get(name) ?? journal.solution(name)?.agent;
}

/** What a record can take from: liquids for a dilution, packets for a stock, both for seed. */
const formsFor: Partial<Record<Keyword, (form: Form) => boolean>> = {
  dilute: form => form !== 'powder', stock: form => form === 'powder',
};

/**
 * Bottles and packets that something is left of: those that still keep first, bottles before packets, of these the
 * newest. What was made after the day of the record, or is gone by then, is left out.
 */
export function stocks(scene: Omit<Scene, 'line'> & { readonly line?: JournalLine }, keyword = scene.entry?.record.keyword): Suggestion[] {
  const { journal, line } = scene;
  const day = dayOfScene(scene);
  const isWanted = (keyword && formsFor[keyword]) ?? (() => true);
  const keeps = ({ keeps: kept }: Solution) => kept === undefined || kept.until >= day;
  const made = ({ entry: { moment } }: Solution) => moment?.day ?? -Infinity;
  const rank = (solution: Solution) => (keeps(solution) ? 2 : 0) + (solution.form === 'powder' ? 0 : 1);
  const isThere = (solution: Solution) => made(solution) <= day && solution.entry.line !== line;
  return stocksOf(journal)
    .filter(solution => isThere(solution) && isWanted(solution.form) && fits(scene, solution.id))
    .sort((a, b) => rank(b) - rank(a) || made(b) - made(a))
    .flatMap(solution => {
      const left = stockNow(solution, journal, { day, minutes: undefined }, line)?.left;
      return left && !isPositive(left.most) ? [] : [stockOf(solution, left)];
    });

  function stockOf(solution: Solution, left: Left | undefined): Suggestion {
    const { id, form, agent, keeps: kept } = solution;
    const held = strengthHeld(solution, journal);
    const isPacket = form === 'powder';
    const strength = agent && (isPacket ? powderHeld(solution)
      : held === undefined ? `${agent.word}, strength unknown` : `${agent.word} ${held}`);
    const until = kept && `${kept.until >= day ? 'good until' : 'was good until'} ${isoOf(kept.until)}`;
    const rest = left && `${leftText(form, left)} left`;
    const write: Template = isPacket && keyword !== 'stock'
      ? [`${id} `, choice(['unmeasured'], 'unmeasured')] : [`${id} `, { blank: isPacket ? '20' : '10' }, isPacket ? ' mg' : ' mL'];
    return { kind: 'stock', label: id, detail: [strength, rest, until].filter(text => text).join(' · '), plain: id, write };
  }
}

/** Where powder may come from, whatever has been typed of the words. */
function packets(scene: Scene): Suggestion[] {
  return stocks({ ...scene, typed: '' }, 'stock').map(({ label, write = [], ...packet }) =>
    ({ ...packet, label: `from ${label}`, plain: `from ${label}`, write: ['from ', ...write] }));
}

function agentOf(agent: Agent, scene: Scene): Suggestion {
  const { word, name, role, remark } = agent;
  const suggestion = { kind: 'agent', label: word, detail: remark ?? name, find: `${word} ${name}` } as const;
  if (role === 'water') return suggestion;
  const strengths = strengthsFor(agent, plantIn(scene), scene.journal).map(({ text }) => text);
  return { ...suggestion, write: [`${word} `, choice([...strengths, 'unmeasured'], '1 %')] };
}

function powder(agent: Agent): Suggestion {
  const { word, name, remark } = agent;
  return { kind: 'agent', label: word, detail: remark ?? name, find: `${word} ${name}`, write: [`${word} `, ...withBlanks(usualPowder(agent))] };
}
