/** What the panel of pictures shows beside a journal, as HTML: a lot, its plant, the season, the places. */
import type { ProblemBook } from '../../checks/problem-book.ts';
import { placesPicture } from '../../features/drawing/places.ts';
import { seasonPicture } from '../../features/drawing/season.ts';
import { plantPicture } from '../../features/drawing/trials.ts';
import { wintersPicture } from '../../features/drawing/winters.ts';
import type { JournalLine } from '../../journal/journal-file.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Lot } from '../../journal/life.ts';
import { lotsOfPlant } from '../../journal/lots.ts';
import type { Moment } from '../../journal/moment.ts';
import { element, joined, type Content } from '../../pictures/markup.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import { pageTheme } from '../../pictures/theme.ts';
import { plantTrial } from '../../trials/plant-trial.ts';
import { figure, nameOf, numbersOf, paragraph, tablesWithin } from '../html.ts';
import { plantPassages, untriedText } from '../plant-passages.ts';
import { printable } from '../printable.ts';
import { reportOnLot } from '../report.ts';
import { plantFacts } from '../words.ts';
import { lotPanel } from './lot.ts';
import { photoRows, type PhotoShown } from './photos.ts';

export type PanelView = 'lot' | 'plant' | 'season' | 'places';

export interface PanelQuestion {
  readonly view: PanelView;
  /** That the cursor is on; undefined where it is on none. */
  readonly lot: Lot | undefined;
  /** Of the panel, in pixels. */
  readonly width: number;
  readonly height: number;
  /** The way to a record, in the words of whoever shows the panel. */
  readonly wayTo: (line: JournalLine) => string;
}

export interface PanelPage {
  readonly title: string;
  readonly html: string;
  /** Those that elements of the page name by their place here, as `data-photo`. */
  readonly photos: readonly PhotoShown[];
}

interface Shown {
  readonly title: string;
  readonly body: readonly Content[];
  readonly photos?: readonly PhotoShown[];
}

const NO_LOT = 'Put the cursor on a line about a lot or a batch.';

/** The book must be up to date. Text of the journal comes out as the characters written. */
export function panelPage(journal: Journal, book: ProblemBook, now: Moment, question: PanelQuestion): PanelPage {
  const { view, width, wayTo } = question;
  const frame: Frame = { theme: pageTheme, width, small: false, bare: true, id: 'panel', wayTo };
  const { title, body, photos = [] } = viewOf();
  return { title, html: joined([element('h1', {}, printable(title)), ...body]).markup, photos };

  function viewOf(): Shown {
    switch (view) {
      case 'lot': return ofLot(journal, book, now, question, frame);
      case 'plant': return ofPlant(journal, now, question, frame);
      case 'season': return { title: 'Season', body: drawn(seasonPicture(journal, now, frame), 'No batch is open.') };
      case 'places': return {
        title: 'Places', body: drawn(placesPicture(journal, now, frame), 'No record says where something is.'),
      };
    }
  }
}

function ofLot(
  journal: Journal, book: ProblemBook, now: Moment, { lot, height, wayTo }: PanelQuestion, frame: Frame,
): Shown {
  if (!lot) return { title: 'Lot', body: [paragraph(NO_LOT)] };
  const report = reportOnLot(lot, journal, book, now);
  const { rows, photos } = photoRows(journal, lot, wayTo);
  return { title: nameOf(report), body: lotPanel(report, now, { frame, height, photos: rows }), photos };
}

/** All lots of the plant that the lot is of. */
function ofPlant(journal: Journal, now: Moment, { lot }: PanelQuestion, frame: Frame): Shown {
  if (lot?.plant === undefined) return { title: 'Plant', body: [paragraph(NO_LOT)] };
  const plant = plantTrial(lot.plant, lotsOfPlant(journal.lots(), lot.plant), now.day);
  const untried = untriedText(plant);
  const passages = plantPassages(plant, false).flatMap(({ heading, columns, items, texts }) => [
    element('h2', {}, printable(heading)),
    ...items.map(({ title, texts: said }) => paragraph(`${title}: ${said.join(' ')}`)),
    ...texts.map(paragraph),
    ...tablesWithin(frame, columns),
  ]);
  const winters = wintersPicture(plant, { ...frame, id: 'winters' });
  return {
    title: lot.plant,
    body: [
      element('p', { class: 'facts' }, printable(plantFacts(plant))),
      ...drawn(plantPicture(plant, frame), 'No treatment of this plant was compared with untreated seed yet.', passages),
      untried === undefined ? undefined : paragraph(untried),
      ...winters ? [
        element('h2', {}, 'Germination, winter by winter'), figure(winters), paragraph(winters.caption), numbersOf(winters.table),
      ] : [],
    ],
  };
}

/** The picture, what is said of it, and its numbers; or why there is none. */
function drawn(picture: Picture | undefined, nothing: string, said: readonly Content[] = []): Content[] {
  return picture ? [figure(picture), ...said, numbersOf(picture.table)] : [paragraph(nothing), ...said];
}
