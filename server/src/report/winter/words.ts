/** A winter in review, in words: the same in text, in Markdown and on the page. */
import { PAST_DAYS } from '../../calendar/left-off.ts';
import { whereNow } from '../../calendar/places.ts';
import { staysOf } from '../../calendar/stays.ts';
import { ofText } from '../../words/shares.ts';
import { treatmentText } from '../../words/treatment.ts';
import { readyText } from '../../words/ready.ts';
import { groupLabel } from '../../words/trials.ts';
import { rangeOf } from '../../journal/estimates.ts';
import type { Lot } from '../../journal/life.ts';
import { printMoment } from '../../journal/moment.ts';
import type { VerdictName } from '../../measures/verdict-rules.ts';
import { counted, isOrAre } from '../../model/counted.ts';
import { isoOf } from '../../model/day.ts';
import { sumOfRanges, type SeedRange } from '../../model/estimate.ts';
import { listed } from '../../syntax/nearest.ts';
import type { Contest } from '../../trials/lot-trial.ts';
import type { Column } from '../columns.ts';
import { contestItem, type Item, type Passage } from '../passages.ts';
import type { Sheet } from '../sheet/sheet.ts';
import type { LotReview, Packet, Waiting, WinterReview } from './review.ts';

/** Packets that were not tried this winter, the latest of the journal; of more only the number is told. */
const MOST_OTHERS = 20;

export function winterSheet(review: WinterReview): Sheet {
  const { name, winter, now, lots } = review;
  return {
    title: `The winter of ${winter.name}${name === undefined ? '' : ` in ${name}`}, as of ${printMoment(now)}`,
    lead: [leadText(review)],
    passages: [
      tried(lots),
      judged('What paid', lots, 'worth repeating', 'No treatment of this winter is shown to pay.'),
      judged('What harmed', lots, 'harmful', 'No treatment of this winter is shown to harm.'),
      judged('What showed no benefit', lots, 'no sign of a benefit'),
      needsNothing(lots),
      judged('What these records cannot tell', lots, 'cannot tell'),
      open(review),
      left(review),
    ].filter(({ columns, items, texts }) => columns.length + items.length + texts.length > 0),
    notes: notesOf(lots),
  };
}

function leadText({ winter: { first, last }, lots }: WinterReview): string {
  const span = `From ${isoOf(first)} to ${isoOf(last)}`;
  if (lots.length === 0) return `${span} nothing was soaked, sown or put into a stage.`;
  const batches = lots.flatMap(each => each.batches);
  const tested = batches.map(batch => rangeOf(batch, 'tested'));
  const unknown = tested.filter(range => range === undefined).length;
  const more = unknown > 0 ? `, and ${counted(unknown, 'batch', 'batches')} with an unknown number` : '';
  return `${span}: ${counted(lots.length, 'lot')}, ${counted(batches.length, 'batch', 'batches')}, ${sumText(tested)}${more}.`;
}

function tried(lots: readonly LotReview[]): Passage {
  const column = (head: string, cell: (review: LotReview) => string, kind: Column['kind'] = 'text'): Column =>
    ({ head, kind, cells: lots.map(cell) });
  const columns = lots.length === 0 ? [] : [
    column('Lot', ({ lot }) => lot.id),
    column('Plant', ({ lot }) => lot.plant ?? ''),
    column('Batches', ({ batches }) => String(batches.length), 'number'),
    column('Seeds', ({ batches }) => seedsText(batches.map(batch => rangeOf(batch, 'tested'))), 'number'),
    column('Soaks', ({ groups }) => [...new Set(groups.map(groupLabel))].join('; ') || '–'),
    column('Verdict', ({ contests }) => verdictsText(contests)),
  ];
  return { heading: 'What was tried', columns, items: [], texts: [] };
}

function judged(heading: string, lots: readonly LotReview[], verdict: VerdictName, none?: string): Passage {
  const items = itemsOf(lots, verdict);
  const isNone = items.length === 0 && none !== undefined && lots.length > 0;
  return { heading, columns: [], items, texts: isNone ? [none] : [] };
}

function itemsOf(lots: readonly LotReview[], wanted: VerdictName): Item[] {
  return lots.flatMap(({ lot, contests }) => contests
    .filter(({ verdict }) => verdict.verdict === wanted)
    .map(contest => {
      const { title, texts } = contestItem(contest, false);
      return { title: `${nameOf(lot)}: ${title}`, texts };
    }));
}

/** Where the treatment added nothing to seed that came up readily, and where untreated seed did so by itself. */
function needsNothing(lots: readonly LotReview[]): Passage {
  const compared = itemsOf(lots, 'germinates well without it');
  const isCompared = ({ contests }: LotReview) =>
    contests.some(({ verdict }) => verdict.verdict === 'germinates well without it');
  const alone = lots.filter(review => !isCompared(review))
    .flatMap(({ lot, ready }) => (ready ? [{ title: nameOf(lot), texts: [readyText(ready)] }] : []));
  const items = [...compared, ...alone];
  const texts = items.length === 0 && lots.length > 0 ? ['No untreated seed of this winter is shown to germinate well and soon.'] : [];
  return { heading: 'What needs nothing', columns: [], items, texts };
}

function open({ waiting, earlier, forgotten, now }: WinterReview): Passage {
  const all = [...waiting, ...earlier];
  const column = (head: string, cell: (row: Waiting) => string, kind: Column['kind'] = 'text'): Column =>
    ({ head, kind, cells: all.map(cell) });
  const columns = all.length === 0 ? [] : [
    column('Batch', ({ batch }) => batch.path),
    column('Plant', ({ lot }) => lot.plant ?? ''),
    column('Seeds waiting', ({ seeds }) => seedsText([seeds]), 'number'),
    column('Since', ({ begun }) => isoOf(begun)),
    column('At', ({ lot, batch }) => whereNow(staysOf(lot), batch.path, now).join(', ') || '–'),
    column('Treatment', ({ batch }) => treatmentText(batch, now)),
  ];
  const unknown = all.filter(({ seeds }) => seeds === undefined).length;
  const more = unknown > 0 ? `, and those in ${counted(unknown, 'batch', 'batches')} with an unknown number` : '';
  const old = earlier.length > 0 ? ` ${counted(earlier.length, 'batch', 'batches')} ${isOrAre(earlier.length)} from earlier winters.` : '';
  const past = forgotten === 0 ? [] : [
    `Left out: ${counted(forgotten, 'batch', 'batches')} of earlier winters with no record for more than ${PAST_DAYS} days. Close them with “discard” or “cut”.`,
  ];
  const texts = [...(all.length > 0 ? [`${sumText(all.map(({ seeds }) => seeds))}${more} may still germinate.${old}`] : []), ...past];
  return { heading: 'What stays open', columns, items: [], texts };
}

function left({ packets, others }: WinterReview): Passage {
  const column = (head: string, cell: (row: Packet) => string, kind: Column['kind'] = 'text'): Column =>
    ({ head, kind, cells: packets.map(cell) });
  const columns = packets.length === 0 ? [] : [
    column('Lot', ({ lot }) => lot.id),
    column('Plant', ({ lot }) => lot.plant ?? ''),
    column('Not sown', ({ unsown }) => seedsText([unsown]), 'number'),
    column('Waiting', ({ waiting }) => seedsText([waiting]), 'number'),
    column('So far', ({ contests }) => verdictsText(contests)),
  ];
  const rest = others.map(({ lot, unsown }) => `${lot.id} (${unsown === undefined ? 'not counted' : sumText([unsown])})`);
  const shown = rest.slice(-MOST_OTHERS);
  const older = rest.length - shown.length;
  const last = older > 0 ? [...shown, `${older} older`] : shown;
  const texts = rest.length > 0 ? [`Not tried this winter: ${listed(last, 'and')}.`] : [];
  return { heading: 'Seed left for another try', columns, items: [], texts };
}

function notesOf(lots: readonly LotReview[]): string[] {
  const broken = lots.filter(({ errors }) => errors > 0).map(({ lot }) => lot.id);
  return [
    ...(broken.length > 0 ? [`There are errors in the records of ${listed(broken, 'and')}; these numbers may be wrong until you fix them.`] : []),
    'Verdicts follow the rules in the format reference. A batch belongs to the winter in which something was first done to its seed.',
  ];
}

function verdictsText(contests: readonly Contest[]): string {
  const verdicts = [...new Set(contests.map(({ verdict }) => verdict.verdict))];
  return verdicts.length === 0 ? 'nothing to compare' : verdicts.join(', ');
}

/** Of numbers that are not all known the least that it can be. */
function seedsText(ranges: readonly (SeedRange | undefined)[]): string {
  const sum = sumOfRanges(ranges.filter(range => range !== undefined));
  if (ranges.every(range => range !== undefined)) return ofText(sum);
  return sum.least === 0 ? '–' : `${sum.least} or more`;
}

/** The sum of those that are known. Example: '40 seeds', '36 to 44 seeds' */
function sumText(ranges: readonly (SeedRange | undefined)[]): string {
  const sum = sumOfRanges(ranges.filter(range => range !== undefined));
  return `${ofText(sum)} ${sum.most === 1 ? 'seed' : 'seeds'}`;
}

function nameOf({ id, plant }: Lot): string {
  return plant === undefined ? id : `${id} ${plant}`;
}
