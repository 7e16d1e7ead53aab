/** What to do instead when an amount is too small for the tools. */
import type { Agent } from './agent.ts';
import { type Exact, exact, volumeHolding } from './amounts.ts';
import { type Shown, showMass, showVolume } from './display.ts';
import { measure } from './measurable.ts';
import { exceededSolubility } from './stock.ts';
import { usualStrength, usualStrengthText } from './strength.ts';
import type { Bench } from './tools.ts';

export type RemedyKind =
  | 'make-more'
  | 'stronger-then-dilute'
  | 'halve-packet'
  | 'in-two-steps'
  | 'use-undiluted'
  | 'at-solubility'
  | 'other-unit'
  | 'less-volume'
  | 'weaker'
  | 'fewer-halvings'
  | 'from-powder';

/** A nearest possible answer, with its numbers for programs. */
export interface Remedy {
  readonly kind: RemedyKind;
  readonly text: string;
  readonly amounts: Readonly<Record<string, Shown>>;
}

export interface Wanted {
  readonly agent: Agent;
  readonly ppm: Exact;
  readonly volumeMl: Exact;
  readonly bench: Bench;
}

/** How many times stronger a stock is made, in numbers that are easy to dilute by. */
const factors = [2, 4, 5, 8, 10, 20, 25, 40, 50, 100, 200, 250, 500, 1000].map(exact);
/** A stock of more than this (mL) is a waste at a small bench. */
const HANDY_ML = exact(100);
/** Nobody makes more than this (mL) only to be able to measure. */
export const MOST_ML = exact(2000);
/** Halving by eye more often than this says little of what is left: common practice, no source. */
const MOST_BY_EYE = 4;
/** Packets (mg) in which hormone powder is commonly sold, for an example. */
const EXAMPLE_PACKET_MG = exact(100);

/** For `neededMg` of powder that cannot be weighed, of which `share` is the agent; `leastMg` can. */
export function insteadOfWeighing(wanted: Wanted, share: Exact, leastMg: Exact): Remedy[] {
  return [
    strongerThenDilute(wanted, share, leastMg),
    makeMore(wanted, share, leastMg),
    halvePacket(wanted, share, EXAMPLE_PACKET_MG),
  ].filter(remedy => remedy !== undefined);
}

function makeMore({ agent, ppm }: Wanted, share: Exact, leastMg: Exact): Remedy | undefined {
  const ml = volumeHolding(leastMg.mul(share), ppm);
  if (ml.gt(MOST_ML)) return undefined;
  const volume = showVolume(ml);
  const powder = showMass(leastMg);
  return {
    kind: 'make-more',
    text: `Make more of it: ${powder.text} of ${agent.word} powder made up to ${volume.text}.`,
    amounts: { powder, makeUpTo: volume },
  };
}

/** All of a portion of powder (mg) as a stock, instead of halving it further or making more than is wanted. */
export function allAsStock(wanted: Wanted, share: Exact, packetMg: Exact): Remedy[] {
  const remedy = strongerThenDilute(wanted, share, packetMg);
  return remedy === undefined ? [] : [remedy];
}

function strongerThenDilute(
  { agent, ppm, volumeMl, bench }: Wanted,
  share: Exact,
  powderMg: Exact,
): Remedy | undefined {
  const can = (ml: Exact): boolean => measure(ml, 'volume', bench).measurable;
  const possible = factors
    .map(factor => ({ stockPpm: ppm.mul(factor), drawMl: volumeMl.div(factor) }))
    .map(way => ({ ...way, stockMl: volumeHolding(powderMg.mul(share), way.stockPpm) }))
    .filter(({ stockPpm }) => !exceededSolubility(stockPpm, agent))
    .filter(({ stockMl, drawMl }) => stockMl.gte(drawMl) && can(stockMl) && can(drawMl));
  const way = possible.find(({ stockMl }) => stockMl.lte(HANDY_ML)) ?? possible.at(-1);
  if (way === undefined) return undefined;
  const powder = showMass(powderMg);
  const stockMade = showVolume(way.stockMl);
  const stock = usualStrength(way.stockPpm, agent);
  const drawn = showVolume(way.drawMl);
  const makeUpTo = showVolume(volumeMl);
  const text = `Make a stronger stock and dilute it: ${powder.text} of ${agent.word} powder made up to ` +
    `${stockMade.text} is ${stock.text}; ${drawn.text} of that made up to ${makeUpTo.text} is ` +
    `${usualStrengthText(ppm, agent)}.`;
  return { kind: 'stronger-then-dilute', text, amounts: { powder, stockMade, stock, drawn, makeUpTo } };
}

/**
 * How often to halve a packet (mg of powder) by eye so that a portion still makes the volume; undefined when
 * even the whole packet does not, or when no halving is possible.
 */
export function halvingsFor(packetMg: Exact, share: Exact, ppm: Exact, volumeMl: Exact): number | undefined {
  const whole = volumeHolding(packetMg.mul(share), ppm);
  for (let times = MOST_BY_EYE; times >= 0; times -= 1) {
    if (whole.div(2 ** times).gte(volumeMl)) return times;
  }
  return undefined;
}

/** Example: halvedText(1) is 'Halved once' */
export function halvedText(times: number): string {
  if (times === 0) return 'Not halved';
  return times === 1 ? 'Halved once' : `Halved ${times} times`;
}

function halvePacket({ agent, ppm, volumeMl }: Wanted, share: Exact, packetMg: Exact): Remedy | undefined {
  // Other powders are not sold in packets so small.
  if (agent.role !== 'hormone') return undefined;
  const times = halvingsFor(packetMg, share, ppm, volumeMl);
  if (times === undefined || times === 0) return undefined;
  const ml = volumeHolding(packetMg.mul(share).div(2 ** times), ppm);
  if (ml.gt(MOST_ML)) return undefined;
  const packet = showMass(packetMg);
  const portion = showMass(packetMg.div(2 ** times));
  const makeUpTo = showVolume(ml);
  const text = `Halve a packet by eye: of ${packet.text} of ${agent.word} powder, ${halvedText(times).toLowerCase()}, ` +
    `one part is about ${portion.text}; make it up to ${makeUpTo.text}.`;
  return { kind: 'halve-packet', text, amounts: { packet, portion, makeUpTo } };
}

/** For a draw from a stock (ppm) that is too small to measure; `leastMl` can be measured. */
export function insteadOfDrawing(wanted: Wanted, stockPpm: Exact, leastMl: Exact): Remedy[] {
  return [
    wanted.volumeMl.lt(leastMl) ? undefined : inTwoSteps(wanted, stockPpm),
    drawMore(wanted, stockPpm, leastMl),
  ].filter(remedy => remedy !== undefined);
}

function drawMore({ ppm }: Wanted, stockPpm: Exact, leastMl: Exact): Remedy | undefined {
  const ml = leastMl.mul(stockPpm).div(ppm);
  if (ml.gt(MOST_ML)) return undefined;
  const makeUpTo = showVolume(ml);
  const drawn = showVolume(leastMl);
  return {
    kind: 'make-more',
    text: `Make more of it: ${drawn.text} of the stock made up to ${makeUpTo.text}.`,
    amounts: { drawn, makeUpTo },
  };
}

function inTwoSteps({ agent, ppm, volumeMl, bench }: Wanted, stockPpm: Exact): Remedy | undefined {
  const can = (ml: Exact): boolean => measure(ml, 'volume', bench).measurable;
  const middleMl = exact(10);
  const ways = factors
    .map(factor => ({ middlePpm: stockPpm.div(factor), firstMl: middleMl.div(factor) }))
    .map(step => ({ ...step, secondMl: volumeMl.mul(ppm).div(step.middlePpm) }))
    .filter(({ firstMl, secondMl }) => can(firstMl) && can(secondMl))
    .filter(({ secondMl }) => secondMl.lte(middleMl) && secondMl.lte(volumeMl))
    .map(step => ({ ...step, smallest: step.firstMl.lt(step.secondMl) ? step.firstMl : step.secondMl }))
    // The way whose smaller draw is the larger is the easiest to measure.
    .sort((a, b) => b.smallest.compare(a.smallest));
  const [way] = ways;
  if (way === undefined) return undefined;
  const first = showVolume(way.firstMl);
  const middleMade = showVolume(middleMl);
  const middle = usualStrength(way.middlePpm, agent);
  const second = showVolume(way.secondMl);
  const makeUpTo = showVolume(volumeMl);
  const text = `Dilute in two steps: ${first.text} of the stock made up to ${middleMade.text} is ${middle.text}; ` +
    `${second.text} of that made up to ${makeUpTo.text} is ${usualStrengthText(ppm, agent)}.`;
  return { kind: 'in-two-steps', text, amounts: { first, middleMade, middle, second, makeUpTo } };
}
