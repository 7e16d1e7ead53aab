/** The strength of a stock made up from powder: C = mass x purity / volume. */
import type { MassUnit, VolumeUnit } from '../model/quantity.ts';
import type { Agent, Solubility } from './agent.ts';
import { type Exact, isPositive, massInMg, strengthOf, volumeInMl } from './amounts.ts';
import type { Assumption } from './assumptions.ts';
import { percentText } from './display.ts';
import { known, type Outcome, refused } from './outcome.ts';
import { contentOf, type Purity } from './purity.ts';
import { acidEquivalent } from './strength.ts';
import {
  HALVING_ERROR,
  type Limits,
  limitsOf,
  type Measured,
  noReadingText,
  readingError,
  readingText,
  type Uncertainty,
} from './uncertainty.ts';

export interface PowderStock {
  readonly agent: Agent;
  /** What was weighed, or with `halved` the whole packet. */
  readonly mass: Measured<MassUnit>;
  /** How often the packet was divided in two by eye. */
  readonly halved?: number | undefined;
  readonly purity?: Purity | undefined;
  readonly volume: Measured<VolumeUnit>;
  /** The name of the packet, where steps are to say which. */
  readonly packet?: string | undefined;
  /** mg that the portion may have been, where that was told by what was left in a packet. */
  readonly portion?: Limits | undefined;
}

export interface StockStrength {
  /** mg/L of the agent as named */
  readonly ppm: Exact;
  /** mg/L of the acid, for a salt */
  readonly acidPpm: Exact | undefined;
  /** The portion of powder that went in. */
  readonly powderMg: Exact;
  /** The agent in it. */
  readonly dissolvedMg: Exact;
  readonly volumeMl: Exact;
  readonly uncertainty: Uncertainty;
  readonly assumptions: readonly Assumption[];
  /** The solubility in water that this exceeds, if it does. */
  readonly aboveSolubility: Solubility | undefined;
}

/** More halvings than any packet stands. */
const MOST_HALVINGS = 20;

/**
 * One portion (mg) of a mass halved so many times: halving twice leaves a quarter. Refused for no whole
 * number to 20.
 */
export function halvedMass(mg: Exact, times: number): Outcome<Exact> {
  if (!Number.isInteger(times) || times < 0 || times > MOST_HALVINGS) {
    return refused('bad-halving', `A packet can be halved 0 to ${MOST_HALVINGS} times, not ${times}.`);
  }
  return known(mg.div(2 ** times));
}

/**
 * Refused where mass or volume is not above zero, the purity cannot be, or the agent is no substance by
 * weight.
 */
export function stockFromPowder(stock: PowderStock): Outcome<StockStrength> {
  const { agent, halved = 0 } = stock;
  if (agent.role === 'water') return refused('no-strength', 'Water has no strength.');
  if (agent.strengthIs === 'by volume') {
    return refused('by-volume', `${agent.word} is a liquid measured by volume, so a mass does not give its strength.`);
  }
  const volumeMl = volumeInMl(stock.volume);
  const packetMg = massInMg(stock.mass);
  if (!isPositive(volumeMl) || !isPositive(packetMg)) {
    return refused('not-positive', 'Mass and volume must be above zero.');
  }
  const content = contentOf(agent, stock.purity);
  if (!content.ok) return content;
  const portion = halvedMass(packetMg, halved);
  if (!portion.ok) return portion;
  const powderMg = portion.value;
  const dissolvedMg = powderMg.mul(content.value.share);
  const ppm = strengthOf(dissolvedMg, volumeMl);
  return known({
    ppm,
    acidPpm: acidEquivalent(ppm, agent),
    powderMg,
    dissolvedMg,
    volumeMl,
    uncertainty: uncertaintyOf(stock, halved, ppm),
    assumptions: content.value.assumptions,
    aboveSolubility: exceededSolubility(ppm, agent),
  });
}

/** The solubility in water that a strength (ppm) exceeds; undefined where it does not or none is known. */
export function exceededSolubility(ppm: Exact, { solubility }: Agent): Solubility | undefined {
  return solubility !== undefined && ppm.gt(solubility.ppm) ? solubility : undefined;
}

function uncertaintyOf({ mass, volume, purity, portion }: PowderStock, halved: number, ppm: Exact): Uncertainty {
  const volumeError = readingError(volume);
  if (volumeError === undefined) return { kind: 'none', why: noReadingText('volume', volume) };
  const counted = [readingText('volume', volume, volumeError)];
  const notCounted = [purity === undefined ? 'purity (not given)' : 'purity, as the label has it'];
  if (halved > 0) {
    counted.unshift(`halving by eye, ${percentText(HALVING_ERROR)} each time (common practice, no source)`);
    notCounted.unshift('mass of the packet, as its label has it');
    if (portion) {
      const perMg = ppm.div(massInMg(mass).div(2 ** halved));
      const limits = (mg: Exact) => limitsOf(mg.mul(perMg), [], [volumeError]);
      const [low, high] = [limits(portion.low).low, limits(portion.high).high];
      return { kind: 'interval', low, high, counted, notCounted };
    }
    const halvings = Array.from({ length: halved }, () => HALVING_ERROR);
    return { kind: 'interval', ...limitsOf(ppm, halvings, [volumeError]), counted, notCounted };
  }
  const massError = readingError(mass);
  if (massError === undefined) return { kind: 'none', why: noReadingText('mass', mass) };
  counted.unshift(readingText('mass', mass, massError));
  return { kind: 'interval', ...limitsOf(ppm, [massError], [volumeError]), counted, notCounted };
}
