/** Names of plants that the journal knows: of its lots and its guides. */
import { fits, type Scene } from './scene.ts';
import { quotedPlant, seenTexts } from './seen.ts';
import type { Suggestion } from './suggestion.ts';

export function plants(scene: Scene): Suggestion[] {
  return seenTexts(scene, 'plant').filter(name => fits(scene, name))
    .map(name => ({ kind: 'plant', label: quotedPlant(name) }));
}
