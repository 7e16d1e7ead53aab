/** Whether a treatment paid: treated against untreated seed of one lot, and a ladder of doses as a table. */
import type { Lot } from '../../journal/life.ts';
import { germinated, shareOf } from '../../measures/contrast.ts';
import { seedsCounted } from '../../measures/course.ts';
import { t50Coolbear } from '../../measures/germination-time.ts';
import { isUndefined } from '../../measures/measured.ts';
import { mergeCourses } from '../../measures/merge.ts';
import { probability } from '../../measures/verdict-words.ts';
import { plantKey } from '../../model/plant.ts';
import { coursesOf, type Group } from '../../trials/groups.ts';
import type { DoseLadder } from '../../trials/ladders.ts';
import { trialOf, type Contest } from '../../trials/lot-trial.ts';
import { plantTrial } from '../../trials/plant-trial.ts';
import { escapeMarkdown, markdownBlocks, markdownList, markdownTable } from '../markdown.ts';
import { shareText } from '../words/shares.ts';
import { agentText, evidenceTexts, groupLabel, groupNames } from '../words/trials.ts';
import type { Section } from './section.ts';

/** More contests than this make a hover too long. */
const MOST_CONTESTS = 5;

/** A contest in two lines: the verdict with its reason, and what stands behind it. */
export function contestLine({ treated, untreated, comparison, verdict, remarks }: Contest): string {
  const sides = `${groupLabel(treated)} (${groupNames(treated)})`
    + (untreated ? ` against ${groupLabel(untreated)} (${groupNames(untreated)})` : '');
  const behind = [...(isUndefined(comparison) ? [] : evidenceTexts(comparison)), ...remarks];
  const second = behind.length > 0 ? `  \n  ${escapeMarkdown(behind.join(' · '))}` : '';
  return `**${escapeMarkdown(sides)}** – ${escapeMarkdown(verdict.sentence)}${second}`;
}

export const trialSection: Section<Lot> = lot => {
  const { contests, ladders } = trialOf(lot);
  const onLadder = new Set(ladders.flatMap(({ rungs }) => rungs.map(({ treated }) => treated)));
  const alone = contests.filter(({ treated }) => !onLadder.has(treated));
  const lines = alone.slice(0, MOST_CONTESTS).map(contestLine);
  const more = alone.length > MOST_CONTESTS ? `… and ${alone.length - MOST_CONTESTS} more.` : undefined;
  const blocks = [...ladders.map(ladderBlock), lines.length > 0 ? markdownList(lines) : undefined, more];
  return blocks.every(block => block === undefined) ? undefined : markdownBlocks(blocks);
};

/** What all lots of the plant say together, where it was tried on more than this one. */
export const acrossSection: Section<Lot> = ({ plant }, { journal }) => {
  if (plant === undefined) return undefined;
  const lots = [...journal.lots()].filter(lot => lot.plant !== undefined && plantKey(lot.plant) === plantKey(plant));
  const lines = plantTrial(plant, lots).agents
    .filter(({ across }) => across.lots > 1)
    .map(trial => `**${escapeMarkdown(`${agentText(trial)} on ${plant}`)}** – ${escapeMarkdown(trial.across.sentence)}`);
  return lines.length === 0 ? undefined : markdownList(lines);
};

function ladderBlock({ agent, untreated, rungs, ladder }: DoseLadder): string {
  const rows = rungs.map(({ treated }, i) => (
    [groupLabel(treated), groupNames(treated), ...cellsOf(treated), ladder.doses[i]!.verdict.verdict]));
  const table = markdownTable(
    [escapeMarkdown(agent.word), 'Batch', 'Germinated', 'T50', 'Verdict'],
    [[groupLabel(untreated), groupNames(untreated), ...cellsOf(untreated), ''], ...rows].map(row => row.map(escapeMarkdown)));
  const { trend, best } = ladder;
  const slope = isUndefined(trend)
    ? `Trend: – (${trend.undefined}).`
    : `Trend: ${pointsText(trend.slope)} from each dose to the next (Cochran-Armitage, p ${probability(trend.p)}).`;
  const named = isUndefined(best) ? `Best dose: – (${best.undefined}).` : `Best dose: ${best.value} ppm.`;
  return `${table}\n\n${escapeMarkdown(`${slope} ${named} Verdicts after Holm’s correction over the doses.`)}`;
}

function cellsOf(group: Group): string[] {
  const courses = coursesOf(group);
  const { x, n } = shareOf(courses, germinated, seedsCounted);
  const t50 = t50Coolbear(mergeCourses(courses));
  return [shareText(x, n), isUndefined(t50) ? `– (${t50.undefined})` : `day ${Math.round(t50.value * 10) / 10}`];
}

/** Example: pointsText(0.22) is '22 points more' */
function pointsText(share: number): string {
  const points = Math.abs(100 * share).toFixed(0);
  return points === '0' ? 'no change' : `${points} points ${share > 0 ? 'more' : 'fewer'}`;
}
