/** The measures of a batch in a small table, and the verdict on what was done to it. */
import { countsOf, type Batch, type Lot } from '../../journal/life.ts';
import { measureBatch } from '../../measures/batch.ts';
import { isUndefined } from '../../measures/measured.ts';
import { courseOf } from '../../trials/course.ts';
import { trialOf } from '../../trials/lot-trial.ts';
import { escapeMarkdown, markdownTable } from '../markdown.ts';
import { measureRows } from '../../words/measures.ts';
import { contestLine } from './trial.ts';
import type { Section } from './section.ts';

interface BatchOfLot {
  readonly batch: Batch;
  readonly lot: Lot;
}

export const measuresSection: Section<BatchOfLot> = ({ batch }) => {
  if (countsOf(batch).length === 0) return undefined;
  const course = courseOf(batch);
  if (isUndefined(course)) return undefined;
  const rows = measureRows(measureBatch(course));
  return markdownTable(['Measure', 'Value', 'Basis'], rows.map(row => [row.name, row.value, row.note].map(escapeMarkdown)));
};

/** Against the untreated seed of its lot. */
export const verdictSection: Section<BatchOfLot> = ({ batch, lot }, { now }) => {
  const { contests, estimated } = trialOf(lot, now.day);
  const contest = [...contests, ...estimated].find(({ treated }) => treated.batches.some(own => own.batch === batch));
  return contest?.untreated && contestLine(contest);
};
