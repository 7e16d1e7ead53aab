/** Whether a treatment paid: treated against untreated seed of one lot, and a ladder of doses as a table. */
import type { Lot } from '../../journal/life.ts';
import { lotsOfPlant } from '../../journal/lots.ts';
import type { DoseLadder } from '../../trials/ladders.ts';
import { trialOf, type Contest } from '../../trials/lot-trial.ts';
import { plantTrial } from '../../trials/plant-trial.ts';
import { escapeMarkdown, markdownBlocks, markdownList, markdownTable } from '../markdown.ts';
import { ladderHead, ladderNote, ladderRows } from '../../words/ladders.ts';
import { agentText, behindText, groupLabel, groupNames } from '../../words/trials.ts';
import type { Section } from './section.ts';

/** More contests than this make a hover too long. */
const MOST_CONTESTS = 5;

/** A contest in two lines: the verdict with its reason, and what stands behind it. */
export function contestLine(contest: Contest): string {
  const { treated, untreated, verdict } = contest;
  const sides = `${groupLabel(treated)} (${groupNames(treated)})`
    + (untreated ? ` against ${groupLabel(untreated)} (${groupNames(untreated)})` : '');
  const behind = behindText(contest);
  const second = behind === undefined ? '' : `  \n  ${escapeMarkdown(behind)}`;
  return `**${escapeMarkdown(sides)}** – ${escapeMarkdown(verdict.sentence)}${second}`;
}

export const trialSection: Section<Lot> = (lot, { now }) => {
  const { contests, ladders, estimated } = trialOf(lot, now.day);
  const onLadder = new Set(ladders.flatMap(({ rungs }) => rungs.map(({ treated }) => treated)));
  const alone = [...contests.filter(({ treated }) => !onLadder.has(treated)), ...estimated];
  const lines = alone.slice(0, MOST_CONTESTS).map(contestLine);
  const more = alone.length > MOST_CONTESTS ? `… and ${alone.length - MOST_CONTESTS} more.` : undefined;
  const blocks = [...ladders.map(ladderBlock), lines.length > 0 ? markdownList(lines) : undefined, more];
  return blocks.every(block => block === undefined) ? undefined : markdownBlocks(blocks);
};

/** What all lots of the plant say together, where it was tried on more than this one. */
export const acrossSection: Section<Lot> = ({ plant }, { journal, now }) => {
  if (plant === undefined) return undefined;
  const lines = plantTrial(plant, lotsOfPlant(journal.lots(), plant), now.day).agents
    .filter(({ across }) => across.lots > 1)
    .map(trial => `**${escapeMarkdown(`${agentText(trial)} on ${plant}`)}** – ${escapeMarkdown(trial.across.sentence)}`);
  return lines.length === 0 ? undefined : markdownList(lines);
};

function ladderBlock(ladder: DoseLadder): string {
  const table = markdownTable(
    ladderHead(ladder).map(escapeMarkdown), ladderRows(ladder).map(row => row.map(escapeMarkdown)));
  return `${table}\n\n${escapeMarkdown(ladderNote(ladder))}`;
}
