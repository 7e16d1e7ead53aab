/** The report as one page that stands alone: pictures, tables and verdicts, to read, to keep and to print. */
import { lotPicture } from '../features/drawing/pictures.ts';
import { doseLadderPicture, plantPicture } from '../features/drawing/trials.ts';
import { wintersPicture } from '../features/drawing/winters.ts';
import { element, joined, type Content, type Markup } from '../pictures/markup.ts';
import type { DataTable, Frame, Picture } from '../pictures/picture.ts';
import { pageTheme } from '../pictures/theme.ts';
import type { PlantTrial } from '../trials/plant-trial.ts';
import { columnsOf, type Column } from './columns.ts';
import { documentOf } from './document.ts';
import { pageStyle } from './html-style.ts';
import { trialPassages, type Passage } from './passages.ts';
import { plantPassages, untriedText } from './plant-passages.ts';
import { printable } from './printable.ts';
import type { LotReport, Report } from './report.ts';
import { foldColumns } from './table.ts';
import { legendOf, notesOf, plantFacts, rowsOf, seedFacts, titleOf, warningsOf } from './words.ts';

/** Pixels; a narrower window makes the picture smaller. */
const WIDTH = 720;

/** Characters of a table. */
const PAGE = 110;

/** Pixels: a character in a table. */
const CHARACTER = 8;

/** No script, nothing loaded from anywhere, text of the journal as the characters written. */
export function reportPage(reports: readonly Report[]): string {
  const title = reports.map(titleOf).join('; ') || 'Report';
  const legend = legendOf(reports);
  const body = reports.flatMap((report, i) => reportBody(report, i));
  return pageOf(title, body, legend);
}

export interface PageOptions {
  /** What the page may load and run; without it nothing. */
  readonly policy?: string;
  /** More rules of CSS. */
  readonly style?: string;
  /** Run at the end, where the policy allows it. Text of ours alone. */
  readonly script?: string;
}

/** A page around what is said, with what explains it at its foot. */
export function pageOf(
  title: string, body: readonly Content[], foot: readonly string[], { policy, style, script }: PageOptions = {},
): string {
  return documentOf({
    title, policy, style: `${pageStyle()}${style ?? ''}`,
    body: [
      element('main', {}, ...body, foot.length > 0 ? element('footer', {}, ...foot.map(paragraph)) : undefined),
      script === undefined ? undefined : { markup: `<script>${script}</script>` },
    ],
  });
}

function reportBody(report: Report, number: number): Content[] {
  const sections = report.plants
    ? report.plants.plants.map((plant, i) => ({
        id: `plant-${number}-${i}`,
        name: plant.plant,
        said: undefined,
        body: plantBody(plant, `plant-${number}-${i}`),
      }))
    : report.lots.map((lot, i) => ({
        id: `lot-${number}-${i}`,
        name: nameOf(lot),
        said: verdictsOf(lot),
        body: lotBody(lot, report, `lot-${number}-${i}`),
      }));
  const entries = sections.map(({ id, name, said }) =>
    element(
      'li',
      {},
      element('a', { href: `#${id}` }, printable(name)),
      said === undefined ? undefined : ` ${printable(said)}`,
    ),
  );
  return [
    element('h1', {}, printable(titleOf(report))),
    ...warningsOf(report).map(paragraph),
    entries.length > 1 ? element('nav', { 'aria-label': 'Contents' }, element('ul', {}, ...entries)) : undefined,
    ...sections.map(({ id, name, body }) => element('section', { id }, element('h2', {}, printable(name)), ...body)),
  ];
}

export function nameOf({ lot: { id, plant } }: LotReport): string {
  return plant === undefined ? id : `${id} ${plant}`;
}

/** Example: 'worth repeating, cannot tell' */
export function verdictsOf({ trial: { contests } }: LotReport): string | undefined {
  const verdicts = [...new Set(contests.map(({ verdict }) => verdict.verdict))];
  return verdicts.length === 0 ? undefined : `(${verdicts.join(', ')})`;
}

/** The ladders of a lot, each as a picture. */
export function ladderFigures({ lot, trial: { ladders } }: LotReport, frame: Frame): Content[] {
  return ladders.flatMap((ladder, i) => {
    const picture = doseLadderPicture(ladder, lot.id, { ...frame, id: `${frame.id}-${i}` });
    return picture ? [figure(picture), numbersOf(picture.table)] : [];
  });
}

function frameOf(id: string): Frame {
  return { theme: pageTheme, width: WIDTH, small: false, id };
}

/** What is said of a lot; `id` tells its picture from those of others on the page. */
export function lotBody(lot: LotReport, { now }: Pick<Report, 'now'>, id: string): Content[] {
  const facts = seedFacts(lot);
  const picture = lotPicture(lot.trial, frameOf(`drawn-${id}`));
  const [verdicts, ...others] = passagesOf(lot);
  return [
    facts.length > 0 ? paragraph(facts.join(', ')) : undefined,
    picture && figure(picture),
    ...(verdicts ? passageBody(verdicts) : []),
    ...columnTables(columnsOf(rowsOf(lot), now)),
    notesList(notesOf(lot)),
    ...others.flatMap(passage => (passage ? passageBody(passage) : [])),
    picture && numbersOf(picture.table),
    ...ladderFigures(lot, frameOf(`doses-${id}`)),
  ];
}

/** Undefined where there are none. */
export function notesList(notes: readonly string[]): Markup | undefined {
  return notes.length > 0 ? element('ul', {}, ...notes.map(note => element('li', {}, printable(note)))) : undefined;
}

/** What was judged first, where something was. */
function passagesOf({ trial }: LotReport): (Passage | undefined)[] {
  const passages = trialPassages(trial, false);
  return trial.contests.length > 0 ? passages : [undefined, ...passages];
}

export function plantBody(plant: PlantTrial, id: string): Content[] {
  const untried = untriedText(plant);
  const picture = plantPicture(plant, frameOf(`drawn-${id}`));
  const winters = wintersPicture(plant, frameOf(`winters-${id}`));
  return [
    paragraph(plantFacts(plant)),
    picture && figure(picture),
    ...plantPassages(plant, false).flatMap(passageBody),
    untried === undefined ? undefined : paragraph(untried),
    ...winters ? [figure(winters), numbersOf(winters.table)] : [],
  ];
}

/** Its caption is drawn, too; a reader of the page hears it with the description. */
export function figure({ svg }: Picture): Markup {
  return element('figure', {}, svg);
}

export function passageBody(passage: Passage): Content[] {
  return [element('h3', {}, printable(passage.heading)), ...passageContent(passage)];
}

/** A passage below its heading. */
export function passageContent({ columns, items, texts }: Passage): Content[] {
  return [
    ...columnTables(columns),
    items.length > 0
      ? element(
          'ul',
          {},
          ...items.map(({ title, texts: said }) =>
            element(
              'li',
              {},
              element('b', {}, printable(title)),
              ...said.map(text => joined([element('br'), printable(text)])),
            ),
          ),
        )
      : undefined,
    ...texts.map(paragraph),
  ];
}

/** A wide table goes on in a further one below it, as a page to print has no room beside it. */
function columnTables(columns: readonly Column[]): Markup[] {
  return foldColumns(columns, PAGE).map(columnTable);
}

/** The same as wide as a frame. */
export function tablesWithin({ width }: Frame, columns: readonly Column[]): Markup[] {
  return foldColumns(columns, width / CHARACTER).map(columnTable);
}

export function columnTable(columns: readonly Column[]): Markup {
  const rows = (columns[0]?.cells ?? []).map((_, row) => columns.map(({ cells }) => cells[row] ?? ''));
  return table({ head: columns.map(({ head }) => head), rows }, columns.map(({ kind }) => kind));
}

export function numbersOf(numbers: DataTable): Markup {
  return element('details', {}, element('summary', {}, 'The numbers of the picture'), table(numbers));
}

function table({ head, rows }: DataTable, kinds: readonly Column['kind'][] = []): Markup {
  const kindOf = (i: number) => (kinds[i] === 'number' ? 'number' : undefined);
  return element(
    'div',
    { class: 'table' },
    element(
      'table',
      {},
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          ...head.map((cell, i) => element('th', { scope: 'col', class: kindOf(i) }, printable(cell))),
        ),
      ),
      element(
        'tbody',
        {},
        ...rows.map(row =>
          element(
            'tr',
            {},
            ...row.map((cell, i) =>
              i === 0
                ? element('th', { scope: 'row' }, printable(cell))
                : element('td', { class: kindOf(i) }, printable(cell)),
            ),
          ),
        ),
      ),
    ),
  );
}

export function paragraph(text: string): Markup {
  return element('p', {}, printable(text));
}
