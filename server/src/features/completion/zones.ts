/** Time zones by their names in the IANA list, as far as the engine knows them. */
import { fits, type Scene } from './scene.ts';
import type { Suggestion } from './suggestion.ts';

/** For engines that cannot list them. */
const few = ['Europe/Vienna', 'Europe/Berlin', 'Europe/London', 'America/New_York', 'America/Los_Angeles', 'Asia/Tokyo', 'Australia/Sydney'];

export function zones(scene: Scene): Suggestion[] {
  return zoneNames().filter(name => fits(scene, name.replaceAll('_', ' ')) || fits(scene, name))
    .map(label => ({ kind: 'zone', label }));
}

/** The engine's own list; a few where it has none. */
export function zoneNames(intl: { readonly supportedValuesOf?: (key: 'timeZone') => string[] } = Intl): readonly string[] {
  return intl.supportedValuesOf?.('timeZone') ?? few;
}
