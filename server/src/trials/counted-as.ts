/** A root is out weeks before the shoot: roots counted on one side beside shoots on the other are no fair contest. */
import type { CountEvent } from '../journal/life.ts';
import { eventsBefore } from './course.ts';
import type { Group, TrialBatch } from './groups.ts';

/** From the first to be seen to the last. */
const stages = ['germinated', 'emerged', 'leaf'] as const;
type Stage = (typeof stages)[number];

const seenAs: Readonly<Record<Stage, string>> = { germinated: 'roots', emerged: 'shoots', leaf: 'leaves' };
const only: Readonly<Record<Stage, string>> = {
  germinated: 'what germinated', emerged: 'what emerged', leaf: 'what had a leaf',
};

/**
 * Names what was counted as what differs, in words; undefined where both sides can have been counted alike.
 *
 * @example
 * countedAsText(treated, untreated) // 'what was counted (roots of the treated seed, and of the untreated seed …)'
 */
export function countedAsText(treated: Group, untreated: Group): string | undefined {
  return textOf({ name: 'treated', group: treated }, { name: 'untreated', group: untreated })
    ?? textOf({ name: 'untreated', group: untreated }, { name: 'treated', group: treated });
}

interface Side {
  readonly name: string;
  readonly group: Group;
}

function textOf(early: Side, late: Side): string | undefined {
  const [ofEarly, ofLate] = [early, late].map(({ group }) => group.batches.map(batch => countsIn(group, batch)));
  for (const counts of ofEarly!) {
    const stage = firstStage(counts);
    const later = ofLate!.map(firstStage).find(other => (
      stages.indexOf(other) > stages.indexOf(stage) && isSeenBefore(counts, other)));
    if (!later) continue;
    return `what was counted (${seenAs[stage]} of the ${early.name} seed, and of the ${late.name} seed only ${only[later]}: `
      + `write how many had ${stage}, too)`;
  }
  return undefined;
}

/** At some look half of what had germinated or more had not come so far. */
function isSeenBefore(counts: readonly CountEvent[], later: Stage): boolean {
  return counts.some(({ after }) => after.germinated > 0 && (after.germinated - after[later]) * 2 >= after.germinated);
}

/**
 * The stage at which most of its seed was first seen: what a later stage implies of an earlier one is the least that
 * may be. Where nothing was seen, the first stage that was looked for.
 */
function firstStage(counts: readonly CountEvent[]): Stage {
  const seen = { germinated: 0, emerged: 0, leaf: 0 };
  for (const { counts: facts, before, after } of counts) {
    let known = before.germinated;
    for (const stage of stages) {
      const fact = facts.find(({ what }) => what === stage);
      if (!fact) continue;
      const total = fact.total ? fact.n.value : before[stage] + fact.n.value;
      seen[stage] += Math.max(0, Math.min(total, after.germinated) - known);
      known = Math.max(known, total);
    }
  }
  const all = seen.germinated + seen.emerged + seen.leaf;
  if (all > 0) return stages.find(stage => seen[stage] * 2 >= all) ?? 'emerged';
  const facts = counts.flatMap(count => count.counts);
  return stages.find(stage => facts.some(({ what }) => what === stage)) ?? 'germinated';
}

function countsIn({ since = -Infinity }: Group, { batch, endedBy }: TrialBatch): CountEvent[] {
  return eventsBefore(batch, endedBy).flatMap(event => (event.type === 'count' && event.entry.moment.day > since ? [event] : []));
}
