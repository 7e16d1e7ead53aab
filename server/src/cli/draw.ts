/** `plumule draw`: the picture of a lot, a batch, a plant or a whole journal as an SVG file. */
import { batchPicture, lotPicture } from '../features/drawing/pictures.ts';
import { stocksPicture } from '../features/drawing/bench.ts';
import { placesPicture } from '../features/drawing/places.ts';
import { seasonPicture } from '../features/drawing/season.ts';
import { doseLadderPicture, plantPicture } from '../features/drawing/trials.ts';
import { lotsOfPlant } from '../journal/lots.ts';
import { rootOf } from '../journal/mentions.ts';
import type { Moment } from '../journal/moment.ts';
import type { Frame, Picture } from '../pictures/picture.ts';
import { themes, type ThemeName } from '../pictures/theme.ts';
import { trialOf } from '../trials/lot-trial.ts';
import { plantTrial } from '../trials/plant-trial.ts';
import { exits, type Exit } from './exits.ts';
import { openJournals, type OpenJournal } from './open.ts';
import { complain, complainOf, print } from './output.ts';
import { unknownName } from './unknown.ts';
import { wroteFiles } from './written.ts';

export interface DrawOptions {
  /** The file to write; without it the picture is printed. */
  readonly output?: string;
  readonly theme: ThemeName;
  readonly today?: Moment;
  /** The doses of a lot side by side, in place of its days. */
  readonly doses?: true;
  /** All of a journal, in place of one lot: its open batches, its places, its bottles. */
  readonly season?: true;
  readonly places?: true;
  readonly stocks?: true;
}

const WIDTH = 760;

/** Pictures of a whole journal, and what is said where one has nothing to draw. */
const WHOLE = {
  season: { draw: seasonPicture, nothing: 'no batch is open' },
  places: { draw: placesPicture, nothing: 'no record says where something is' },
  stocks: { draw: stocksPicture, nothing: 'no bottle and no packet has anything left' },
} as const;

/** With the picture of a whole journal the first word is a path like the others. */
export async function draw(id: string | undefined, paths: readonly string[], options: DrawOptions): Promise<Exit> {
  const { output, theme, today, doses } = options;
  const whole = (['season', 'places', 'stocks'] as const).find(each => options[each]);
  if (id === undefined && !whole) {
    complain('say what to draw: a lot, a batch, a plant, --season, --places or --stocks');
    return exits.unread;
  }
  if (output !== undefined && !output.toLowerCase().endsWith('.svg')) {
    complain(`${output}: pictures are SVG files, so choose a name that ends in .svg`);
    return exits.unread;
  }
  const { journals, unread } = await openJournals(whole && id !== undefined ? [id, ...paths] : paths, today);
  complainOf(unread);
  const frame = { theme: themes[theme], width: WIDTH, small: false, id: 'picture' };
  const picture = whole ? drawnWhole(whole, journals, frame) : drawnThing(id!, journals, frame, doses === true);
  if (typeof picture === 'number') return picture;
  const text = `${picture.svg.markup}\n`;
  if (output === undefined) print(text);
  else if (!await wroteFiles([{ path: output, text, kind: 'svg' }], `wrote ${output}`)) return exits.unread;
  return unread.length > 0 ? exits.unread : exits.clean;
}

/** Of the first journal that has something to draw. */
function drawnWhole(what: keyof typeof WHOLE, journals: readonly OpenJournal[], frame: Frame): Picture | Exit {
  const pictures = journals.flatMap(({ journal, now }) => WHOLE[what].draw(journal, now, frame) ?? []);
  if (journals.length > 1) {
    complain('there are several journals; this draws the first with something to draw. Name a folder to draw another');
  }
  if (pictures[0]) return pictures[0];
  complain(`there is nothing to draw: ${WHOLE[what].nothing}`);
  return exits.problems;
}

function drawnThing(id: string, journals: readonly OpenJournal[], frame: Frame, doses: boolean): Picture | Exit {
  const known = journals.find(({ journal }) => journal.lot(rootOf(id))?.batches.has(id));
  if (!known) return drawnPlant(id, journals, frame);
  const picture = pictureOf(id, known, frame, doses);
  if (picture) return picture;
  complain(doses
    ? `${id}: there are no doses to draw, because only two or more of one agent beside untreated seed make a ladder`
    : `${id}: there is nothing to draw yet, because it has no count on a known day`);
  return exits.problems;
}

function pictureOf(id: string, { journal }: OpenJournal, frame: Frame, doses: boolean): Picture | undefined {
  const lot = journal.lot(rootOf(id))!;
  const [ladder] = doses ? trialOf(lot).ladders : [];
  if (doses) return ladder && doseLadderPicture(ladder, lot.id, frame);
  return id === lot.id ? lotPicture(lot, frame) : batchPicture(lot.batches.get(id)!, lot, frame);
}

/** Of the first journal that has lots of the plant. */
function drawnPlant(name: string, journals: readonly OpenJournal[], frame: Frame): Picture | Exit {
  const lots = journals.map(({ journal }) => lotsOfPlant(journal.lots(), name)).find(found => found.length > 0);
  if (!lots) {
    complain(unknownText(name, journals));
    return exits.unread;
  }
  const picture = plantPicture(plantTrial(lots[0]!.plant!, lots), frame);
  if (picture) return picture;
  complain(`${name}: there is nothing to draw yet, because no treatment was compared with untreated seed`);
  return exits.problems;
}

function unknownText(id: string, journals: readonly OpenJournal[]): string {
  const lots = journals.flatMap(({ journal }) => [...journal.lots()]);
  const names = lots.flatMap(({ batches, plant }) => [...batches.keys(), ...plant === undefined ? [] : [plant]]);
  return unknownName('lot, batch or plant', id, names);
}
