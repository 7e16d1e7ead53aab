/** A ladder of doses: the share that germinated after each, with its interval, over the logarithm of the dose. */
import { scaleLinear, scaleLog } from 'd3-scale';
import type { JournalLine } from '../journal/journal-file.ts';
import { element, type Content } from './markup.ts';
import { framed, heading, line, marked, text, TYPE, type DataTable, type Frame, type Picture } from './picture.ts';
import { percentText } from './percent.ts';
import { spread } from './spread.ts';
import { fitText, textWidth, wrapText } from './text-size.ts';

export interface Step {
  /** Example: 'GA3 500 ppm 24 h' */
  readonly label: string;
  readonly germinated: number;
  readonly seeds: number;
  /** Of the share, 95 %. */
  readonly low: number;
  readonly high: number;
  /** What suffered: 'leggy 4, rotted 6'; empty where nothing did. */
  readonly harm: string;
  /** Empty for the untreated seed. */
  readonly verdict: string;
}

export interface LadderValues {
  readonly title: string;
  readonly caption: string;
  readonly untreated: Step;
  /** Of the doses: 'ppm', '%'. */
  readonly unit: string;
  /** Ascending; doses above 0. */
  readonly rungs: readonly (Step & {
    readonly dose: number;
    readonly isAbout: boolean;
    /** The record of the soak. */
    readonly line?: JournalLine | undefined;
  })[];
}

/** Undefined without a rung. */
export function ladderPicture(values: LadderValues, frame: Frame): Picture | undefined {
  const { untreated, rungs, unit, title, caption } = values;
  const [first, last] = [rungs[0], rungs.at(-1)];
  if (!first || !last) return undefined;
  const { width, small, theme } = frame;
  const [left, right] = [small ? 32 : 40, width - 24];
  const top = small ? 14 : 56;
  const bottom = top + (small ? 96 : 220);
  const words = small ? [] : wrapText(caption, TYPE.text, width - 24, 4);
  const height = bottom + (small ? 34 : 52) + words.length * 17;
  const margin = Math.min(90, (right - left) / 5);
  const size = TYPE.small;
  // What is said of the untreated seed stands before the first dose, so that no interval lies across it.
  const behind = fitText(`${untreated.label}, ${percentText(shareOf(untreated))} %`, size, (right - left) / 3);
  const start = left + Math.max(margin, textWidth(behind, size) + 16);
  const scale = scaleLog([first.dose, Math.max(last.dose, first.dose * 1.01)], [start, right - margin]);
  const x = (dose: number): number => (rungs.length === 1 ? (left + right) / 2 : scale(dose));
  const shares = scaleLinear([0, 1], [bottom, top]);
  const y = (share: number): number => shares(share);
  const widest = (texts: readonly string[]): number => 8 + Math.max(...texts.map(each => textWidth(each, size)));
  const about = rungs.map(doseText);
  // Where there are too many for a sign before them, the words of each step say it alone.
  const hasRoom = widest(about) * rungs.length <= right - left;
  const said = hasRoom ? about : rungs.map(({ dose }) => doseText({ dose, isAbout: false }));
  const apart = widest(said);
  // Half of a wide number is wider than what is left of the picture beside the last place.
  const high = Math.min(right, width - apart / 2);
  const ticks = spread(rungs.map(({ dose }) => x(dose)), apart, { low: left, high });
  const description = describe(values);
  const body: Content[] = [
    ...small ? [] : [heading(frame, title), text(12, top - 12, theme.soft, '% germinated', { size })],
    // The untreated seed lies behind: its interval as a band, its share as a dashed line.
    element('rect', {
      'x': left, 'y': y(untreated.high), 'width': right - left, 'height': y(untreated.low) - y(untreated.high),
      'fill': theme.untreated, 'fill-opacity': 0.18, 'class': 'untreated',
    }),
    ...[0, 0.5, 1].flatMap(share => [
      line(left, y(share), right, y(share), share === 0 ? theme.soft : theme.grid),
      text(left - 6, y(share) + 4, theme.soft, String(100 * share), { size, anchor: 'end' }),
    ]),
    line(left, y(shareOf(untreated)), right, y(shareOf(untreated)), theme.untreated, { 'stroke-dasharray': '5 3', 'stroke-width': 1.5 }),
    text(left + 4, labelY(shareOf(untreated), y, top), theme.untreated, behind, { size, halo: theme.paper }),
    ...rungs.flatMap((step, i) => [
      line(x(step.dose), y(step.low), x(step.dose), y(step.high), theme.ink, { 'class': 'interval', 'stroke-width': 1.5 }),
      ...[step.low, step.high].map(end => line(x(step.dose) - 4, y(end), x(step.dose) + 4, y(end), theme.ink)),
      marked(
        frame, 'circle', { cx: x(step.dose), cy: y(shareOf(step)), r: 4.5, fill: theme.ink, class: 'rung' },
        { says: stepText(step), line: step.line }),
      ...small || step.harm === '' ? [] : [harmText(step.harm, x(step.dose), y(shareOf(step)) + 4, frame)],
      text(ticks[i]!, bottom + 16, theme.soft, said[i]!, { size, anchor: 'middle' }),
    ]),
    text(left, bottom + (small ? 29 : 33), theme.soft, `${unit}, on a logarithmic scale`, { size }),
    ...words.map((each, i) => text(12, bottom + 56 + i * 17, theme.ink, each)),
  ];
  return {
    title, caption, description, table: tableOf(values), width, height,
    svg: framed(frame, height, { title, description }, body),
  };
}

function shareOf({ germinated, seeds }: Step): number {
  return germinated / seeds;
}

/** Beside its dot, on the side that has room. */
function harmText(harm: string, x: number, y: number, { theme, width }: Frame): Content {
  const size = TYPE.small;
  const isRight = x + 9 + textWidth(harm, size) <= width - 4;
  return text(isRight ? x + 9 : x - 9, y, theme.alert, harm, { size, halo: theme.paper, anchor: isRight ? 'start' : 'end' });
}

/** Above its line, or below where there is no room above. */
function labelY(share: number, y: (share: number) => number, top: number): number {
  return y(share) - 5 < top + 8 ? y(share) + 14 : y(share) - 5;
}

/** Example: '250', '≈250' */
function doseText({ dose, isAbout }: { readonly dose: number; readonly isAbout: boolean }): string {
  return `${isAbout ? '≈' : ''}${String(Number(dose.toPrecision(3)))}`;
}

function stepText({ label, germinated, seeds, low, high, harm, verdict }: Step): string {
  const share = `${germinated} of ${seeds} germinated = ${percentText(germinated / seeds)} % (95 % interval ${percentText(low)} to ${percentText(high)})`;
  return [`${label}: ${share}`, harm, verdict].filter(part => part !== '').join(', ');
}

function tableOf({ untreated, rungs }: LadderValues): DataTable {
  return {
    head: ['Treatment', 'Germinated', '% (95 % interval)', 'Suffered', 'Verdict'],
    rows: [untreated, ...rungs].map(({ label, germinated, seeds, low, high, harm, verdict }) => [
      label, `${germinated} of ${seeds}`, `${percentText(germinated / seeds)} (${percentText(low)} to ${percentText(high)})`, harm, verdict,
    ]),
  };
}

function describe({ untreated, rungs, caption }: LadderValues): string {
  return `Share of the seed that germinated, by dose. ${[untreated, ...rungs].map(stepText).join('. ')}. ${caption}`.trim();
}
