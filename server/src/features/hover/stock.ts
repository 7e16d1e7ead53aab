/** A stock or a dilution: what it holds, how it was made, how much is left and how long it keeps. */
import { ledger, type Solution } from '../../journal/solutions.ts';
import { isoOf } from '../../model/day.ts';
import { printQuantity } from '../../model/quantity.ts';
import { factOf } from '../../model/record.ts';
import { numberText, showStrength, showVolume, toNumber } from '../../solutions/display.ts';
import { shelfLife } from '../../solutions/expiry.ts';
import { escapeMarkdown } from '../markdown.ts';
import { agoText } from '../words/days.ts';
import { equivalentsOf } from '../words/strengths.ts';
import { cautionLine } from './cautions.ts';
import { sectionsOf, type HoverContext, type Section } from './section.ts';

const heading: Section<Solution> = ({ id, entry, from }, { now }) => {
  const made = entry.moment && `made ${isoOf(entry.moment.day)} (${agoText(entry.moment.day, now.day)})`;
  const place = factOf(entry.record, 'at')?.value.text;
  const facts = [from === undefined ? 'stock from powder' : `diluted from ${from}`, made, place === undefined ? undefined : `at ${place}`];
  return [`**${escapeMarkdown(id)}**`, ...facts.filter(fact => fact !== undefined).map(escapeMarkdown)].join(' · ');
};

const strength: Section<Solution> = ({ agent, ppm }) => {
  if (!ppm.ok) return escapeMarkdown(`${agent?.word ?? 'Strength'}: – (${ppm.refusal.message})`);
  if (!agent) return undefined;
  const { texts } = equivalentsOf({ value: toNumber(ppm.value), unit: 'ppm' }, agent);
  return `**${escapeMarkdown(`${agent.word} ${showStrength(ppm.value, 'ppm').text}`)}** ${escapeMarkdown(texts.join(' '))}`.trim();
};

const making: Section<Solution> = ({ entry: { record }, powder, from, madeMl }, { journal }) => {
  const draw = factOf(record, 'draw');
  if (draw?.volume && madeMl) {
    const source = from === undefined ? undefined : journal.solution(from);
    const holds = source?.ppm.ok ? `, which holds ${showStrength(source.ppm.value, 'ppm').text}` : '';
    return escapeMarkdown(`${printQuantity(draw.volume.value)} of ${draw.stock.text}${holds}, made up to ${showVolume(madeMl).text}.`);
  }
  if (!powder) return undefined;
  const { uncertainty, assumptions } = powder;
  const taken = assumptions.map(({ text }) => text).join(' ');
  const off = uncertainty.kind === 'none'
    ? `How far it may be off: – (${uncertainty.why})`
    : `It may be from ${numberText(uncertainty.low, 3).text} to ${numberText(uncertainty.high, 3).text} ppm, by ${uncertainty.counted.join(' and ')}; not counted: ${uncertainty.notCounted.join(' and ')}.`;
  return escapeMarkdown(`${taken} ${off}`);
};

const left: Section<Solution> = (solution, { journal }) => {
  const draws = journal.drawsFrom(solution.id);
  const { leftMl, overdrawn, notMeasured } = ledger(solution, draws);
  const records = draws.length === 1 ? '1 record draws' : `${draws.length} records draw`;
  if (!solution.madeMl || !leftMl) return draws.length === 0 ? undefined : `${records} on it. Left: – (the volume it was made up to is not written)`;
  const made = showVolume(solution.madeMl).text;
  if (draws.length === 0) return `${made} made, none of it drawn.`;
  const most = notMeasured.length > 0 ? 'at most ' : '';
  const unmeasured = notMeasured.length > 0 ? ` ${notMeasured.length} without a volume.` : '';
  return `${made} made, ${most}${showVolume(leftMl).text} left: ${records} on it.${unmeasured}${overdrawn ? ' More was drawn than was there.' : ''}`;
};

const keeping: Section<Solution> = ({ entry, keeps }, { now }) => {
  if (!keeps || !entry.moment) return undefined;
  const { state } = shelfLife(now.day, entry.moment.day, keeps.until);
  const verb = state === 'expired' ? 'Past its time since' : state === 'near' ? 'Good only until' : 'Good until';
  return escapeMarkdown(`${verb} ${isoOf(keeps.until)}, ${agoText(keeps.until, now.day)} (${keeps.origin}).`);
};

const cautions: Section<Solution> = ({ agent, from }) => (agent ? cautionLine(from === undefined ? 'powder' : 'dilution', [agent]) : undefined);

/** Add to these what else there is to say of a solution. */
const stockSections: readonly Section<Solution>[] = [heading, strength, making, left, keeping, cautions];

export function hoverStock(solution: Solution | undefined, context: HoverContext): string | undefined {
  return solution && sectionsOf(stockSections, solution, context);
}
