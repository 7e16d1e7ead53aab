import { expect, test } from 'vitest';
import { speciesIn } from '../../server/src/model/plant.ts';

test.each([
  ['Primula vulgaris', 'Primula vulgaris'],
  ['Primula  vulgaris subsp. sibthorpii', 'Primula vulgaris'],
  ["Primula vulgaris 'Alba'", 'Primula vulgaris'],
  ['Arctostaphylos uva-ursi', 'Arctostaphylos uva-ursi'],
  ['Primula', 'Primula'],
  ["Primula 'Alba'", "Primula 'Alba'"],
  ['Primula × kewensis', 'Primula × kewensis'],
  ['Primula x kewensis', 'Primula x kewensis'],
  ['Primula sp. Sichuan', 'Primula sp. Sichuan'],
])('the species of %s is %s', (name, species) => {
  expect(speciesIn(name)).toBe(species);
});
