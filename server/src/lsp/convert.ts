/** From the editor's terms of features/ to the protocol's. */
import type { Location, Range } from './protocol.ts';
import type { Place } from '../features/place.ts';
import type { Service } from './service.ts';

interface Stretch {
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

export function rangeOf({ line, start, end }: Stretch): Range {
  return { start: { line, character: start }, end: { line, character: end } };
}

export function locationOf(place: Place, service: Service): Location {
  return { uri: service.uriOf(place.file), range: rangeOf(place) };
}
