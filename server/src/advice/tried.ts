/** What the records say of each dose of each agent that was tried alone on a plant, against untreated seed. */
import type { Lot } from '../journal/life.ts';
import { acrossLots, type AcrossLots } from '../measures/across-lots.ts';
import { hasNoBenefit } from '../measures/no-benefit.ts';
import type { Difference } from '../measures/difference.ts';
import { reaches } from '../measures/fisher.ts';
import { holm } from '../measures/holm.ts';
import { openSeeds } from '../measures/looks.ts';
import { isUndefined } from '../measures/measured.ts';
import { THRESHOLDS } from '../measures/thresholds.ts';
import type { VerdictName } from '../measures/verdict-rules.ts';
import type { Day } from '../model/day.ts';
import { printQuantity } from '../model/quantity.ts';
import type { Agent } from '../solutions/agent.ts';
import { exact } from '../solutions/amounts.ts';
import { usualStrengthText } from '../solutions/strength.ts';
import { isSameDose, type Range } from '../trials/alike.ts';
import { coursesOf, type Group } from '../trials/groups.ts';
import type { DoseLadder } from '../trials/ladders.ts';
import type { Contest, LotTrial } from '../trials/lot-trial.ts';
import { dosesOf, lotPairOf, plantTrial, type AgentAcross, type PlantTrial, type Stratum } from '../trials/plant-trial.ts';
import { isActive, isByEye, onlyDose } from '../trials/treatment.ts';
import { soundGainOf } from './order.ts';
import { weakOf, type WeakTreated } from './weak.ts';

/** One agent in one dose, in all lots in which it was tried. */
export interface Tried {
  readonly agent: Agent;
  /** ppm; undefined for what nobody measured. */
  readonly ppm: number | undefined;
  /** As it stands in a record: 'GA3 500 ppm', 'GA3 unmeasured'; undefined where its strength is unknown. */
  readonly text: string | undefined;
  /** Powder was halved by eye for it, in one of the lots at least. */
  readonly isAbout: boolean;
  readonly verdict: VerdictName;
  /** The verdict with its reason: numbers of seed and an interval are in it. */
  readonly sentence: string;
  /** Treated less untreated; undefined where no lot could be measured. */
  readonly difference: Difference | undefined;
  /** Treated less untreated sound seedlings, from -1 to 1; undefined where no lot could be measured. */
  readonly soundGain: number | undefined;
  /** No sign of a benefit: by the rules of one lot, or because the interval of several leaves no room for one. */
  readonly hasNoSign: boolean;
  /** Seed may still germinate and change it. */
  readonly isOpen: boolean;
  readonly lots: readonly Lot[];
  /** Those of its lots that show by themselves that it pays. */
  readonly paidIn: readonly Lot[];
  /** Lots of estimated seed that were harmed by it: no sum over lots has them. */
  readonly harmedIn: readonly Lot[];
  /** Of its seedlings, where more of them are weak than of the untreated ones. */
  readonly weak: WeakTreated | undefined;
  /** Groups that had it, for their names and the lengths of their soaks. */
  readonly treated: readonly Group[];
  /** All ladders of its lots. */
  readonly ladders: readonly DoseLadder[];
  /** The seeds were estimated; the verdict is what all their numbers give. */
  readonly isEstimated: boolean;
}

/** All doses of an agent; with what they come to together where that is more than one lot says. */
export interface TriedAgent {
  readonly agent: Agent;
  readonly doses: readonly Tried[];
  /** Of all doses and lots together; undefined where one lot or one dose is all there is. */
  readonly together: { readonly verdict: VerdictName; readonly sentence: string } | undefined;
  /** That it pays is shown beside the other agents that were tried, too: of several one would look good by chance. */
  readonly isSure: boolean;
}

/** Nothing of comparisons that wait for their day of judging, and of those in which more differs than the treatment. */
export function triedOn(plant: string, lots: readonly Lot[], today: Day): readonly TriedAgent[] {
  const [first] = lots;
  if (!first) return [];
  const known = memo.get(first);
  if (known?.today === today && isSame(known.lots, lots)) return known.tried;
  const tried = fromTrials(plantTrial(plant, lots, today));
  memo.set(first, { lots, today, tried });
  return tried;
}

/** Asked again at every move of the cursor; a lot is another object when one of its records changes. */
const memo = new WeakMap<Lot, Known>();

interface Known {
  readonly lots: readonly Lot[];
  readonly today: Day;
  readonly tried: readonly TriedAgent[];
}

function isSame(some: readonly Lot[], others: readonly Lot[]): boolean {
  return some.length === others.length && some.every((lot, i) => lot === others[i]);
}

function fromTrials({ agents, trials }: PlantTrial): TriedAgent[] {
  const sure = areSure(agents.map(({ across }) => across));
  const guessed = trials.flatMap(estimatedIn);
  const exact = agents.map((agent, i) => agentOf(agent, sure[i]!))
    .map(agent => ({ ...agent, doses: agent.doses.map(dose => besideEstimates(dose, guessed)) }));
  const estimated = mergedByDose(guessed)
    .filter(tried => !exact.some(({ doses }) => doses.some(dose => isOneDose(dose, tried))));
  for (const tried of estimated) {
    const at = exact.findIndex(({ agent }) => agent.word === tried.agent.word);
    const known = exact[at];
    if (known) exact[at] = { ...known, doses: [...known.doses, tried] };
    else exact.push({ agent: tried.agent, doses: [tried], together: undefined, isSure: true });
  }
  return exact.filter(({ doses }) => doses.length > 0);
}

/** Estimates do not add up with counts, but harm that they show has to be told. */
function besideEstimates(dose: Tried, estimated: readonly Tried[]): Tried {
  const harmed = estimated.filter(other => isOneDose(other, dose) && other.verdict === 'harmful');
  const told = harmed.map(({ lots: [lot], sentence }) => `${lot!.id}: ${sentence}`);
  return {
    ...dose, harmedIn: [...new Set(harmed.flatMap(({ lots }) => lots))], sentence: [dose.sentence, ...told].join(' '),
  };
}

/** Of several agents each may be held against the level as if it were the only one (Holm). */
function areSure(all: readonly AcrossLots[]): boolean[] {
  const ps = holm(all.map(({ better }) => (isUndefined(better) ? 1 : better.p)));
  const { level, soFar } = THRESHOLDS;
  return all.map(({ open }, i) => all.length === 1 || reaches(ps[i]!, open > 0 ? soFar.value : level.value));
}

function agentOf({ agent, strata, across }: AgentAcross, isSure: boolean): TriedAgent {
  const parts = dosesOf(strata);
  const doses = parts.map(({ ppm, strata: part }) => (
    triedIn(agent, ppm, part, () => (parts.length === 1 ? across : acrossLots(part.map(lotPairOf))))));
  const isTogether = across.lots > 1 && doses.length > 1;
  const { verdict, sentence } = across;
  return { agent, doses, isSure, together: isTogether ? { verdict, sentence } : undefined };
}

/** One comparison is judged by itself; several are combined, each lot compared with itself only. */
function triedIn(
  agent: Agent, ppm: number | undefined, strata: readonly Stratum[], acrossOf: () => AcrossLots,
): Tried {
  const pairs = strata.flatMap(stratum => stratum.pairs);
  const [only, ...others] = pairs;
  const treated = pairs.map(pair => pair.treated);
  const lots = [...new Set(strata.map(({ lot }) => lot))];
  const isAbout = treated.some(isByEye);
  const base = {
    agent, ppm, text: textOf(treated, ppm), isAbout, isEstimated: false, lots, treated,
    paidIn: paidIn(strata), harmedIn: [], ladders: laddersIn(strata.map(({ trial }) => trial)),
  };
  if (only && others.length === 0) return { ...base, ...ofContest(only) };
  const across = acrossOf();
  const { verdict, sentence } = across;
  const difference = isUndefined(across.difference) ? undefined : across.difference;
  const isOpen = across.open > 0;
  const known = across.comparisons.flatMap(each => (isUndefined(each) ? [] : [each]));
  const hasNoSign = across.rule === 'not-shown' && !isOpen && hasNoBenefit(known);
  const soundGain = soundGainOf(across.comparisons);
  return {
    ...base, verdict, sentence, difference, isOpen, hasNoSign, soundGain, weak: weakOf(across.comparisons),
  };
}

function laddersIn(trials: readonly LotTrial[]): DoseLadder[] {
  return [...new Set(trials)].flatMap(({ ladders }) => ladders);
}

function paidIn(strata: readonly Stratum[]): Lot[] {
  const verdicts = (lot: Lot) => strata.filter(stratum => stratum.lot === lot)
    .flatMap(({ pairs }) => pairs.map(({ verdict: { verdict } }) => verdict));
  return [...new Set(strata.map(({ lot }) => lot))].filter(lot => {
    const said = verdicts(lot);
    return said.includes('worth repeating') && !said.includes('harmful');
  });
}

type Judged = Pick<Tried, 'verdict' | 'sentence' | 'difference' | 'soundGain' | 'hasNoSign' | 'isOpen' | 'weak'>;

function ofContest({ comparison, verdict: { verdict, sentence } }: Contest): Judged {
  return {
    isOpen: !isUndefined(comparison) && comparison.open.treated + comparison.open.untreated > 0,
    verdict, sentence, hasNoSign: verdict === 'no sign of a benefit',
    difference: isUndefined(comparison) ? undefined : comparison.germinated.difference,
    soundGain: soundGainOf([comparison]), weak: weakOf([comparison]),
  };
}

function estimatedIn(trial: LotTrial): Tried[] {
  const { lot, estimated } = trial;
  return estimated.flatMap(contest => {
    const dose = onlyDose(contest.treated.treatment)?.dose;
    if (!dose || contest.alsoDiffers.length > 0 || contest.judging?.state === 'waiting') return [];
    const { verdict, sentence } = contest.verdict;
    const open = openSeeds([contest.treated, contest.untreated].flatMap(group => (group ? [coursesOf(group)] : [])));
    // How great a difference is hangs on the number that was estimated.
    return [{
      agent: dose.agent, ppm: dose.ppm, text: textOf([contest.treated], dose.ppm), lots: [lot],
      isAbout: isByEye(contest.treated), treated: [contest.treated], ladders: trial.ladders,
      verdict, sentence, difference: undefined, soundGain: undefined, weak: undefined, isEstimated: true,
      paidIn: verdict === 'worth repeating' ? [lot] : [], harmedIn: verdict === 'harmful' ? [lot] : [],
      hasNoSign: verdict === 'no sign of a benefit', isOpen: open.some(n => n > 0),
    }];
  });
}

/** Estimates of several lots cannot be combined: of each dose that counts what more than half of its lots say. */
function mergedByDose(all: readonly Tried[]): Tried[] {
  const doses: Tried[][] = [];
  for (const tried of all) {
    const same = doses.find(([each]) => isOneDose(each!, tried));
    if (same) same.push(tried);
    else doses.push([tried]);
  }
  return doses.map(each => (each.length === 1 ? each[0]! : mergedOf(each)));
}

function mergedOf(all: readonly Tried[]): Tried {
  const counted = all.map(({ verdict }) => all.filter(other => other.verdict === verdict).length);
  const verdict = all.find((_, i) => counted[i]! * 2 > all.length)?.verdict ?? 'cannot tell';
  return {
    ...all[0]!, verdict, hasNoSign: verdict === 'no sign of a benefit',
    sentence: all.map(({ lots: [lot], sentence }) => `${lot!.id}: ${sentence}`).join(' '),
    isOpen: all.some(({ isOpen }) => isOpen), isAbout: all.some(({ isAbout }) => isAbout),
    lots: [...new Set(all.flatMap(({ lots }) => lots))], paidIn: [...new Set(all.flatMap(each => each.paidIn))],
    harmedIn: [...new Set(all.flatMap(each => each.harmedIn))],
    treated: all.flatMap(({ treated }) => treated), ladders: all.flatMap(({ ladders }) => ladders),
  };
}

/** In the grower's own unit, where it was written rather than poured from a bottle. */
function textOf(treated: readonly Group[], ppm: number | undefined): string | undefined {
  const dose = treated[0]?.treatment[0]?.soak.doses.find(isActive);
  if (!dose?.agent) return undefined;
  const { agent, written, unmeasured } = dose;
  if (unmeasured) return `${agent.word} unmeasured`;
  if (written) return `${agent.word} ${printQuantity(written)}`;
  return ppm === undefined ? undefined : `${agent.word} ${usualStrengthText(exact(ppm), agent)}`;
}

function isOneDose(a: Pick<Tried, 'agent' | 'ppm'>, b: Pick<Tried, 'agent' | 'ppm'>): boolean {
  if (a.agent.word !== b.agent.word) return false;
  return a.ppm === undefined || b.ppm === undefined ? a.ppm === b.ppm : isSameDose(a.ppm, b.ppm);
}

/** Estimated seed was harmed in no fewer lots than those in which it paid: nobody can tell which of the two it does. */
function isContradicted({ harmedIn, paidIn }: Tried): boolean {
  return harmedIn.length > 0 && harmedIn.length >= paidIn.length;
}

/** A dose that paid, unless estimates contradict it. */
export function hasPaid(tried: Tried): boolean {
  return tried.verdict === 'worth repeating' && !isContradicted(tried);
}

/** Whether a dose may be tried again: neither that it pays, nor harm, nor the lack of a benefit is shown. */
export function isStillOpen({ verdict, hasNoSign }: Tried): boolean {
  return verdict === 'cannot tell' && !hasNoSign;
}

/** Minutes that the seed lay in it; undefined where that is known for none, or not the same for all. */
export function soakMinutes({ treated }: Pick<Tried, 'treated'>): number | undefined {
  const lengths = treated.flatMap(({ treatment }) => treatment[0]?.length ?? []);
  const most = lengths.reduce<Range | undefined>((a, b) => (a && a.most <= b.most ? a : b), undefined);
  return most && most.most > 0 ? most.most : undefined;
}

