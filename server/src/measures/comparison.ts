import { claimOf, type Claim, type Looks } from './claim.ts';
import { contrastOf, sound, type Contrast } from './contrast.ts';
import { cutFaultOf, faultOf, seedsCounted, waiting, type Course } from './course.ts';
import { daysApart, halfOfAllUp, halfUp, type DayLimits, type DaysApart } from './half-up.ts';
import type { LifeTable } from './life-table.ts';
import { logRank, type LogRank } from './log-rank.ts';
import { foundAfter, isFinished, lastLook, openSeeds } from './looks.ts';
import { isUndefined, undefinedBecause, type Undefined } from './measured.ts';
import { readiness } from './readiness.ts';
import { poolOf, type Pooled } from './replicates.ts';
import { bySide, countedOf, cutAt, seenBy, type Seen, type Sides } from './seen.ts';
import { shareTest, type ShareTest, type Side } from './share-test.ts';
import { sharedTables } from './shared-looks.ts';
import { surelySound } from './surely.ts';
import { isWeakerThan, weakSeedlings, type BothWeak } from './weak.ts';

/** Treated against untreated seed of one lot. */
export interface Comparison {
  /**
   * That the treated seed was ahead, and that the untreated was. Each is tested at the ages that its claim can be held
   * to.
   */
  readonly better: Claim;
  readonly worse: Claim;
  /** The one of the two whose looks lie closer together: by its days the numbers are shown. */
  readonly shown: 'better' | 'worse';
  /** The looks by which both sides are shown, and the age in days of the last of them. */
  readonly looks: { readonly treated: Looks; readonly untreated: Looks };
  readonly byDay: number;
  /** Seeds that may still germinate and change this; 0 on both sides where it is settled. */
  readonly open: { readonly treated: number; readonly untreated: number };
  /** Seeds found germinated at looks after those compared, when nobody looked at all of the other side any more. */
  readonly later: { readonly treated: number; readonly untreated: number };
  /** The last day on which somebody looked at a batch of each side, and the seed that was alive for all they knew. */
  readonly lastLooks: { readonly treated: number; readonly untreated: number };
  readonly living: number;
  /** Seeds less those that were found empty. */
  readonly full: { readonly treated: number; readonly untreated: number };
  /** What was counted by the looks of each claim. */
  readonly seen: Readonly<Record<'better' | 'worse', Seen>>;
  /** How many dishes each side has. */
  readonly dishes: { readonly treated: number; readonly untreated: number };
  readonly treated: Pooled;
  readonly untreated: Pooled;
  /** Of the seed sown less lost, with limits that hold for every course that the looks allow. */
  readonly germinated: Contrast;
  /** The same for germinated seed less weak seedlings. */
  readonly sound: Contrast;
  readonly weak: WeakBy;
  /** The same by the looks at which those of the untreated side are more frequent, if there are any. */
  readonly untreatedWeak: WeakBy;
  /** That more of the treated seed that germinated by a day of judging stayed sound. */
  readonly soundAfterJudging: ShareTest | undefined;
  /** What was counted by the last looks at both sides, however far apart. */
  readonly inTheEnd: Seen;
  /** The part of a batch ends at a pick between two counts, which leaves out what was found since. */
  readonly isCutShort: boolean;
  /** Log-rank tests on the days on which all batches were looked at. No verdict rests on them. */
  readonly logRank: LogRanks;
  /** When half of the germinated seed was up, and by how many days the sides differ: treated less untreated. */
  readonly halfUp: { readonly treated: DayLimits | Undefined; readonly untreated: DayLimits | Undefined };
  readonly daysApart: DaysApart | undefined;
  /** When half of all untreated seed was up. */
  readonly untreatedHalf: DayLimits | Undefined;
  /** The untreated seed came up well and soon. */
  readonly isReady: boolean;
}

/** By the looks shown, unless those of a claim or the last ones show more weak seedlings of the treated side. */
export interface WeakBy extends BothWeak {
  readonly by: 'looks compared' | 'last looks';
}

export interface LogRanks {
  /** Of all the seed; O and E are those of the treated seed. */
  readonly sown: LogRank | Undefined;
  /** Of the seed that germinated: whether that was sooner, however much it was. */
  readonly germinated: LogRank | Undefined;
}

/**
 * Compares the treated batches of a lot with its untreated ones; the batches of a side are its dishes. Undefined when a
 * batch cannot be measured (leave it out first), and where no day has looks at both sides.
 */
export function compare(
  treated: readonly Course[], untreated: readonly Course[], whole?: Sides,
): Comparison | Undefined {
  return compareParts([treated], untreated, whole);
}

/**
 * The same where the treated seed is of several treatments, such as the doses of an agent: only batches with the same
 * treatment are dishes of one, what differs between the treatments is no spread. `whole`: the same batches with what
 * was counted after a day of judging, of which only the weak seedlings matter.
 */
export function compareParts(parts: Side, untreated: readonly Course[], whole?: Sides): Comparison | Undefined {
  const treated = parts.flat();
  if (treated.length === 0 || untreated.length === 0) return undefinedBecause('there is no batch to compare with');
  const fault = [...treated, ...untreated].map(faultOf).find(found => found !== undefined);
  if (fault) return fault;
  const better = claimOf(parts, [untreated], 'more or sooner');
  const worse = claimOf([untreated], parts, 'more, sooner or sounder');
  if (isUndefined(better)) return better;
  if (isUndefined(worse)) return worse;
  const shown = better.ages.apart <= worse.ages.apart ? 'better' : 'worse';
  const all = { treated, untreated };
  const seen = { better: seenBy(all, bySide(better, 'better')), worse: seenBy(all, bySide(worse, 'worse')) };
  const looks = bySide(shown === 'better' ? better : worse, shown).germinated;
  const [treatedBy, untreatedBy] = [looks.treated.to, looks.untreated.to];
  const sides = cutAt(all, looks);
  const half = { treated: halfUp(treated, treatedBy), untreated: halfUp(untreated, untreatedBy) };
  const [openTreated, openUntreated] = openSeeds([treated, untreated]);
  return {
    better, worse, shown, looks,
    byDay: Math.max(treatedBy, untreatedBy),
    open: { treated: openTreated!, untreated: openUntreated! },
    later: { treated: foundAfter(treated, treatedBy), untreated: foundAfter(untreated, untreatedBy) },
    lastLooks: { treated: lastOf(treated), untreated: lastOf(untreated) },
    living: livingIn([...treated, ...untreated]),
    full: { treated: fullSeeds(treated), untreated: fullSeeds(untreated) },
    seen,
    dishes: { treated: treated.length, untreated: untreated.length },
    treated: poolOf(sides.treated), untreated: poolOf(sides.untreated),
    germinated: contrastOf(seen[shown].germinated, 'germinated', { better, worse }),
    sound: contrastOf(seen[shown].sound, 'sound', { better, worse }),
    weak: weakBy('treated', all, whole ?? all, [looks, bySide(better, 'better').germinated]),
    untreatedWeak: weakBy('untreated', all, whole ?? all, [looks, bySide(worse, 'worse').germinated]),
    soundAfterJudging: whole && soundAfter(all, whole),
    inTheEnd: countedOf(all),
    isCutShort: [...treated, ...untreated].some(({ cutShort }) => cutShort === true),
    logRank: logRanksOf(treated, untreated),
    halfUp: half,
    daysApart: isUndefined(half.treated) || isUndefined(half.untreated)
      ? undefined
      : daysApart(half.treated, half.untreated),
    untreatedHalf: halfOfAllUp(untreated, untreatedBy), isReady: isReady(sides.untreated),
  };
}

function isReady(untreated: readonly Course[]): boolean {
  const found = readiness(untreated);
  return !isUndefined(found) && found.ready;
}

function lastOf(courses: readonly Course[]): number {
  return Math.max(...courses.map(lastLook));
}

/** Seed that might have germinated still when it was last looked at. */
function livingIn(courses: readonly Course[]): number {
  return courses.filter(course => !isFinished(course)).reduce((sum, course) => sum + waiting(course), 0);
}

/** Seeds less those that a cut test found empty: they could never germinate. */
function fullSeeds(courses: readonly Course[]): number {
  return courses.reduce((sum, course) => (
    sum + seedsCounted(course) - (course.cut && !cutFaultOf(course) ? course.cut.empty : 0)), 0);
}

/** Sound seedlings of the seed that germinated by the day of judging, with what became of it later. */
function soundAfter(judged: Sides, whole: Sides): ShareTest {
  const merged = (side: 'treated' | 'untreated') => judged[side].map((course, i): Course => {
    const [last, later] = [course.checks.at(-1)!, whole[side][i]!.checks.at(-1)!];
    const { leggy = 0, abnormal = 0, died = 0 } = later;
    return { ...course, checks: [...course.checks.slice(0, -1), { ...last, leggy, abnormal, died }] };
  });
  return shareTest([merged('treated')], [merged('untreated')], surelySound(Infinity), sound);
}

/** Weak seedlings by the first looks at which they are more frequent on a side, else by the looks compared. */
function weakBy(
  side: 'treated' | 'untreated', all: Sides, whole: Sides, compared: readonly Comparison['looks'][],
): WeakBy {
  const isWeaker = ({ treated, untreated }: BothWeak) => (
    side === 'treated' ? isWeakerThan(treated, untreated) : isWeakerThan(untreated, treated));
  const at = ({ treated, untreated }: Sides, day: { treated: number; untreated: number }): BothWeak => (
    { treated: weakSeedlings(treated, day.treated), untreated: weakSeedlings(untreated, day.untreated) });
  const early = compared.map(looks => at(all, { treated: looks.treated.to, untreated: looks.untreated.to }));
  const found = early.find(isWeaker);
  if (found) return { ...found, by: 'looks compared' };
  const last = at(whole, { treated: Infinity, untreated: Infinity });
  return isWeaker(last)
    ? { ...last, by: 'last looks' }
    : { ...early[0]!, by: 'looks compared' };
}

/** The share of the seed of a side that germinated after the looks compared; the greater one, over all lots. */
export function shareLater(comparisons: readonly Comparison[]): number {
  return Math.max(...(['treated', 'untreated'] as const).map(side => {
    const found = sumOf(comparisons, ({ later }) => later[side]);
    const seeds = sumOf(comparisons, ({ germinated }) => germinated[side].n);
    return seeds > 0 ? found / seeds : 0;
  }));
}

function sumOf(comparisons: readonly Comparison[], of: (comparison: Comparison) => number): number {
  return comparisons.reduce((sum, comparison) => sum + of(comparison), 0);
}

function logRanksOf(treated: readonly Course[], untreated: readonly Course[]): LogRanks {
  const tables = sharedTables([treated, untreated]);
  if (isUndefined(tables)) return { sown: tables, germinated: tables };
  const [first, second] = tables as readonly [LifeTable, LifeTable];
  return {
    sown: logRank([{ first, second }]),
    germinated: logRank([{ first: germinatedOnly(first), second: germinatedOnly(second) }]),
  };
}

function germinatedOnly(table: LifeTable): LifeTable {
  return table.map(exit => ({ ...exit, censored: 0 })).filter(({ germinated }) => germinated > 0);
}
