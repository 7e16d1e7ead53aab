/** A stock or a dilution: what it holds, how sure that is, how it is made, how much is left and how long it keeps. */
import { goneNote } from '../../calendar/emptied.ts';
import { lastFound } from '../../calendar/left.ts';
import { isDraw, ledger } from '../../journal/draws.ts';
import type { Solution } from '../../journal/solutions.ts';
import { isoOf } from '../../model/day.ts';
import { factOf } from '../../model/record.ts';
import { assumption, type Assumption } from '../../solutions/assumptions.ts';
import { numberText } from '../../solutions/display.ts';
import { shelfLife } from '../../solutions/expiry.ts';
import { foundText, leftText, showAmount } from '../../solutions/left-text.ts';
import { storeText } from '../../solutions/steps.ts';
import { exceededSolubility } from '../../solutions/stock.ts';
import { recipeOf } from '../bench/recipes.ts';
import { uncertaintyOf } from '../bench/uncertainty.ts';
import { escapeMarkdown } from '../markdown.ts';
import { agoText, daySpanText } from '../../words/days.ts';
import { equivalentsOf, solubilityText, type Equivalents } from '../../words/strengths.ts';
import { cautionLine } from './cautions.ts';
import { stockDrawn } from './drawn.ts';
import { assumptionLine, recipeMarkdown } from './recipe.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';
import { contentHeld, shownStrength } from '../../words/held.ts';

const heading: Section<Solution> = ({ id, entry, from, form, packet, agent }, { now }) => {
  const isPacket = form === 'powder';
  const purity = isPacket ? factOf(entry.record, 'purity') : undefined;
  const made = entry.moment && `${isPacket ? 'since' : 'made'} ${isoOf(entry.moment.day)} (${agoText(entry.moment.day, now.day)})`;
  const bought = factOf(entry.record, 'bought')?.when.value;
  const place = factOf(entry.record, 'at')?.value.text;
  const facts = [
    isPacket ? `packet of ${agent?.word ?? 'powder'}` : from === undefined ? shelfText(entry, packet) : `diluted from ${from}`,
    purity && `purity ${purity.percent} %${purity.form ? ` ${purity.form}` : ''}`,
    made,
    bought && `powder bought ${daySpanText(bought)} (${agoText(bought.last, now.day)})`,
    place === undefined ? undefined : `at ${place}`,
  ];
  return [`**${escapeMarkdown(id)}**`, ...facts.filter(fact => fact !== undefined).map(escapeMarkdown)].join(' · ');
};

function shelfText({ record }: Solution['entry'], packet: string | undefined): string {
  if (packet !== undefined) return `stock from powder of ${packet}`;
  return factOf(record, 'substance')?.strength ? 'as bought' : 'stock from powder';
}

function equivalents(solution: Solution): Equivalents | undefined {
  const { agent } = solution;
  const shown = shownStrength(solution);
  // Of the number that stands before them.
  return agent && shown && equivalentsOf({ value: Number.parseFloat(shown.text), unit: shown.unit }, agent);
}

const strength: Section<Solution> = (solution, { journal }) => {
  const { agent, ppm } = solution;
  if (solution.form === 'powder') return undefined;
  if (!ppm.ok) return escapeMarkdown(`${agent?.word ?? 'Strength'}: – (${ppm.refusal.message})`);
  const texts = equivalents(solution)?.texts.join(' ') ?? '';
  return agent && `**${escapeMarkdown(contentHeld(solution, journal))}** ${escapeMarkdown(texts)}`.trim();
};

const solubility: Section<Solution> = ({ agent, ppm }) => {
  const exceeded = agent && ppm.ok ? exceededSolubility(ppm.value, agent) : undefined;
  return exceeded && escapeMarkdown(solubilityText(exceeded));
};

const certainty: Section<Solution> = (solution, { journal }) => {
  const uncertainty = uncertaintyOf(solution, journal);
  if (!uncertainty) return undefined;
  if (uncertainty.kind === 'none') return escapeMarkdown(`Error of the strength: – (${uncertainty.why})`);
  const [low, high] = [uncertainty.low, uncertainty.high].map(limit => numberText(limit, 3).text);
  const [counted, notCounted] = [uncertainty.counted, uncertainty.notCounted].map(words => [...new Set(words)].join(' and '));
  return escapeMarkdown(`The strength may be ${low!} to ${high!} ppm, given ${counted!}; not counted: ${notCounted!}.`);
};

const left: Section<Solution> = (solution, { journal, now }) => {
  const { form, made, id } = solution;
  const isPacket = form === 'powder';
  const account = journal.accountOf(id);
  const draws = account.filter(isDraw);
  const { left: rest, overdrawn, notMeasured, entries } = ledger(solution, account);
  const records = draws.length === 1 ? '1 record takes' : `${draws.length} records take`;
  if (!rest) {
    const missing = isPacket ? 'its mass' : 'its final volume';
    return draws.length === 0 ? undefined : `${records} from it. Left: – (${missing} is not recorded)`;
  }
  const whole = made && `${showAmount(form, made).text} ${isPacket ? 'at first' : 'made'}`;
  const found = lastFound(entries);
  const since = found && `${foundText(form, found.amount)}${found.moment ? ` on ${isoOf(found.moment.day)}` : ''}`;
  const known = [whole, since].filter(text => text !== undefined).join(', ');
  const gone = goneNote(id, journal, now);
  if (gone) return `${known}; nothing is left, according to the note of ${isoOf(gone.moment.day)}.`;
  if (draws.length === 0) return found ? `${known}.` : `${known}, none of it used.`;
  const unmeasured = notMeasured.length > 0 ? ` ${notMeasured.length} without a ${isPacket ? 'mass' : 'volume'}.` : '';
  const over = overdrawn ? ' More was taken than it held.' : '';
  return escapeMarkdown(`${known}, ${leftText(form, rest)} left: ${records} from it.${unmeasured}${over}`);
};

/** The grower's rule first, then what else is known: the two need not agree, and both are said. */
const keeping: Section<Solution> = ({ agent, entry, keeps }, { now }) => {
  if (!keeps || !entry.moment) return undefined;
  const { state } = shelfLife(now.day, entry.moment.day, keeps.until);
  const verb = state === 'expired' ? 'Past its date since' : state === 'near' ? 'Good only until' : 'Good until';
  const rule = `${verb} ${isoOf(keeps.until)}, ${agoText(keeps.until, now.day)} (${keeps.origin}).`;
  return escapeMarkdown(agent?.keeping === undefined ? rule : `${rule} ${agent.keeping}`);
};

const steps: Section<Solution> = (solution, { journal }) => {
  const recipe = recipeOf(solution, journal);
  const { agent } = solution;
  if (!recipe || !agent) return undefined;
  // How long it keeps has been said above.
  const plain = recipe.steps.map(step => (step.id === 'store' ? { ...step, text: storeText(agent) } : step));
  return recipeMarkdown({ ...recipe, steps: plain });
};

const assumptions: Section<Solution> = (solution) => {
  const { powder, from } = solution;
  const all: Assumption[] = [
    ...(powder?.assumptions ?? []),
    ...(equivalents(solution)?.assumptions ?? []),
    ...(from === undefined ? [] : [assumption('volumes-add')]),
  ];
  return assumptionLine(all);
};

const cautions: Section<Solution> = ({ agent, powder, form }) => (agent ? cautionLine(powder || form === 'powder' ? 'powder' : 'dilution', [agent]) : undefined);

/** Add to these what else there is to say of a solution. */
const stockSections: readonly Section<Solution>[] = [
  heading, stockDrawn, strength, solubility, certainty, left, keeping, steps, assumptions, cautions,
];

export function hoverStock(solution: Solution | undefined, context: HoverContext): string | undefined {
  return solution && sectionsOf(stockSections, solution, context);
}
