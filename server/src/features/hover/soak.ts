/** A soak: in what, from when to when, how long, and how that stands to the limits. */
import { soakState } from '../../calendar/soaks.ts';
import type { Soak } from '../../journal/life.ts';
import { isBefore, lengthText, printMoment, type Moment } from '../../journal/moment.ts';
import { isForgotten } from '../../journal/soaking.ts';
import { isZero } from '../../journal/doses.ts';
import { printQuantity } from '../../model/quantity.ts';
import { factOf } from '../../model/record.ts';
import { dangerOf, longestIn, reactiveOf } from '../../solutions/dangers.ts';
import { recipeOfSoak } from '../bench/treatments.ts';
import { escapeMarkdown, markdownBlocks, markdownList } from '../markdown.ts';
import { agoText } from '../../words/days.ts';
import { originOfLimit } from '../../words/limits.ts';
import { dosesText, noEndText, soFarText } from '../../words/soaks.ts';
import { cautionsText } from './cautions.ts';
import { doseLines } from './doses.ts';
import { soakDrawn, type SoakOfBatch } from './drawn.ts';
import { assumptionLine, recipeMarkdown } from './recipe.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

const heading: Section<SoakOfBatch> = ({ soak, batch }) =>
  `**Soak of ${escapeMarkdown(batch.path)}** in ${escapeMarkdown(dosesText(soak.doses, true))}`;

const times: Section<SoakOfBatch> = ({ soak, batch, lot }, { journal, now }) => {
  const { start, end, length, endedBy, entry } = soak;
  const limit = journal.limits.soak(lot.plant);
  const wallClock = length?.wallClock ? ' (the journal has no “zone” record)' : '';
  const planned = factOf(entry.record, 'duration')?.value;
  const long = [
    length && `${lengthText(length)}${wallClock}`,
    planned && endedBy !== 'duration' ? `${printQuantity(planned)} planned` : undefined,
  ].filter(text => text).join('; ');
  const items = [`In ${printMoment(start)}${isBefore(now, start) ? ` (${agoText(start.day, now.day)})` : ''}, ${outText(soak, now)}`];
  if (long) items.push(`Length ${long}`);
  const state = soakState(soak, batch, now);
  if (state === 'in it') items.push(`In it now: ${soFarText(soak, now, journal.zone)}${end ? '' : ', no end recorded'}`);
  return markdownList([...items, `Limit ${printQuantity(limit.value)} (${originOfLimit(limit)})`].map(escapeMarkdown));
};

function outText(soak: Soak, now: Moment): string {
  const { end, endedBy, endEntry } = soak;
  if (!end) return isForgotten(soak, now) ? noEndText(soak, now) : 'no end recorded';
  switch (endedBy) {
    case 'next': return `out by ${printMoment(end)} at the latest: “${endEntry?.record.keyword ?? ''}” follows, no “lift” recorded`;
    case 'lift': return `lifted ${printMoment(end)}`;
    default: return `out ${printMoment(end)}`;
  }
}

const doses: Section<SoakOfBatch> = ({ soak, lot }, { journal }) => doseLines(soak.doses, lot.plant, journal);

/** What must not stand together in one liquid, and how long seed may lie in a disinfectant. */
const danger: Section<SoakOfBatch> = ({ soak: { doses } }) => {
  const real = doses.filter(dose => !isZero(dose));
  const kinds = real.map(({ fact, agent }) => reactiveOf(fact.name.text, agent));
  const together = kinds.flatMap((kind, n) => kinds.slice(0, n).flatMap(before => dangerOf(before, kind) ?? []));
  const texts = [
    ...together.map(text => `Never mix these: together they give off ${text}.`),
    ...real.flatMap(({ agent }) => {
      const longest = agent && longestIn(agent);
      return longest ? [`Leave seed in ${agent.word} for ${printQuantity(longest)} at most (common practice, no source).`] : [];
    }),
  ];
  return texts.length === 0 ? undefined : escapeMarkdown(texts.join(' '));
};

const steps: Section<SoakOfBatch> = ({ soak }, { journal }) => {
  if (soak.doses.every(({ agent }) => agent?.role === 'water')) return undefined;
  const recipe = recipeOfSoak(soak, journal);
  return markdownBlocks([recipeMarkdown(recipe), assumptionLine(recipe.assumptions)]);
};

const cautions: Section<SoakOfBatch> = ({ soak }, { journal }) => cautionsText(recipeOfSoak(soak, journal).cautions);

/** Add to these what else there is to say of a soak. */
const soakSections: readonly Section<SoakOfBatch>[] = [heading, soakDrawn, times, doses, danger, steps, cautions];

export function hoverSoak(soak: SoakOfBatch, context: HoverContext): string | undefined {
  return sectionsOf(soakSections, soak, context);
}
