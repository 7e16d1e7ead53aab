/** A lot in the panel: picture, verdict and one table, before anything else. */
import { lotPicture } from '../../features/drawing/pictures.ts';
import type { Moment } from '../../journal/moment.ts';
import { element, joined, type Content, type Markup } from '../../pictures/markup.ts';
import type { Frame } from '../../pictures/picture.ts';
import { textWidth } from '../../pictures/text-size.ts';
import { columnsOf } from '../columns.ts';
import {
  columnTable, figure, ladderFigures, notesList, numbersOf, paragraph, passageBody, tablesWithin,
} from '../html.ts';
import { contestItem, trialPassages, type Item } from '../passages.ts';
import { printable } from '../printable.ts';
import type { LotReport } from '../report.ts';
import { notesOf, rowsOf, seedFacts } from '../words.ts';

/** The columns of the one table; all of them stand further down. */
const FIRST: ReadonlySet<string> = new Set(['Batch', 'Treatment', 'Sown', 'Germinated', '%', '95 % interval']);

/** Pixels: in a panel that is narrower, the one table would need a scroll bar of its own. */
const NARROW = 400;

/** Pixels: a line of text. */
const LINE = 19;

const NOTHING_DRAWN = 'There is nothing to draw yet, because no batch of this lot has a count on a known day.';
const NOTHING_TRIED = 'There is nothing to compare yet. Count a treated batch and an untreated one first.';

export interface PanelRoom {
  readonly frame: Frame;
  /** Pixels: what picture, verdict and table may take up together where that is possible. */
  readonly height: number;
  readonly photos: readonly Content[];
}

export function lotPanel(lot: LotReport, now: Moment, { frame, height, photos }: PanelRoom): Content[] {
  const columns = columnsOf(rowsOf(lot), now);
  const first = columns.filter(({ head }) => FIRST.has(head));
  const verdicts = [...lot.trial.contests, ...lot.trial.estimated].map(contest => contestItem(contest, false));
  const facts = seedFacts(lot).join(', ');
  const said = verdicts.length > 0 ? verdicts : [{ title: '', texts: [NOTHING_TRIED] }];
  const rest = restHeight([facts, ...said.map(verdictText)], columns[0]?.cells.length ?? 0, frame.width);
  const picture = lotPicture(lot.trial, { ...frame, plot: Math.max(110, Math.min(400, height - rest)) });
  return [
    facts === '' ? undefined : element('p', { class: 'facts' }, printable(facts)),
    picture ? figure(picture) : paragraph(NOTHING_DRAWN),
    ...said.map(verdict => element('p', { class: 'verdict' }, verdict.title === '' ? undefined
      : joined([element('b', {}, printable(verdict.title)), ' ']), printable(verdict.texts[0] ?? ''))),
    ...frame.width < NARROW ? tablesWithin(frame, first) : [columnTable(first)],
    notesList(notesOf(lot)),
    ...photos,
    ...moreOf(lot, verdicts, frame),
    folded('All columns', tablesWithin(frame, columns)),
    picture && numbersOf(picture.table),
  ];
}

/** What stands behind the verdicts, and the ladders of doses. */
function moreOf(report: LotReport, verdicts: readonly Item[], frame: Frame): (Markup | undefined)[] {
  const behind = verdicts.flatMap(({ title, texts }) => (
    texts.length > 1 ? [element('p', {}, element('b', {}, printable(title)), ' ', printable(texts.slice(1).join(' ')))] : []));
  const passages = trialPassages({ ...report.trial, contests: [], estimated: [] }, false);
  const all = [...behind, ...passages.flatMap(passageBody), ...ladderFigures(report, { ...frame, id: 'doses' })];
  return [all.length > 0 ? folded('More about the comparison', all) : undefined];
}

function folded(summary: string, content: readonly Content[]): Markup {
  return element('details', {}, element('summary', {}, summary), ...content);
}

function verdictText({ title, texts }: Item): string {
  return `${title} ${texts[0] ?? ''}`;
}

/** About what stands beside the plot, so that it leaves room for that. */
function restHeight(texts: readonly string[], rows: number, width: number): number {
  const lines = texts.reduce((sum, text) => sum + Math.ceil(textWidth(text, 13) / width), 0);
  const paragraphs = lines * LINE + texts.length * 8;
  const table = (2 * rows + 1) * LINE + (rows + 1) * 6;
  // The heading, the axis with its words and stages, what unfolds.
  return 40 + 130 + paragraphs + table + 90;
}
