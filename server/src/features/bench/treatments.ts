/** Soaks and drops as steps that a person can follow, with what has to be weighed for them. */
import { isZero, liquidOf, type Shelf } from '../../journal/doses.ts';
import type { Dose, DosePart, Soak } from '../../journal/life.ts';
import { printTime } from '../../journal/moment.ts';
import { contentOfPacket } from '../../journal/solutions.ts';
import { isoOf } from '../../model/day.ts';
import { printQuantity, type Volume } from '../../model/quantity.ts';
import { factOf, type JournalRecord } from '../../model/record.ts';
import type { Agent } from '../../solutions/agent.ts';
import { cautionsFor, type BenchWork } from '../../solutions/cautions.ts';
import { percentText, toNumber } from '../../solutions/display.ts';
import { exact, isPositive, volumeInMl } from '../../solutions/amounts.ts';
import type { MixPlan } from '../../solutions/mix-plan.ts';
import { planMix } from '../../solutions/mix.ts';
import { drawing, recipeForDrops, recipeForPowder, recipeForSoak, type Recipe } from '../../solutions/recipe.ts';
import { makeUp, pourTogether, stirInto, type Step, type StepId } from '../../solutions/steps.ts';
import { doseText } from '../../words/soaks.ts';

/** How seed is soaked, and before that how the liquid is made of the powders that the soak names, or of its packets. */
export function recipeOfSoak({ entry: { record }, doses }: Soak, packets: Packets): Recipe {
  const agents = doses.flatMap(({ agent }) => agent ?? []);
  const until = factOf(record, 'until');
  const duration = factOf(record, 'duration')?.value;
  const volume = volumeOf(record, doses);
  const unmeasured = doses.some(dose => dose.unmeasured);
  const mixing = mixingOf(record, doses);
  const soak = recipeForSoak({
    agents, volume, liquid: mixing.length > 0 ? mixedText(doses) : liquidText(doses),
    duration: duration ? printQuantity(duration) : undefined,
    until: until && `${isoOf(until.date.day)}${until.time ? ` at ${printTime(until.time.minutes)}` : ''}`,
    unmeasured,
  });
  const making = volume && !unmeasured ? makingOf(doses, volume, mixing.length > 0, packets) : undefined;
  const whole = making ? withMaking(making, soak, agents) : soak;
  return { ...whole, steps: [...mixing, ...whole.steps] };
}

/** How drops are given. */
export function recipeOfDrops(record: JournalRecord, doses: readonly Dose[]): Recipe {
  const mixing = mixingOf(record, doses);
  const drops = recipeForDrops({
    agents: doses.flatMap(({ agent }) => agent ?? []),
    liquid: mixing.length > 0 ? mixedText(doses) : liquidText(doses),
    drops: factOf(record, 'drops')?.n.value,
    volume: volumeOf(record, doses),
    seedlings: factOf(record, 'seedlings')?.n.value,
  });
  return { ...drops, steps: [...mixing, ...drops.steps] };
}

/** How much liquid there is in all; undefined where that is not known. */
export function volumeOf(record: JournalRecord, doses: readonly Dose[]): Volume | undefined {
  const { totalMl, issue } = liquidOf(record, namedIn(doses));
  if (issue === 'total-below-parts') return undefined;
  return factOf(record, 'volume')?.value ?? (totalMl && { value: toNumber(totalMl), unit: 'mL' });
}

/** The agents that the record names by themselves, or by a packet of their powder. */
function namedIn(doses: readonly Dose[]): Shelf {
  const agents = new Map(doses.flatMap(({ agent, parts }) => parts.flatMap((part): [string, Agent][] => (
    agent && (part.stock === undefined || part.isPowder) ? [[part.fact.name.text, agent]] : []))));
  return { agents, solution: () => undefined };
}

/** Example: 'G2', 'GA3 500 ppm with KNO3 0.2 %'. What holds powder out of a packet is told by its strength. */
function liquidText(doses: readonly Dose[]): string {
  return doses.flatMap(dose => (dose.parts.some(({ isPowder }) => isPowder) && !dose.unmeasured ? [doseText(dose)]
    : dose.parts.map(({ fact: { name, strength } }) => (strength ? `${name.text} ${printQuantity(strength.value)}` : name.text))))
    .join(' with ');
}

/** Example: 'GA3 357.1 ppm with KNO3 571.4 ppm' */
function mixedText(doses: readonly Dose[]): string {
  return doses.filter(({ agent }) => agent?.role !== 'water').map(dose => doseText(dose)).join(' with ');
}

/** How the liquids of a record are poured together; none where there is nothing to mix, or a volume is not known. */
function mixingOf(record: JournalRecord, doses: readonly Dose[]): Step[] {
  const { shares, totalMl, fillMl, issue } = liquidOf(record, namedIn(doses));
  const isMixed = shares.size > 1 || (fillMl && isPositive(fillMl));
  if (!totalMl || !fillMl || issue || !isMixed || [...shares.keys()].every(({ name }) => name.text === 'water')) return [];
  const takes = [...shares.keys()].flatMap(({ name, strength, volume }) => (
    volume ? [drawing(strength ? `${name.text} ${printQuantity(strength.value)}` : name.text, volumeInMl(volume.value))] : []));
  return [...takes, isPositive(fillMl) ? makeUp(totalMl, fillMl) : pourTogether(totalMl)];
}

interface Making {
  readonly steps: readonly Step[];
  readonly tooSmall: Recipe['tooSmall'];
  readonly assumptions: Recipe['assumptions'];
}

/** How one powder is weighed and dissolved, and what that gives. */
interface Planned extends Making {
  readonly dissolvesIn: Agent['dissolvesIn'];
  /** How the strength that comes out differs from the one that is written. */
  readonly off: readonly Step[];
}

/** The packets of powder that a soak may name. */
type Packets = Pick<Shelf, 'solution'>;

/** Undefined where nothing has to be weighed, or where a part of it is a liquid whose own strength nobody says. */
function makingOf(doses: readonly Dose[], volume: Volume, isMixed: boolean, packets: Packets): Making | undefined {
  const real = doses.filter(({ agent }) => agent?.role !== 'water');
  const poured = real.flatMap(({ parts }) => parts.filter(({ isPoured }) => isPoured));
  const powders = real.filter(dose => !isZero(dose)).map(powdersOf);
  const all = powders.flatMap(each => each ?? []);
  if (powders.includes(undefined) || all.length === 0 || (poured.length > 1 && !isMixed)) return undefined;
  const plans: Planned[] = [];
  for (const powder of all) {
    const plan = planOf(powder, volume, packets);
    if (!plan) return undefined;
    if (plan.steps.length === 0) return plan;
    plans.push(plan);
  }
  const stock = isMixed ? 'the mixture' : poured[0]?.fact.name.text;
  const [only, ...more] = plans;
  return {
    steps: stock !== undefined ? intoStock(plans, stock, volume)
      : more.length > 0 ? together(plans, volume) : only!.steps,
    tooSmall: tooSmallFor(plans, stock),
    assumptions: plans.flatMap(({ assumptions }) => assumptions),
  };
}

interface Powder {
  readonly agent: Agent;
  readonly part: DosePart;
}

/**
 * What has to be weighed for a dose. Where it is poured in or weighed out of packets, a strength beside that is what
 * these add up to; else a strength is to be made of powder. Undefined where that cannot be said.
 */
function powdersOf({ agent, parts, ppm }: Dose): readonly Powder[] | undefined {
  const adding = parts.filter(({ adds }) => adds);
  if (adding.length > 0 && adding.every(({ isPoured }) => isPoured)) return [];
  if (agent?.form !== 'powder' || !ppm.ok) return undefined;
  const weighed = adding.length > 0 ? adding.filter(({ isPowder }) => isPowder) : parts.slice(0, 1);
  return weighed.map(part => ({ agent, part }));
}

/** Without steps where no balance can weigh so little; undefined where it is not known how pure the powder is. */
function planOf({ agent, part }: Powder, volume: Volume, packets: Packets): Planned | undefined {
  const { fact: { strength, mass }, stock } = part;
  const packet = stock === undefined ? undefined : packets.solution(stock);
  if (packet && !contentOfPacket(packet).ok) return undefined;
  const purity = packet && factOf(packet.entry.record, 'purity');
  const { dissolvesIn } = agent;
  if (!strength) {
    const made = mass && recipeForPowder({ agent, mass: mass.value, purity, volume, packet: stock });
    if (!made?.ok) return undefined;
    return { ...made.value, steps: made.value.steps.filter(isMaking), dissolvesIn, off: [] };
  }
  const plan = planMix({ agent, strength: strength.value, volume, source: { kind: 'powder', purity, packet: stock } });
  if (!plan.possible) {
    const tooSmall = { message: plan.message, remedies: plan.nearest };
    return { steps: [], tooSmall, assumptions: [], dissolvesIn, off: [] };
  }
  const { steps, inKitchen: tooSmall, assumptions } = plan;
  return { steps: steps.filter(isMaking), tooSmall, assumptions, dissolvesIn, off: trueStrengthOf(plan) };
}

/** What to do instead; into a stock that is there no other solution can go, which would make it weaker. */
function tooSmallFor(plans: readonly Planned[], stock: string | undefined): Recipe['tooSmall'] {
  const kitchen = plans.find(({ tooSmall }) => tooSmall)?.tooSmall;
  return kitchen && stock !== undefined ? { ...kitchen, remedies: [] } : kitchen;
}

const alone: ReadonlySet<StepId> = new Set(['weigh', 'dissolve', 'make-up', 'true-strength']);
const powdered: ReadonlySet<StepId> = new Set(['weigh', 'dissolve']);
const onlyWeighed: ReadonlySet<StepId> = new Set(['weigh']);

function isMaking({ id }: Step): boolean {
  return alone.has(id);
}

function stepsOf({ steps }: Planned, ids: ReadonlySet<StepId>): Step[] {
  return steps.filter(({ id }) => ids.has(id));
}

/** Several powders in one water. */
function together(plans: readonly Planned[], volume: Volume): Step[] {
  const powder = plans.flatMap(plan => stepsOf(plan, powdered));
  return [...powder, makeUp(volumeInMl(volume)), ...plans.flatMap(({ off }) => off)];
}

function intoStock(plans: readonly Planned[], stock: string, volume: Volume): Step[] {
  const powder = plans.flatMap(plan => stepsOf(plan, plan.dissolvesIn === 'water' ? onlyWeighed : powdered));
  return [...powder, stirInto(stock, volumeInMl(volume)), ...plans.flatMap(({ off }) => off)];
}

function trueStrengthOf({ agent, asked, result: { text, offPercent } }: MixPlan): Step[] {
  if (offPercent === 0) return [];
  const off = percentText(exact(Math.abs(offPercent)).div(100));
  const side = offPercent > 0 ? 'above' : 'below';
  const written = printQuantity(asked.strength);
  return [{ id: 'true-strength', text: `It then holds ${agent.word} ${text}, ${off} ${side} the ${written} you wrote.` }];
}

function withMaking({ steps, tooSmall, assumptions }: Making, soak: Recipe, agents: readonly Agent[]): Recipe {
  const works: BenchWork[] = steps.length > 0 ? ['powder', 'soak'] : ['soak'];
  return {
    steps: [...steps, ...soak.steps], tooSmall, assumptions,
    cautions: cautionsFor(works, agents.filter(({ role }) => role !== 'water')),
  };
}
