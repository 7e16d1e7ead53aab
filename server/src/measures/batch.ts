import { cutFaultOf, dayFaultOf, faultOf, finalTotal, seedsCounted, type Course, type Total } from './course.ts';
import { epicotylDelay, type EpicotylDelay } from './epicotyl.ts';
import {
  germinationSpan, t50Coolbear, timeOfGerminated, timeOfSown, type GerminationSpan, type GerminationTime,
} from './germination-time.ts';
import { germinationValue, type GerminationValue } from './germination-value.ts';
import { kaplanMeier, type KaplanMeier } from './kaplan-meier.ts';
import { lifeTable } from './life-table.ts';
import { meanTime, type MeanTime } from './mean-time.ts';
import { undefinedBecause, type Undefined } from './measured.ts';
import { medianLimits, type LookLimits } from './median.ts';
import { proportion, type Proportion } from './proportion.ts';
import { speed, type Speed } from './speed.ts';
import { uniformity, type Uniformity } from './uniformity.ts';

type Share = Proportion | Undefined;

/** Days on which 10, 50 and 90 % of some whole were up. */
export interface GerminationTimes {
  readonly t10: GerminationTime | Undefined;
  readonly t50: GerminationTime | Undefined;
  readonly t90: GerminationTime | Undefined;
}

/** All that the counts of one batch say. */
export interface BatchMeasures {
  /** Germinated seed, by what it is a share of. */
  readonly germination: {
    /** Of the seed sown less lost. */
    readonly sown: Share;
    /** Of that, less the seed that the cut test found empty. */
    readonly full: Share;
    /**
     * Of that, less the seed that the cut test found dead. What rotted stays in: nobody knows what it was.
     */
    readonly viable: Share;
  };
  /** Shares of the germinated seed. */
  readonly seedlings: Readonly<Record<'emerged' | 'leaf' | 'leggy' | 'abnormal' | 'died', Share>>;
  /** Seed that rotted ungerminated, of the seed sown less lost. */
  readonly rotted: Share;
  readonly span: GerminationSpan | Undefined;
  /** T50 of Coolbear, by (G + 1) / 2. */
  readonly t50Coolbear: GerminationTime | Undefined;
  /** Of the seed that germinated in the end; t50 is that of Farooq, by G / 2. */
  readonly ofGerminated: GerminationTimes;
  readonly ofSown: GerminationTimes;
  readonly meanTime: MeanTime;
  readonly speed: Speed;
  readonly germinationValue: GerminationValue | Undefined;
  readonly uniformity: Uniformity;
  readonly epicotyl: EpicotylDelay | Undefined;
  readonly kaplanMeier: KaplanMeier | Undefined;
  /** Of the day on which half of the seed sown is up, 95 %. */
  readonly medianLimits: LookLimits | Undefined;
}

/**
 * Measures one batch. Each number that cannot be given carries its reason; a faulty course has reasons only.
 *
 * @example
 * measureBatch({ sown: 10, checks: [{ day: 4, germinated: 1 }, { day: 6, germinated: 4 }] })
 * // germination.sown { x: 4, n: 10, value: 0.4, ... },
 * // germination.full { undefined: 'there was no cut test' }, ...
 */
export function measureBatch(course: Course): BatchMeasures {
  const fault = faultOf(course);
  const germinated = finalTotal(course, 'germinated');
  const counted = seedsCounted(course);
  const noCut = fault ?? cutFaultOf(course);
  const [empty, dead] = [course.cut?.empty ?? 0, course.cut?.dead ?? 0];
  const share = (x: number, n: number): Share => fault ?? proportion(x, n);
  const ofSeedlings = (what: Total): Share => {
    if (!fault && germinated === 0) return undefinedBecause('nothing germinated');
    // Where seedlings were counted that nobody had seen germinate, a share would be above 1.
    const x = finalTotal(course, what);
    return !fault && x > germinated
      ? undefinedBecause(`more seedlings were counted as ${what} than as germinated`)
      : share(x, germinated);
  };
  return {
    germination: {
      sown: share(germinated, counted),
      full: noCut ?? share(germinated, counted - empty),
      viable: noCut ?? share(germinated, counted - empty - dead),
    },
    seedlings: {
      emerged: ofSeedlings('emerged'),
      leaf: ofSeedlings('leaf'),
      leggy: ofSeedlings('leggy'),
      abnormal: ofSeedlings('abnormal'),
      died: ofSeedlings('died'),
    },
    rotted: share(finalTotal(course, 'rotted'), counted),
    span: germinationSpan(course),
    t50Coolbear: t50Coolbear(course),
    ofGerminated: times(part => timeOfGerminated(course, part)),
    ofSown: times(part => timeOfSown(course, part)),
    meanTime: meanTime(course),
    speed: speed(course),
    germinationValue: germinationValue(course),
    uniformity: uniformity(course),
    epicotyl: epicotylDelay(course),
    kaplanMeier: dayFaultOf(course) ?? kaplanMeier(lifeTable([course])),
    medianLimits: medianLimits(course),
  };
}

function times(timeOf: (share: number) => GerminationTime | Undefined): GerminationTimes {
  return { t10: timeOf(0.1), t50: timeOf(0.5), t90: timeOf(0.9) };
}
