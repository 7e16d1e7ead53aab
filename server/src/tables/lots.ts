import { remarksBelow } from '../words/remarks.ts';
import { rangeOf } from '../journal/estimates.ts';
import type { Lot } from '../journal/life.ts';
import { genusIn, plantKey } from '../model/plant.ts';
import { dormancies, factOf, factsOf } from '../model/record.ts';
import { lotsOf, placed } from './source.ts';
import { date, map, seeds, table, text, whole, word, type Column } from './table.ts';

/** How a plant is called, and by what it is put together with others. */
export function plantColumns<Of>(plantOf: (of: Of) => string | undefined): Column<Of>[] {
  return [
    text('plant', 'The plant, as recorded.', plantOf),
    text('species', 'The plant in small letters, the same for all lots that are put together by species.', of => (
      map(plantOf(of), plantKey))),
    text('genus', 'The genus in small letters, the same for all lots that are put together by genus.', of => (
      map(plantOf(of), plant => plantKey(genusIn(plant))))),
  ];
}

const factText = (type: 'from' | 'stored' | 'at') => ({ definition }: Lot) => factOf(definition.record, type)?.value.text;

/** A packet or a harvest of seed. */
export const lots = table<Lot>(
  { name: 'lots', says: 'A row for each packet or harvest of seed.', key: ['lot'] },
  [
    text('lot', 'The id of the lot.', ({ id }) => id),
    ...plantColumns<Lot>(({ plant }) => plant),
    ...placed<Lot>(({ definition }) => definition.line),
    ...seeds<Lot>('seeds', 'Seeds that the lot had', ({ root }) => rangeOf(root, 'seeds')),
    date('collected_first', 'The first day that the date of collection can mean.', ({ collected }) => collected?.first),
    date('collected_last', 'The last day that the date of collection can mean.', ({ collected }) => collected?.last),
    whole('harvests', 'How many harvests the packet holds.', ({ definition: { record } }) => (
      map(factOf(record, 'collected'), ({ harvests }) => harvests?.length ?? 1))),
    text('from', 'Where the seed came from.', factText('from')),
    text('stored', 'How it was stored.', factText('stored')),
    word('dormancy', 'The class of dormancy.', dormancies, ({ definition: { record } }) => (
      factOf(record, 'dormancy')?.value.text.toUpperCase())),
    text('replaces', 'The older lots that it replaces, with a blank between them.', ({ definition: { record } }) => (
      factsOf(record, 'replaces').map(({ value }) => value.text).join(' ') || undefined)),
    text('place', 'Where the record says that it is.', factText('at')),
    text('remark', 'The remarks below the record, a line each.', ({ definition }) => remarksBelow(definition.line)),
  ],
  lotsOf,
);
