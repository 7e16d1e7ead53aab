/** Plans a solution: how to get a volume of a strength from powder, from a packet or from a stock. */
import { printQuantity } from '../model/quantity.ts';
import { builtInAgents } from './agents.ts';
import { type Exact, exact, isPositive, volumeInMl } from './amounts.ts';
import { type Assumption, assumptionsBetween } from './assumptions.ts';
import { compareDoses } from './comparison.ts';
import { longestIn } from './dangers.ts';
import { type Shown, showStrength, showVolume } from './display.ts';
import type { MixAnswer, MixRefusal, MixRequest, MixWarning, PlannedWay } from './mix-plan.ts';
import { planFromPacket, planFromPowder } from './mix-powder.ts';
import { planFromStock } from './mix-stock.ts';
import { refusal, type Task } from './mix-task.ts';
import { refused } from './outcome.ts';
import type { Remedy } from './remedies.ts';
import { unitSlip } from './slips.ts';
import { exceededSolubility } from './stock.ts';
import { convertStrength, strengthInPpm, strengthText, unitsOf } from './strength.ts';


/** In ppm and in mL; anything beyond is no question of a bench. */
const LEAST = exact(1e-6);
const STRONGEST = exact(1e9);
const MOST = exact(100_000);

/**
 * A plan, or a refusal with the nearest that can be done: for a target stronger than the stock, above what
 * dissolves in water, too small to measure, or not to be had from the packet.
 */
export function planMix(request: MixRequest): MixAnswer {
  const { agent, strength, volume } = request;
  const ppm = strengthInPpm(strength, agent);
  if (!ppm.ok) return refusal(agent, ppm);
  const volumeMl = volumeInMl(volume);
  if (!isPositive(ppm.value) || !isPositive(volumeMl)) {
    return refusal(agent, refused('not-positive', 'Strength and volume must be above zero.'));
  }
  if (ppm.value.lt(LEAST) || ppm.value.gt(STRONGEST)) {
    return refusal(agent, refused('beyond-bench', 'That strength is out of range.'));
  }
  if (volumeMl.lt(LEAST) || volumeMl.gt(MOST)) {
    return refusal(agent, refused('beyond-bench', `That volume is out of range; ${showVolume(MOST).text} is the most.`));
  }
  const task: Task = {
    agent,
    ppm: ppm.value,
    volumeMl,
    asked: strength,
    bench: request.bench ?? 'laboratory',
    dates: request.dates ?? {},
    keeping: request.keeping ?? {},
    isMost: false,
  };
  const exceeded = exceededSolubility(ppm.value, agent);
  const vouchedFor = exceeded?.source.kind === 'read' || exceeded?.source.kind === 'journal';
  if (exceeded !== undefined && vouchedFor) {
    const text = `At most ${strengthText(exceeded.ppm, strength.unit, agent)} of ${agent.word} dissolves in water (${exceeded.source.text}).`;
    return refusal(agent, refused('above-solubility', text), [...otherUnits(request), atSolubility(exceeded.ppm, request)]);
  }
  const rounded = planFrom(request, task);
  const isTooStrong = !exceeded && rounded.possible && exceededSolubility(exact(rounded.result.ppm), agent);
  const answer = isTooStrong ? planFrom(request, { ...task, isMost: true }) : rounded;
  if (!answer.possible) return answer;
  return {
    ...answer,
    agent: { word: agent.word, name: agent.name },
    asked: { strength, ppm: showStrength(ppm.value, 'ppm').value, volume },
    sameAs: sameStrength(request),
    assumptions: unique([...assumptionsBetween(strength.unit, 'mg/L', agent), ...answer.assumptions]),
    warnings: [...warningsOf(request, ppm.value), ...answer.warnings],
  };
}

function planFrom({ source }: MixRequest, task: Task): PlannedWay | MixRefusal {
  switch (source.kind) {
    case 'powder': return planFromPowder(task, source);
    case 'packet': return planFromPacket(task, source);
    case 'stock': return planFromStock(task, source.strength);
  }
}

function sameStrength({ agent, strength }: MixRequest): Shown[] {
  return unitsOf(agent)
    .filter(unit => unit !== strength.unit)
    .map(unit => convertStrength(strength, unit, agent))
    .flatMap(converted => (converted.ok ? [converted.value.shown] : []));
}

function atSolubility(ppm: Exact, { agent, strength: { unit } }: MixRequest): Remedy {
  const text = `The strongest in water is ${strengthText(ppm, unit, agent)}.`;
  return { kind: 'at-solubility', text, amounts: { strength: showStrength(ppm, 'ppm') } };
}

/** The same number in the units that make it a usual strength. */
function otherUnits({ agent, strength }: MixRequest): Remedy[] {
  return (unitSlip(strength, agent)?.readings ?? []).map(({ value, unit }) => ({
    kind: 'other-unit',
    text: `If the unit is wrong: ${value} ${unit}.`,
    amounts: { strength: { value, unit, text: `${value} ${unit}`, exact: true } },
  }));
}

function warningsOf(request: MixRequest, ppm: Exact): MixWarning[] {
  const { agent, strength } = request;
  const warnings: MixWarning[] = [];
  const slip = unitSlip(strength, agent);
  if (slip !== undefined) {
    const [likely] = slip.readings;
    const meant = likely === undefined ? '' : ` Did you mean ${likely.value} ${likely.unit}?`;
    const text = `Growers use ${agent.word} at ${slip.usual} (common practice, no source).${meant}`;
    warnings.push({ id: 'unit-slip', text });
  }
  const longest = longestIn(agent);
  if (longest) {
    const text = `Leave seed in it for ${printQuantity(longest)} at most, then rinse it (common practice, no source).`;
    warnings.push({ id: 'short-soak', text });
  }
  const limit = request.limit ?? agent.limit?.strength;
  if (limit !== undefined && isAbove(request, limit)) {
    const source = request.limit === undefined ? ` (${agent.limit?.source.text ?? ''})` : '';
    const text = `This is above the limit of ${limit.value} ${limit.unit} for seed${source}: dilute it before use.`;
    warnings.push({ id: 'above-limit', text });
  }
  const exceeded = exceededSolubility(ppm, agent);
  if (exceeded !== undefined) {
    const most = showStrength(exceeded.ppm, 'ppm').text;
    const text = `It may not dissolve in water: about ${most} is the most (${exceeded.source.text}).`;
    warnings.push({ id: 'above-solubility', text });
  }
  return warnings;
}

/** A limit for an acid holds for its salt by the acid in it. */
function isAbove({ agent, strength }: MixRequest, limit: MixRequest['strength']): boolean {
  const of = builtInAgents.get(agent.limit?.of ?? agent.word) ?? agent;
  const comparison = compareDoses({ agent, strength }, { agent: of, strength: limit });
  return comparison.comparable && comparison.order > 0;
}

function unique(assumptions: readonly Assumption[]): Assumption[] {
  return [...new Map(assumptions.map(a => [a.id, a])).values()];
}
