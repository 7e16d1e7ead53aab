import { placeKey } from '../calendar/place-text.ts';
import { roomOf } from '../trials/surroundings.ts';

/**
 * Names that tell places apart and say nothing of them. Two places in one room stay in one room, so that a comparison
 * is as fair or unfair as it was.
 */
export class PlaceNames {
  readonly #rooms = new Map<string, string>();
  readonly #boxes = new Map<string, number>();

  /** Example: of 'heated mat tray 4' it is 'room a box 1', of 'tray 4' 'box 2' */
  of(place: string): string {
    const room = roomOf(place);
    const box = `box ${numbered(this.#boxes, placeKey(place))}`;
    if (room === undefined) return box;
    const known = this.#rooms.get(room) ?? letters(this.#rooms.size);
    this.#rooms.set(room, known);
    return `room ${known} ${box}`;
  }
}

function numbered(all: Map<string, number>, key: string): number {
  const known = all.get(key) ?? all.size + 1;
  all.set(key, known);
  return known;
}

/** a to z, then ba, bb and so on: a number would say nothing of a room. */
function letters(n: number): string {
  const rest = Math.floor(n / 26);
  return (rest > 0 ? letters(rest) : '') + String.fromCharCode(97 + (n % 26));
}
