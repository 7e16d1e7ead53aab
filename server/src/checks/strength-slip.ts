import { liquidOf, shelfOf } from '../journal/doses.ts';
import type { Dose, Entry } from '../journal/life.ts';
import type { Solution } from '../journal/solutions.ts';
import { printQuantity, type Volume } from '../model/quantity.ts';
import { factOf, type Span } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { volumeInMl, type Exact } from '../solutions/amounts.ts';
import { diluted } from '../solutions/dilution.ts';
import { toNumber } from '../solutions/display.ts';
import { unitSlip } from '../solutions/slips.ts';
import { usualStrengthText } from '../solutions/strength.ts';
import { listed } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Context, type Found, type SolutionCheck } from './check.ts';

/** A strength that nobody uses, probably in a unit that was not meant. */
export function strengthSlip({ line }: Entry, { agent, fact, ppm }: Dose): Found | undefined {
  const { strength } = fact;
  // Most are usual, and comparing is quicker than reading a strength in all its units.
  if (agent?.usual && ppm.ok && ppm.value.gte(agent.usual.low) && ppm.value.lte(agent.usual.high)) return undefined;
  const slip = agent && strength && unitSlip(strength.value, agent);
  if (!slip) return undefined;
  const readings = slip.readings.map(printQuantity);
  const meant = readings.length > 0 ? `Did you mean ${listed(readings, 'or')}? ` : '';
  return found(line, 'strength-slip', strength,
    { agent: agent.word, strength: printQuantity(strength.value), suggestion: `${meant}Growers use ${slip.usual}.` },
    { fixes: readings.map(text => replacement(strength, text)) });
}

/** The same of a volume poured into the dish, where what was poured in was strong enough by itself. */
export function pouredSlip({ line, record }: Entry, dose: Dose, { journal }: Context): Found | undefined {
  const { agent, ppm, parts: [part, ...others] } = dose;
  const { fact, held, isPoured } = part!;
  const { volume } = fact;
  if (others.length > 0 || !isPoured || !volume || !held.ok || !agent || !ppm.ok) return undefined;
  if (!isTooWeak(ppm.value, agent) || isTooWeak(held.value, agent)) return undefined;
  const stock = journal.solution(part!.stock ?? '');
  return tooWeak(line, volume, { agent, ppm: ppm.value, given: volume.value }, other => {
    if (isMoreThanMade(other, stock)) return undefined;
    const meant = { ...fact, volume: { ...volume, value: other } };
    const facts = record.facts.map(each => (each === fact ? meant : each));
    const share = liquidOf({ ...record, facts }, shelfOf(journal)).shares.get(meant);
    return share?.ok ? held.value.mul(share.value) : undefined;
  });
}

/** A dilution down to a strength that nobody uses, said of the first on the way there. */
export const dilutedSlip: SolutionCheck = function* ({ entry: { line, record }, agent, ppm, from }, { journal }) {
  const [taken, to] = [factOf(record, 'draw')?.volume, factOf(record, 'to')];
  const source = from === undefined ? undefined : journal.solution(from);
  if (!agent || !taken || !to || !source?.ppm.ok || !ppm.ok) return;
  const held = source.ppm.value;
  if (!isTooWeak(ppm.value, agent) || isTooWeak(held, agent)) return;
  const madeOf = (part: Volume, whole: Volume) => {
    if (isMoreThanMade(part, source) || volumeInMl(whole).lte(volumeInMl(part))) return undefined;
    const made = diluted(held, volumeInMl(part), volumeInMl(whole));
    return made.ok ? made.value : undefined;
  };
  const ofTaken = tooWeak(line, taken, { agent, ppm: ppm.value, given: taken.value }, other => madeOf(other, to.value));
  const ofTo = tooWeak(line, to, { agent, ppm: ppm.value, given: to.value }, other => madeOf(taken.value, other));
  yield ofTaken.problem.fixes.length > 0 ? ofTaken : ofTo;
};

/** Weaker than what growers use. */
function isTooWeak(ppm: Exact, { usual }: Agent): boolean {
  return usual !== undefined && ppm.lt(usual.low);
}

/** Nobody pours more out of a bottle than was in it. */
function isMoreThanMade(taken: Volume, source: Solution | undefined): boolean {
  return source?.made !== undefined && volumeInMl(taken).gt(source.made);
}

const units: readonly Volume['unit'][] = ['mL', 'L', 'uL'];

/** `ppmWith`: the strength with another volume in the place of the `given` one. */
function tooWeak(
  line: Entry['line'], span: Span,
  { agent, ppm, given }: { readonly agent: Agent; readonly ppm: Exact; readonly given: Volume },
  ppmWith: (other: Volume) => Exact | undefined,
): Found {
  const others = units.filter(unit => unit !== given.unit).map((unit): Volume => ({ ...given, unit }));
  const readings = others.filter(other => {
    const made = ppmWith(other);
    return made !== undefined && made.gte(agent.usual!.low) && made.lte(agent.usual!.high);
  }).map(printQuantity);
  const { usual } = unitSlip({ value: toNumber(ppm), unit: 'ppm' }, agent)!;
  const meant = readings.length > 0 ? `Did you mean ${listed(readings, 'or')}? ` : '';
  return found(line, 'strength-slip', span,
    { agent: agent.word, strength: usualStrengthText(ppm, agent), suggestion: `${meant}Growers use ${usual}.` },
    { fixes: readings.map(text => replacement(span, text)) });
}
