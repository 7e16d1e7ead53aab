/** What lies where now, as a picture. */
import { placesNow } from '../../calendar/places.ts';
import type { Journal } from '../../journal/journal.ts';
import type { Moment } from '../../journal/moment.ts';
import { gridPicture } from '../../pictures/grid.ts';
import type { Frame, Picture } from '../../pictures/picture.ts';
import { nextDue } from './season.ts';

/** All containers, or the one of a key. */
export function placesPicture(journal: Journal, now: Moment, frame: Frame, key?: string): Picture | undefined {
  const next = nextDue(journal, now);
  const dueNow = (id: string) => {
    const first = next.get(id);
    return first && first.day <= now.day ? first.what : undefined;
  };
  const containers = placesNow(journal, now).filter(container => key === undefined || container.key === key);
  return gridPicture({
    title: 'What lies where',
    containers: containers.map(({ name, places }) => ({
      name,
      slots: places.flatMap(({ slot, stays }) => stays.map(({ id, plant, entry: { line } }) => (
        { slot, line, id, plant: plant ?? journal.solution(id)?.agent?.word ?? id, due: dueNow(id) }))),
    })),
  }, frame);
}
