/** The ladder of strengths that growers try, from one stock, as the records that make it. */
import type { Journal } from '../../journal/journal.ts';
import { ledger } from '../../journal/draws.ts';
import type { Solution } from '../../journal/solutions.ts';
import type { Moment } from '../../journal/moment.ts';
import { isoOf, type Day } from '../../model/day.ts';
import { printQuantity } from '../../model/quantity.ts';
import { exact, type Exact } from '../../solutions/amounts.ts';
import { numberText } from '../../solutions/display.ts';
import { ladder, type Ladder, type LadderWay } from '../../solutions/ladder.ts';
import { measure, type Measurement } from '../../solutions/measurable.ts';
import { exceededSolubility } from '../../solutions/stock.ts';
import type { Bench } from '../../solutions/tools.ts';
import { listed } from '../../syntax/nearest.ts';
import type { Position } from '../../text/line-store.ts';
import { freeId } from '../mix/ids.ts';
import type { Action } from './action.ts';
import { editBelow } from './below.ts';

/** ppm, as far as they are well below the stock: common practice, no source. */
const RUNGS = [1000, 500, 250].map(exact);
/** A stock of 1006 ppm is a rung of 1000 ppm itself: nobody measures closer. Common practice, no source. */
const WELL_BELOW = exact(0.95);
/** What is kept of each rung (mL): for a soak or two, or as much as the stock still gives. */
const VOLUMES = [20, 10, 5].map(exact);
const WAYS: readonly LadderWay[] = ['from the stock', 'down the ladder'];
const BENCHES: readonly Bench[] = ['kitchen', 'laboratory'];

/** Undefined but for the record of a stock of hormone that is stronger than a rung, has enough left and keeps. */
export function ladderAction(
  journal: Journal, file: string, { line: number }: Position, now: Moment,
): Action | undefined {
  const text = journal.files.get(file)?.text;
  const line = text && number < text.lineCount ? text.at(number) : undefined;
  const { keyword, subject } = line?.content.record ?? {};
  const stock = keyword === 'stock' && subject ? journal.solution(subject.text) : undefined;
  if (!line || stock?.entry.line !== line || !stock.entry.moment) return undefined;
  const day = Math.max(now.day, stock.entry.moment.day);
  const planned = isLaddered(stock, day) ? planFor(stock, journal) : undefined;
  if (!planned) return undefined;
  const records = recordsOf(planned, stock, day, journal);
  return {
    title: `Write the ladder ${listed(planned.map(({ ppm }) => numberText(ppm).text), 'and')} ppm from ${stock.id}`,
    edits: [editBelow(line, records)],
  };
}

function isLaddered({ agent, keeps }: Solution, day: Day): boolean {
  return (agent?.role === 'hormone' || agent?.role === 'declared') && (!keeps || keeps.until >= day);
}

/** A rung as it can be measured. */
interface Step {
  readonly ppm: Exact;
  readonly from: number | undefined;
  readonly draw: Measurement;
  readonly make: Measurement;
}

/** As much of each rung as the stock gives, if it can be with nothing rounded and with the tools of a kitchen. */
function planFor({ id, agent, ppm, made: bottle }: Solution, journal: Journal): Step[] | undefined {
  const stockPpm = ppm.ok ? ppm.value : undefined;
  const rungs = RUNGS.filter(rung => stockPpm && rung.lt(stockPpm.mul(WELL_BELOW)));
  // What has not dissolved cannot be diluted.
  if (!stockPpm || !agent || exceededSolubility(stockPpm, agent) || rungs.length === 0) return undefined;
  const { left } = ledger({ made: bottle }, journal.accountOf(id));
  const plans = BENCHES.flatMap(bench => VOLUMES.flatMap(volume => WAYS.flatMap(way => {
    const made = ladder(stockPpm, rungs, volume, way);
    const steps = made.ok ? stepsOf(made.value, bench) : undefined;
    return steps && (!left || drawnFromStock(steps).lte(left.most)) ? [steps] : [];
  })));
  return plans.find(steps => steps.every(isExact)) ?? plans[0];
}

function isExact({ draw, make }: Step): boolean {
  return draw.error.equals(0) && make.error.equals(0);
}

function stepsOf({ rungs }: Ladder, bench: Bench): Step[] | undefined {
  const steps = rungs.flatMap(({ ppm, from, drawMl, makeMl }) => {
    const [draw, make] = [measure(drawMl, 'volume', bench), measure(makeMl, 'volume', bench)];
    return draw.measurable && make.measurable ? [{ ppm, from, draw: draw.best, make: make.best }] : [];
  });
  return steps.length === rungs.length ? steps : undefined;
}

function drawnFromStock(steps: readonly Step[]): Exact {
  return steps.filter(({ from }) => from === undefined).reduce((sum, { draw }) => sum.add(draw.measured), exact(0));
}

function recordsOf(steps: readonly Step[], { id }: Solution, day: Day, journal: Journal): string[] {
  const ids: string[] = [];
  return steps.map(({ ppm, from, draw, make }) => {
    const own = freeId(journal, `${id}-${numberText(ppm).text}`, new Set(ids));
    const source = from === undefined ? id : ids[from]!;
    ids.push(own);
    return `dilute ${own} ${isoOf(day)}, from ${source} ${printQuantity(draw.shown)}, to ${printQuantity(make.shown)}`;
  });
}
