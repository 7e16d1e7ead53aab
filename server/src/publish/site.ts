/** A journal as pages that link to each other: a list to search, a page for each plant and each lot, the tables. */
import { agentText } from '../words/trials.ts';
import { counted } from '../model/counted.ts';
import { isoOf } from '../model/day.ts';
import { plantKey } from '../model/plant.ts';
import { element, joined, type Content, type Markup } from '../pictures/markup.ts';
import { FileNames, fileWord } from '../report/file-names.ts';
import { lotBody, nameOf, pageOf, paragraph, plantBody, verdictsOf, type PageOptions } from '../report/html.ts';
import { PAGE_POLICY } from '../report/html-style.ts';
import { printable } from '../report/printable.ts';
import type { LotReport, Report } from '../report/report.ts';
import { legendOf, rowsOf, titleOf, warningsOf } from '../report/words.ts';
import type { Table } from '../tables/table.ts';
import type { PlantTrial } from '../trials/plant-trial.ts';
import { diaryOf, type Entry } from './diary.ts';
import { SEARCH, SEARCH_HASH } from './search.ts';
import { SITE_STYLE } from './style.ts';

export interface Site {
  readonly title: string;
  /** The title of the page of several journals, in the folder above; undefined for a journal alone. */
  readonly above?: string | undefined;
  /** With its plants, of the journal without what is private. */
  readonly report: Report;
  /** The tables that lie in the folder `tables`. */
  readonly tables: readonly Table[];
  readonly entries: readonly Entry[];
  /** The copy of a photo, by where its record stands; undefined where there is none. */
  readonly photoAt: (file: string, line: number) => string | undefined;
}

export interface SitePage {
  readonly name: string;
  readonly content: string;
}

/** Where everything is: names of files beside each other. */
interface Places {
  readonly lots: ReadonlyMap<LotReport, string>;
  readonly plants: ReadonlyMap<PlantTrial, string>;
}

export const INDEX = 'index.html';
const TABLES = 'tables.html';

/** The pages of a site, the first one first. Their names have no folder. */
export function sitePages(site: Site): SitePage[] {
  const places = placesOf(site.report);
  return [
    { name: INDEX, content: indexPage(site, places) },
    ...[...places.plants].map(([plant, name]) => ({ name, content: plantPage(site, plant, places) })),
    ...[...places.lots].map(([lot, name]) => ({ name, content: lotPage(site, lot, places) })),
    { name: TABLES, content: tablesPage(site) },
  ];
}

export function placesOf({ lots, plants }: Report): Places {
  const names = new FileNames();
  const all = plants?.plants ?? [];
  return {
    plants: new Map(all.map(plant => [plant, `${names.of(`plant-${fileWord(plantKey(plant.plant))}`)}.html`])),
    lots: new Map(lots.map(lot => [lot, `${names.of(`lot-${fileWord(lot.lot.id)}`)}.html`])),
  };
}

function indexPage({ title, above, report }: Site, places: Places): string {
  const { plants, lots } = itemsOf(places);
  return searchPage(title, [
    ...(above === undefined ? [] : [way(link(`../${INDEX}`, above))]),
    element('h1', {}, printable(title)),
    paragraph(`${counted(plants.length, 'plant')} and ${counted(lots.length, 'lot')} of seed, as of ${isoOf(report.now.day)}.`),
    ...warningsOf({ ...report, ahead: 0 }).map(paragraph),
  ], [...listOf('Plants', plants), ...listOf('Lots', lots), element('p', {}, link(TABLES, 'Download the tables'))]);
}

/** A page with lists to search. */
export function searchPage(title: string, above: readonly Markup[], lists: readonly Markup[]): string {
  const body = [
    ...above,
    element('p', { class: 'search', hidden: '' },
      element('label', { for: 'search' }, 'Search for a plant, a lot, a treatment or a verdict'),
      element('input', { id: 'search', type: 'search', autocomplete: 'off' }), ' ',
      element('span', { id: 'found', role: 'status' })),
    ...lists,
  ];
  return page(title, body, [], { policy: `${PAGE_POLICY}; script-src '${SEARCH_HASH}'`, script: SEARCH });
}

interface Listed {
  /** By which it is put in order with others. */
  readonly key: string;
  readonly item: Markup;
}

/** The items of its lists. With the folder and the title of a journal among several, as seen from the folder above. */
export function itemsOf({ plants, lots }: Places, from?: { readonly folder: string; readonly title: string }): {
  readonly plants: Listed[];
  readonly lots: Listed[];
} {
  const at = (name: string) => (from ? `${from.folder}/${name}` : name);
  const withTitle = (text: string | undefined) => [from?.title, text].filter(each => each !== undefined).join(': ') || undefined;
  return {
    plants: [...plants].map(([plant, name]) => (
      { key: plantKey(plant.plant), item: item(at(name), plant.plant, withTitle(plantSaid(plant)), '') })),
    lots: [...lots].map(([lot, name]) => (
      { key: lot.lot.id, item: item(at(name), nameOf(lot), withTitle(verdictsOf(lot)), wordsOf(lot)) })),
  };
}

export function listOf(heading: string, items: readonly Listed[]): Markup[] {
  return list(heading, items.map(({ item: own }) => own));
}

export function list(heading: string, items: readonly Markup[]): Markup[] {
  if (items.length === 0) return [];
  return [element('section', { class: 'list' }, element('h2', {}, heading), element('ul', {}, ...items))];
}

/** `words` are found, too. */
function item(file: string, name: string, said: string | undefined, words: string): Markup {
  const behind = said === undefined ? undefined : joined([' ', element('span', {}, printable(said))]);
  return element('li', { 'data-words': printable(words) }, link(file, name), behind);
}

/** Example: '2 lots; GA3 (500 ppm): worth repeating' */
function plantSaid({ lots, agents }: PlantTrial): string {
  return [counted(lots.length, 'lot'), ...agents.map(agent => `${agentText(agent)}: ${agent.across.verdict}`)].join('; ');
}

function wordsOf(lot: LotReport): string {
  return rowsOf(lot).map(({ treatment, batch }) => `${batch.path} ${treatment}`).join(' ');
}

function plantPage(site: Site, plant: PlantTrial, places: Places): string {
  const own = site.report.lots.filter(({ lot }) => plant.lots.includes(lot));
  const body = [
    way(...homeOf(site)),
    element('h1', {}, printable(plant.plant)),
    ...plantBody(plant, 'plant'),
    element('h2', {}, 'Lots'),
    element('ul', {}, ...own.map(lot => (
      element('li', {}, link(places.lots.get(lot)!, nameOf(lot)), said(verdictsOf(lot)))))),
  ];
  return page(`${plant.plant} – ${site.title}`, body, legendOf([site.report]));
}

function lotPage(site: Site, lot: LotReport, places: Places): string {
  const plant = [...places.plants.keys()].find(({ lots }) => lots.includes(lot.lot));
  const { report } = site;
  const body = [
    way(...homeOf(site), plant && link(places.plants.get(plant)!, plant.plant)),
    element('h1', {}, printable(nameOf(lot))),
    ...lotBody(lot, report, 'lot'),
    ...diaryOf(site.entries.filter(({ lot: id }) => id === lot.lot.id), site.photoAt),
  ];
  const policy = `${PAGE_POLICY}; img-src 'self' file:`;
  return page(`${nameOf(lot)} – ${site.title}`, body, legendOf([{ ...report, lots: [lot], plants: undefined }]), { policy });
}

function tablesPage(site: Site): string {
  const { title, tables, report } = site;
  const file = (name: string, end: string, text: string) => joined([' ', link(`tables/${name}.${end}`, text)]);
  const body = [
    way(...homeOf(site)),
    element('h1', {}, 'Tables'),
    paragraph('All that these pages say, for a spreadsheet or another program. An empty cell means unknown.'),
    element('ul', { class: 'files' }, ...tables.map(({ name, says }) => element('li', {},
      element('b', {}, name), ' ', says, element('br'),
      file(name, 'csv', 'CSV'), file(name, 'jsonl', 'JSON Lines'), file(name, 'schema.json', 'schema')))),
    element('p', {}, link('tables/datapackage.json', 'Description of all tables (Frictionless Data)')),
  ];
  return page(`Tables – ${title}`, body, [titleOf({ ...report, name: undefined })]);
}

function homeOf({ title, above }: Site): Markup[] {
  return [...(above === undefined ? [] : [link(`../${INDEX}`, above)]), link(INDEX, title)];
}

function way(...links: readonly Content[]): Markup {
  return element('nav', { class: 'way' }, ...links);
}

export function link(file: string, text: string): Markup {
  return element('a', { href: file.split('/').map(encodeURIComponent).join('/') }, printable(text));
}

function said(text: string | undefined): string | undefined {
  return text === undefined ? undefined : ` ${printable(text)}`;
}

function page(title: string, body: readonly Content[], foot: readonly string[], options: PageOptions = {}): string {
  return pageOf(title, body, foot, { ...options, style: SITE_STYLE });
}
