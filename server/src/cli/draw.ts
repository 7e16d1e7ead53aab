/** `plumule draw`: the picture of a lot, a batch, a plant or a whole journal as an SVG or a PNG file. */
import { batchPicture, lotPicture } from '../features/drawing/pictures.ts';
import { stocksPicture } from '../features/drawing/bench.ts';
import { placesPicture } from '../features/drawing/places.ts';
import { seasonPicture } from '../features/drawing/season.ts';
import { doseLadderPicture, plantPicture } from '../features/drawing/trials.ts';
import { wintersPicture } from '../features/drawing/winters.ts';
import { lotsOfPlant } from '../journal/lots.ts';
import { rootOf } from '../journal/mentions.ts';
import type { Moment } from '../journal/moment.ts';
import type { Frame, Picture } from '../pictures/picture.ts';
import { themes, type ThemeName } from '../pictures/theme.ts';
import { listed } from '../syntax/nearest.ts';
import { trialOf, type LotTrial } from '../trials/lot-trial.ts';
import { plantTrial } from '../trials/plant-trial.ts';
import { exits, type Exit } from './exits.ts';
import { openJournals, type OpenJournal } from './open.ts';
import { complain, complainOf, print } from './output.ts';
import { findResvg, NO_FONT, NO_RESVG, pngOf } from './png.ts';
import { unknownName } from './unknown.ts';
import { wroteFiles } from './written.ts';

export interface DrawOptions {
  /** The file to write; without it the picture is printed. */
  readonly output?: string;
  readonly theme: ThemeName;
  readonly today?: Moment;
  /** The doses of a lot side by side, in place of its days. */
  readonly doses?: true;
  /** What germinated of a plant over the days, winter beside winter, in place of the differences. */
  readonly winters?: true;
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
  const { output, theme, today } = options;
  const whole = (['season', 'places', 'stocks'] as const).find(each => options[each]);
  if (id === undefined && !whole) {
    complain('say what to draw: a lot, a batch, a plant, --season, --places or --stocks');
    return exits.unread;
  }
  if (output !== undefined && !/\.(?:svg|png)$/iu.test(output)) {
    complain(`${output}: pictures are SVG or PNG files, so choose a name that ends in .svg or .png`);
    return exits.unread;
  }
  const { journals, unread } = await openJournals(whole && id !== undefined ? [id, ...paths] : paths, today);
  complainOf(unread);
  const frame = { theme: themes[theme], width: WIDTH, small: false, id: 'picture' };
  const picture = whole ? drawnWhole(whole, journals, frame) : drawnThing(id!, journals, frame, options);
  if (typeof picture === 'number') return picture;
  if (output === undefined) print(textOf(picture));
  else if (!await wrote(output, picture)) return exits.unread;
  return unread.length > 0 ? exits.unread : exits.clean;
}

function textOf({ svg }: Picture): string {
  return `${svg.markup}\n`;
}

/** As PNG where the file is called so; false where it could not be written: the reason has been said. */
async function wrote(output: string, picture: Picture): Promise<boolean> {
  const said = `wrote ${output}`;
  if (!/\.png$/iu.test(output)) return wroteFiles([{ path: output, content: textOf(picture), kind: 'svg' }], said);
  const resvg = await findResvg();
  const content = resvg && pngOf(picture, resvg);
  if (content) return wroteFiles([{ path: output, content, kind: 'png' }], said);
  complain(`${output}: ${resvg ? NO_FONT : NO_RESVG}`);
  return false;
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

type What = Pick<DrawOptions, 'doses' | 'winters'>;

/** With `winters` a lot or a batch stands for its plant. */
function drawnThing(id: string, journals: readonly OpenJournal[], frame: Frame, what: What): Picture | Exit {
  const known = journals.find(({ journal }) => journal.lot(rootOf(id))?.batches.has(id));
  if (!known) return drawnPlant(id, journals, frame, what);
  const lot = known.journal.lot(rootOf(id))!;
  const trial = trialOf(lot, known.now.day);
  if (what.winters && lot.plant !== undefined) return drawnPlant(lot.plant, [known], frame, what);
  const picture = what.winters ? undefined : pictureOf(id, trial, frame, what);
  if (picture) return picture;
  complain(what.winters ? `${id}: there are no winters to draw, because the lot has no plant` : what.doses
    ? `${id}: there are no doses to draw, because only two or more of one agent beside untreated seed make a ladder`
    : `${id}: there is nothing to draw yet, because ${whyNot(id, trial)}`);
  return exits.problems;
}

/** Of a lot the reason of the first batch that has one. */
function whyNot(id: string, { lot, leftOut }: LotTrial): string {
  const found = leftOut.find(({ batch }) => id === lot.id || batch.path === id);
  if (!found) return 'it has no count on a known day';
  return found.batch.path === id ? found.why.undefined : `${found.why.undefined} (${found.batch.path})`;
}

function pictureOf(id: string, trial: LotTrial, frame: Frame, { doses }: What): Picture | undefined {
  const { lot, ladders: [ladder] } = trial;
  if (doses) return ladder && doseLadderPicture(ladder, lot.id, frame);
  return id === lot.id ? lotPicture(trial, frame) : batchPicture(lot.batches.get(id)!, trial, frame);
}

/** Of the first journal that has lots of the plant. */
function drawnPlant(
  name: string, journals: readonly OpenJournal[], frame: Frame, { winters, doses }: What,
): Picture | Exit {
  const found = journals.map(({ journal, now }) => ({ lots: lotsOfPlant(journal.lots(), name), today: now.day }))
    .find(({ lots }) => lots.length > 0);
  if (!found) {
    complain(unknownText(name, journals));
    return exits.unread;
  }
  const { lots, today } = found;
  if (doses) {
    const ids = lots.filter(lot => trialOf(lot, today).ladders.length > 0).map(({ id }) => id);
    const advice = ids.length > 0 ? `name ${listed(ids, 'or')}` : 'no lot of it has a ladder of doses';
    complain(`${name} is a plant, and --doses draws one lot: ${advice}`);
    return exits.unread;
  }
  const trial = plantTrial(lots[0]!.plant!, lots, today);
  const picture = winters ? wintersPicture(trial, frame) : plantPicture(trial, frame);
  if (picture) return picture;
  complain(winters
    ? `${name}: there is nothing to draw yet, because no lot of it has a count on a known day`
    : `${name}: there is nothing to draw yet, because no treatment was compared with untreated seed`);
  return exits.problems;
}

function unknownText(id: string, journals: readonly OpenJournal[]): string {
  const lots = journals.flatMap(({ journal }) => [...journal.lots()]);
  const names = lots.flatMap(({ batches, plant }) => [...batches.keys(), ...plant === undefined ? [] : [plant]]);
  return unknownName('lot, batch or plant', id, names);
}
