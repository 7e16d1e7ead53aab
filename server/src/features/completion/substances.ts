/** What seed can lie in or be given: the journal's own stocks first, then agents with their strengths. */
import type { Solution } from '../../journal/solutions.ts';
import type { Keyword } from '../../model/keywords.ts';
import type { Span } from '../../model/record.ts';
import { isoOf } from '../../model/day.ts';
import type { Agent, Role } from '../../solutions/agent.ts';
import { dangerOf, reactiveOf } from '../../solutions/dangers.ts';
import { showStrength } from '../../solutions/display.ts';
import { stocksOf } from './defined.ts';
import { usualPowder } from './likely-amounts.ts';
import { dayOfScene, fits, othersOf, plantIn, type Scene } from './scene.ts';
import { strengthsFor } from './strengths.ts';
import type { Suggestion } from './suggestion.ts';
import { choice, withBlanks } from './template.ts';

const roles: readonly Role[] = ['hormone', 'water', 'promoter', 'declared', 'disinfectant'];

/** Those that the line does not name yet. */
export function substances(keyword: Keyword, segment: Span, scene: Scene): Suggestion[] {
  const named = new Set(othersOf(scene, segment, 'substance').map(({ name }) => name.text));
  const kinds = [...named].map(name => reactiveOf(name, agentNamed(name, scene)));
  const isSafe = (agent: Agent | undefined) =>
    kinds.every(kind => dangerOf(kind, reactiveOf(agent?.word ?? '', agent)) === undefined);
  const agents = [...scene.journal.agents.values()].filter(agent => !named.has(agent.word) && isSafe(agent))
    .sort((a, b) => roles.indexOf(a.role) - roles.indexOf(b.role));
  if (keyword === 'stock') return named.size > 0 ? [] : agents.filter(({ role }) => role !== 'water').map(powder);
  const soaks = agents.filter(({ role }) => role !== 'water' || keyword === 'soak').map(agent => agentOf(agent, scene));
  return keyword === 'guide' ? soaks : [
    ...stocks(scene).filter(({ label }) => !named.has(label) && isSafe(agentNamed(label, scene))), ...soaks,
  ];
}

function agentNamed(name: string, { journal }: Scene): Agent | undefined {
  return journal.agents.get(name) ?? journal.solution(name)?.agent;
}

/** Stocks that still keep first, of these the newest; what was made after the day of the record is left out. */
export function stocks(scene: Scene): Suggestion[] {
  const day = dayOfScene(scene);
  const keeps = ({ keeps: kept }: Solution) => kept === undefined || kept.until >= day;
  const made = ({ entry: { moment } }: Solution) => moment?.day ?? -Infinity;
  return stocksOf(scene.journal)
    .filter(solution => made(solution) <= day && solution.entry.line !== scene.line && fits(scene, solution.id))
    .sort((a, b) => Number(keeps(b)) - Number(keeps(a)) || made(b) - made(a))
    .map(stockOf);

  function stockOf(solution: Solution): Suggestion {
    const { id, agent, ppm, keeps: kept } = solution;
    const strength = agent && (ppm.ok ? `${agent.word} ${showStrength(ppm.value, 'ppm').text}` : `${agent.word}, strength not known`);
    const until = kept && `${keeps(solution) ? 'keeps until' : 'kept until'} ${isoOf(kept.until)}`;
    return { kind: 'stock', label: id, detail: [strength, until].filter(text => text).join(' · '), plain: id, write: [`${id} `, { blank: '10' }, ' mL'] };
  }
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
