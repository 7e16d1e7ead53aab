/** What the books say of a plant, beside what the grower's own records say. */
import { counted } from '../../model/counted.ts';
import type { Guide } from '../../journal/guides.ts';
import type { Lot } from '../../journal/life.ts';
import { escapeMarkdown, markdownBlocks, markdownList, markdownTable } from '../markdown.ts';
import { guideStepsText } from '../../words/guides.ts';
import { ownRecords } from '../../words/own-records.ts';
import { remarkText } from '../../words/remarks.ts';
import { shareText } from '../../words/shares.ts';
import type { Section } from './section.ts';

/** As many as a hover shows. */
const MOST = 6;

/** Nothing where no guide holds for the plant. */
export const guidesSection: Section<Lot> = ({ plant }, { journal }) => {
  const guides = journal.guides.of(plant);
  if (plant === undefined || guides.length === 0) return undefined;
  const more = guides.length > MOST ? [`… and ${guides.length - MOST} more.`] : [];
  const own = ownRecords(journal, plant);
  const table = markdownTable(
    ['Your own records', 'Germinated', 'From'],
    own.slice(0, MOST).map(({ treatment, germinated, seeds, batches, lots }) =>
      [treatment, shareText(germinated, seeds), fromText(batches, lots)].map(escapeMarkdown)),
  );
  return markdownBlocks([
    '**What the guides say**',
    markdownList([...guides.slice(0, MOST).map(guideItem), ...more]),
    own.length > 0 ? table : 'Your own records: none counted yet.',
    own.length > 0 ? 'Germinated of the seed sown less lost, all lots of this name together.' : undefined,
  ]);
};

function fromText(batches: number, lots: number): string {
  return `${counted(batches, 'batch', 'batches')} of ${counted(lots, 'lot')}`;
}

function guideItem(guide: Guide): string {
  const { plant, record, source, line } = guide;
  const remark = remarkText(line);
  return [
    `${escapeMarkdown(plant)}: ${escapeMarkdown(guideStepsText(record))}`,
    source === undefined ? 'no source given' : escapeMarkdown(source),
    remark === undefined ? undefined : escapeMarkdown(remark),
  ].filter(text => text !== undefined).join(' · ');
}
