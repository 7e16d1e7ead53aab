/**
 * Short cautions for work at the bench. They repeat common practice, replace no label and no safety data
 * sheet, and say so first.
 */

export type CautionId =
  | 'label-first'
  | 'powder'
  | 'alcohol'
  | 'bleach'
  | 'peroxide'
  | 'acid'
  | 'alkali'
  | 'oxidiser'
  | 'poison'
  | 'keep-away'
  | 'treated-seed';

export interface Caution {
  readonly id: CautionId;
  readonly text: string;
}

/** In the order in which they are read. */
const texts: Readonly<Record<CautionId, string>> = {
  'label-first': 'The product’s label, its safety data sheet, local rules and licensed practice come first.',
  powder: 'Powder: keep it out of eyes and lungs. Wear gloves and glasses, and keep out of draughts.',
  alcohol: 'Alcohol burns: keep flames and sparks away, and air the room.',
  bleach: 'Never mix bleach with acid, alcohol, peroxide or ammonia: it gives off poisonous gas. Wear gloves and glasses.',
  peroxide: 'Peroxide bleaches and burns skin and eyes; never mix it with bleach, acid or alcohol.',
  acid: 'Acid burns: wear gloves and glasses; pour acid into water, never water into acid; keep it away from bleach.',
  alkali: 'Lye burns skin and eyes: wear gloves and glasses; a few drops of a dilute solution are enough.',
  oxidiser: 'Nitrate feeds fire: keep it away from alcohol and anything else that burns.',
  poison: 'Poisonous, and suspected of harm after repeated contact: wear gloves, and read the safety data sheet.',
  'keep-away': 'Label it and lock it away from children, animals, food and drink.',
  'treated-seed': 'Treated seed is neither food nor feed.',
};

const order = Object.keys(texts) as CautionId[];

/** What is being done at the bench. */
export type BenchWork = 'powder' | 'dilution' | 'soak' | 'unmeasured' | 'apply' | 'acid-scarification';

const byWork: Readonly<Record<BenchWork, readonly CautionId[]>> = {
  powder: ['label-first', 'powder', 'keep-away'],
  dilution: ['label-first', 'keep-away'],
  soak: ['label-first', 'treated-seed', 'keep-away'],
  unmeasured: ['label-first', 'powder', 'treated-seed', 'keep-away'],
  apply: ['label-first', 'keep-away'],
  'acid-scarification': ['label-first', 'acid', 'treated-seed', 'keep-away'],
};

/**
 * What an agent adds to the cautions; one dissolved in alcohol or lye is so only when it is made up from
 * powder.
 */
export interface Hazard {
  readonly cautions: readonly CautionId[];
  readonly dissolvesIn: 'water' | 'alcohol' | 'lye';
}

/** The cautions for pieces of work with these agents, each once; none for water alone. */
export function cautionsFor(work: BenchWork | readonly BenchWork[], hazards: readonly Hazard[]): Caution[] {
  const works = [work].flat();
  const needed = new Set<CautionId>(works.flatMap(each => byWork[each]));
  for (const { cautions, dissolvesIn } of hazards) {
    for (const id of cautions) needed.add(id);
    if (!works.includes('powder')) continue;
    if (dissolvesIn === 'alcohol') needed.add('alcohol');
    if (dissolvesIn === 'lye') needed.add('alkali');
  }
  return order.filter(id => needed.has(id)).map(id => ({ id, text: texts[id] }));
}
