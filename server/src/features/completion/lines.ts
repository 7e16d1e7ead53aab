/** Several lines at once: a trial, a ladder of doses, a counting round, the head of a new journal. */
import { inWalkingOrder, stopsOf, type RoundStop } from '../../calendar/counting-round.ts';
import { PAST_DAYS } from '../../calendar/left-off.ts';
import { printTime } from '../../journal/moment.ts';
import { isUndefined } from '../../measures/measured.ts';
import { designOf, ONE_DISH, visibleShare } from '../../measures/design.ts';
import { WANTED_POWER } from '../../measures/power.ts';
import { counted } from '../../model/counted.ts';
import { isoOf } from '../../model/day.ts';
import { printQuantity, type Quantity } from '../../model/quantity.ts';
import { winterOf } from '../../model/winter.ts';
import { allOf } from '../gathered.ts';
import { openBatches } from './batches.ts';
import { freeId } from './free-id.ts';
import { fits, type Scene } from './scene.ts';
import { doesNotDissolve, strengthsFor } from './strengths.ts';
import { batches } from './subjects.ts';
import type { Suggestion } from './suggestion.ts';
import { choice, type Template } from './template.ts';

/** Seeds a side in a new trial, and the share of untreated seed that it is judged by. Common practice, no source. */
const SIDE = 24;
const EXPECTED = 0.4;

const CHOICES = 10;

/** For an empty line. */
export function severalLines(scene: Scene): Suggestion[] {
  return [head(scene), round(scene), trial(scene), ladder(scene)]
    .filter(suggestion => suggestion !== undefined)
    .filter(({ label, detail = '' }) => fits(scene, `${label} ${detail}`));
}

function lines(label: string, detail: string, parts: readonly Template[], more?: string): Suggestion {
  const write = parts.flatMap((part, n) => (n === 0 ? part : ['\n', ...part]));
  return { kind: 'lines', label, detail, write, find: `${label} ${detail}`, ...(more !== undefined && { more }) };
}

/** The `day` line that the records below need. */
function today({ above, now: { day } }: Scene): Template[] {
  return above === day ? [] : [[`day ${isoOf(day)}`]];
}

function time({ now: { minutes } }: Scene): string {
  return minutes === undefined ? '' : ` ${printTime(minutes)}`;
}

function trial(scene: Scene): Suggestion {
  const { journal, now } = scene;
  const lot = { blank: freeId(journal, `LOT-${isoOf(now.day).slice(2, 4)}`), name: 'lot' };
  const seeds = { blank: String(SIDE) };
  const long = { blank: printQuantity(journal.limits.soak(undefined).value), name: 'long' };
  return lines('trial', 'treated and untreated seed, side by side', [
    ['lot ', lot, ' ', { blank: 'name of the plant' }, ', ', { blank: String(2 * SIDE + 12) }, ' seeds'],
    ['split ', lot, ', A ', seeds, ' seeds, B ', seeds, ' seeds'],
    ...today(scene),
    ['soak ', lot, `/A${time(scene)}, GA3 `, dose(scene), ', ', long],
    ['soak ', lot, `/B${time(scene)}, water, `, long],
  ], told ??= powerWords());
}

let told: string | undefined;

/** What so many seeds can show. */
function powerWords(): string {
  const share = visibleShare(designOf(SIDE, SIDE, ONE_DISH), EXPECTED);
  if (isUndefined(share)) return share.undefined;
  const [treated, untreated, power] = [Math.ceil(share.value * 100), EXPECTED * 100, WANTED_POWER * 100];
  return `With ${SIDE} seeds a side, the verdict finds a gain from ${untreated} % of the untreated to ${treated} % of the treated seed (power ${power} %). The other seeds are kept back.`;
}

function dose({ journal }: Scene): Template[number] {
  return choice(strengthsFor(journal.agents.get('GA3')!, undefined, journal).map(({ text }) => text), 'unmeasured');
}

/** Water, then a quarter, a half and all of the limit, if that dissolves. */
function ladder(scene: Scene): Suggestion | undefined {
  const { journal } = scene;
  const agent = journal.agents.get('GA3')!;
  const limit = journal.limits.strength(agent, undefined);
  if (!limit || doesNotDissolve(limit.value, agent)) return undefined;
  const open = batches('split', { ...scene, typed: '' }, CHOICES).filter(({ batch, standing }) => !standing.sowing && batch.children.length === 0);
  const lot = { ...choice(open.map(({ batch }) => batch.path), 'LOT'), name: 'lot' };
  const doses = ['water', ...[4, 2, 1].map(part => `GA3 ${printQuantity(shareOf(limit.value, part))}`)];
  const names = ['A', 'B', 'C', 'D'];
  const each = { blank: String(Math.max(1, Math.floor((open[0]?.batch.kept ?? 48) / names.length))), name: 'each' };
  const long = { blank: printQuantity(journal.limits.soak(undefined).value), name: 'long' };
  return lines('ladder', 'water and three doses up to the limit', [
    ['split ', lot, ...names.flatMap(name => [`, ${name} `, each, ' seeds'])],
    ...today(scene),
    ...names.map((name, n): Template => ['soak ', lot, `/${name}${time(scene)}, ${doses[n]!}, `, long]),
  ], 'The untreated seed is the first step. Few seeds on many steps show little; the report says what differs.');
}

function shareOf<Unit>({ value, unit }: Quantity<Unit>, part: number): Quantity<Unit> {
  return { value: value / part, unit };
}

function round(scene: Scene): Suggestion | undefined {
  const stops = roundOf(scene);
  if (stops.length === 0) return undefined;
  return lines('counting round', `${counted(stops.length, 'open batch', 'open batches')}, in the order of their places`, [
    ...today(scene), ...stops.map(({ line }): Template => [line, { blank: '' }]),
  ], `One line for each batch, ready for its numbers. It leaves out batches that were counted today, are closed, have all their seeds accounted for, or have no record for more than ${PAST_DAYS} days.`);
}

/** More lines are written by the command for it, which asks first. */
const MOST_STOPS = 200;

const stops = allOf((id, journal, day) => {
  const lot = journal.lot(id);
  return lot ? stopsOf(lot, { day, minutes: undefined }) : [];
});

function roundOf({ journal, now: { day } }: Scene): RoundStop[] {
  if (openBatches(journal, day).filter(({ counted }) => counted).length > MOST_STOPS) return [];
  return inWalkingOrder(stops(journal, day));
}

/** Only in a file that holds nothing yet. What another file says already stands: of two limits the later one counts. */
function head({ journal, line: { store }, now }: Scene): Suggestion | undefined {
  if (store.lineCount > 3 || [...store].some(({ content }) => content.kind !== 'blank')) return undefined;
  const { limits, agents, zone } = journal;
  const settings: Template[] = [
    ...(zone === undefined ? [['zone ', { blank: 'Europe/Vienna' }]] : []),
    ...(limits.soak(undefined).line ? [] : [['limit soak, ', { blank: '24' }, ' h']]),
    ...(limits.strength(agents.get('GA3')!, undefined)?.line ? [] : [['limit GA3, ', { blank: '1000' }, ' ppm']]),
  ];
  return lines('new journal', 'a heading, your time zone, your limits', [
    [`# Winter ${winterOf(now.day, zone)}, `, { blank: 'the bench' }], [''],
    ...settings, ...(settings.length > 0 ? [['']] : []),
    [`day ${isoOf(now.day)}`], [''],
  ]);
}
