/** The keywords, each with what it is for, and with the rest of a record to fill in. */
import { printMoment, printTime } from '../../journal/moment.ts';
import { isoOf, LAST_DAY } from '../../model/day.ts';
import { keywords, type FactUse, type Keyword } from '../../model/keywords.ts';
import { dayOfScene, fits, type Scene } from './scene.ts';
import { quotedPlant, seenTexts } from './seen.ts';
import { isTimed } from './moments.ts';
import type { SpotOf } from './spot.ts';
import { openBatches, type BatchNow } from './batches.ts';
import { likeliest } from './subjects.ts';
import { stocks } from './substances.ts';
import type { Suggestion } from './suggestion.ts';
import { factTemplate } from './fact-template.ts';
import { freeId } from './free-id.ts';
import { choice, plainText, type Template } from './template.ts';

/** Batches to choose from in a new record, among those written about last; the id of any other can be typed. */
const CHOICES = 10;
const LAST = 200;

/** What a record says beside what it must, as a grower writes it. */
const usual: Partial<Record<Keyword, readonly string[]>> = {
  lot: ['60 seeds'], soak: ['24 h'], limit: ['1000 ppm'], guide: ['GA3 500 ppm'],
};

/** Where something stands behind the keyword already, the keyword alone. */
export function starts({ alone }: SpotOf<'start'>, scene: Scene): Suggestion[] {
  const all = Object.keys(keywords) as Keyword[];
  const begun = all.filter(keyword => keyword.startsWith(scene.typed.toLowerCase()));
  // Whoever writes `cold` is led to `chill`.
  const isWord = begun.length === 0 && scene.typed.length > 2;
  const meant = isWord ? all.filter(keyword => fits(scene, keywords[keyword].says)) : [];
  const recent = openBatches(scene.journal, scene.now.day).slice(0, LAST);
  return [...begun, ...meant].map((keyword): Suggestion => {
    const { says, example } = keywords[keyword];
    const suggestion = {
      kind: 'keyword', label: keyword, detail: says, more: `For example: ${example}`,
      ...(meant.length > 0 && { find: `${keyword} ${says}` }),
    } as const;
    if (!alone) return suggestion;
    const write = record(keyword, scene, recent);
    return { ...suggestion, write, plain: keyword === 'day' ? plainText(write) : `${keyword} ` };
  });
}

/** A whole record; valid as it stands, but for what only the grower can have counted. */
function record(keyword: Keyword, scene: Scene, recent: readonly BatchNow[]): Template {
  const { facts } = keywords[keyword];
  const needed = facts.filter(({ required }: FactUse) => required).map(({ shape }) => shape);
  const date = dateOf(keyword, scene);
  return [
    `${keyword} `, ...subjectOf(keyword, scene, recent), ...(date === undefined ? [] : [' ', { blank: date }]),
    ...[...needed, ...(usual[keyword] ?? [])].flatMap((shape): Template =>
      (isCounted(keyword) ? [', ', { blank: '' }] : [', ', ...factTemplate(shape)])),
  ];
}

/** What was seen has no usual number: one that stands there would be taken for seen. */
function isCounted(keyword: Keyword): boolean {
  return keyword === 'count' || keyword === 'cut';
}

/** A date where the record needs one; with the time where that counts. */
function dateOf(keyword: Keyword, { now, above }: Scene): string | undefined {
  const { dated } = keywords[keyword];
  if (dated === 'own') return isoOf(Math.min(now.day + 7, LAST_DAY));
  if (dated !== 'yes') return undefined;
  const takesTime = isTimed(keyword) && now.minutes !== undefined;
  if (above !== undefined) return takesTime && above === now.day ? printTime(now.minutes) : undefined;
  return takesTime ? printMoment(now) : isoOf(now.day);
}

function subjectOf(keyword: Keyword, scene: Scene, recent: readonly BatchNow[]): Template {
  const { journal, now } = scene;
  switch (keywords[keyword].subject) {
    case 'date': return [isoOf(now.day)];
    case 'batch': case 'any': {
      const likely = likeliest(keyword, recent, dayOfScene(scene), CHOICES);
      return [choice(likely.map(({ batch }) => batch.path), 'ID')];
    }
    case 'new lot': return [{ blank: freeId(journal, `LOT-${isoOf(now.day).slice(2, 4)}`) }, ' ', { blank: 'name of the plant' }];
    case 'new stock': return [{ blank: freeId(journal, 'G') }];
    case 'new packet': return [{ blank: freeId(journal, 'P') }];
    case 'stock': return [choice(stocks(scene, keyword).slice(0, CHOICES).map(({ label }) => label), 'P1')];
    case 'new regime': return [{ blank: freeId(journal, 'regime') }];
    case 'new agent': return [{ blank: 'word' }];
    case 'plant': return [choice(seenTexts(scene, 'plant').slice(0, CHOICES).map(quotedPlant), 'plant or genus')];
    case 'limited': return [{ blank: 'GA3' }];
    case 'zone': return [{ blank: journal.zone ?? 'Europe/Vienna' }];
  }
}
