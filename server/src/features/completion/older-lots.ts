/** The lots that a new one may take the place of: those of its plant first. */
import { plantKey } from '../../model/plant.ts';
import { EVER, inOrderOf } from '../gathered.ts';
import { fits, plantIn, type Scene } from './scene.ts';
import { MOST, type Suggestion } from './suggestion.ts';

const lots = inOrderOf((id, journal) => {
  const lot = journal.lot(id);
  return lot ? [{ sort: id, plant: lot.plant, key: plantKey(lot.plant ?? '') }] : [];
});

/** All but the one that is being written; where the plant is not known yet, all are alike. */
export function olderLots(scene: Scene): Suggestion[] {
  const all = lots(scene.journal, EVER).filter(({ sort, plant }) => sort !== own(scene) && fits(scene, `${sort} ${plant ?? ''}`));
  const key = plantKey(plantIn(scene) ?? '');
  const [same, others] = [all.filter(lot => lot.key === key), all.filter(lot => lot.key !== key)];
  return [...same, ...others].slice(0, MOST).map(({ sort: label, plant }): Suggestion => ({
    kind: 'lot', label, find: [label, plant].filter(text => text !== undefined).join(' '), ...(plant !== undefined && { detail: plant }),
  }));
}

/** Those of the plant that the line names. */
export function olderOfPlant(scene: Scene): string[] {
  const key = plantKey(plantIn(scene) ?? '');
  return lots(scene.journal, EVER).filter(lot => lot.sort !== own(scene) && lot.key === key).map(({ sort }) => sort);
}

function own({ entry }: Scene): string | undefined {
  return entry?.record.subject?.text;
}
