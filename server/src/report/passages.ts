/** What a report says of the trials of a lot and of a plant, the same in text and in Markdown. */
import { ladderHead, ladderNote, ladderRows } from '../words/ladders.ts';
import { dropsTexts, dropsTitle } from '../words/drops.ts';
import { replicatesText } from '../words/replicates.ts';
import { behindText, detailTexts, groupLabel, groupNames } from '../words/trials.ts';
import type { Group, LeftOut } from '../trials/groups.ts';
import type { DropsTrial } from '../trials/drops.ts';
import type { DoseLadder } from '../trials/ladders.ts';
import { notCompared, type Contest, type LotTrial } from '../trials/lot-trial.ts';
import { isActiveSoak } from '../trials/treatment.ts';
import type { Column } from './columns.ts';

/** Something with what is said of it. */
export interface Item {
  readonly title: string;
  readonly texts: readonly string[];
}

/** A part of the report of a lot or a plant. */
export interface Passage {
  readonly heading: string;
  readonly columns: readonly Column[];
  readonly items: readonly Item[];
  /** What is said of the whole, last. */
  readonly texts: readonly string[];
}

export function trialPassages(trial: LotTrial, details: boolean): Passage[] {
  const { contests, ladders, groups, estimated, drops } = trial;
  const replicates = groups.flatMap(group => {
    const text = replicatesText(group);
    return text === undefined ? [] : [{ title: titleOf(group), texts: [text] }];
  });
  // Where nothing was tried nothing is missing.
  const isTried = ({ batch: { soaks } }: LeftOut) => contests.length > 0 || soaks.some(isActiveSoak);
  const missing = notCompared(trial).filter(isTried)
    .map(({ batch, why }) => ({ title: batch.path, texts: [why.undefined] }));
  return [
    passage('Treated against untreated', contests.map(contest => contestItem(contest, details))),
    passage('Treated against untreated, seeds estimated', estimated.map(contest => contestItem(contest, details))),
    ...ladders.map(ladderPassage),
    dropsPassage(drops),
    passage('Replicates', replicates),
    passage('Left out of the comparison', missing),
  ].filter(({ columns, items, texts }) => columns.length + items.length + texts.length > 0);
}

function dropsPassage({ contests, leftOut }: DropsTrial): Passage {
  const told = contests.map(contest => ({ title: dropsTitle(contest), texts: dropsTexts(contest) }));
  const missing = leftOut.map(({ batch, why }) => ({ title: batch.path, texts: [`Left out: ${why.undefined}.`] }));
  return passage('Drops on stuck seedlings', [...told, ...missing]);
}

function passage(heading: string, items: readonly Item[]): Passage {
  return { heading, columns: [], items, texts: [] };
}

/** A treatment with what it comes to. */
export function contestItem({ treated, untreated, comparison, verdict, remarks }: Contest, details: boolean): Item {
  const behind = behindText({ comparison, verdict, remarks });
  return {
    title: `${titleOf(treated)}${untreated ? ` against ${titleOf(untreated)}` : ''}`,
    texts: [verdict.sentence, behind, details ? detailTexts({ comparison, verdict }).join(' · ') : undefined]
      .filter(text => text !== undefined && text !== '') as string[],
  };
}

function titleOf(group: Group): string {
  return `${groupLabel(group)} (${groupNames(group)})`;
}

function ladderPassage(ladder: DoseLadder): Passage {
  const rows = ladderRows(ladder);
  const columns = ladderHead(ladder).map((head, at): Column => ({ head, kind: 'text', cells: rows.map(row => row[at] ?? '') }));
  return { heading: `${ladder.agent.word} by dose`, columns, items: [], texts: [ladderNote(ladder)] };
}
