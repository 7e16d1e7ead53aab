/** The counting sheet of a round: filled in by pencil at the shelf, typed in afterwards in the same order. */
import { countingRound, roundLeftOff, type RoundStop } from '../../calendar/counting-round.ts';
import { slotOf } from '../../calendar/place-text.ts';
import { standingOf } from '../../calendar/standing.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Moment } from '../../journal/moment.ts';
import { isoOf } from '../../model/day.ts';
import { element, type Content, type Markup } from '../../pictures/markup.ts';
import { printable } from '../printable.ts';
import { documentOf } from '../document.ts';
import { text } from './text.ts';

export interface Round {
  readonly name: string | undefined;
  readonly now: Moment;
  readonly rows: readonly RoundRow[];
}

interface RoundRow {
  readonly id: string;
  readonly plant: string | undefined;
  /** The bag, tray or shelf; undefined where the journal does not say where the batch is. */
  readonly container: string | undefined;
  readonly slot: string | undefined;
  /** Germinated up to now. */
  readonly before: number;
  /** Of so many seeds; undefined where the number is not known. */
  readonly of: number | undefined;
}

export interface RoundAsked {
  /** Where there are several journals. */
  readonly name?: string | undefined;
  /** The batches that were left off, instead of those that are looked after. */
  readonly leftOff?: boolean | undefined;
}

export function roundOf(journal: Journal, now: Moment, { name, leftOff = false }: RoundAsked = {}): Round {
  const stops = (leftOff ? roundLeftOff : countingRound)(journal, now);
  return { name, now, rows: stops.map(stop => rowOf(stop, now)) };
}

function rowOf({ batch, plant, place }: RoundStop, now: Moment): RoundRow {
  const slot = place === undefined ? undefined : slotOf(place);
  return {
    id: batch.path, plant, container: slot?.container ?? place, slot: slot?.slot,
    before: standingOf(batch, now).totals.germinated, of: batch.tested,
  };
}

const BLANKS = ['germinated', 'emerged', 'leaf', 'rotted', 'died'] as const;

const STYLE = `
@page { margin: 12mm }
body { margin: 0; font: 10pt/1.25 sans-serif; color: #000; background: #fff }
h1 { font-size: 13pt; margin: 0 0 2mm } p { margin: 0 0 3mm }
table { border-collapse: collapse; width: 100%; table-layout: fixed } thead { display: table-header-group }
th, td { border: .25mm solid #000; padding: 1mm 1.5mm; text-align: left; vertical-align: top; overflow-wrap: anywhere }
thead th { font-size: 7pt; overflow-wrap: normal; font-weight: normal } tr { break-inside: avoid }
.slot { width: 14mm; font-size: 22pt; line-height: 1; font-weight: bold; text-align: center }
thead .slot { font-size: 7pt; font-weight: normal }
.batch { width: 34mm } .before { width: 15mm } .blank { width: 13.5mm } tbody td { height: 11mm }
tbody th { background: #e8e8e8; font-size: 12pt; break-after: avoid } .plant { display: block; font-size: 8pt; font-style: italic }
`;

/** One page for each journal; what was done to the seed is left out, so that it does not guide the eye. */
export function roundPage(rounds: readonly Round[]): string {
  return documentOf({ title: 'Counting sheet', style: STYLE, body: rounds.flatMap(roundBody) });
}

function roundBody({ name, now, rows }: Round): Content[] {
  const title = `Counting sheet as of ${isoOf(now.day)}${name === undefined ? '' : `, ${name}`}`;
  if (rows.length === 0) return [element('h1', {}, printable(title)), element('p', {}, 'No count is due.')];
  return [
    element('h1', {}, printable(title)),
    element('p', {}, 'Counted on ______________  Write what is new since the last count, or “=” and the total. Leave blank what you did not look at.'),
    element('table', {}, head(), element('tbody', {}, ...rows.flatMap((row, n) => rowLines(row, rows[n - 1])))),
  ];
}

function head(): Markup {
  const column = (kind: string, words: string) => element('th', { scope: 'col', class: kind }, words);
  return element('thead', {}, element(
    'tr',
    {},
    column('slot', 'slot'),
    column('batch', 'batch'),
    column('before', 'before'),
    ...BLANKS.map(word => column('blank', word)),
    column('remark', 'remark'),
  ));
}

/** A new container is a line of its own: the bag is fetched, then its slots are gone through. */
function rowLines(row: RoundRow, above: RoundRow | undefined): Markup[] {
  const { id, plant, container, slot, before, of } = row;
  const isNew = !above || above.container !== container;
  const heading = element('th', { colspan: String(BLANKS.length + 4) }, printable(container ?? 'place unknown'));
  const place = element('tr', {}, heading);
  const line = element(
    'tr',
    {},
    element('td', { class: 'slot' }, printable(slot ?? '')),
    element('td', { class: 'batch' }, element('b', {}, printable(id)), text('span', 'plant', plant)),
    element('td', { class: 'before' }, of === undefined ? String(before) : `${before} of ${of}`),
    ...BLANKS.map(() => element('td', {})),
    element('td', {}),
  );
  return isNew ? [place, line] : [line];
}
