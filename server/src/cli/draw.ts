/** `plumule draw`: the picture of a lot, a batch or the season as an SVG file. */
import { writeOurs } from '../disk/write.ts';
import { batchPicture, lotPicture } from '../features/drawing/pictures.ts';
import { seasonPicture } from '../features/drawing/season.ts';
import { rootOf } from '../journal/mentions.ts';
import type { Moment } from '../journal/moment.ts';
import type { Frame, Picture } from '../pictures/picture.ts';
import { themes, type ThemeName } from '../pictures/theme.ts';
import { nearest } from '../syntax/nearest.ts';
import { exits, type Exit } from './exits.ts';
import { unreadOf } from './names.ts';
import { openJournals, type OpenJournal } from './open.ts';
import { complain, complainOf, print } from './output.ts';

export interface DrawOptions {
  /** The file to write; without it the picture is printed. */
  readonly output?: string;
  readonly theme: ThemeName;
  readonly today?: Moment;
  /** All open batches, in place of one lot. */
  readonly season?: true;
}

const WIDTH = 760;

/** With `season` the first word is a path like the others. */
export async function draw(id: string | undefined, paths: readonly string[], options: DrawOptions): Promise<Exit> {
  const { output, theme, today, season } = options;
  if (id === undefined && !season) {
    complain('say what to draw: a lot, a batch, or --season');
    return exits.unread;
  }
  if (output !== undefined && !output.toLowerCase().endsWith('.svg')) {
    complain(`${output}: pictures are SVG files, so choose a name that ends in .svg`);
    return exits.unread;
  }
  const { journals, unread } = await openJournals(season && id !== undefined ? [id, ...paths] : paths, today);
  complainOf(unread);
  const frame = { theme: themes[theme], width: WIDTH, small: false, id: 'picture' };
  const picture = season ? drawnSeason(journals, frame) : drawnThing(id!, journals, frame);
  if (typeof picture === 'number') return picture;
  if (!(await wrote(`${picture.svg.markup}\n`, output))) return exits.unread;
  return unread.length > 0 ? exits.unread : exits.clean;
}

/** False where the file could not be written; the reason has been said. */
async function wrote(text: string, output: string | undefined): Promise<boolean> {
  if (output === undefined) {
    print(text);
    return true;
  }
  try {
    await writeOurs(output, text, 'svg');
  } catch (error) {
    const { path, message } = unreadOf(error);
    complain(`${path}: ${message}`);
    return false;
  }
  complain(`wrote ${output}`);
  return true;
}

/** Of the first journal that has an open batch. */
function drawnSeason(journals: readonly OpenJournal[], frame: Frame): Picture | Exit {
  const pictures = journals.flatMap(({ journal, now }) => seasonPicture(journal, now, frame) ?? []);
  if (journals.length > 1) complain('there are several journals; this draws the first with an open batch. Name a folder to draw another');
  if (pictures[0]) return pictures[0];
  complain('there is nothing to draw: no batch is open');
  return exits.problems;
}

function drawnThing(id: string, journals: readonly OpenJournal[], frame: Frame): Picture | Exit {
  const known = journals.find(({ journal }) => journal.lot(rootOf(id))?.batches.has(id));
  if (!known) {
    complain(unknownText(id, journals));
    return exits.unread;
  }
  const picture = pictureOf(id, known, frame);
  if (picture) return picture;
  complain(`${id}: there is nothing to draw yet, because it has no count on a known day`);
  return exits.problems;
}

function pictureOf(id: string, { journal }: OpenJournal, frame: Frame): Picture | undefined {
  const lot = journal.lot(rootOf(id))!;
  return id === lot.id ? lotPicture(lot, frame) : batchPicture(lot.batches.get(id)!, lot, frame);
}

function unknownText(id: string, journals: readonly OpenJournal[]): string {
  const near = nearest(
    id,
    journals.flatMap(({ journal }) => [...journal.lots()].flatMap(({ batches }) => [...batches.keys()])),
  );
  return `there is no lot or batch “${id}”${near === undefined ? '' : `; did you mean “${near}”?`}`;
}
