/** The page above the pages of several journals: all their plants and lots in one list to search. */
import { counted } from '../model/counted.ts';
import { element } from '../pictures/markup.ts';
import { paragraph } from '../report/html.ts';
import { printable } from '../report/printable.ts';
import type { Report } from '../report/report.ts';
import { INDEX, itemsOf, link, list, listOf, placesOf, searchPage, type SitePage } from './site.ts';

export interface PublishedJournal {
  /** The folder of its pages, beside this page. */
  readonly folder: string;
  readonly title: string;
  /** With its plants, of the journal without what is private. */
  readonly report: Report;
}

/** Seed of one plant in two journals is listed twice, one below the other, each with what its grower found. */
export function severalPage(title: string, journals: readonly PublishedJournal[]): SitePage {
  const items = journals.map(journal => itemsOf(placesOf(journal.report), journal));
  const ofJournals = journals.map(({ folder, title: own }, i) => element('li', {},
    link(`${folder}/${INDEX}`, own), ` ${counted(items[i]!.plants.length, 'plant')}, ${counted(items[i]!.lots.length, 'lot')}`));
  const inOrder = (of: 'plants' | 'lots') => items.flatMap(each => each[of])
    .sort((a, b) => (a.key < b.key ? -1 : Number(a.key > b.key)));
  const content = searchPage(title, [
    element('h1', {}, printable(title)),
    paragraph(`${counted(journals.length, 'journal')}. Each was kept, counted and judged by itself.`),
  ], [
    ...list('Journals', ofJournals), ...listOf('Plants', inOrder('plants')), ...listOf('Lots', inOrder('lots')),
  ]);
  return { name: INDEX, content };
}
