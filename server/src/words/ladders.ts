/** A ladder of doses in plain words. */
import { counted } from '../model/counted.ts';
import { germinated, shareOf } from '../measures/contrast.ts';
import { seedsCounted } from '../measures/course.ts';
import { halfUp } from '../measures/half-up.ts';
import { isUndefined } from '../measures/measured.ts';
import { dayText, probability, wholePercent } from '../measures/verdict-words.ts';
import { coursesOf, type Group } from '../trials/groups.ts';
import type { DoseLadder } from '../trials/ladders.ts';
import { shareText } from './shares.ts';
import { groupLabel, groupNames } from './trials.ts';

export function ladderHead({ agent }: DoseLadder): string[] {
  return [agent.word, 'Batch', 'Germinated', 'T50', 'Verdict'];
}

/** The untreated seed, then each dose. */
export function ladderRows({ untreated, rungs, ladder }: DoseLadder): string[][] {
  const doses = rungs.map(({ treated }, i) => [...cellsOf(treated), ladder.doses[i]!.verdict.verdict]);
  return [[...cellsOf(untreated), ''], ...doses];
}

function cellsOf(group: Group): string[] {
  const courses = coursesOf(group);
  const { x, n } = shareOf(courses, germinated, seedsCounted);
  const half = halfUp(courses, Infinity);
  const day = isUndefined(half) ? `– (${half.undefined})` : dayText(half);
  return [groupLabel(group), groupNames(group), shareText(x, n), day];
}

/** The trend over the doses, and the best one if there is one. */
export function ladderNote({ ladder: { doses, trend, trendBy, best } }: DoseLadder): string {
  const by = trendBy === undefined ? '' : ` by day ${trendBy}, the last on which all were looked at`;
  const slope = isUndefined(trend)
    ? `Trend${by}: – (${trend.undefined}).`
    : `Trend${by}: ${pointsText(trend.slope)} from each dose to the next (Cochran-Armitage, p ${probability(trend.p)}).`;
  const named = isUndefined(best) ? `No best dose: ${best.undefined}.`
    : `Best dose: ${doses.find(({ dose }) => dose === best.value)!.name}.`;
  return `${slope} ${named} The verdicts allow for the number of doses.`;
}

/** Example: pointsText(0.22) is '22 points more' */
function pointsText(share: number): string {
  const points = Math.abs(wholePercent(share));
  return points === 0 ? 'no change' : `${counted(points, 'point')} ${share > 0 ? 'more' : 'fewer'}`;
}
