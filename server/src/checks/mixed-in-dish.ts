import { liquidOf, shelfOf } from '../journal/doses.ts';
import type { Dose, DosePart, Entry } from '../journal/life.ts';
import { printQuantity } from '../model/quantity.ts';
import { factOf, type SubstanceFact } from '../model/record.ts';
import type { Agent } from '../solutions/agent.ts';
import { isPositive, type Exact } from '../solutions/amounts.ts';
import { numberText, showVolume } from '../solutions/display.ts';
import { usualStrengthText } from '../solutions/strength.ts';
import { listed } from '../syntax/nearest.ts';
import { replacement } from '../syntax/reader.ts';
import { found, type Context, type Found, type LotCheck } from './check.ts';

/** What is poured together in a soak or in drops: volumes that cannot be, that are missing, strengths that disagree. */
export const mixedInDish: LotCheck = function* (_lot, context, events) {
  for (const { entry, soak } of events.of('soak')) yield* problemsOf(entry, soak.doses, context);
  for (const { entry, doses } of events.of('apply')) yield* problemsOf(entry, doses, context);
};

function* problemsOf(entry: Entry, doses: readonly Dose[], { journal }: Context): Generator<Found> {
  const { line, record } = entry;
  if (record.broken) return;
  const { issue, shares, pouredMl, totalMl } = liquidOf(record, shelfOf(journal));
  const poured = [...shares.keys()];
  const volume = factOf(record, 'volume');
  if (issue === 'total-below-parts' && volume) {
    const parts = poured.filter(fact => fact.volume);
    yield found(line, 'total-below-parts', volume, {
      total: printQuantity(volume.value), parts: listed(parts.map(partText), 'and'),
      are: parts.length === 1 ? 'is' : `are ${showVolume(pouredMl).text} together,`,
    }, { fixes: volumeFixes(pouredMl).map(text => replacement(volume, text)) });
  } else if (issue === 'no-volume') {
    const missing = poured.filter(fact => !fact.volume && journal.agents.get(fact.name.text)?.role !== 'water');
    const restMl = missing.length === 1 ? totalMl?.sub(pouredMl) : undefined;
    for (const fact of missing) yield volumeMissing(entry, fact, restMl);
    const water = missing.length === 0 ? poured.find(fact => !fact.volume) : undefined;
    if (water) yield volumeMissing(entry, water, undefined);
  }
  for (const { agent, ppm, parts } of doses) {
    if (!agent || ppm.ok || ppm.refusal.code !== 'said-twice') continue;
    const { fact } = parts.find(({ adds }) => !adds)!;
    const strengths = strengthsText(parts, agent);
    yield found(line, 'strengths-disagree', fact.strength ?? fact, { agent: agent.word, strengths });
  }
}

/** `restMl` is what the total leaves for it, where only its volume is missing. */
function volumeMissing({ line, record }: Entry, { name }: SubstanceFact, restMl: Exact | undefined): Found {
  const [rest] = restMl && isPositive(restMl) ? volumeFixes(restMl) : [];
  const total = factOf(record, 'volume');
  return found(line, 'volume-missing', name, {
    name: name.text,
    suggestion: rest === undefined
      ? `Write how much of it you poured in: ${name.text} 5 mL.`
      : `Write how much of it is in the ${printQuantity(total!.value)}: ${name.text} ${rest} if you added no water, less if you did.`,
  }, { fixes: rest === undefined ? [] : [replacement(name, `${name.text} ${rest}`)] });
}

/** A volume as it can be written; none where it has no short decimal. */
function volumeFixes(ml: Exact): string[] {
  const { text, exact } = numberText(ml);
  return exact ? [`${text} mL`] : [];
}

/** Example: '5 mL of G2' */
function partText({ name, volume }: SubstanceFact): string {
  return `${printQuantity(volume!.value)} of ${name.text}`;
}

/** Example: '500 ppm as written and 125 ppm from G2' */
function strengthsText(parts: readonly DosePart[], agent: Agent): string {
  return listed(parts.map(({ fact, stock, adds, ppm }) => {
    const text = ppm.ok ? usualStrengthText(ppm.value, agent) : 'an unknown strength';
    if (adds) return `${text} from ${stock ?? `${fact.name.text} poured in`}`;
    return `${text} as written${stock === undefined ? '' : ` beside ${stock}`}`;
  }), 'and');
}
