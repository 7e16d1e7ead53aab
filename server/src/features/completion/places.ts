/** Places to choose from: the next free slot of what has slots, then what is in use, the most used first. */
import { placeKey, slotOf } from '../../calendar/place-text.ts';
import { factOf } from '../../model/record.ts';
import { best } from './best.ts';
import { placesInUse, type InUse } from './places-in-use.ts';
import type { Scene } from './scene.ts';
import { MOST, type Suggestion } from './suggestion.ts';

/** What lies in a place is told by these names, then by a number. */
const NAMES = 3;

export function places(scene: Scene): Suggestion[] {
  const { places: used, slots } = placesInUse(scene.journal, scene.now.day);
  const own = ownPlace(scene, used);
  const others = [...used.values()].filter(each => each !== own);
  const byUse = (a: InUse, b: InUse) => b.ids.size - a.ids.size || (a.sort < b.sort ? -1 : 1);
  return [
    ...freeSlots(slots, own).map((place): Suggestion => ({ kind: 'place', label: place, detail: 'the next free slot' })),
    ...best(others, MOST, byUse).map(({ ids }): Suggestion =>
      ({ kind: 'place', label: spelling(ids), detail: lying([...ids.keys()]) })),
  ];
}

/** What only this line itself says is no help in writing it. */
function ownPlace({ entry }: Scene, used: ReadonlyMap<string, InUse>): InUse | undefined {
  const text = entry && factOf(entry.record, 'at')?.value.text;
  const own = text === undefined ? undefined : used.get(placeKey(text));
  return own?.ids.size === 1 ? own : undefined;
}

/** Of those that mean the same place; two hands may write it in two ways. */
function spelling(ids: ReadonlyMap<string, string>): string {
  return [...ids.values()].reduce((first, each) => (each < first ? each : first));
}

/** Example: lying(['D-4', 'A-1', 'C-3', 'B-2']) is 'A-1, B-2 and 2 more' */
function lying(ids: readonly string[]): string {
  const names = best(ids, ids.length > NAMES ? NAMES - 1 : NAMES, (a, b) => (a < b ? -1 : 1));
  return names.length === ids.length ? names.join(', ') : `${names.join(', ')} and ${ids.length - names.length} more`;
}

/** Of each container whose slots are numbered, the fullest first. */
function freeSlots(slots: ReadonlyMap<string, ReadonlyMap<number, InUse>>, own: InUse | undefined): string[] {
  const found = Array.from(slots, ([key, taken]) => {
    const isTaken = (number: number) => taken.has(number) && taken.get(number) !== own;
    let free = 1;
    while (isTaken(free)) free++;
    const size = [...taken.values()].filter(each => each !== own).length;
    return { key, size, place: `${containerOf(taken)} slot ${free}`.trim() };
  });
  return found.filter(({ size }) => size > 0).sort((a, b) => b.size - a.size || (a.key < b.key ? -1 : 1))
    .map(({ place }) => place);
}

/** As it is written for the first of its slots. */
function containerOf(taken: ReadonlyMap<number, InUse>): string {
  const first = taken.get([...taken.keys()].reduce((least, each) => Math.min(least, each)))!;
  return slotOf(spelling(first.ids))?.container ?? '';
}
