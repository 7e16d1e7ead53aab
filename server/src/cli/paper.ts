/** What is made for paper: labels, and the counting sheet of a round. */
import type { Moment } from '../journal/moment.ts';
import { rootOf } from '../journal/mentions.ts';
import { labelsOf } from '../report/paper/labels.ts';
import type { LabelSheetName } from '../report/paper/label-sheets.ts';
import { labelsPage } from '../report/paper/labels-page.ts';
import { roundOf, roundPage } from '../report/paper/round.ts';
import { exits, type Exit } from './exits.ts';
import { openJournals } from './open.ts';
import { counted } from '../model/counted.ts';
import { complain, complainOf, print } from './output.ts';
import { wroteFiles } from './written.ts';

interface PageOptions {
  readonly output?: string;
  readonly today?: Moment;
}

export interface RoundOptions extends PageOptions {
  /** The batches that were left off, instead of those that are looked after. */
  readonly leftOff?: boolean;
}

export interface LabelsOptions extends PageOptions {
  /** Lots, and batches. */
  readonly lot?: readonly string[];
  readonly sheet: LabelSheetName;
  /** Labels of the first sheet that are gone. */
  readonly skip?: number;
}

/** `plumule labels`: a page of labels to print. */
export async function printLabels(paths: readonly string[], options: LabelsOptions): Promise<Exit> {
  const { lot: ids, sheet, skip } = options;
  const { journals, unread } = await openJournals(paths, options.today);
  complainOf(unread);
  const unknown = (ids ?? []).filter(id => !journals.some(({ journal }) => journal.lot(rootOf(id))?.batches.has(id)));
  for (const id of unknown) complain(`there is no lot or batch “${id}”`);
  const labels = journals.flatMap(({ journal, asked, now }) =>
    labelsOf(journal, { now, files: asked, ...(ids && { ids }) }));
  if (labels.length === 0) {
    complain('there is nothing to label: no batch is sown, soaked or in a stage; name a lot with --lot');
    return unread.length + unknown.length > 0 ? exits.unread : exits.problems;
  }
  const isWritten = await wrote(labelsPage(labels, sheet, skip), options.output, counted(labels.length, 'label'));
  return unread.length + unknown.length > 0 || !isWritten ? exits.unread : exits.clean;
}

/** `plumule round`: the counting sheet, in the order in which the editor asks for the counts afterwards. */
export async function printRound(paths: readonly string[], { today, output, leftOff }: RoundOptions): Promise<Exit> {
  const { journals, unread } = await openJournals(paths, today);
  complainOf(unread);
  const rounds = journals.map(({ journal, folder, now }) =>
    roundOf(journal, now, { leftOff, name: journals.length > 1 ? folder : undefined }));
  const rows = rounds.reduce((sum, each) => sum + each.rows.length, 0);
  if (journals.length === 0) return exits.unread;
  const isWritten = await wrote(roundPage(rounds), output, `${rows} ${rows === 1 ? 'batch' : 'batches'}`);
  return unread.length > 0 || !isWritten ? exits.unread : exits.clean;
}

/** False where the file could not be written; the reason has been said. */
async function wrote(text: string, output: string | undefined, what: string): Promise<boolean> {
  if (output !== undefined) {
    const said = `wrote ${what} to ${output}; print it from a browser, at 100 %`;
    return wroteFiles([{ path: output, content: text, kind: 'html' }], said);
  }
  print(text);
  return true;
}
