import type { Guide } from '../journal/guides.ts';
import type { Dose, Soak } from '../journal/life.ts';
import { lengthText } from '../journal/moment.ts';
import { minutesOf, printQuantity } from '../model/quantity.ts';
import { comparedPpm, isStronger, substanceOf } from '../solutions/comparison.ts';
import { strengthSign } from '../solutions/display.ts';
import { fullStrength } from '../solutions/strength.ts';
import { listed } from '../syntax/nearest.ts';
import { shown } from '../syntax/reader.ts';
import { found, relatedTo, type Context, type Found, type LotCheck } from './check.ts';
import { lengthSpan } from './spans.ts';

/** As many guides as a message names. */
const MOST = 4;

/**
 * A soak stronger, or for certain longer, than every guide that says something of that plant and that agent. A salt
 * counts as its acid; what nobody measured is held against nothing.
 */
export const beyondGuides: LotCheck = function* (lot, context, events) {
  const guides = context.journal.guides.of(lot.plant);
  if (guides.length === 0) return;
  for (const { soak } of events.soaks) {
    for (const dose of soak.doses) {
      if (!dose.agent || dose.unmeasured) continue;
      const sayings = guides.flatMap(guide => sayingsOf(guide, dose, context));
      const compared = { soak, dose, plant: lot.plant ?? '', sayings, context };
      yield* tooStrong(compared);
      yield* tooLong(compared);
    }
  }
};

/** A guide with what it says of one agent. */
interface Saying {
  readonly guide: Guide;
  readonly dose: Dose;
}

interface Compared {
  readonly soak: Soak;
  readonly dose: Dose;
  readonly plant: string;
  readonly sayings: readonly Saying[];
  readonly context: Context;
}

function sayingsOf(guide: Guide, { agent }: Dose, { journal }: Context): Saying[] {
  const isSame = (other: Dose) => other.agent && agent && substanceOf(other.agent) === substanceOf(agent);
  const dose = journal.dosesOf(guide).find(isSame);
  return dose ? [{ guide, dose }] : [];
}

function* tooStrong(compared: Compared): Generator<Found> {
  const { dose: { agent, fact, ppm, written, byEye }, sayings } = compared;
  const strong = sayings.filter(({ dose }) => dose.ppm.ok);
  // Of an old bottle only the most is known.
  if (!agent || !ppm.ok || strong.length === 0 || compared.dose.stale) return;
  const mine = comparedPpm(ppm.value, agent);
  const isWeaker = ({ dose }: Saying) => dose.ppm.ok
    && isStronger(mine, comparedPpm(dose.ppm.value, dose.agent!), [written?.unit, dose.written?.unit]);
  if (!strong.every(isWeaker)) return;
  const text = written ? printQuantity(written) : `${strengthSign({ isAtMost: false, isAbout: byEye })}${fullStrength(ppm.value, agent).text}`;
  const said = strong.map(({ guide, dose }) =>
    saidText(`${dose.fact.name.text} ${dose.fact.strength ? printQuantity(dose.fact.strength.value) : ''}`, guide));
  const span = written ? fact.strength ?? fact.name : fact.name;
  yield hint(compared, span, `${agent.word} ${text} is stronger`, said, strong);
}

function* tooLong(compared: Compared): Generator<Found> {
  const { soak, dose, sayings } = compared;
  const { length } = soak;
  const long = sayings.filter(({ guide }) => minutesOfSoak(guide) !== undefined);
  if (!length || long.length === 0 || !long.every(({ guide }) => minutesOfSoak(guide)! < length.least)) return;
  const said = long.map(({ guide }) => saidText(printQuantity(guide.soak!), guide));
  yield hint(compared, lengthSpan(soak), `${lengthText(length)} in ${dose.agent!.word} is longer`, said, long);
}

function minutesOfSoak({ soak }: Guide): number | undefined {
  return soak && minutesOf(soak);
}

/** Example: 'GA3 500 ppm (a seed list, 2019)' */
function saidText(what: string, { source }: Guide): string {
  return source === undefined ? what : `${what} (${shown(source)})`;
}

function hint(
  { plant, soak }: Compared, span: Parameters<typeof found>[2], what: string, said: readonly string[],
  sayings: readonly Saying[],
): Found {
  const more = said.length > MOST ? [`${said.length - MOST} more`] : [];
  return found(soak.entry.line, 'beyond-guides', span,
    { what, plant: shown(plant), guides: listed([...said.slice(0, MOST), ...more], 'and') },
    { related: sayings.slice(0, MOST).map(({ guide }) => relatedTo(guide, 'The guide')) });
}
