/** A lot: what it is, and its batches side by side. */
import { whereNow, whereText } from '../../calendar/places.ts';
import { staysOf } from '../../calendar/stays.ts';
import { rangeOf } from '../../journal/estimates.ts';
import { isToldByParts } from '../../journal/given-out.ts';
import { countsOf, isUsed, type Batch, type Lot } from '../../journal/life.ts';
import { replacingOf } from '../../journal/replacing.ts';
import { isUndefined } from '../../measures/measured.ts';
import { factOf } from '../../model/record.ts';
import { listed } from '../../syntax/nearest.ts';
import { escapeMarkdown, markdownTable } from '../markdown.ts';
import { howManyText, rangedSeedsText } from '../../words/seeds.ts';
import { collectedText } from '../../words/days.ts';
import { germinatedOf, germinationDays } from '../../words/germination.ts';
import { replacingTexts } from '../../words/replacing.ts';
import { ofText, shortShareText } from '../../words/shares.ts';
import { treatmentText } from '../../words/treatment.ts';
import { batchSections } from './batch.ts';
import { lotDrawn } from './drawn.ts';
import { guidesSection } from './guides.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';
import { acrossSection, trialSection } from './trial.ts';

/** As many rows as a hover can show without scrolling. */
const MOST_ROWS = 12;

const heading: Section<Lot> = (lot, { journal, now }) => {
  const { id, plant, definition: { record } } = lot;
  const collected = factOf(record, 'collected');
  const place = whereText(whereNow(staysOf(lot), id, now));
  const text = (type: 'from' | 'stored' | 'dormancy') => {
    const value = factOf(record, type)?.value.text;
    return value === undefined ? undefined : `${type} ${value}`;
  };
  const facts = [
    plant, howManyText(factOf(record, 'seeds')) || 'number of seeds not recorded', collected && `collected ${collectedText(collected)}`,
    text('from'), text('stored'), text('dormancy'), place === undefined ? undefined : `at ${place}`,
    ...replacingTexts(replacingOf(journal, id)),
  ];
  return [`**${escapeMarkdown(id)}**`, ...facts.filter(fact => fact).map(fact => escapeMarkdown(fact!))].join(' · ');
};

/** A lot that was never split is its only batch. */
const onlyBatch: Section<Lot> = (lot, context) =>
  lot.root.children.length > 0 ? undefined : sectionsOf(batchSections, { batch: lot.root, lot }, context);

const batchTable: Section<Lot> = ({ id, root }, { now }) => {
  if (root.children.length === 0) return undefined;
  const rows = inRows(root).filter(batch => !isToldByParts(batch));
  const shown = rows.slice(0, MOST_ROWS);
  const table = markdownTable(
    ['Batch', 'Treatment', 'Sown', 'Germinated', 'Percent', 'Days'],
    shown.map(batch => [
      ...[nameOf(batch, id), treatmentText(batch, now)].map(escapeMarkdown), sownCell(batch), ...germinatedCells(batch),
    ]),
  );
  const more = rows.length > shown.length ? `… and ${rows.length - shown.length} more.` : undefined;
  return [table, more, basis(shown, id)].filter(text => text !== undefined).join('\n\n');
};

/** Every batch before what stayed with the one that it was split from. */
function inRows(batch: Batch): Batch[] {
  return [...batch.children.flatMap(inRows), batch];
}

/** What stayed with a batch that was divided is called its rest. */
function nameOf({ path, children }: Batch, id: string): string {
  const name = path === id ? '' : path.slice(id.length + 1);
  return children.length === 0 ? name : `${name} rest`.trim();
}

function sownCell(batch: Batch): string {
  const kept = rangeOf(batch, 'kept');
  const sown = rangeOf(batch, 'sown');
  if (batch.sowing) return sown ? ofText(sown) : 'number not recorded';
  return `– (${kept ? `${rangedSeedsText(kept)} not sown` : 'not sown'})`;
}

/** Germinated, percent and days; nothing is said of seed that nobody has done anything with. */
function germinatedCells(batch: Batch): string[] {
  if (countsOf(batch).length === 0 && !isUsed(batch)) return ['–', '–', '–'];
  const share = germinatedOf(batch);
  const days = germinationDays(batch);
  const cells = isUndefined(share)
    ? [countsOf(batch).length === 0 ? '–' : String(batch.totals.germinated), `– (${share.undefined})`]
    : [`${share.x} of ${ofText(share.n)}`, escapeMarkdown(shortShareText(share.x, share.n))];
  if (isUndefined(days)) return [...cells, days.undefined === 'not counted yet' ? '–' : `– (${days.undefined})`];
  return [...cells, days.first === days.last ? String(days.first) : `${days.first} to ${days.last}`];
}

function basis(rows: readonly Batch[], id: string): string | undefined {
  const counted = rows.filter(batch => countsOf(batch).length > 0);
  if (counted.length === 0) return undefined;
  const origins = [...new Set(counted.flatMap(({ origin }) => origin?.by ?? []))];
  const from = origins.map(by => {
    const names = counted.filter(({ origin }) => origin?.by === by).map(batch => nameOf(batch, id));
    return origins.length === 1 ? `the ${by}` : `the ${by} (${names.join(', ')})`;
  });
  const unsown = counted.some(({ sowing }) => !sowing) ? ' (of the seed in the batch if none was sown)' : '';
  const days = from.length === 0 ? '' : ` Days: first and last new germination seen, from ${listed(from, 'and')}.`;
  return escapeMarkdown(`Percent of the seed sown less lost${unsown}, with the 95 % Wilson interval.${days}`);
}

/** Of a lot that was never split its only batch says so. */
const unread: Section<Lot> = ({ root, batches }) => {
  const names = [...batches.values()].filter(batch => batch.unread).map(({ path }) => path);
  if (root.children.length === 0 || names.length === 0) return undefined;
  const more = names.length - MOST_ROWS;
  const named = `${names.slice(0, MOST_ROWS).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
  return escapeMarkdown(`A record of ${named} has an error, so these numbers may be incomplete.`);
};

/** Add to these what else there is to say of a lot. */
const lotSections: readonly Section<Lot>[] = [
  heading, lotDrawn, onlyBatch, trialSection, batchTable, acrossSection, guidesSection, unread,
];

export function hoverLot(lot: Lot | undefined, context: HoverContext): string | undefined {
  return lot && sectionsOf(lotSections, lot, context);
}
