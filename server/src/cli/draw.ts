/** `plumule draw`: the picture of a lot or a batch as an SVG file. */
import { writeOurs } from '../disk/write.ts';
import { batchPicture, lotPicture } from '../features/drawing/pictures.ts';
import { rootOf } from '../journal/mentions.ts';
import type { Moment } from '../journal/moment.ts';
import type { Frame, Picture } from '../pictures/picture.ts';
import { themes, type ThemeName } from '../pictures/theme.ts';
import { nearest } from '../syntax/nearest.ts';
import { exits, type Exit } from './exits.ts';
import { unreadOf } from './names.ts';
import { openJournals, type OpenJournal } from './open.ts';
import { complain, complainOf, print } from './output.ts';

export const themeNames = Object.keys(themes) as ThemeName[];

export interface DrawOptions {
  /** The file to write; without it the picture is printed. */
  readonly output?: string;
  readonly theme: ThemeName;
  readonly today?: Moment;
}

const WIDTH = 760;

export async function draw(
  id: string,
  paths: readonly string[],
  { output, theme, today }: DrawOptions,
): Promise<Exit> {
  if (output !== undefined && !output.toLowerCase().endsWith('.svg')) {
    complain(`${output}: pictures are written as SVG; give a name that ends in .svg`);
    return exits.unread;
  }
  const { journals, unread } = await openJournals(paths, today);
  complainOf(unread);
  const known = journals.find(({ journal }) => journal.lot(rootOf(id))?.batches.has(id));
  if (!known) {
    complain(unknownText(id, journals));
    return exits.unread;
  }
  const picture = pictureOf(id, known, { theme: themes[theme], width: WIDTH, small: false, id: 'picture' });
  if (!picture) {
    complain(`${id}: there is nothing to draw yet, because no count of it has a day`);
    return exits.problems;
  }
  const text = `${picture.svg.markup}\n`;
  if (output === undefined) print(text);
  else {
    try {
      await writeOurs(output, text, 'svg');
    } catch (error) {
      const { path, message } = unreadOf(error);
      complain(`${path}: ${message}`);
      return exits.unread;
    }
    complain(`wrote ${output}`);
  }
  return unread.length > 0 ? exits.unread : exits.clean;
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
  return `no lot or batch “${id}” is here${near === undefined ? '' : `; did you mean “${near}”?`}`;
}
