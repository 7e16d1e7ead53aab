/** Drops on seedlings: what was given to how many, how that stands to the limit, and what was seen since. */
import type { Batch, BatchEvent, Lot } from '../../journal/life.ts';
import { printMoment } from '../../journal/moment.ts';
import { printQuantity } from '../../model/quantity.ts';
import { factOf } from '../../model/record.ts';
import { recipeOfDrops, volumeOf } from '../bench/treatments.ts';
import { trialOf } from '../../trials/lot-trial.ts';
import { escapeMarkdown, markdownList } from '../markdown.ts';
import { dropsTexts, dropsTitle } from '../../words/drops.ts';
import { followUpText } from '../../words/follow-up.ts';
import { dosesText } from '../../words/soaks.ts';
import { cautionLine } from './cautions.ts';
import { doseLines } from './doses.ts';
import { recipeMarkdown } from './recipe.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

interface Drops {
  readonly event: BatchEvent & { readonly type: 'apply' };
  readonly batch: Batch;
  readonly lot: Lot;
}

const heading: Section<Drops> = ({ event: { doses, entry: { record, moment } }, batch }) => {
  const [drops, seedlings] = [factOf(record, 'drops')?.n.value, factOf(record, 'seedlings')?.n.value];
  const volume = volumeOf(record, doses);
  const facts = [
    printMoment(moment),
    drops === undefined ? undefined : `${drops} ${drops === 1 ? 'drop' : 'drops'} on each`,
    volume && `${printQuantity(volume)} in all`,
    seedlings === undefined ? 'on an unknown number' : `on ${seedlings} ${seedlings === 1 ? 'seedling' : 'seedlings'}`,
  ].filter(text => text !== undefined);
  return [`**Drops on ${escapeMarkdown(batch.path)}** of ${escapeMarkdown(dosesText(doses, true))}`, ...facts].join(' · ');
};

const doses: Section<Drops> = ({ event, lot }, { journal }) => doseLines(event.doses, lot.plant, journal);

const followUp: Section<Drops> = ({ event, batch }) => escapeMarkdown(followUpText(batch, event));

/** The verdict on drops of this kind, as the report has it, or why this batch does not count for it. */
const verdict: Section<Drops> = ({ event, batch, lot }, { now }) => {
  const { contests, leftOut } = trialOf(lot, now.day).drops;
  const out = leftOut.find(each => each.batch === batch);
  if (out) return escapeMarkdown(`Whether the drops helped is unknown: ${out.why.undefined}.`);
  const contest = contests.find(({ given }) => given.batches.includes(batch));
  if (!contest || !isFirst(event, batch)) return undefined;
  const [first = '', ...others] = dropsTexts(contest).map(escapeMarkdown);
  return [`**${escapeMarkdown(dropsTitle(contest))}**`, markdownList([first, ...others])].join('\n\n');
};

/** A batch that was given drops several times counts with the first. */
function isFirst(event: Drops['event'], { events }: Batch): boolean {
  return events.find(({ type }) => type === 'apply') === event;
}

const steps: Section<Drops> = ({ event }) => recipeMarkdown(recipeOfDrops(event.entry.record, event.doses));

const cautions: Section<Drops> = ({ event }) => cautionLine('apply', event.doses.flatMap(({ agent }) => agent ?? []));

/** Add to these what else there is to say of drops. */
const dropsSections: readonly Section<Drops>[] = [heading, doses, followUp, verdict, steps, cautions];

export function hoverDrops(drops: Drops, context: HoverContext): string | undefined {
  return sectionsOf(dropsSections, drops, context);
}
